// SPDX-License-Identifier: GPL-3.0-or-later
// What is said of few garments: no certainty from one, and limits that mean what they say.
#include "core/quality/control_chart.h"
#include "core/quality/exact_test.h"
#include "core/quality/share_interval.h"
#include "core/quality/survival.h"

#include <gtest/gtest.h>

#include <algorithm>
#include <cmath>
#include <random>

namespace holdfast {
namespace {

TEST(FewEvents, TheMedianIsThereWhereJustHalfAreLeft) {
    const std::vector<Watched> two{{1, true}, {2, false}};
    EXPECT_EQ(survivalOf(two).median(), 1);
    const std::vector<Watched> three{{1, true}, {2, false}, {3, false}};
    EXPECT_EQ(survivalOf(three).median(), std::nullopt);
}

TEST(FewEvents, TheLastOneThatFailsProvesNothing) {
    const std::vector<Watched> cases{{5, true}, {8, false}, {9, false}, {30, true}};
    const Survival survival = survivalOf(cases);
    const SurvivalStep& last = survival.steps.back();
    EXPECT_EQ(last.share, 0);
    EXPECT_EQ(last.low, 0);
    // One was watched for thirty days: of many, up to Wilson's 79 % might have held where it did not.
    EXPECT_NEAR(last.high, survival.steps.front().high * shareInterval(0, 1)->high, 1e-12);
    EXPECT_GT(last.high, 0.5);
}

struct AlikeShops {
    int garments = 0;
    double lasts = 0; // days in the mean
};

// Of shops whose decals all last alike, garments watched for 10 to 160 days each: the share of those in which
// the ends after sixty days hold the true share. As the figures show it: only where any is watched so long,
// and by Wilson's interval of those watched where none failed.
double shareOfShopsInWhichTheEndsHold(const AlikeShops& shops) {
    constexpr double kAfter = 60;
    std::mt19937 random{3};
    std::exponential_distribution<double> lasts{1 / shops.lasts};
    std::uniform_real_distribution<double> watched{10, 160};
    const double truth = std::exp(-kAfter / shops.lasts);
    int shown = 0, held = 0;
    for (int shop = 0; shop < 2000; ++shop) {
        std::vector<Watched> cases;
        for (int garment = 0; garment < shops.garments; ++garment) {
            const double fault = lasts(random), end = watched(random);
            cases.push_back({std::min(fault, end), fault <= end});
        }
        const auto left =
            std::ranges::count_if(cases, [](const Watched& one) { return one.until >= kAfter; });
        if (left == 0)
            continue;
        const SurvivalStep step = survivalOf(cases).at(kAfter);
        const ShareInterval none = *shareInterval(left, left);
        ++shown;
        held += step.faults == 0 ? truth >= none.low && truth <= none.high
                                 : truth >= step.low && truth <= step.high;
    }
    return static_cast<double>(held) / shown;
}

TEST(FewEvents, TheEndsHoldAsOftenAsTheySayAlsoWhereFewAreWatched) {
    // Counts are whole, so for few garments the share that holds jumps about 95 of 100, as Wilson's does.
    constexpr double kHeld = 0.92;
    for (const int garments : {5, 8, 20}) {
        for (const double lasts : {100., 1000.})
            EXPECT_GE(shareOfShopsInWhichTheEndsHold({garments, lasts}), kHeld) << garments << ", " << lasts;
    }
}

TEST(FewEvents, TheChanceOfMoreIsTheBinomialTail) {
    EXPECT_NEAR(chanceOfMoreThan(0, 3, 0.5), 0.875, 1e-12);
    EXPECT_NEAR(chanceOfMoreThan(2, 3, 0.5), 0.125, 1e-12);
    EXPECT_EQ(chanceOfMoreThan(3, 3, 0.5), 0);
    EXPECT_EQ(chanceOfMoreThan(0, 10, 0), 0);
    EXPECT_EQ(chanceOfMoreThan(9, 10, 1), 1);
    // By binomial coefficients in whole numbers (Python's math.comb).
    EXPECT_NEAR(chanceOfMoreThan(5, 16, 0.07), 0.000509450183935164, 1e-12);
    EXPECT_NEAR(chanceOfMoreThan(4, 16, 0.07), 0.003813794263563324, 1e-12);
}

// Sums of many small chances go past one in their last digits.
TEST(FewEvents, NoChanceIsAboveOne) {
    for (std::int64_t faults = 0; faults <= 30; ++faults)
        for (std::int64_t others = 0; others <= 30; ++others)
            EXPECT_LE(chanceOfAsMany({0, faults, others, 30 - others}), 1);
}

// 16 garments a month at 7 %: three standard errors would say 26 % and call five of them too many, which
// chance brings once in 260 such months; counted out it is more than five.
TEST(FewEvents, AMonthOfFewGarmentsHasItsLimitCountedOut) {
    std::vector<CountSample> months(100, {1, 16});
    for (std::size_t at = 0; at < 12; ++at)
        months[at].found = 2;
    const ControlChart chart = shareChart(months); // 112 of 1,600
    ASSERT_NEAR(chart.mean, 0.07, 1e-12);
    EXPECT_TRUE(chart.samples[0].isCountedOut);
    EXPECT_DOUBLE_EQ(chart.samples[0].high, 5.0 / 16);
    EXPECT_EQ(chart.samples[0].low, 0);
    EXPECT_FALSE(shareChart(std::vector<CountSample>{{40, 100}, {40, 100}}).samples[0].isCountedOut);
}

// The share of months that are called out where nothing is wrong is no more than the page says.
TEST(FewEvents, MonthsOfAShopInWhichNothingIsWrong) {
    std::mt19937 random{29};
    for (const double share : {0.02, 0.07, 0.2}) {
        int months = 0, out = 0;
        for (int shop = 0; shop < 1500; ++shop) {
            std::vector<CountSample> samples;
            for (int month = 0; month < 24; ++month) {
                const auto of = static_cast<std::int64_t>(8 + random() % 60);
                samples.push_back({std::binomial_distribution<std::int64_t>{of, share}(random), of});
            }
            for (const ChartedSample& sample : shareChart(samples).samples) {
                ++months;
                out += sample.isOut();
            }
        }
        // Three standard errors of 36,000 months beside 1 in 370; skew of the larger months is in it too.
        EXPECT_LE(out, months * (1.0 / 370 + 0.0015)) << share;
    }
}

} // namespace
} // namespace holdfast
