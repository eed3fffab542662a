#pragma once
// The order of a day's garments, searched: among all orders of a small day, by moves from a good order of a
// larger one (order_search.h). Judged by DayScore: lateness, then end, then changes of temperature.

#include "core/press/day_plan_timing.h"

#include <cstddef>
#include <vector>

namespace holdfast {

// Days of so many garments are searched through: their plan is the best there is.
inline constexpr std::size_t kEveryOrderOf = 8;

struct SearchedOrder {
    std::vector<std::size_t> order;
    bool isCutShort = false; // see DayPlan
};

// Never worse than the start, and the start itself if it is as good. Garments of one route stand by their
// promises where that costs nothing. REQUIRES: a start cleaned by the day.
SearchedOrder searchedOrder(const TimedDay& day, std::vector<std::size_t> start);

} // namespace holdfast
