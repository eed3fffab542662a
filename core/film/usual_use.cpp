// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/film/usual_use.h"

#include "core/trade/unit_normal.h"

#include <algorithm>
#include <cmath>

namespace holdfast {

namespace {

constexpr double kFarthestUse = 36'500;
constexpr double kDaysInWeek = 7;

Millimetres wholeMillimetres(double length) {
    return {std::llround(length)};
}

double weeksOf(Days days) {
    return std::clamp(static_cast<double>(days.count()), 0.0, kFarthestUse) / kDaysInWeek;
}

} // namespace

UseRate rateOf(std::span<const Millimetres> weeks) {
    if (weeks.empty())
        return {};
    const auto count = static_cast<double>(weeks.size());
    double sum = 0;
    for (const Millimetres week : weeks)
        sum += static_cast<double>(week.value);
    const double mean = sum / count;
    if (weeks.size() == 1)
        return {mean, mean};
    double squares = 0;
    for (const Millimetres week : weeks)
        squares += std::pow(static_cast<double>(week.value) - mean, 2);
    return {mean, std::sqrt(squares / (count - 1))};
}

ExpectedUse expectedUse(const UseRate& rate, Days days, Millimetres spokenFor, Millimetres free) {
    const double most = static_cast<double>(std::max<std::int64_t>(0, free.value));
    const double weeks = weeksOf(days);
    const double mean = rate.weeklyMean * weeks - static_cast<double>(spokenFor.value);
    const double spread = rate.weeklySpread * std::sqrt(weeks);
    const auto within = [most](double use) { return std::clamp(use, 0.0, most); };

    double expected = within(mean);
    if (spread > 0)
        expected = within(spread * (unitNormalLoss(-mean / spread) - unitNormalLoss((most - mean) / spread)));
    ExpectedUse use;
    use.expected = wholeMillimetres(expected);
    use.low = std::min(use.expected, wholeMillimetres(within(mean - kEightOfTen * spread)));
    use.high = std::max(use.expected, wholeMillimetres(within(mean + kEightOfTen * spread)));
    return use;
}

} // namespace holdfast
