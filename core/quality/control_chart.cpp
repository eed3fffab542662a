// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/quality/control_chart.h"

#include "core/quality/exact_test.h"

#include <algorithm>
#include <cmath>

namespace holdfast {

namespace {

constexpr double kErrorsToTheLimit = 3;
constexpr double kBeyondThree = 0.0013498980316301035; // 1 − Φ(3)

bool hasEnoughForErrors(double mean, double of) {
    return mean * of >= kFewestForErrors && (1 - mean) * of >= kFewestForErrors;
}

ChartedSample byStandardErrors(const CountSample& sample, double mean) {
    const auto of = static_cast<double>(sample.of);
    const double reach = kErrorsToTheLimit * std::sqrt(mean * (1 - mean) / of);
    return {static_cast<double>(sample.found) / of, std::max(0.0, mean - reach), std::min(1.0, mean + reach),
            false};
}

ChartedSample countedOut(const CountSample& sample, double mean) {
    std::int64_t most = 0;
    while (most < sample.of && chanceOfMoreThan(most, sample.of, mean) > kBeyondThree)
        ++most;
    const auto of = static_cast<double>(sample.of);
    return {static_cast<double>(sample.found) / of, 0, static_cast<double>(most) / of, true};
}

} // namespace

ControlChart shareChart(std::span<const CountSample> samples) {
    ControlChart chart;
    std::int64_t found = 0, of = 0;
    for (const CountSample& sample : samples) {
        found += sample.found;
        of += sample.of;
    }
    if (of <= 0)
        return chart;
    chart.mean = static_cast<double>(found) / static_cast<double>(of);
    for (const CountSample& sample : samples)
        chart.samples.push_back(hasEnoughForErrors(chart.mean, static_cast<double>(sample.of))
                                    ? byStandardErrors(sample, chart.mean)
                                    : countedOut(sample, chart.mean));
    return chart;
}

} // namespace holdfast
