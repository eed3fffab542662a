// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/press/one_machine.h"

#include "core/press/tardiness_problem.h"

#include <algorithm>
#include <numeric>
#include <utility>

namespace holdfast {

namespace {

double mean(std::span<const double> values) {
    return std::accumulate(values.begin(), values.end(), 0.0) / static_cast<double>(values.size());
}

std::vector<IndexScale> scalesToTry(double meanWork, double meanSetup) {
    std::vector<IndexScale> scales;
    for (const double k1 : {0.5, 1.0, 2.0, 4.0, 8.0}) {
        for (const double k2 : {0.1, 0.3, 0.6, 1.5}) {
            scales.push_back({k1, k2, meanWork, std::max(meanSetup, 1e-9)});
            if (meanSetup <= 0)
                break; // the second scale weighs set-ups only
        }
    }
    return scales;
}

// Those that are not in the order follow by their numbers.
std::vector<std::size_t> withTheOthers(std::vector<std::size_t> order, std::size_t tasks) {
    std::vector<bool> isTaken(tasks, false);
    for (const std::size_t task : order)
        isTaken[task] = true;
    for (std::size_t task = 0; task < tasks; ++task) {
        if (!isTaken[task])
            order.push_back(task);
    }
    return order;
}

} // namespace

double OneMachine::setup(std::optional<std::size_t> before, std::size_t task) const {
    if (firstSetups.empty())
        return 0;
    return before ? setups[*before * tasks.size() + task] : firstSetups[task];
}

double weightedTardiness(const OneMachine& machine, std::span<const std::size_t> order) {
    double now = 0;
    double sum = 0;
    std::optional<std::size_t> before;
    for (const std::size_t task : order) {
        now += machine.setup(before, task) + machine.tasks[task].work;
        sum += machine.tasks[task].weight * std::max(0.0, now - machine.tasks[task].due);
        before = task;
    }
    return sum;
}

std::vector<std::size_t> dispatchedOrder(const OneMachine& machine, const std::function<bool()>& shouldStop) {
    if (machine.tasks.empty())
        return {};
    double work = 0;
    for (const DispatchTask& task : machine.tasks)
        work += task.work;
    const double meanWork = std::max(work / static_cast<double>(machine.tasks.size()), 1e-9);
    const double meanSetup = machine.setups.empty() ? 0 : mean(machine.setups);
    const auto setup = [&](std::size_t, std::optional<std::size_t> before, std::size_t task) {
        return machine.setup(before, task);
    };

    std::vector<std::size_t> best;
    double least = 0;
    for (const IndexScale& scale : scalesToTry(meanWork, meanSetup)) {
        std::vector<std::size_t> order = orderByApparentTardiness(machine.tasks, 1, setup, scale, shouldStop);
        if (order.size() < machine.tasks.size()) // it was stopped
            return best.empty() ? withTheOthers(std::move(order), machine.tasks.size()) : best;
        const double tardiness = weightedTardiness(machine, order);
        if (best.empty() || tardiness < least) {
            best = std::move(order);
            least = tardiness;
        }
    }
    return best;
}

FoundOrder<double> searchOneMachine(const OneMachine& machine, const SearchLimits& limits) {
    TardinessProblem problem{machine, limits.shouldStop};
    SearchLimits untilNone = limits;
    untilNone.shouldStop = [&] { return problem.cost() <= 0 || (limits.shouldStop && limits.shouldStop()); };
    FoundOrder<double> found =
        OrderSearch{problem, untilNone}.from(dispatchedOrder(machine, limits.shouldStop));
    found.wasStopped = found.wasStopped && found.cost > 0;
    return found;
}

} // namespace holdfast
