// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/film/climate_window.h"

#include "core/film/exposure.h"
#include "tests/core/shelf_builders.h"

#include <gtest/gtest.h>

#include <chrono>
#include <cmath>
#include <iostream>
#include <random>

namespace holdfast::test {

namespace {

const ClimateWindow kWeek{at(nov(2)), at(nov(9))};
const StorageLimits kLimits; // 30–50 %, 10–30 °C

ClimateFigures figures(const ClimateSeries& series, const ClimateWindow& window = kWeek) {
    return figuresOf(series, window, kLimits).value();
}

} // namespace

TEST(ClimateWindow, SteadyAirHasItsOwnFigures) {
    const ClimateFigures steadyAir = figures(steady(at(nov(1)), at(nov(12)), 20, 50));
    EXPECT_EQ(steadyAir.readings, 7u * 24 + 1);
    EXPECT_NEAR(steadyAir.recordedHours, 168, 1e-9);
    EXPECT_NEAR(steadyAir.unrecordedHours, 0, 1e-9);
    EXPECT_NEAR(steadyAir.kinetic.value, 20, 1e-9);
    EXPECT_NEAR(steadyAir.temperature.mean, 20, 1e-9);
    // 20 °C at 50 %: WMO dew point 9.255175, absolute humidity about 8.64 g/m³ (references.md §3).
    EXPECT_NEAR(steadyAir.dewPoint.mean, 9.255174598981256, 1e-9);
    EXPECT_NEAR(steadyAir.absoluteHumidity.mean, 8.643300018056816, 0.03);
    EXPECT_EQ(steadyAir.humidityOutside.all(), 0);
}

TEST(ClimateWindow, EdgesCutTheLines) {
    // From 10 °C on the 1st to 20 °C on the 3rd, then on to 30 °C on the 5th; two days of it looked at.
    const ClimateSeries series{
        {at(nov(1)), 10_C, 40_rh}, {at(nov(3)), 20_C, 60_rh}, {at(nov(5)), 30_C, 40_rh}};
    const ClimateFigures shown = figures(series, {at(nov(2)), at(nov(4))});
    EXPECT_EQ(shown.readings, 1u);
    EXPECT_NEAR(shown.recordedHours, 48, 1e-9);
    EXPECT_NEAR(shown.temperature.low, 15, 1e-9);
    EXPECT_NEAR(shown.temperature.high, 25, 1e-9);
    EXPECT_NEAR(shown.temperature.mean, 20, 1e-9);
    EXPECT_NEAR(shown.humidity.mean, 55, 1e-9); // 50 → 60 → 50
    EXPECT_NEAR(shown.humidityOutside.above, 48, 1e-9);
    // Between two readings alone there is still a line.
    const ClimateFigures within = figures(series, {at(nov(1), 12), at(nov(2), 12)});
    EXPECT_EQ(within.readings, 0u);
    EXPECT_NEAR(within.temperature.mean, 15, 1e-9);
    EXPECT_NEAR(within.recordedHours, 24, 1e-9);
}

TEST(ClimateWindow, GapsAreUnrecordedAndCountForNothing) {
    ClimateSeries series = steady(at(nov(2)), at(nov(4)), 20, 45);
    const ClimateSeries later = steady(at(nov(8)), at(nov(9)), 30, 45);
    series.insert(series.end(), later.begin(), later.end());
    const ClimateFigures shown = figures(series);
    EXPECT_NEAR(shown.recordedHours, 72, 1e-9);
    EXPECT_NEAR(shown.unrecordedHours, 96, 1e-9);
    EXPECT_NEAR(shown.temperature.mean, (48 * 20 + 24 * 30) / 72.0, 1e-9);
    EXPECT_EQ(figures({}).recordedHours, 0);
    EXPECT_NEAR(figures({}).unrecordedHours, 168, 1e-9);
}

TEST(ClimateWindow, MeanKineticTemperatureIsThatOfTheReadings) {
    // 20 °C then 25 °C for as long each: 22.832025 (references.md §2, computed for two readings).
    ClimateSeries series = steady(at(nov(2)), at(nov(5), 11), 20, 45);
    series.push_back({at(nov(5), 11, 59), 20_C, 45_rh});
    series.push_back({at(nov(5), 12), 25_C, 45_rh});
    const ClimateSeries later = steady(at(nov(5), 13), at(nov(9)), 25, 45);
    series.insert(series.end(), later.begin(), later.end());
    EXPECT_NEAR(figures(series).kinetic.value, 22.832025320829644, 5e-3);
}

TEST(ClimateWindow, HoursOutsideAreThoseOfTheExposure) {
    std::mt19937 random{5};
    ClimateSeries series;
    for (Instant instant = at(nov(1)); instant < at(nov(12)); instant += Minutes{1 + random() % 4000})
        series.push_back(
            {instant, {5 + static_cast<double>(random() % 300) / 10}, {static_cast<double>(random() % 101)}});
    const ClimateFigures shown = figures(series);
    EXPECT_NEAR(shown.humidityOutside.all(),
                ExposureCurve(series, Measure::Humidity, 30, 50).hoursBetween(kWeek.from, kWeek.to), 1e-6);
    EXPECT_NEAR(shown.temperatureOutside.all(),
                ExposureCurve(series, Measure::Temperature, 10, 30).hoursBetween(kWeek.from, kWeek.to), 1e-6);
    EXPECT_GT(shown.humidityOutside.below, 0);
    EXPECT_GT(shown.humidityOutside.above, 0);
}

TEST(ClimateWindow, AMillionReadingsCanBeStopped) {
    ClimateSeries series;
    for (int reading = 0; reading < 1'000'000; ++reading)
        series.push_back({at(nov(1)) + Seconds{reading}, {20 + std::sin(reading * 0.001)}, {45}});
    const ClimateWindow all{series.front().at, series.back().at};
    int asked = 0;
    EXPECT_FALSE(figuresOf(series, all, kLimits, [&asked] { return ++asked == 3; }));
    EXPECT_EQ(asked, 3);
    const auto begins = std::chrono::steady_clock::now();
    EXPECT_EQ(figuresOf(series, all, kLimits)->readings, series.size());
    std::cout << "figures of 1,000,000 readings: "
              << std::chrono::duration<double, std::milli>(std::chrono::steady_clock::now() - begins).count()
              << " ms\n";
}

} // namespace holdfast::test
