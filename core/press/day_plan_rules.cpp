// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/press/day_plan_rules.h"

#include <algorithm>
#include <cmath>
#include <limits>
#include <map>
#include <numeric>
#include <tuple>
#include <utility>

namespace holdfast {

namespace {

constexpr double kNotThere = std::numeric_limits<double>::infinity();

// Shortest work counts as this long, so that an index stays finite.
constexpr double kLeastWork = 1e-3;

// A fraction of a millisecond.
constexpr std::size_t kLooksBetweenQuestions = 10'000;

std::vector<std::size_t> allJobs(const TimedDay& day) {
    std::vector<std::size_t> order(day.jobs().size());
    std::iota(order.begin(), order.end(), std::size_t{0});
    return order;
}

template <class Key>
std::vector<std::size_t> sortedBy(const TimedDay& day, Key key) {
    std::vector<std::size_t> order = allJobs(day);
    std::ranges::stable_sort(order, {}, [&](std::size_t job) { return key(day.jobs()[job]); });
    return day.cleaned(order);
}

// A job that needs no platen goes with the coolest.
double firstTemperature(const TimedDay& day, const TimedJob& job) {
    return job.firstHeat == kAnyHeat ? 0 : day.temperatureOf(job.firstHeat);
}

std::vector<std::size_t> byEarliestPromise(const TimedDay& day) {
    return sortedBy(day, [](const TimedJob& job) { return job.due; });
}

std::vector<std::size_t> byWeightOverWork(const TimedDay& day) {
    return sortedBy(day, [](const TimedJob& job) {
        return -job.weight / std::max(static_cast<double>(job.work), kLeastWork);
    });
}

// Least set-up: each temperature once, from low to high, heating being the quicker way.
std::vector<std::size_t> byRisingHeat(const TimedDay& day) {
    return sortedBy(day, [&](const TimedJob& job) { return std::pair{firstTemperature(day, job), job.due}; });
}

std::vector<std::size_t> byFallingHeat(const TimedDay& day) {
    return sortedBy(day,
                    [&](const TimedJob& job) { return std::pair{-firstTemperature(day, job), job.due}; });
}

// Each temperature once, beginning with that of the earliest promise.
std::vector<std::size_t> byPromiseOfHeat(const TimedDay& day) {
    std::map<double, std::int64_t> earliest;
    for (const TimedJob& job : day.jobs()) {
        const auto [known, isNew] = earliest.try_emplace(firstTemperature(day, job), job.due);
        if (!isNew)
            known->second = std::min(known->second, job.due);
    }
    return sortedBy(day, [&](const TimedJob& job) {
        const double temperature = firstTemperature(day, job);
        return std::tuple{earliest.at(temperature), temperature, job.due};
    });
}

double meanSetup(const TimedDay& day) {
    double sum = 0;
    double count = 0;
    for (std::size_t platen = 0; platen < day.request().platens.size(); ++platen) {
        for (const TimedJob& job : day.jobs()) {
            const std::int64_t change = day.changeOn(platen, day.heatNow(platen), job.firstHeat);
            if (change > 0) {
                sum += static_cast<double>(change);
                ++count;
            }
        }
    }
    return count > 0 ? sum / count : 1;
}

std::vector<std::size_t> byApparentTardiness(const TimedDay& day, double k1, double k2) {
    std::vector<DispatchTask> tasks;
    double work = 0;
    for (const TimedJob& job : day.jobs()) {
        tasks.push_back({static_cast<double>(job.work), static_cast<double>(job.due), job.weight});
        work += static_cast<double>(job.work);
    }
    if (tasks.empty())
        return {};

    const auto setup = [&](std::size_t platen, std::optional<std::size_t> before, std::size_t task) {
        const TimedJob& job = day.jobs()[task];
        if (std::ranges::find(job.platens, platen) == job.platens.end())
            return kNotThere;
        const std::size_t left = before ? day.jobs()[*before].lastHeat : kAnyHeat;
        const std::size_t from = left == kAnyHeat ? day.heatNow(platen) : left;
        return static_cast<double>(day.changeOn(platen, from, job.firstHeat));
    };
    const double count = static_cast<double>(tasks.size());
    const IndexScale scale{k1, k2, std::max(work / count, kLeastWork), meanSetup(day)};
    return day.cleaned(orderByApparentTardiness(tasks, day.request().platens.size(), setup, scale));
}

// Indices are compared by their logarithms: far from its due date a task still has one above nothing.
double logOfIndex(const DispatchTask& task, double logOfWorth, double now, double setup,
                  const IndexScale& scale) {
    const double slack = std::max(task.due - task.work - now, 0.0);
    return logOfWorth - slack / (scale.k1 * scale.meanWork) - setup / (scale.k2 * scale.meanSetup);
}

std::vector<DispatchRule> allRules() {
    std::vector<DispatchRule> rules{{byEarliestPromise, true},
                                    {byRisingHeat, true},
                                    {byPromiseOfHeat, true},
                                    {byFallingHeat, true},
                                    {byWeightOverWork, true}};
    // No one pair of scales is right for every day: from pressing need to far sight, and from set-ups that
    // count for much to set-ups that count for little.
    for (const double k1 : {0.5, 2.0, 6.0, 20.0}) {
        for (const double k2 : {0.1, 0.4, 1.5})
            rules.push_back(
                {[k1, k2](const TimedDay& day) { return byApparentTardiness(day, k1, k2); }, false});
    }
    return rules;
}

} // namespace

double apparentTardinessIndex(const DispatchTask& task, double now, double setup, const IndexScale& scale) {
    return std::exp(
        logOfIndex(task, std::log(task.weight / std::max(task.work, kLeastWork)), now, setup, scale));
}

std::vector<std::size_t> orderByApparentTardiness(std::span<const DispatchTask> tasks, std::size_t machines,
                                                  const SetupTime& setup, const IndexScale& scale,
                                                  const std::function<bool()>& shouldStop) {
    struct Machine {
        double freeAt = 0;
        std::optional<std::size_t> last;
        bool isDone = false; // nothing left that it does
    };
    std::vector<Machine> all(machines);
    std::vector<double> logOfWorth;
    for (const DispatchTask& task : tasks)
        logOfWorth.push_back(std::log(task.weight / std::max(task.work, kLeastWork)));
    std::vector<bool> isTaken(tasks.size(), false);
    std::vector<std::size_t> order;
    std::size_t looks = 0; // at tasks, since it was last asked whether to stop
    for (;;) {
        std::optional<std::size_t> first;
        for (std::size_t machine = 0; machine < machines; ++machine) {
            if (!all[machine].isDone && (!first || all[machine].freeAt < all[*first].freeAt))
                first = machine;
        }
        if (!first || (looks >= kLooksBetweenQuestions && shouldStop && shouldStop()))
            return order;
        looks = looks < kLooksBetweenQuestions ? looks + tasks.size() : 0;

        Machine& machine = all[*first];
        std::optional<std::size_t> next;
        double greatest = 0;
        double nextSetup = 0;
        for (std::size_t task = 0; task < tasks.size(); ++task) {
            if (isTaken[task])
                continue;
            const double change = setup(*first, machine.last, task);
            if (std::isinf(change))
                continue;
            const double index = logOfIndex(tasks[task], logOfWorth[task], machine.freeAt, change, scale);
            if (!next || index > greatest) {
                next = task;
                greatest = index;
                nextSetup = change;
            }
        }
        if (!next) {
            machine.isDone = true;
            continue;
        }
        isTaken[*next] = true;
        order.push_back(*next);
        machine.freeAt += nextSetup + tasks[*next].work;
        machine.last = next;
    }
}

std::span<const DispatchRule> dispatchRules() {
    static const std::vector<DispatchRule> kRules = allRules();
    return kRules;
}

} // namespace holdfast
