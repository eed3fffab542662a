// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/film/climate_window.h"

#include "core/trade/assertion.h"

#include <algorithm>
#include <cmath>
#include <limits>
#include <vector>

namespace holdfast {

namespace {

constexpr std::size_t kReadingsBetweenStops = 1 << 14;

double hoursBetween(Instant from, Instant to) {
    return std::chrono::duration<double, std::ratio<3600>>(to - from).count();
}

// The share of a straight line from one value to another that lies above a limit.
double shareAbove(double from, double to, double limit) {
    if (from <= limit && to <= limit)
        return 0;
    if (from > limit && to > limit)
        return 1;
    return (std::max(from, to) - limit) / std::abs(to - from);
}

void countOutside(HoursOutside& outside, double from, double to, double low, double high, double hours) {
    outside.above += hours * shareAbove(from, to, high);
    outside.below += hours * shareAbove(-from, -to, -low);
}

// A measure along lines, summed up.
class Summed {
public:
    void add(double from, double to, double hours) {
        m_sum += (from + to) / 2 * hours;
        m_low = std::min({m_low, from, to});
        m_high = std::max({m_high, from, to});
    }
    Ranged over(double hours) const { return {m_low, m_high, m_sum / hours}; }

private:
    double m_sum = 0;
    double m_low = std::numeric_limits<double>::max();
    double m_high = std::numeric_limits<double>::lowest();
};

ClimateReading readingBetween(const ClimateReading& before, const ClimateReading& after, Instant at) {
    const double share = hoursBetween(before.at, at) / hoursBetween(before.at, after.at);
    return {at,
            {std::lerp(before.temperature.value, after.temperature.value, share)},
            {std::lerp(before.humidity.percent, after.humidity.percent, share)},
            before.hasHumidity && after.hasHumidity};
}

// The readings of the window, with one on the line at each edge where the line goes on beyond it.
ClimateSeries cutTo(const ClimateSeries& series, const ClimateWindow& window) {
    const auto first = std::ranges::lower_bound(series, window.from, {}, &ClimateReading::at);
    const auto last = std::ranges::upper_bound(series, window.to, {}, &ClimateReading::at);
    const auto isLine = [&](auto before) {
        return before != series.begin() && before != series.end() &&
               before->at - std::prev(before)->at <= kAllowedGap;
    };
    ClimateSeries cut;
    cut.reserve(static_cast<std::size_t>(last - first) + 2);
    if (isLine(first) && first->at > window.from)
        cut.push_back(readingBetween(*std::prev(first), *first, window.from));
    cut.insert(cut.end(), first, last);
    if (isLine(last) && (cut.empty() || cut.back().at < window.to))
        cut.push_back(readingBetween(*std::prev(last), *last, window.to));
    return cut;
}

// Calls `add` with each line between two readings and its hours; false: stopped.
template <class Add>
bool alongLines(const ClimateSeries& readings, const std::function<bool()>& shouldStop, const Add& add) {
    for (std::size_t at = 1; at < readings.size(); ++at) {
        if (at % kReadingsBetweenStops == 0 && shouldStop && shouldStop())
            return false;
        if (readings[at].at - readings[at - 1].at <= kAllowedGap)
            add(readings[at - 1], readings[at], hoursBetween(readings[at - 1].at, readings[at].at));
    }
    return true;
}

bool sumTemperature(ClimateFigures& figures, const ClimateSeries& cut, const StorageLimits& limits,
                    const std::function<bool()>& shouldStop) {
    Summed temperature;
    const bool isWhole =
        alongLines(cut, shouldStop, [&](const auto& before, const auto& after, double hours) {
            figures.recordedHours += hours;
            temperature.add(before.temperature.value, after.temperature.value, hours);
            countOutside(figures.temperatureOutside, before.temperature.value, after.temperature.value,
                         limits.temperature.low.value, limits.temperature.high.value, hours);
        });
    if (figures.recordedHours > 0) {
        figures.temperature = temperature.over(figures.recordedHours);
        figures.kinetic = meanKineticTemperature(std::span<const ClimateReading>{cut}).value_or(Celsius{});
    }
    return isWhole;
}

// REQUIRES: each reading has a humidity.
bool sumHumidity(ClimateFigures& figures, const ClimateSeries& cut, const StorageLimits& limits,
                 const std::function<bool()>& shouldStop) {
    Summed humidity;
    Summed dew;
    Summed absolute;
    const auto dewOf = [](const ClimateReading& each) {
        return dewPoint(each.temperature, each.humidity).value;
    };
    const auto waterOf = [](const ClimateReading& each) {
        return absoluteHumidity(each.temperature, each.humidity);
    };
    double dewBefore = 0;
    double waterBefore = 0;
    const ClimateReading* reckoned = nullptr;
    const bool isWhole =
        alongLines(cut, shouldStop, [&](const auto& before, const auto& after, double hours) {
            if (reckoned != &before) { // the first, and after a gap
                dewBefore = dewOf(before);
                waterBefore = waterOf(before);
            }
            const double dewAfter = dewOf(after);
            const double waterAfter = waterOf(after);
            figures.humidHours += hours;
            humidity.add(before.humidity.percent, after.humidity.percent, hours);
            dew.add(dewBefore, dewAfter, hours);
            absolute.add(waterBefore, waterAfter, hours);
            countOutside(figures.humidityOutside, before.humidity.percent, after.humidity.percent,
                         limits.humidity.low.percent, limits.humidity.high.percent, hours);
            dewBefore = dewAfter;
            waterBefore = waterAfter;
            reckoned = &after;
        });
    if (figures.humidHours > 0) {
        figures.humidity = humidity.over(figures.humidHours);
        figures.dewPoint = dew.over(figures.humidHours);
        figures.absoluteHumidity = absolute.over(figures.humidHours);
    }
    return isWhole;
}

} // namespace

std::size_t readingsIn(const ClimateSeries& series, const ClimateWindow& window) {
    return static_cast<std::size_t>(std::ranges::upper_bound(series, window.to, {}, &ClimateReading::at) -
                                    std::ranges::lower_bound(series, window.from, {}, &ClimateReading::at));
}

std::optional<ClimateFigures> figuresOf(const ClimateSeries& series, const ClimateWindow& window,
                                        const StorageLimits& limits,
                                        const std::function<bool()>& shouldStop) {
    HOLDFAST_ASSERT(window.from < window.to);
    if (shouldStop && shouldStop())
        return std::nullopt;
    const ClimateSeries cut = cutTo(series, window);
    ClimateFigures figures;
    figures.readings = readingsIn(series, window);
    if (!sumTemperature(figures, cut, limits, shouldStop))
        return std::nullopt;
    const bool isWhole = allHaveHumidity(series)
                             ? sumHumidity(figures, cut, limits, shouldStop)
                             : sumHumidity(figures, cutTo(withHumidity(series), window), limits, shouldStop);
    if (!isWhole)
        return std::nullopt;
    figures.unrecordedHours = std::max(0.0, hoursBetween(window.from, window.to) - figures.recordedHours);
    return figures;
}

} // namespace holdfast
