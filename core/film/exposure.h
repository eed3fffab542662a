// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
// Hours that a place was outside a band of humidity or temperature, the crossings found on the straight
// lines between readings. Unrecorded time is no exposure.

#include "core/facts/climate.h"

#include <memory>
#include <vector>

namespace holdfast {

// One stretch outside the band.
struct Spell {
    Instant begins;
    Instant ends;
    bool isAbove = false;

    double hours() const { return std::chrono::duration<double, std::ratio<3600>>(ends - begins).count(); }
};

enum class Measure { Temperature, Humidity };

class ExposureCurve {
public:
    // REQUIRES: the series outlives the curve. low and high in the measure's own unit.
    ExposureCurve(const ClimateSeries& series, Measure measure, double low, double high,
                  Hours allowedGap = kAllowedGap);
    // The same over a series that begins with this curve's own; only what was added is summed.
    ExposureCurve goneOn(const ClimateSeries& series) const;

    double hoursBetween(Instant from, Instant to) const;
    std::vector<Spell> spellsBetween(Instant from, Instant to) const;

private:
    void look(const ClimateSeries& series);
    void sum(); // what the series has beyond the sums
    double upTo(Instant instant) const;
    double along(std::size_t segment, double share) const; // hours outside in the first share of a segment

    const ClimateSeries* m_series = nullptr;
    std::shared_ptr<const ClimateSeries> m_known; // of humidity, where some readings have none; else null
    Measure m_measure;
    double m_low;
    double m_high;
    Hours m_gap;
    std::vector<double> m_hours; // outside, from the first reading to each
};

} // namespace holdfast
