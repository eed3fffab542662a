// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/film/ageing.h"

#include <algorithm>
#include <cmath>

namespace holdfast {

namespace {

// Of the exponent, for one degree.
double steepness(const AgeingModel& model) {
    return std::log(model.q10) / 10.0;
}

// The same mean as in ageAlongLine, from the factors at both ends, so that a million readings cost one
// exponential each. Where the difference of the two would lose digits, its series is used instead.
double meanFactor(double from, double to, double rise) {
    if (std::abs(rise) > 0.05)
        return (to - from) / rise;
    double mean = 1;
    for (const double term : {7.0, 6.0, 5.0, 4.0, 3.0, 2.0})
        mean = 1 + mean * rise / term;
    return from * mean;
}

} // namespace

double ageingFactor(const AgeingModel& model, Celsius temperature) {
    return std::pow(model.q10, (temperature.value - model.reference.value) / 10.0);
}

double ageAlongLine(const AgeingModel& model, Celsius from, Celsius to, double days) {
    const double perDegree = steepness(model);
    const double atStart = std::exp(perDegree * (from.value - model.reference.value));
    const double rise = perDegree * (to.value - from.value);
    // ∫₀¹ e^(rise·u) du; expm1 keeps its digits for the gentlest slope, and a flat line is its limit.
    const double mean = rise == 0.0 ? 1.0 : std::expm1(rise) / rise;
    return days * atStart * mean;
}

AgeingCurve::AgeingCurve(const ClimateSeries& series, const AgeingModel& model, Hours allowedGap)
    : m_series(&series)
    , m_model(model)
    , m_gap(allowedGap) {
    sum();
}

AgeingCurve AgeingCurve::goneOn(const ClimateSeries& series) const {
    AgeingCurve longer = *this;
    longer.m_series = &series;
    longer.sum();
    return longer;
}

void AgeingCurve::sum() {
    const ClimateSeries& series = *m_series;
    const double perDegree = steepness(m_model);
    const auto factorOf = [&](const ClimateReading& reading) {
        return std::exp(perDegree * (reading.temperature.value - m_model.reference.value));
    };
    std::size_t at = m_effective.size();
    double effective = at > 0 ? m_effective.back() : 0;
    double recorded = at > 0 ? m_recorded.back() : 0;
    double factorBefore = at > 0 ? factorOf(series[at - 1]) : 0;
    m_effective.reserve(series.size());
    m_recorded.reserve(series.size());
    for (; at < series.size(); ++at) {
        const ClimateReading& after = series[at];
        const double factor = factorOf(after);
        if (at > 0) {
            const ClimateReading& before = series[at - 1];
            const double days = daysBetween(before.at, after.at);
            if (after.at - before.at > m_gap) {
                effective += days;
            } else {
                const double rise = perDegree * (after.temperature.value - before.temperature.value);
                effective += days * meanFactor(factorBefore, factor, rise);
                recorded += days;
            }
        }
        factorBefore = factor;
        m_effective.push_back(effective);
        m_recorded.push_back(recorded);
    }
}

AgeingCurve::Age AgeingCurve::between(Instant from, Instant to) const {
    if (to <= from)
        return {};
    const Age begin = upTo(from);
    const Age end = upTo(to);
    return {.effectiveDays = end.effectiveDays - begin.effectiveDays,
            .recordedDays = std::max(0.0, end.recordedDays - begin.recordedDays),
            .unrecordedDays = std::max(0.0, end.unrecordedDays - begin.unrecordedDays)};
}

// Counted from the first reading, so that an instant before it lies below zero; differences of two are right.
AgeingCurve::Age AgeingCurve::upTo(Instant instant) const {
    const ClimateSeries& series = *m_series;
    const auto next = std::ranges::upper_bound(series, instant, {}, &ClimateReading::at);
    if (next == series.begin()) {
        const Instant origin = series.empty() ? Instant{} : series.front().at;
        const double days = daysBetween(origin, instant);
        return {.effectiveDays = days, .recordedDays = 0, .unrecordedDays = days};
    }

    const auto at = static_cast<std::size_t>(next - series.begin()) - 1;
    const ClimateReading& before = series[at];
    Age age{.effectiveDays = m_effective[at], .recordedDays = m_recorded[at], .unrecordedDays = 0};
    const double since = daysBetween(before.at, instant);
    if (next == series.end() || next->at - before.at > m_gap) {
        age.effectiveDays += since;
    } else if (instant > before.at) {
        const double share = since / daysBetween(before.at, next->at);
        const Celsius reached{std::lerp(before.temperature.value, next->temperature.value, share)};
        age.effectiveDays += ageAlongLine(m_model, before.temperature, reached, since);
        age.recordedDays += since;
    }
    age.unrecordedDays = daysBetween(series.front().at, instant) - age.recordedDays;
    return age;
}

} // namespace holdfast
