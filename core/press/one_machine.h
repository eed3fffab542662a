// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
// Work on one machine, piece after piece, judged by weighted tardiness: Σ w · max(0, C − d), where C is when
// a piece is done and a set-up before it depends on the piece before. The classic problem behind a day at one
// press; its public test instances show how good the search is (tests/bench/schedule_bench.cpp).

#include "core/press/day_plan_rules.h"
#include "core/press/order_search.h"

#include <cstddef>
#include <functional>
#include <optional>
#include <span>
#include <vector>

namespace holdfast {

struct OneMachine {
    std::vector<DispatchTask> tasks;
    std::vector<double> firstSetups; // before each task on the idle machine; empty: no set-ups at all
    std::vector<double> setups;      // before `task` after `before`, at before · tasks + task

    double setup(std::optional<std::size_t> before, std::size_t task) const;
};

// REQUIRES: each number below tasks.size(), none twice.
double weightedTardiness(const OneMachine& machine, std::span<const std::size_t> order);

// The best order by apparent tardiness cost over a grid of scales; asked to stop, of those that were made. Of
// the first of them the tasks not taken up then follow by their numbers. `shouldStop` may be empty.
std::vector<std::size_t> dispatchedOrder(const OneMachine& machine,
                                         const std::function<bool()>& shouldStop = {});

FoundOrder<double> searchOneMachine(const OneMachine& machine, const SearchLimits& limits);

} // namespace holdfast
