// SPDX-License-Identifier: GPL-3.0-or-later
// Thousands of small days made at random from a fixed seed: each plan is looked over by a validator that
// knows nothing of how it was made, and the dispatch rules are held against every order there is (the search:
// day_search_test.cpp).

#include "core/press/day_plan_timing.h"
#include "tests/core/day_plan_builders.h"
#include "tests/core/day_plan_validator.h"
#include "tests/core/random_days.h"

#include <gtest/gtest.h>

#include <algorithm>
#include <iostream>

using namespace holdfast;
using namespace holdfast::press_days;

namespace {

std::string told(const std::vector<std::string>& faults) {
    std::string text;
    for (const std::string& fault : faults)
        text += fault + "\n";
    return text;
}

struct Best {
    DayScore score;
    bool isSet = false;
};

DayScore bestOfAllOrders(const TimedDay& day) {
    std::vector<std::size_t> order = asGiven(day.request());
    Best best;
    do {
        const DayScore score = day.score(day.cleaned(order));
        if (!best.isSet || score < best.score)
            best = {score, true};
    } while (std::ranges::next_permutation(order).found);
    return best.score;
}

DayScore enumeratedScore(const DayPlan& plan) {
    return {static_cast<double>(plan.lateness.count()), (plan.ends - kStart).count(), plan.changes};
}

} // namespace

TEST(DayPlanOverManyDays, EveryOrderGivesAPlanThatCanBeWalked) {
    RandomDays days{11};
    for (int day = 0; day < 2000; ++day) {
        const PlanRequest request = days.day(static_cast<std::size_t>(days.between(1, 9)), day % 3 == 0);
        const DayPlan plan = planInOrder(request, days.order(request));
        const std::vector<std::string> faults = PlanValidator(request, plan).faults();
        ASSERT_TRUE(faults.empty()) << "day " << day << "\n" << told(faults);
    }
}

TEST(DayPlanOverManyDays, SearchedPlansCanBeWalked) {
    RandomDays days{12};
    for (int day = 0; day < 300; ++day) {
        const PlanRequest request = days.day(static_cast<std::size_t>(days.between(0, 20)), day % 3 == 0);
        const DayPlan plan = planDay(request);
        const std::vector<std::string> faults = PlanValidator(request, plan).faults();
        ASSERT_TRUE(faults.empty()) << "day " << day << "\n" << told(faults);
    }
}

TEST(DayPlanOverManyDays, ScoreIsThatOfThePlanWrittenOut) {
    RandomDays days{13};
    for (int day = 0; day < 500; ++day) {
        const PlanRequest request = days.day(8, day % 2 == 0);
        const TimedDay timed{request};
        const std::vector<std::size_t> order = timed.cleaned(days.order(request));
        EXPECT_EQ(timed.score(order), enumeratedScore(timed.plan(order)));
    }
}

TEST(DayPlanOverManyDays, SameRequestSamePlan) {
    RandomDays days{14};
    PlanRequest request = days.day(25, true);
    const DayPlan once = planDay(request);
    const DayPlan again = planDay(request);
    ASSERT_EQ(once.spans.size(), again.spans.size());
    for (std::size_t span = 0; span < once.spans.size(); ++span) {
        EXPECT_EQ(once.spans[span].garment, again.spans[span].garment);
        EXPECT_EQ(once.spans[span].begins, again.spans[span].begins);
    }
}

TEST(DayPlanOverManyDays, DispatchIsNeverBetterThanTheBestOrderAndNotFarFromIt) {
    RandomDays days{15};
    constexpr int kDays = 300;
    int isBest = 0;
    double bestLateness = 0, lateness = 0, bestEnds = 0, ends = 0, worstEnds = 1;
    for (int day = 0; day < kDays; ++day) {
        PlanRequest request = days.day(static_cast<std::size_t>(days.between(2, 6)), day % 4 == 0);
        request.search.work = 0;
        const DayScore best = bestOfAllOrders(TimedDay{request});
        const DayScore reached = enumeratedScore(planDay(request));
        ASSERT_GE(reached, best) << "day " << day;
        isBest += reached == best ? 1 : 0;
        bestLateness += best.lateness;
        lateness += reached.lateness;
        bestEnds += static_cast<double>(best.ends);
        ends += static_cast<double>(reached.ends);
        worstEnds = std::max(worstEnds, static_cast<double>(reached.ends) / static_cast<double>(best.ends));
    }
    std::cout << "dispatch against every order, " << kDays << " days of 2 to 6 garments: best in " << isBest
              << "; lateness in sum " << lateness / bestLateness << " of the best, end " << ends / bestEnds
              << ", at worst " << worstEnds << "\n";
    // Measured with this seed: best in 215, 1.030, 1.022, 1.60.
    EXPECT_GE(isBest, 180);
    EXPECT_LE(lateness / bestLateness, 1.08);
    EXPECT_LE(ends / bestEnds, 1.06);
    EXPECT_LE(worstEnds, 2);
}

TEST(DayPlanOverManyDays, TwoHundredGarmentsAreAllPlanned) {
    RandomDays days{16};
    const PlanRequest request = days.day(200, true);
    const DayPlan plan = planDay(request);
    std::size_t garments = 0;
    for (const HeatRun& run : plan.runs)
        garments += run.garments.size();
    EXPECT_EQ(garments, 200U);
    EXPECT_TRUE(PlanValidator(request, plan).faults().empty());
}
