#pragma once
// Whether faults come as they always did, or a week stands out: Shewhart's control charts of counts, with
// limits three standard errors from the mean of all samples.
//
// p: the share of garments with a fault, p̄ ± 3·√(p̄(1−p̄)/n), of each sample with its own n.
// u: faults for each unit looked at, ū ± 3·√(ū/n). NIST/SEMATECH e-Handbook 6.3.3; Montgomery and Runger
// ch. 16. Limits end at nothing, those of p also at all. *Limits:* chance alone steps over them about once
// in 370 samples where counts are large, and oftener where they are small.

#include <cstdint>
#include <span>
#include <vector>

namespace holdfast {

struct CountSample {
    std::int64_t found = 0;
    double of = 0; // garments, or whatever was looked at; more than nothing
};

struct ChartedSample {
    double value = 0;
    double low = 0;
    double high = 0;

    bool isOut() const { return value < low || value > high; }
};

struct ControlChart {
    double mean = 0;
    std::vector<ChartedSample> samples; // as they were given; empty without any
};

ControlChart shareChart(std::span<const CountSample> samples); // p
ControlChart rateChart(std::span<const CountSample> samples);  // u

} // namespace holdfast
