// SPDX-License-Identifier: GPL-3.0-or-later
// Readings of temperature alone: age needs no humidity, and a humidity nobody measured is neither dry nor
// zero.
#include "core/film/ageing.h"
#include "core/film/climate_window.h"
#include "core/film/exposure.h"

#include "tests/core/shelf_builders.h"

#include <gtest/gtest.h>

namespace holdfast::test {
namespace {

const Instant kStart = at(localDate(2026, 11, 1));

// Hourly for ten days, 60 % all along; the humidity was noted every so many hours only.
ClimateSeries damp(int everyHours) {
    ClimateSeries series;
    for (int hour = 0; hour <= 240; ++hour) {
        const bool isNoted = everyHours > 0 && hour % everyHours == 0;
        series.push_back(readingOf(kStart + Hours{hour}, Celsius{20.0 + hour % 3},
                                   isNoted ? std::optional{Humidity{60}} : std::nullopt));
    }
    return series;
}

double hoursDamp(const ClimateSeries& series) {
    return ExposureCurve(series, Measure::Humidity, 30, 50).hoursBetween(kStart, kStart + Hours{240});
}

TEST(TemperatureAlone, AgesFilmAsReadingsWithHumidityDo) {
    const AgeingModel model{2, {20}};
    const auto aged = [&](const ClimateSeries& series) {
        return AgeingCurve(series, model).between(kStart, kStart + Hours{240}).effectiveDays;
    };
    EXPECT_DOUBLE_EQ(aged(damp(0)), aged(damp(1)));
}

TEST(TemperatureAlone, HumidityGoesInLinesBetweenTheReadingsThatHaveOne) {
    EXPECT_NEAR(hoursDamp(damp(1)), 240, 1e-9);
    EXPECT_NEAR(hoursDamp(damp(24)), 240, 1e-9);
    EXPECT_NEAR(hoursDamp(damp(0)), 0, 1e-9) << "nobody knows, so nothing is counted";
    EXPECT_NEAR(hoursDamp(damp(80)), 0, 1e-9) << "further apart than the allowed gap";
}

TEST(TemperatureAlone, ACurveGoneOnIsTheOneOfAllReadings) {
    for (const int every : {0, 1, 7, 24}) {
        const ClimateSeries all = damp(every);
        const ClimateSeries begun(all.begin(), all.begin() + 100);
        const ExposureCurve first(begun, Measure::Humidity, 30, 50);
        const ExposureCurve goneOn = first.goneOn(all);
        EXPECT_DOUBLE_EQ(goneOn.hoursBetween(kStart, kStart + Hours{240}), hoursDamp(all)) << every;
    }
}

TEST(TemperatureAlone, FiguresTellTheHoursOfHumidityApart) {
    const ClimateWindow window{kStart, kStart + Hours{240}};
    const auto alone = figuresOf(damp(0), window, {});
    EXPECT_DOUBLE_EQ(alone->recordedHours, 240);
    EXPECT_DOUBLE_EQ(alone->humidHours, 0);
    EXPECT_DOUBLE_EQ(alone->humidityOutside.all(), 0);
    const auto noted = figuresOf(damp(24), window, {});
    EXPECT_DOUBLE_EQ(noted->humidHours, 240);
    EXPECT_DOUBLE_EQ(noted->humidity.mean, 60);
    EXPECT_DOUBLE_EQ(noted->temperature.mean, alone->temperature.mean);
}

} // namespace
} // namespace holdfast::test
