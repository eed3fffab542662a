#include "core/film/climate_window.h"

#include <algorithm>
#include <cassert>
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
            {std::lerp(before.humidity.percent, after.humidity.percent, share)}};
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

} // namespace

std::size_t readingsIn(const ClimateSeries& series, const ClimateWindow& window) {
    return static_cast<std::size_t>(std::ranges::upper_bound(series, window.to, {}, &ClimateReading::at) -
                                    std::ranges::lower_bound(series, window.from, {}, &ClimateReading::at));
}

std::optional<ClimateFigures> figuresOf(const ClimateSeries& series, const ClimateWindow& window,
                                        const StorageLimits& limits,
                                        const std::function<bool()>& shouldStop) {
    assert(window.from < window.to);
    const ClimateSeries cut = cutTo(series, window);
    ClimateFigures figures;
    figures.readings = readingsIn(series, window);
    Summed temperature;
    Summed humidity;
    Summed dew;
    Summed absolute;
    double dewBefore = 0;
    double absoluteBefore = 0;
    for (std::size_t at = 0; at < cut.size(); ++at) {
        if (at % kReadingsBetweenStops == 0 && shouldStop && shouldStop())
            return std::nullopt;
        const ClimateReading& after = cut[at];
        const double dewHere = dewPoint(after.temperature, after.humidity).value;
        const double absoluteHere = absoluteHumidity(after.temperature, after.humidity);
        if (at > 0 && after.at - cut[at - 1].at <= kAllowedGap) {
            const ClimateReading& before = cut[at - 1];
            const double hours = hoursBetween(before.at, after.at);
            figures.recordedHours += hours;
            temperature.add(before.temperature.value, after.temperature.value, hours);
            humidity.add(before.humidity.percent, after.humidity.percent, hours);
            dew.add(dewBefore, dewHere, hours);
            absolute.add(absoluteBefore, absoluteHere, hours);
            countOutside(figures.temperatureOutside, before.temperature.value, after.temperature.value,
                         limits.temperature.low.value, limits.temperature.high.value, hours);
            countOutside(figures.humidityOutside, before.humidity.percent, after.humidity.percent,
                         limits.humidity.low.percent, limits.humidity.high.percent, hours);
        }
        dewBefore = dewHere;
        absoluteBefore = absoluteHere;
    }
    figures.unrecordedHours = std::max(0.0, hoursBetween(window.from, window.to) - figures.recordedHours);
    if (figures.recordedHours <= 0)
        return figures;
    figures.temperature = temperature.over(figures.recordedHours);
    figures.humidity = humidity.over(figures.recordedHours);
    figures.dewPoint = dew.over(figures.recordedHours);
    figures.absoluteHumidity = absolute.over(figures.recordedHours);
    figures.kinetic = meanKineticTemperature(std::span<const ClimateReading>{cut}).value_or(Celsius{});
    return figures;
}

} // namespace holdfast
