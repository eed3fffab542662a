// SPDX-License-Identifier: GPL-3.0-or-later
// Shares, charts, survival and the exact test against figures that were published or computed with general
// libraries (references.md §7): Newcombe 1998, Table I, method 3 (with SciPy); NIST/SEMATECH
// e-Handbook 6.3.3.2 (read in two public copies); Montgomery and Runger (from memory); the 6-MP
// arm of Freireich and others 1963 as in R's survival; Fisher's tea tasting (SciPy).

#include "core/quality/control_chart.h"
#include "core/quality/exact_test.h"
#include "core/quality/share_interval.h"
#include "core/quality/survival.h"

#include <gtest/gtest.h>

namespace holdfast {
namespace {

TEST(ReferenceQuality, WilsonsIntervalAgreesWithNewcombeAndSciPy) {
    struct Row {
        std::int64_t found, of;
        double low, high;
    };
    for (const Row& row :
         {Row{81, 263, 0.2552885198782742, 0.36620957698280004},
          Row{15, 148, 0.06238639953073628, 0.16048724172330803}, Row{0, 20, 0, 0.1611251580528194},
          Row{1, 29, 0.006113214292762667, 0.17175521879320294}, Row{5, 5, 0.5655175352168252, 1}}) {
        const auto interval = shareInterval(row.found, row.of);
        ASSERT_TRUE(interval);
        EXPECT_NEAR(interval->low, row.low, 1e-12) << row.found << " of " << row.of;
        EXPECT_NEAR(interval->high, row.high, 1e-12) << row.found << " of " << row.of;
    }
}

// The limits for a mean share of 0.2313 in samples of 50 (NIST/SEMATECH): 0.4102 and 0.0524. The samples are
// made up to have that mean.
TEST(ReferenceQuality, ShareChartAgreesWithNist) {
    std::vector<CountSample> samples(30, {11, 50});
    samples[0].found = 28; // 347 of 1,500 in all
    const ControlChart chart = shareChart(samples);
    EXPECT_NEAR(chart.mean, 0.2313, 0.00005);
    EXPECT_NEAR(chart.samples[1].high, 0.4101967741464334, 0.0001);
    EXPECT_NEAR(chart.samples[1].low, 0.052403225853566604, 0.0001);
    EXPECT_TRUE(chart.samples[0].isOut());
    EXPECT_FALSE(chart.samples[1].isOut());
}

// Montgomery and Runger, in the chapter on control charts (from memory; no example number was confirmed): p̄
// 0.40, n 100 → 0.55 and 0.25; p̄ 0.0645: n 1,500 → 0.0835 and 0.0455, n 100 → 0.1382 and 0.
TEST(ReferenceQuality, ShareChartAgreesWithMontgomeryAndRunger) {
    const std::vector<CountSample> two{{40, 100}, {40, 100}};
    EXPECT_NEAR(shareChart(two).samples[0].high, 0.547, 0.0005); // printed as 0.55
    EXPECT_NEAR(shareChart(two).samples[0].low, 0.253, 0.0005);  // and 0.25

    // Of other sizes with the mean share 0.0645: 129 of 2,000.
    const std::vector<CountSample> sized{{96, 1500}, {7, 100}, {26, 400}};
    const ControlChart chart = shareChart(sized);
    EXPECT_NEAR(chart.mean, 0.0645, 1e-12);
    EXPECT_NEAR(chart.samples[0].high, 0.0835, 0.00005);
    EXPECT_NEAR(chart.samples[0].low, 0.0455, 0.00005);
    EXPECT_NEAR(chart.samples[1].high, 0.1382, 0.00005);
    EXPECT_EQ(chart.samples[1].low, 0);
}

// Weeks until relapse under 6-MP, 21 patients (Freireich and others 1963; data as in R [M], figures of R's
// survival). The ends on log(−log S) are those that general statistics programs list for it [M].
TEST(ReferenceQuality, KaplanMeierAgreesWithRsSurvival) {
    std::vector<Watched> patients;
    for (const double week : {6, 6, 6, 7, 10, 13, 16, 22, 23})
        patients.push_back({week, true});
    for (const double week : {6, 9, 10, 11, 17, 19, 20, 25, 32, 32, 34, 35})
        patients.push_back({week, false});
    const Survival survival = survivalOf(patients);

    struct Row {
        double week;
        std::size_t watched;
        double share, low, high;
    };
    const Row rows[] = {
        {6, 21, 0.8571428571428571, 0.6197, 0.9516},  {7, 17, 0.8067226890756302, 0.5631, 0.9228},
        {10, 15, 0.7529411764705882, 0.5032, 0.8894}, {13, 12, 0.6901960784313724, 0.4316, 0.8491},
        {16, 11, 0.6274509803921567, 0.3675, 0.8049}, {22, 7, 0.53781512605042, 0.2678, 0.7468},
        {23, 6, 0.4481792717086834, 0.1881, 0.6801}};
    ASSERT_EQ(survival.steps.size(), std::size(rows));
    for (std::size_t step = 0; step < std::size(rows); ++step) {
        EXPECT_EQ(survival.steps[step].at, rows[step].week);
        EXPECT_EQ(survival.steps[step].watched, rows[step].watched);
        EXPECT_NEAR(survival.steps[step].share, rows[step].share, 1e-12);
        EXPECT_NEAR(survival.steps[step].low, rows[step].low, 0.00005) << rows[step].week;
        EXPECT_NEAR(survival.steps[step].high, rows[step].high, 0.00005) << rows[step].week;
    }
    EXPECT_NEAR(survival.steps[0].standardError, 0.07636035483212125, 1e-12);
    EXPECT_EQ(survival.median(), 23);
    EXPECT_EQ(survival.watchedUntil, 35);
}

// A lady tastes eight cups of tea, four with milk first: three right, one wrong (Fisher 1935).
TEST(ReferenceQuality, FishersTeaTasting) {
    const FaultTable cups{3, 1, 1, 3};
    EXPECT_NEAR(chanceOfAsMany(cups), 0.24285714285714283, 1e-12);
}

} // namespace
} // namespace holdfast
