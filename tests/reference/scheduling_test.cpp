// SPDX-License-Identifier: GPL-3.0-or-later
// Worked examples of scheduling, at the timing of the day plan and its dispatch rules.
//
// Pinedo, "Scheduling: Theory, Algorithms, and Systems", 4th edition, as quoted in a public repository's
// notes (read second-hand), and for example 14.2.1 from memory; every answer was found again by brute force,
// here as well. One unit of time is one second; jobs are pressed one by one at one temperature. What the day
// plan does not reckon (chains, two machines in a row) is asked of the search for an order by itself.

#include "core/press/day_plan_rules.h"
#include "core/press/day_plan_timing.h"
#include "core/press/one_machine.h"
#include "tests/core/day_plan_builders.h"
#include "tests/core/order_problem.h"

#include <gtest/gtest.h>

#include <algorithm>
#include <array>
#include <cmath>
#include <limits>
#include <set>

using namespace holdfast;
using namespace holdfast::press_days;

namespace {

PlanRequest onOneMachine(const std::vector<std::int64_t>& work, const std::vector<std::int64_t>& due,
                         const std::vector<double>& weights = {}) {
    std::vector<std::vector<RouteStep>> garments;
    for (const std::int64_t seconds : work)
        garments.push_back({pressed(150, seconds)});
    PlanRequest request = aDay(std::move(garments));
    for (std::size_t job = 0; job < due.size(); ++job) {
        request.jobs[job].due = after(due[job]);
        request.jobs[job].weight = weights.empty() ? 1 : weights[job];
    }
    return request;
}

struct Answer {
    std::int64_t least = std::numeric_limits<std::int64_t>::max();
    std::set<Sequence> orders; // that reach it, jobs numbered from 1 as in the book
};

// Over every order there is.
template <class Measure>
Answer bestOrders(const PlanRequest& request, Measure measure) {
    Answer answer;
    Sequence order = asGiven(request);
    do {
        const std::int64_t value = measure(planInOrder(request, order));
        if (value > answer.least)
            continue;
        if (value < answer.least)
            answer = {value, {}};
        Sequence numbered = order;
        for (std::size_t& job : numbered)
            ++job;
        answer.orders.insert(numbered);
    } while (std::ranges::next_permutation(order).found);
    return answer;
}

std::int64_t weightedLateness(const DayPlan& plan) {
    return plan.lateness.count();
}

std::int64_t lateGarments(const DayPlan& plan) {
    std::int64_t count = 0;
    for (const HeatRun& run : plan.runs)
        count += std::ranges::count_if(run.garments,
                                       [](const PlannedGarment& one) { return one.late.count() > 0; });
    return count;
}

std::int64_t length(const DayPlan& plan) {
    return (plan.ends - kStart).count();
}

} // namespace

TEST(SchedulingReference, LeastNumberOfLateJobs) {
    // Pinedo, example 3.3.3 (Moore and Hodgson): two are late; 46 orders tie.
    const PlanRequest request = onOneMachine({7, 8, 4, 6, 6}, {9, 17, 18, 19, 21});
    const Answer answer = bestOrders(request, lateGarments);
    EXPECT_EQ(answer.least, 2);
    EXPECT_EQ(answer.orders.size(), 46U);
    EXPECT_TRUE(answer.orders.contains({3, 4, 5, 1, 2}));
    EXPECT_EQ(searchedFor(5,
                          [&](const Sequence& order) {
                              return static_cast<double>(lateGarments(planInOrder(request, order)));
                          })
                  .cost,
              2);
}

TEST(SchedulingReference, LeastTotalTardiness) {
    // Pinedo, example 3.4.5: 370, by two orders only.
    const PlanRequest request = onOneMachine({121, 79, 147, 83, 130}, {260, 266, 266, 336, 337});
    const Answer answer = bestOrders(request, weightedLateness);
    EXPECT_EQ(answer.least, 370);
    EXPECT_EQ(answer.orders, (std::set<Sequence>{{1, 2, 4, 5, 3}, {2, 1, 4, 5, 3}}));
    EXPECT_EQ(planDay(request).lateness, Seconds{370});
}

