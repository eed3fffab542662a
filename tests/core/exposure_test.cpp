// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/film/exposure.h"

#include "tests/core/shelf_builders.h"

#include <gtest/gtest.h>

#include <algorithm>
#include <random>

namespace holdfast::test {
namespace {

ExposureCurve dampness(const ClimateSeries& series) {
    return {series, Measure::Humidity, 30, 50};
}

ClimateReading damp(Instant instant, double humidity) {
    return {instant, 20_C, {humidity}};
}

TEST(Exposure, InsideTheBandNothingCounts) {
    const ClimateSeries series = steady(at(nov(1)), at(nov(3)), 20, 50);
    EXPECT_DOUBLE_EQ(dampness(series).hoursBetween(at(nov(1)), at(nov(3))), 0);
    EXPECT_TRUE(dampness(series).spellsBetween(at(nov(1)), at(nov(3))).empty());
}

TEST(Exposure, TheCrossingIsFoundOnTheLine) {
    // From 40 to 60 % in four hours: 50 % is crossed after two.
    const ClimateSeries series{damp(at(nov(1), 8), 40), damp(at(nov(1), 12), 60)};
    EXPECT_DOUBLE_EQ(dampness(series).hoursBetween(at(nov(1)), at(nov(2))), 2);
    const auto spells = dampness(series).spellsBetween(at(nov(1)), at(nov(2)));
    ASSERT_EQ(spells.size(), 1u);
    EXPECT_EQ(spells[0].begins, at(nov(1), 10));
    EXPECT_EQ(spells[0].ends, at(nov(1), 12));
    EXPECT_TRUE(spells[0].isAbove);
    EXPECT_DOUBLE_EQ(spells[0].hours(), 2);
}

TEST(Exposure, OneLineMayCrossTheWholeBand) {
    // From 20 to 60 %: below for a quarter, inside for a half, above for a quarter.
    const ClimateSeries series{damp(at(nov(1), 8), 20), damp(at(nov(1), 16), 60)};
    const auto spells = dampness(series).spellsBetween(at(nov(1)), at(nov(2)));
    ASSERT_EQ(spells.size(), 2u);
    EXPECT_FALSE(spells[0].isAbove);
    EXPECT_EQ(spells[0].ends, at(nov(1), 10));
    EXPECT_TRUE(spells[1].isAbove);
    EXPECT_EQ(spells[1].begins, at(nov(1), 14));
    EXPECT_DOUBLE_EQ(dampness(series).hoursBetween(at(nov(1)), at(nov(2))), 4);
}

TEST(Exposure, OneSpellRunsOverManyReadings) {
    ClimateSeries series = steady(at(nov(1)), at(nov(2)), 20, 60);
    series.push_back(damp(at(nov(2), 2), 40));
    const auto spells = dampness(series).spellsBetween(at(nov(1)), at(nov(9)));
    ASSERT_EQ(spells.size(), 1u);
    EXPECT_DOUBLE_EQ(spells[0].hours(), 25);
}

TEST(Exposure, TheLimitItselfIsInside) {
    const ClimateSeries series{damp(at(nov(1), 8), 50), damp(at(nov(1), 9), 50), damp(at(nov(1), 10), 30),
                               damp(at(nov(1), 11), 30)};
    EXPECT_DOUBLE_EQ(dampness(series).hoursBetween(at(nov(1)), at(nov(2))), 0);
}

TEST(Exposure, UnrecordedTimeIsNoExposure) {
    const ClimateSeries series{damp(at(nov(1)), 70), damp(at(nov(2)), 70), damp(at(nov(9)), 70),
                               damp(at(nov(10)), 70)};
    EXPECT_DOUBLE_EQ(dampness(series).hoursBetween(at(nov(1)), at(nov(20))), 48);
    EXPECT_EQ(dampness(series).spellsBetween(at(nov(1)), at(nov(20))).size(), 2u);
}

TEST(Exposure, HeatIsMeasuredInItsOwnBand) {
    const ClimateSeries series = steady(at(nov(1)), at(nov(2)), 34, 45);
    const ExposureCurve heat{series, Measure::Temperature, 10, 30};
    EXPECT_DOUBLE_EQ(heat.hoursBetween(at(nov(1)), at(nov(2))), 24);
    EXPECT_DOUBLE_EQ(dampness(series).hoursBetween(at(nov(1)), at(nov(2))), 0);
}

TEST(Exposure, NoReadingsNoExposure) {
    const ClimateSeries none;
    EXPECT_DOUBLE_EQ(dampness(none).hoursBetween(at(nov(1)), at(nov(9))), 0);
    EXPECT_TRUE(dampness(none).spellsBetween(at(nov(1)), at(nov(9))).empty());
}

ClimateSeries wanderingDamp(std::mt19937& random, int count) {
    std::uniform_int_distribution<int> minutes{1, 300};
    std::normal_distribution<double> step{0, 9};
    ClimateSeries series;
    Instant instant = at(nov(1));
    double humidity = 40;
    for (int reading = 0; reading < count; ++reading) {
        series.push_back(damp(instant, humidity));
        instant += Minutes{minutes(random)} + (random() % 50 == 0 ? Hours{90} : Hours{0});
        // Whole limits and repeats are the awkward ones.
        const auto roll = random() % 8;
        humidity = roll == 0   ? 50
                   : roll == 1 ? 30
                   : roll == 2 ? humidity
                               : std::clamp(humidity + step(random), 1.0, 99.0);
    }
    return series;
}

// Walks the lines in steps of 20 seconds.
double byBruteForce(const ClimateSeries& series, Instant from, Instant to) {
    double seconds = 0;
    std::size_t segment = 0;
    for (Instant begins = from; begins < to; begins += Seconds{20}) {
        const Instant middle = begins + Seconds{10};
        while (segment + 2 < series.size() && series[segment + 1].at <= middle)
            ++segment;
        const ClimateReading& before = series[segment];
        const ClimateReading& after = series[segment + 1];
        if (middle < before.at || middle > after.at || after.at - before.at > kAllowedGap)
            continue;
        const double share = static_cast<double>((middle - before.at).count()) /
                             static_cast<double>((after.at - before.at).count());
        const double humidity =
            before.humidity.percent + share * (after.humidity.percent - before.humidity.percent);
        if (humidity < 30 || humidity > 50)
            seconds += static_cast<double>(std::min(Seconds{20}, to - begins).count());
    }
    return seconds / 3600;
}

TEST(Exposure, AgreesWithBruteForceOverAnySpan) {
    std::mt19937 random{17};
    for (int turn = 0; turn < 60; ++turn) {
        const ClimateSeries series = wanderingDamp(random, 80);
        const ExposureCurve curve = dampness(series);
        const auto whole = (series.back().at - series.front().at).count();
        std::uniform_int_distribution<std::int64_t> second{-whole / 10, whole + whole / 10};
        Instant from = series.front().at + Seconds{second(random)};
        Instant to = series.front().at + Seconds{second(random)};
        if (from > to)
            std::swap(from, to);
        const double hours = curve.hoursBetween(from, to);
        EXPECT_NEAR(hours, byBruteForce(series, from, to), 0.5);

        double inSpells = 0;
        const auto spells = curve.spellsBetween(from, to);
        for (std::size_t spell = 0; spell < spells.size(); ++spell) {
            EXPECT_LT(spells[spell].begins, spells[spell].ends);
            EXPECT_GE(spells[spell].begins, from);
            EXPECT_LE(spells[spell].ends, to);
            if (spell > 0) {
                EXPECT_GE(spells[spell].begins, spells[spell - 1].ends);
            }
            inSpells += spells[spell].hours();
        }
        // Each end of a spell is rounded to its second.
        EXPECT_NEAR(inSpells, hours, static_cast<double>(spells.size() + 1) * 2 / 3600);
    }
}

TEST(Exposure, SpansAddUp) {
    std::mt19937 random{19};
    const ClimateSeries series = wanderingDamp(random, 200);
    const ExposureCurve curve = dampness(series);
    const Instant begins = series.front().at;
    const Instant ends = series.back().at;
    for (Instant middle = begins; middle < ends; middle += Minutes{171})
        EXPECT_NEAR(curve.hoursBetween(begins, middle) + curve.hoursBetween(middle, ends),
                    curve.hoursBetween(begins, ends), 1e-9);
}

} // namespace
} // namespace holdfast::test
