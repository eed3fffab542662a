// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/film/ageing.h"

#include "tests/core/shelf_builders.h"

#include <gtest/gtest.h>

#include <cmath>
#include <random>

namespace holdfast::test {
namespace {

const AgeingModel kModel{};

// Effective days by the rule of the middle over many small steps.
double byFineSteps(const AgeingModel& model, double from, double to, double days) {
    constexpr int kSteps = 20'000;
    double sum = 0;
    for (int step = 0; step < kSteps; ++step)
        sum += ageingFactor(model, {from + (to - from) * (step + 0.5) / kSteps});
    return sum / kSteps * days;
}

TEST(Ageing, AtTheReferenceADayIsADay) {
    EXPECT_DOUBLE_EQ(ageingFactor(kModel, 22_C), 1);
    EXPECT_DOUBLE_EQ(ageAlongLine(kModel, 22_C, 22_C, 7), 7);
}

TEST(Ageing, TenDegreesWarmerIsTwiceAsFast) {
    EXPECT_DOUBLE_EQ(ageAlongLine(kModel, 32_C, 32_C, 7), 14);
    EXPECT_DOUBLE_EQ(ageAlongLine(kModel, 12_C, 12_C, 7), 3.5);
}

TEST(Ageing, TheClosedFormAgreesWithFineSteps) {
    std::mt19937 random{3};
    std::uniform_real_distribution<double> temperature{-20, 70};
    std::uniform_real_distribution<double> factor{1.2, 4};
    for (int turn = 0; turn < 60; ++turn) {
        const AgeingModel model{.q10 = factor(random), .reference = {22}};
        const double from = temperature(random);
        const double to = temperature(random);
        const double closed = ageAlongLine(model, {from}, {to}, 3);
        EXPECT_NEAR(closed / byFineSteps(model, from, to, 3), 1, 1e-7) << from << " to " << to;
    }
}

TEST(Ageing, TheGentlestSlopeIsAsGoodAsAFlatLine) {
    const double flat = ageAlongLine(kModel, 30_C, 30_C, 1);
    for (const double slope : {1e-3, 1e-6, 1e-9, 1e-12, 1e-15}) {
        EXPECT_NEAR(ageAlongLine(kModel, 30_C, {30 + slope}, 1), flat, flat * slope + 1e-15);
        EXPECT_NEAR(ageAlongLine(kModel, {30 + slope}, 30_C, 1), flat, flat * slope + 1e-15);
    }
}

TEST(Ageing, AFilmThatDoesNotAgeFasterInWarmthAgesByTheCalendar) {
    EXPECT_DOUBLE_EQ(ageAlongLine({.q10 = 1, .reference = {22}}, 5_C, 60_C, 9), 9);
}

ClimateSeries wanderingSeries(std::mt19937& random, int count) {
    std::uniform_int_distribution<int> minutes{1, 600};
    std::normal_distribution<double> step{0, 1.5};
    ClimateSeries series;
    Instant instant = at(nov(1));
    double temperature = 20;
    for (int reading = 0; reading < count; ++reading) {
        series.push_back({instant, {temperature}, {45}});
        instant += Minutes{minutes(random)};
        if (random() % 40 == 0)
            instant += Hours{80}; // the logger was away
        temperature += step(random);
    }
    return series;
}

// The plain sum over every segment that the span touches.
AgeingCurve::Age bySegments(const ClimateSeries& series, const AgeingModel& model, Instant from, Instant to) {
    AgeingCurve::Age age;
    for (std::size_t next = 1; next < series.size(); ++next) {
        const ClimateReading& before = series[next - 1];
        const ClimateReading& after = series[next];
        const Instant begins = std::max(before.at, from);
        const Instant ends = std::min(after.at, to);
        if (begins >= ends || after.at - before.at > kAllowedGap)
            continue;
        const auto reached = [&](Instant instant) {
            const double share = static_cast<double>((instant - before.at).count()) /
                                 static_cast<double>((after.at - before.at).count());
            return Celsius{before.temperature.value +
                           share * (after.temperature.value - before.temperature.value)};
        };
        const double days = static_cast<double>((ends - begins).count()) / 86'400;
        age.effectiveDays += ageAlongLine(model, reached(begins), reached(ends), days);
        age.recordedDays += days;
    }
    age.unrecordedDays = static_cast<double>((to - from).count()) / 86'400 - age.recordedDays;
    age.effectiveDays += age.unrecordedDays;
    return age;
}

TEST(Ageing, RunningSumsAgreeWithDirectSumsOverAnySpan) {
    std::mt19937 random{5};
    const ClimateSeries series = wanderingSeries(random, 600);
    const AgeingModel model{.q10 = 2.4, .reference = {21}};
    const AgeingCurve curve{series, model};
    const auto whole = (series.back().at - series.front().at).count();
    std::uniform_int_distribution<std::int64_t> second{-whole / 10, whole + whole / 10};
    for (int turn = 0; turn < 2000; ++turn) {
        Instant from = series.front().at + Seconds{second(random)};
        Instant to = series.front().at + Seconds{second(random)};
        if (turn % 5 == 0)
            from = series[static_cast<std::size_t>(random() % series.size())].at;
        if (from > to)
            std::swap(from, to);
        const AgeingCurve::Age age = curve.between(from, to);
        const AgeingCurve::Age direct = bySegments(series, model, from, to);
        EXPECT_NEAR(age.effectiveDays, direct.effectiveDays, 1e-9);
        EXPECT_NEAR(age.recordedDays, direct.recordedDays, 1e-9);
        EXPECT_NEAR(age.unrecordedDays, direct.unrecordedDays, 1e-9);
    }
}

TEST(Ageing, SpansAddUp) {
    std::mt19937 random{6};
    const ClimateSeries series = wanderingSeries(random, 300);
    const AgeingCurve curve{series, kModel};
    const Instant begins = series.front().at - Hours{50};
    const Instant ends = series.back().at + Hours{50};
    for (Instant middle = begins; middle < ends; middle += Hours{7}) {
        EXPECT_NEAR(curve.between(begins, middle).effectiveDays + curve.between(middle, ends).effectiveDays,
                    curve.between(begins, ends).effectiveDays, 1e-9);
    }
}

TEST(Ageing, AGapCountsAtTheReferenceAndIsToldApart) {
    const ClimateSeries series{{at(nov(1)), 32_C, 45_rh},
                               {at(nov(2)), 32_C, 45_rh},
                               {at(nov(8)), 32_C, 45_rh},
                               {at(nov(9)), 32_C, 45_rh}};
    const AgeingCurve::Age age = AgeingCurve{series, kModel}.between(at(nov(1)), at(nov(9)));
    EXPECT_NEAR(age.recordedDays, 2, 1e-12);
    EXPECT_NEAR(age.unrecordedDays, 6, 1e-12);
    EXPECT_NEAR(age.effectiveDays, 2 * 2 + 6, 1e-12);
}

TEST(Ageing, ReadingsExactlyTheAllowedGapApartAreOneLine) {
    const ClimateSeries series{{at(nov(1)), 32_C, 45_rh}, {at(nov(4)), 32_C, 45_rh}};
    EXPECT_NEAR((AgeingCurve{series, kModel}.between(at(nov(1)), at(nov(4))).recordedDays), 3, 1e-12);
    const ClimateSeries wider{{at(nov(1)), 32_C, 45_rh}, {at(nov(4)) + Seconds{1}, 32_C, 45_rh}};
    EXPECT_DOUBLE_EQ((AgeingCurve{wider, kModel}.between(at(nov(1)), at(nov(4))).recordedDays), 0);
}

TEST(Ageing, WithoutReadingsEveryDayIsUnrecorded) {
    const ClimateSeries none;
    const AgeingCurve::Age age = AgeingCurve{none, kModel}.between(at(nov(1)), at(nov(11)));
    EXPECT_NEAR(age.effectiveDays, 10, 1e-9);
    EXPECT_NEAR(age.unrecordedDays, 10, 1e-9);
    EXPECT_DOUBLE_EQ(age.recordedDays, 0);
}

TEST(Ageing, ASpanThatEndsBeforeItBeginsIsNothing) {
    const ClimateSeries series = steady(at(nov(1)), at(nov(3)), 25, 45);
    const AgeingCurve::Age age = AgeingCurve{series, kModel}.between(at(nov(3)), at(nov(1)));
    EXPECT_DOUBLE_EQ(age.effectiveDays, 0);
    EXPECT_DOUBLE_EQ(age.unrecordedDays, 0);
}

} // namespace
} // namespace holdfast::test
