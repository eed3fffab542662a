// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
// Dispatch rules: quick ways to an order of the day, none of them best everywhere. planDay takes the best of
// them, and a search may start from it.

#include "core/press/day_plan_timing.h"

#include <cstddef>
#include <functional>
#include <optional>
#include <span>
#include <vector>

namespace holdfast {

// One piece of work as a rule sees it; times in seconds (or any one unit) from the start.
struct DispatchTask {
    double work = 0;
    double due = 0;
    double weight = 1;
};

// What urgency and set-up are measured against: k1 looks ahead in mean works, k2 weighs set-ups in mean
// set-ups. REQUIRES: all above zero.
struct IndexScale {
    double k1 = 2;
    double k2 = 0.3;
    double meanWork = 1;
    double meanSetup = 1;
};

// Apparent tardiness cost with set-ups: w/p · exp(−max(d − p − t, 0)/(k1·p̄)) · exp(−s/(k2·s̄)). The greatest
// goes next. Lee, Bhaskaran and Pinedo, "A heuristic to minimize the total weighted tardiness with
// sequence-dependent setups", IIE Transactions 29 (1997).
double apparentTardinessIndex(const DispatchTask& task, double now, double setup, const IndexScale& scale);

// Set-up of a task on a machine after the one before it there; none: as the machine is at the start.
// Infinity: the task is not done there.
using SetupTime =
    std::function<double(std::size_t machine, std::optional<std::size_t> before, std::size_t task)>;

// The machine that is free first takes the task with the greatest index, ties to the earlier task. Tasks that
// no machine does are left out. `shouldStop` is asked every fraction of a millisecond and may be empty;
// stopped, the order ends there.
std::vector<std::size_t> orderByApparentTardiness(std::span<const DispatchTask> tasks, std::size_t machines,
                                                  const SetupTime& setup, const IndexScale& scale,
                                                  const std::function<bool()>& shouldStop = {});

struct DispatchRule {
    std::function<std::vector<std::size_t>(const TimedDay& day)> order;
    bool isQuick = true; // takes no time that grows with the square of the garments

    std::vector<std::size_t> operator()(const TimedDay& day) const { return order(day); }
};

// Each gives an order of the placed jobs, cleaned.
std::span<const DispatchRule> dispatchRules();

} // namespace holdfast
