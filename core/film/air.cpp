// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/film/air.h"

#include <algorithm>
#include <array>
#include <cmath>

namespace holdfast {

namespace {

// Magnus over water, WMO-No. 8.
constexpr double kPressureAtZero = 611.2; // Pa
constexpr double kSlope = 17.62;
constexpr double kOffset = 243.12; // °C

constexpr double kZeroCelsius = 273.15;     // K
constexpr double kVapourConstant = 2.16679; // g·K/J
constexpr double kActivation = 10'000;      // ΔH/R in K, USP <1160>
constexpr double kDriestPercent = 0.01;     // bone-dry air has no dew point

double kelvin(Celsius temperature) {
    return temperature.value + kZeroCelsius;
}

// How fast a thing ages at a temperature, against 25 °C so that sums keep their digits.
double speedAt(Celsius temperature) {
    constexpr double kAround = 25 + kZeroCelsius;
    return std::exp(kActivation / kAround - kActivation / kelvin(temperature));
}

Celsius temperatureOf(double speed) {
    constexpr double kAround = 25 + kZeroCelsius;
    return {kActivation / (kActivation / kAround - std::log(speed)) - kZeroCelsius};
}

// Mean speed along a straight line of temperature: no closed form, so Gauss–Legendre with five points, which
// is exact far beyond any reading for as steep a line as a room can show.
double meanSpeedAlong(Celsius from, Celsius to) {
    constexpr std::array kPoints{-0.9061798459386640, -0.5384693101056831, 0.0, 0.5384693101056831,
                                 0.9061798459386640};
    constexpr std::array kWeights{0.2369268850561891, 0.4786286704993665, 0.5688888888888889,
                                  0.4786286704993665, 0.2369268850561891};
    double sum = 0;
    for (std::size_t point = 0; point < kPoints.size(); ++point)
        sum += kWeights[point] * speedAt({std::lerp(from.value, to.value, (kPoints[point] + 1) / 2)});
    return sum / 2;
}

} // namespace

double saturationPressure(Celsius temperature) {
    return kPressureAtZero * std::exp(kSlope * temperature.value / (kOffset + temperature.value));
}

Celsius dewPoint(Celsius temperature, Humidity humidity) {
    const double share = std::max(humidity.percent, kDriestPercent) / 100.0;
    const double gamma = std::log(share) + kSlope * temperature.value / (kOffset + temperature.value);
    return {kOffset * gamma / (kSlope - gamma)};
}

double absoluteHumidity(Celsius temperature, Humidity humidity) {
    const double pressure = saturationPressure(temperature) * humidity.percent / 100.0;
    return kVapourConstant * pressure / kelvin(temperature);
}

std::optional<Celsius> meanKineticTemperature(std::span<const Celsius> readings) {
    if (readings.empty())
        return std::nullopt;
    double sum = 0;
    for (const Celsius reading : readings)
        sum += speedAt(reading);
    return temperatureOf(sum / static_cast<double>(readings.size()));
}

std::optional<Celsius> meanKineticTemperature(std::span<const ClimateReading> window) {
    double sum = 0;
    double seconds = 0;
    for (std::size_t at = 1; at < window.size(); ++at) {
        const ClimateReading& before = window[at - 1];
        const ClimateReading& after = window[at];
        if (after.at - before.at > kAllowedGap)
            continue;
        const auto span = static_cast<double>((after.at - before.at).count());
        sum += span * meanSpeedAlong(before.temperature, after.temperature);
        seconds += span;
    }
    if (seconds > 0)
        return temperatureOf(sum / seconds);

    // Single readings, none near another: each counts alike.
    std::vector<Celsius> readings;
    readings.reserve(window.size());
    for (const ClimateReading& reading : window)
        readings.push_back(reading.temperature);
    return meanKineticTemperature(std::span<const Celsius>{readings});
}

} // namespace holdfast
