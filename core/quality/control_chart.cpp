#include "core/quality/control_chart.h"

#include <algorithm>
#include <cmath>
#include <limits>

namespace holdfast {

namespace {

constexpr double kErrorsToTheLimit = 3;

template <class Variance>
ControlChart chartOf(std::span<const CountSample> samples, double highest, Variance variance) {
    ControlChart chart;
    double found = 0, of = 0;
    for (const CountSample& sample : samples) {
        found += static_cast<double>(sample.found);
        of += sample.of;
    }
    if (of <= 0)
        return chart;
    chart.mean = found / of;
    for (const CountSample& sample : samples) {
        const double reach = kErrorsToTheLimit * std::sqrt(variance(chart.mean) / sample.of);
        chart.samples.push_back({static_cast<double>(sample.found) / sample.of,
                                 std::max(0.0, chart.mean - reach), std::min(highest, chart.mean + reach)});
    }
    return chart;
}

} // namespace

ControlChart shareChart(std::span<const CountSample> samples) {
    return chartOf(samples, 1, [](double mean) { return mean * (1 - mean); });
}

ControlChart rateChart(std::span<const CountSample> samples) {
    return chartOf(samples, std::numeric_limits<double>::infinity(), [](double mean) { return mean; });
}

} // namespace holdfast
