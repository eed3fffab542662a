// SPDX-License-Identifier: GPL-3.0-or-later
// What lets a search through every order leave orders out: states that come to the same.

#include "core/press/every_order.h"

#include "core/press/day_search.h"
#include "tests/core/random_days.h"

#include <gtest/gtest.h>

#include <numeric>

using namespace holdfast;
using namespace holdfast::press_days;

namespace {

using Sequence = std::vector<std::size_t>;

DayState after(const TimedDay& day, std::span<const std::size_t> order, std::size_t given) {
    DaySimulation simulation{day};
    simulation.begin(order);
    for (std::size_t place = 0; place < given; ++place)
        simulation.give(order[place]);
    simulation.run();
    return simulation.state();
}

} // namespace

// Two beginnings of the same garments: where the second is said to be met, whatever follows ends no better.
TEST(EveryOrder, WhatWasMetAsGoodEndsNoBetter) {
    RandomDays days{31};
    int met = 0;
    for (int day = 0; day < 3000; ++day) {
        PlanRequest request = days.day(static_cast<std::size_t>(days.between(3, 8)), day % 2 == 0);
        if (day % 3 == 0)
            request.jobs[1].steps = request.jobs[0].steps;
        for (PressJob& job : request.jobs)
            job.isUnderway = false;
        const TimedDay timed{request};
        Sequence one = timed.cleaned(days.order(request));
        Sequence other = one;
        const auto given = static_cast<std::size_t>(days.between(1, static_cast<std::int64_t>(one.size())));
        std::ranges::sort(other.begin(), other.begin() + static_cast<std::ptrdiff_t>(given));
        DayMemory memory;
        EXPECT_FALSE(memory.hasMetAsGood(after(timed, one, given), 1));
        EXPECT_TRUE(memory.hasMetAsGood(after(timed, one, given), 1));
        EXPECT_FALSE(memory.hasMetAsGood(after(timed, one, given), 2));
        if (one == other || !memory.hasMetAsGood(after(timed, other, given), 1))
            continue;
        ++met;
        const DayScore first = timed.score(one);
        const DayScore second = timed.score(other);
        EXPECT_LE(first.lateness, second.lateness) << "day " << day;
        EXPECT_LE(first.ends, second.ends) << "day " << day;
        EXPECT_LE(first.changes, second.changes) << "day " << day;
    }
    EXPECT_GE(met, 50);
}

TEST(EveryOrder, StoppedItKeepsTheBestItMet) {
    RandomDays days{32};
    for (int day = 0; day < 40; ++day) {
        const PlanRequest request = days.day(8, day % 2 == 0);
        const TimedDay timed{request};
        const Sequence start = timed.cleaned(asGiven(request));
        int asked = 0;
        const Sequence found = EveryOrder{timed, start}.best([&] { return ++asked > day * 4; });
        EXPECT_LE(timed.score(found), timed.score(start));
        EXPECT_TRUE(std::ranges::is_permutation(found, start));
        EXPECT_LE(asked, day * 4 + 1); // it does not ask on after a yes
    }
}

TEST(EveryOrder, APlanSaysWhetherMoreWorkMayBetterIt) {
    RandomDays days{33};
    PlanRequest request = days.day(8, true);
    request.search.work = 10;
    EXPECT_TRUE(planDay(request).isCutShort);
    request.search.work = 10'000'000;
    EXPECT_FALSE(planDay(request).isCutShort);
    request.search.work = 0;
    EXPECT_FALSE(planDay(request).isCutShort);
    request.search.work = 2000;
    request.shouldStop = [] { return true; };
    EXPECT_TRUE(planDay(request).isCutShort);
}
