// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
// A storage place over a window of time: how warm and how damp it was, what of it was outside the bands, and
// how much nobody recorded.
//
// Everything is weighted by time along the straight lines between readings, cut at the window's edges; where
// two readings lie further apart than the allowed gap the time between is unrecorded and counts for nothing.
// Dew point and absolute humidity are reckoned at the readings and taken as lines between them (see air.h for
// the formulas).

#include "core/facts/climate.h"
#include "core/facts/film.h"
#include "core/film/air.h"

#include <cstddef>
#include <functional>
#include <optional>

namespace holdfast {

struct ClimateWindow {
    Instant from;
    Instant to;
};

// Low, high and mean of a measure.
struct Ranged {
    double low = 0;
    double high = 0;
    double mean = 0;
};

struct HoursOutside {
    double below = 0;
    double above = 0;

    double all() const { return below + above; }
};

// What was recorded; only where recordedHours, and for humidity, dew point and absolute humidity humidHours,
// is above zero does it say anything.
struct ClimateFigures {
    std::size_t readings = 0;
    double recordedHours = 0;
    double humidHours = 0; // of them, those with a humidity
    double unrecordedHours = 0;
    Ranged temperature;      // °C
    Ranged humidity;         // %
    Ranged dewPoint;         // °C
    Ranged absoluteHumidity; // g/m³
    Celsius kinetic;         // mean kinetic temperature
    HoursOutside humidityOutside;
    HoursOutside temperatureOutside;
};

// `shouldStop` is asked now and then; where it answers true there is no answer. REQUIRES: from before to.
std::optional<ClimateFigures> figuresOf(const ClimateSeries& series, const ClimateWindow& window,
                                        const StorageLimits& limits,
                                        const std::function<bool()>& shouldStop = {});

// How many readings of a series lie in a window.
std::size_t readingsIn(const ClimateSeries& series, const ClimateWindow& window);

} // namespace holdfast
