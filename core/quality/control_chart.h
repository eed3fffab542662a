// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
// Whether faults come as they always did, or a month is unusual: Shewhart's p chart of the share of garments
// with a fault, with limits three standard errors from the mean of all samples, p̄ ± 3·√(p̄(1−p̄)/n), of each
// sample with its own n. NIST/SEMATECH e-Handbook 6.3.3.2; Montgomery and Runger ch. 16 [M].
//
// Three standard errors mean nothing where a sample has fewer than kFewestForErrors garments of either kind
// to expect (common practice, no source). There the limit is counted out: the least number of faults that
// chance goes beyond no oftener than three standard errors of a normal do, once in 740 samples.

#include <cstdint>
#include <span>
#include <vector>

namespace holdfast {

inline constexpr double kFewestForErrors = 5;

struct CountSample {
    std::int64_t found = 0;
    std::int64_t of = 0; // garments; more than none
};

struct ChartedSample {
    double value = 0;
    double low = 0;
    double high = 0;
    bool isCountedOut = false; // the limit; else by standard errors

    bool isOut() const { return value < low || value > high; }
};

struct ControlChart {
    double mean = 0;
    std::vector<ChartedSample> samples; // as they were given; empty without any
};

ControlChart shareChart(std::span<const CountSample> samples);

} // namespace holdfast
