// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
// The steps of a garment as a day at the press counts them: what of each needs the platen, and how long it
// stays there. See day_plan_timing.h.

#include "core/press/route.h"

#include <cstddef>
#include <cstdint>
#include <functional>
#include <span>
#include <vector>

namespace holdfast {

// Temperatures of a day are numbered (see TimedDay::temperatureOf); this one means "as the platen is".
inline constexpr std::size_t kAnyHeat = static_cast<std::size_t>(-1);

// Seconds throughout, each at most 366 days.
struct TimedStep {
    std::int64_t attended = 0;
    std::int64_t platen = 0;
    std::int64_t waiting = 0;
    bool usesPlaten = false;
    bool keepsPlaten = false; // the garment lies there until its next step
    std::size_t heat = kAnyHeat;

    bool operator==(const TimedStep&) const = default;
};

inline constexpr std::int64_t kLongestStep = std::int64_t{366} * 24 * 3600;

bool needsPlaten(const RouteStep& step);

using HeatNumber = std::function<std::size_t(double temperature)>;

// `liesOnPlaten`: the garment lies there already, and stays until its next step there if no wait comes
// before.
std::vector<TimedStep> timedSteps(std::span<const RouteStep> steps, bool liesOnPlaten,
                                  const HeatNumber& heatOf);

// What the finished steps of its route say about a garment.
struct PlatenSoFar {
    bool hasBeenThere = false;
    bool liesThere = false;
};

// `behind` steps are done; of those that are left the first may be under way.
PlatenSoFar platenSoFar(std::span<const RouteStep> route, std::size_t behind, bool isUnderway);

} // namespace holdfast