TEST(SchedulingReference, LeastWeightedTardiness) {
    // Pinedo, example 3.6.3: 1-2-4-3 with 67.
    const PlanRequest request = onOneMachine({12, 8, 15, 9}, {16, 26, 25, 27}, {4, 5, 3, 5});
    const Answer answer = bestOrders(request, weightedLateness);
    EXPECT_EQ(answer.least, 67);
    EXPECT_TRUE(answer.orders.contains({1, 2, 4, 3}));
    EXPECT_EQ(planDay(request).lateness, Seconds{67});
}

TEST(SchedulingReference, LeastGreatestLatenessWithReleases) {
    // Pinedo, example 3.2.5: p 4,2,6,5; r 0,1,3,5; d 8,12,11,10; 1-3-4-2. A job that is released later is
    // a garment under way that cools until then. Late garments are 5 late at most; computed by hand.
    PlanRequest request = onOneMachine({4, 2, 6, 5}, {8, 12, 11, 10});
    const std::array<std::int64_t, 4> released{0, 1, 3, 5};
    for (std::size_t job = 0; job < released.size(); ++job) {
        request.jobs[job].steps.insert(request.jobs[job].steps.begin(), cooled(released[job]));
        request.jobs[job].isUnderway = true;
    }
    const auto greatestLateness = [](const DayPlan& plan) {
        Seconds greatest{0};
        for (const HeatRun& run : plan.runs) {
            for (const PlannedGarment& garment : run.garments)
                greatest = std::max(greatest, garment.late);
        }
        return greatest.count();
    };
    const Answer answer = bestOrders(request, greatestLateness);
    EXPECT_EQ(answer.least, 5);
    EXPECT_TRUE(answer.orders.contains({1, 3, 4, 2}));
    EXPECT_EQ(searchedFor(4,
                          [&](const Sequence& order) {
                              return static_cast<double>(greatestLateness(planInOrder(request, order)));
                          })
                  .cost,
              5);
}

TEST(SchedulingReference, OnePressWithACoolingLag) {
    // Press, cool, press again, on one press; brute-forced apart, no published source.
    struct Example {
        std::vector<std::array<std::int64_t, 3>> garments;
        std::int64_t least;
    };
    const std::vector<Example> examples{
        {{{2, 5, 2}, {3, 4, 1}, {1, 6, 2}}, 12},
        {{{3, 5, 2}, {2, 8, 2}}, 14},
        {{{4, 10, 3}, {3, 6, 2}, {2, 2, 1}}, 18},
    };
    for (const Example& example : examples) {
        std::vector<std::vector<RouteStep>> garments;
        for (const auto& [first, lag, second] : example.garments)
            garments.push_back({pressed(150, first), cooled(lag), pressed(150, second)});
        const PlanRequest request = aDay(std::move(garments));
        EXPECT_EQ(bestOrders(request, length).least, example.least);
        EXPECT_EQ(length(planDay(request)), example.least);
    }
}

namespace {

// Pinedo, example 14.2.1 (from memory): set-ups between jobs, and before the first.
constexpr std::array<std::array<double, 4>, 4> kSetups{
    {{0, 4, 1, 3}, {0, 0, 1, 0}, {1, 2, 0, 3}, {4, 3, 1, 0}}};
constexpr std::array<double, 4> kFirstSetups{1, 1, 3, 4};
const std::vector<DispatchTask> kTasks{{13, 12, 2}, {9, 37, 4}, {13, 21, 2}, {10, 22, 5}};
constexpr IndexScale kScale{5, 0.7, 11, 2};

double setupBefore(std::size_t, std::optional<std::size_t> before, std::size_t task) {
    return before ? kSetups[*before][task] : kFirstSetups[task];
}

double weightedTardiness(const Sequence& order) {
    double now = 0;
    double sum = 0;
    std::optional<std::size_t> before;
    for (const std::size_t task : order) {
        now += setupBefore(0, before, task) + kTasks[task].work;
        sum += kTasks[task].weight * std::max(0.0, now - kTasks[task].due);
        before = task;
    }
    return sum;
}

} // namespace

TEST(SchedulingReference, ApparentTardinessIndices) {
    const std::array<double, 4> published{.0753, .1308, .0156, .0231};
    for (std::size_t task = 0; task < published.size(); ++task)
        EXPECT_NEAR(apparentTardinessIndex(kTasks[task], 0, kFirstSetups[task], kScale), published[task],
                    .00005);
}

