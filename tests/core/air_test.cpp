// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/film/air.h"

#include <gtest/gtest.h>

#include <cmath>

namespace holdfast {
namespace {

using namespace literals;

ClimateReading reading(int hour, double temperature) {
    return {Instant{Hours{hour}}, {temperature}, {45}};
}

TEST(Air, SaturatedAirIsAtItsDewPoint) {
    for (const double temperature : {-10.0, 0.0, 4.5, 22.0, 40.0})
        EXPECT_NEAR(dewPoint({temperature}, 100_rh).value, temperature, 1e-9);
}

TEST(Air, DrierAirHasALowerDewPointAndNeverNone) {
    double last = 22;
    for (const double percent : {90.0, 50.0, 10.0, 1.0, 0.1, 0.0}) {
        const double point = dewPoint(22_C, {percent}).value;
        EXPECT_TRUE(std::isfinite(point));
        EXPECT_LT(point, last);
        last = point;
    }
}

// Magnus by hand of one part in ten thousand of saturation: ln 0.0001 + 17.62 · 22 / (243.12 + 22) = −7.7482.
TEST(Air, BoneDryAirCountsAsAHundredthOfAPercent) {
    EXPECT_NEAR(dewPoint(22_C, 0_rh).value, 243.12 * -7.7482 / (17.62 + 7.7482), 1e-3);
    EXPECT_EQ(dewPoint(22_C, 0_rh), dewPoint(22_C, {0.01}));
}

TEST(Air, MeanKineticTemperatureLeansToTheWarmHours) {
    const std::vector<Celsius> readings{{15}, {30}};
    const auto mean = meanKineticTemperature(std::span<const Celsius>{readings});
    ASSERT_TRUE(mean);
    EXPECT_GT(mean->value, 22.5);
    EXPECT_LT(mean->value, 30);
}

TEST(Air, ASteadyRoomHasItsOwnTemperatureAsMean) {
    const std::vector<ClimateReading> window{reading(0, 21.5), reading(5, 21.5), reading(6, 21.5)};
    EXPECT_NEAR(meanKineticTemperature(std::span<const ClimateReading>{window})->value, 21.5, 1e-9);
}

TEST(Air, WithoutReadingsThereIsNoMean) {
    EXPECT_FALSE(meanKineticTemperature(std::span<const Celsius>{}));
    EXPECT_FALSE(meanKineticTemperature(std::span<const ClimateReading>{}));
}

TEST(Air, AnUnevenLogIsWeighedByTime) {
    // A day at 20 °C read once an hour, a day at 30 °C read at its ends: each counts for a day.
    std::vector<ClimateReading> window;
    for (int hour = 0; hour < 24; ++hour)
        window.push_back(reading(hour, 20));
    window.push_back(reading(24, 30));
    window.push_back(reading(48, 30));
    const double byTime = meanKineticTemperature(std::span<const ClimateReading>{window})->value;
    const std::vector<Celsius> days{{20}, {30}};
    const double alike = meanKineticTemperature(std::span<const Celsius>{days})->value;
    EXPECT_NEAR(byTime, alike, 0.15); // one hour of the forty-eight lies on the slope between
}

TEST(Air, TheMeanAlongALineAgreesWithFineSteps) {
    const std::vector<ClimateReading> window{reading(0, 5), reading(10, 35), reading(30, 18)};
    double sum = 0;
    constexpr int kSteps = 200'000;
    for (int step = 0; step < kSteps; ++step) {
        const double hour = 30.0 * (step + 0.5) / kSteps;
        const double temperature = hour < 10 ? 5 + 3 * hour : 35 - 17.0 * (hour - 10) / 20;
        sum += std::exp(-10'000 / (temperature + 273.15));
    }
    const double fine = 10'000 / -std::log(sum / kSteps) - 273.15;
    EXPECT_NEAR(meanKineticTemperature(std::span<const ClimateReading>{window})->value, fine, 1e-6);
}

TEST(Air, AGapIsLeftOutOfTheMean) {
    // Ten hours at 20 °C, a week without readings, ten hours at 35 °C: the slope over the week is nobody's.
    const std::vector<ClimateReading> window{reading(0, 20), reading(10, 20), reading(178, 35),
                                             reading(188, 35)};
    const std::vector<Celsius> tenHoursEach{{20}, {35}};
    EXPECT_NEAR(meanKineticTemperature(std::span<const ClimateReading>{window})->value,
                meanKineticTemperature(std::span<const Celsius>{tenHoursEach})->value, 1e-9);
}

TEST(Air, SingleReadingsFarApartCountAlike) {
    const std::vector<ClimateReading> window{reading(0, 20), reading(1000, 25)};
    EXPECT_NEAR(meanKineticTemperature(std::span<const ClimateReading>{window})->value, 22.832, 1e-3);
}

} // namespace
} // namespace holdfast
