// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
// Accelerated ageing: a factor Q10 for each 10 °C above a reference.

#include "core/facts/climate.h"
#include "core/facts/film.h"

#include <span>
#include <vector>

namespace holdfast {

// Q10^((T − T_ref)/10).
double ageingFactor(const AgeingModel& model, Celsius temperature);

// Effective age gained while the temperature goes along a straight line: the integral of an exponential of a
// line in closed form, with its limit for a flat line. Days in, days out.
double ageAlongLine(const AgeingModel& model, Celsius from, Celsius to, double days);

// Effective age between two instants at one place, over running sums of its readings.
class AgeingCurve {
public:
    // REQUIRES: the series outlives the curve.
    AgeingCurve(const ClimateSeries& series, const AgeingModel& model, Hours allowedGap = kAllowedGap);
    // The same over a series that begins with this curve's own; only what was added is summed.
    AgeingCurve goneOn(const ClimateSeries& series) const;

    struct Age {
        double effectiveDays = 0;
        double recordedDays = 0;   // of the span, between readings
        double unrecordedDays = 0; // of the span; counted at the reference temperature
    };
    Age between(Instant from, Instant to) const;

private:
    void sum(); // what the series has beyond the sums
    Age upTo(Instant instant) const;

    const ClimateSeries* m_series;
    AgeingModel m_model;
    Hours m_gap;
    std::vector<double> m_effective; // from the first reading to each
    std::vector<double> m_recorded;
};

} // namespace holdfast
