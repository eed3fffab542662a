// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
// The order of a day's garments, searched: among all orders of a small day, by annealing (day_annealing.h)
// for a larger one. Judged by DayScore: lateness, then end, then changes of temperature.

#include "core/press/day_plan_timing.h"

#include <cstddef>
#include <span>
#include <vector>

namespace holdfast {

// Days of this many garments are searched through: their plan is the best there is.
inline constexpr std::size_t kEveryOrderOf = 8;

struct SearchedOrder {
    std::vector<std::size_t> order;
    bool isCutShort = false; // see DayPlan
};

// The first of those that are as good. REQUIRES: at least one.
const ScoredOrder& bestOf(std::span<const ScoredOrder> orders);

// Never worse than the best start, nor with more garments late where not all orders are searched; and the
// first of the best starts itself if it is as good. Garments of one route are taken up by their promises
// where that costs nothing. REQUIRES: starts cleaned by the day, at least one.
SearchedOrder searchedOrder(const TimedDay& day, std::span<const ScoredOrder> starts);

} // namespace holdfast