TEST(SchedulingReference, ApparentTardinessOrderIsTheOnlyBest) {
    const Sequence order = orderByApparentTardiness(kTasks, 1, setupBefore, kScale);
    EXPECT_EQ(order, (Sequence{1, 3, 2, 0})); // 2-4-3-1
    EXPECT_DOUBLE_EQ(weightedTardiness(order), 98);

    Sequence every{0, 1, 2, 3};
    int asGood = 0;
    do {
        EXPECT_GE(weightedTardiness(every), 98);
        asGood += weightedTardiness(every) == 98 ? 1 : 0;
    } while (std::ranges::next_permutation(every).found);
    EXPECT_EQ(asGood, 1);

    OneMachine machine;
    machine.tasks = kTasks;
    machine.firstSetups.assign(kFirstSetups.begin(), kFirstSetups.end());
    for (const auto& row : kSetups)
        machine.setups.insert(machine.setups.end(), row.begin(), row.end());
    SearchLimits limits;
    limits.rounds = 10;
    const FoundOrder<double> found = searchOneMachine(machine, limits);
    EXPECT_DOUBLE_EQ(found.cost, 98);
    EXPECT_EQ(found.order, order);
}

TEST(SchedulingReference, WeightedTardinessOnOneMachine) {
    // Pinedo, examples 3.4.5 and 3.6.3, as above.
    SearchLimits limits;
    limits.rounds = 10;
    OneMachine total;
    total.tasks = {{121, 260, 1}, {79, 266, 1}, {147, 266, 1}, {83, 336, 1}, {130, 337, 1}};
    EXPECT_DOUBLE_EQ(searchOneMachine(total, limits).cost, 370);
    OneMachine weighted;
    weighted.tasks = {{12, 16, 4}, {8, 26, 5}, {15, 25, 3}, {9, 27, 5}};
    const FoundOrder<double> found = searchOneMachine(weighted, limits);
    EXPECT_DOUBLE_EQ(found.cost, 67);
    EXPECT_EQ(found.order, (Sequence{0, 1, 3, 2}));
}

TEST(SchedulingReference, WeightedCompletionWithChains) {
    // Pinedo, chains by the greatest ratio of weight to work (from memory): 1-2-3-4 and 5-6-7 each in their
    // turn; 1-2-5-6-3-7-4 with 1967, found again by brute force.
    constexpr std::array<double, 7> work{3, 6, 6, 5, 4, 8, 10};
    constexpr std::array<double, 7> weight{6, 18, 12, 8, 8, 17, 18};
    const auto costOf = [&](const Sequence& order) {
        double now = 0, sum = 0;
        std::size_t first = 0, second = 4; // next of each chain
        for (const std::size_t job : order) {
            std::size_t& next = job < 4 ? first : second;
            sum += job == next ? 0 : 1e6; // out of its turn
            next = job + 1;
            now += work[job];
            sum += weight[job] * now;
        }
        return sum;
    };
    EXPECT_DOUBLE_EQ(leastOfAllOrders(7, costOf), 1967);
    const FoundOrder<double> found = searchedFor(7, costOf);
    EXPECT_DOUBLE_EQ(found.cost, 1967);
    EXPECT_EQ(found.order, (Sequence{0, 1, 4, 5, 2, 6, 3}));
}

TEST(SchedulingReference, TwoMachinesInARow) {
    // Johnson 1954 (from memory): 5-1-4-3-2, makespan 47; 1-5-4-3-2 is as short.
    constexpr std::array<double, 5> first{4, 4, 30, 6, 2};
    constexpr std::array<double, 5> second{5, 1, 4, 30, 3};
    const auto costOf = [&](const Sequence& order) {
        double firstFree = 0, secondFree = 0;
        for (const std::size_t job : order) {
            firstFree += first[job];
            secondFree = std::max(firstFree, secondFree) + second[job];
        }
        return secondFree;
    };
    EXPECT_DOUBLE_EQ(costOf({4, 0, 3, 2, 1}), 47);
    EXPECT_DOUBLE_EQ(costOf({0, 4, 3, 2, 1}), 47);
    EXPECT_DOUBLE_EQ(leastOfAllOrders(5, costOf), 47);
    EXPECT_DOUBLE_EQ(searchedFor(5, costOf).cost, 47);
}
