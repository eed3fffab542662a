// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/film/exposure.h"

#include <algorithm>
#include <cmath>

namespace holdfast {

namespace {

double valueOf(const ClimateReading& reading, Measure measure) {
    return measure == Measure::Temperature ? reading.temperature.value : reading.humidity.percent;
}

double hoursFrom(Instant from, Instant to) {
    return std::chrono::duration<double, std::ratio<3600>>(to - from).count();
}

// The shares of a straight line, 0 to 1, between which it runs inside the band; both the same: never inside.
struct Inside {
    double begins = 0;
    double ends = 0;
};

Inside insideOf(double from, double to, double low, double high) {
    if (low > high)
        return {};
    if (from == to)
        return from >= low && from <= high ? Inside{0, 1} : Inside{};
    const double atLow = (low - from) / (to - from);
    const double atHigh = (high - from) / (to - from);
    const double begins = std::clamp(std::min(atLow, atHigh), 0.0, 1.0);
    const double ends = std::clamp(std::max(atLow, atHigh), 0.0, 1.0);
    return {begins, ends};
}

} // namespace

ExposureCurve::ExposureCurve(const ClimateSeries& series, Measure measure, double low, double high,
                             Hours allowedGap)
    : m_measure(measure)
    , m_low(low)
    , m_high(high)
    , m_gap(allowedGap) {
    look(series);
    sum();
}

void ExposureCurve::look(const ClimateSeries& series) {
    m_known.reset();
    if (m_measure == Measure::Humidity && !allHaveHumidity(series))
        m_known = std::make_shared<const ClimateSeries>(withHumidity(series));
    m_series = m_known ? m_known.get() : &series;
}

ExposureCurve ExposureCurve::goneOn(const ClimateSeries& series) const {
    ExposureCurve longer = *this;
    longer.look(series);
    if (m_known || longer.m_known)
        longer.m_hours.clear(); // of other readings
    longer.sum();
    return longer;
}

void ExposureCurve::sum() {
    std::size_t at = m_hours.size();
    double hours = at > 0 ? m_hours.back() : 0;
    m_hours.reserve(m_series->size());
    for (; at < m_series->size(); ++at) {
        if (at > 0)
            hours += along(at - 1, 1.0);
        m_hours.push_back(hours);
    }
}

double ExposureCurve::hoursBetween(Instant from, Instant to) const {
    // Rounding may leave a hair below zero where nothing lies between.
    return to <= from ? 0.0 : std::max(0.0, upTo(to) - upTo(from));
}

double ExposureCurve::along(std::size_t segment, double share) const {
    const ClimateReading& before = (*m_series)[segment];
    const ClimateReading& after = (*m_series)[segment + 1];
    if (after.at - before.at > m_gap)
        return 0;
    const double start = valueOf(before, m_measure);
    const double end = valueOf(after, m_measure);
    const auto isInside = [this](double value) { return value >= m_low && value <= m_high; };
    if (isInside(start) && isInside(end))
        return 0; // by far the usual case, and a million of them are summed
    const Inside inside = insideOf(start, end, m_low, m_high);
    const double within = std::max(0.0, std::min(inside.ends, share) - std::min(inside.begins, share));
    return (share - within) * hoursFrom(before.at, after.at);
}

double ExposureCurve::upTo(Instant instant) const {
    const ClimateSeries& series = *m_series;
    const auto next = std::ranges::upper_bound(series, instant, {}, &ClimateReading::at);
    if (next == series.begin())
        return 0;
    const auto at = static_cast<std::size_t>(next - series.begin()) - 1;
    if (next == series.end() || instant == series[at].at)
        return m_hours[at];
    const double share = hoursFrom(series[at].at, instant) / hoursFrom(series[at].at, next->at);
    return m_hours[at] + along(at, share);
}

std::vector<Spell> ExposureCurve::spellsBetween(Instant from, Instant to) const {
    std::vector<Spell> spells;
    const ClimateSeries& series = *m_series;
    const auto add = [&](Instant begins, Instant ends, bool isAbove) {
        begins = std::max(begins, from);
        ends = std::min(ends, to);
        if (begins >= ends)
            return;
        if (!spells.empty() && spells.back().ends == begins && spells.back().isAbove == isAbove)
            spells.back().ends = ends;
        else
            spells.push_back({begins, ends, isAbove});
    };

    const auto first = std::ranges::upper_bound(series, from, {}, &ClimateReading::at);
    std::size_t segment = first == series.begin() ? 0 : static_cast<std::size_t>(first - series.begin()) - 1;
    for (; segment + 1 < series.size() && series[segment].at < to; ++segment) {
        const ClimateReading& before = series[segment];
        const ClimateReading& after = series[segment + 1];
        if (after.at - before.at > m_gap)
            continue;
        const double start = valueOf(before, m_measure);
        const double end = valueOf(after, m_measure);
        const Inside inside = insideOf(start, end, m_low, m_high);
        const auto instantAt = [&](double share) {
            const double seconds = share * static_cast<double>((after.at - before.at).count());
            return before.at + Seconds{std::llround(seconds)};
        };
        // Where it never runs inside, one of the two is empty and the other the whole.
        add(before.at, instantAt(inside.begins), start > m_high);
        add(instantAt(inside.ends), after.at, end > m_high);
    }
    return spells;
}

} // namespace holdfast
