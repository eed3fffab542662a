// SPDX-License-Identifier: GPL-3.0-or-later
// The search for a day's order: the best of all orders of a small day, never worse than dispatch on any.

#include "core/press/day_search.h"

#include "core/press/day_annealing.h"
#include "core/press/day_bound.h"
#include "core/press/day_plan_rules.h"
#include "core/press/day_trials.h"
#include "tests/core/day_plan_validator.h"
#include "tests/core/odd_days.h"

#include <gtest/gtest.h>

#include <cstdint>
#include <limits>

using namespace holdfast;
using namespace holdfast::press_days;

namespace {

using Sequence = std::vector<std::size_t>;

constexpr double kHoweverLate = std::numeric_limits<double>::infinity();

// With work enough to look at all orders of a small day.
PlanRequest unhurried(PlanRequest request) {
    request.search.work = 10'000'000;
    return request;
}

DayScore scoreOf(const DayPlan& plan) {
    return {static_cast<double>(plan.lateness.count()), (plan.ends - kStart).count(), plan.changes};
}

DayScore bestOfAllOrders(const PlanRequest& request) {
    Sequence order = asGiven(request);
    DayScore best = scoreOf(planInOrder(request, order));
    while (std::ranges::next_permutation(order).found)
        best = std::min(best, scoreOf(planInOrder(request, order)));
    return best;
}

std::size_t countUnderway(const TimedDay& day) {
    return static_cast<std::size_t>(std::ranges::count_if(day.jobs(), &TimedJob::isUnderway));
}

} // namespace

TEST(DaySearch, BestOfAllOrdersOfASmallDay) {
    RandomDays days{21};
    for (int day = 0; day < 300; ++day) {
        const PlanRequest request =
            unhurried(days.day(static_cast<std::size_t>(days.between(0, 5)), day % 3 == 0));
        EXPECT_EQ(scoreOf(planDay(request)), bestOfAllOrders(request)) << "day " << day;
    }
}

TEST(DaySearch, BestOfAllOrdersOfSevenAndEight) {
    RandomDays days{22};
    for (int day = 0; day < 4; ++day) {
        const PlanRequest request = unhurried(days.day(day < 3 ? 7 : 8, day == 1));
        EXPECT_EQ(scoreOf(planDay(request)), bestOfAllOrders(request)) << "day " << day;
    }
}

TEST(DaySearch, NeverWorseThanAnyRuleAndOftenBetter) {
    RandomDays days{23};
    int better = 0;
    for (int day = 0; day < 120; ++day) {
        const PlanRequest request = days.day(static_cast<std::size_t>(days.between(2, 40)), day % 3 == 0);
        const TimedDay timed{request};
        const DayScore reached = scoreOf(planDay(request));
        DayScore best{std::numeric_limits<double>::infinity(), 0, 0};
        for (const DispatchRule& rule : dispatchRules())
            best = std::min(best, timed.score(rule(timed)));
        ASSERT_LE(reached, best) << "day " << day;
        better += reached < best ? 1 : 0;
    }
    EXPECT_GE(better, 60);
}

TEST(DaySearch, TrialIsScoredAsTheWholeOrderIs) {
    RandomDays days{24};
    OrderRandom random{3};
    for (int day = 0; day < 600; ++day) {
        const PlanRequest request = oddDay(days, day);
        const TimedDay timed{request};
        const Sequence order = timed.cleaned(days.order(request));
        const std::size_t fixed = countUnderway(timed);
        if (order.size() < fixed + 2)
            continue;
        DayTrials trials{timed};
        trials.settle(order);
        EXPECT_EQ(trials.score(), timed.score(order));
        for (int trial = 0; trial < 20; ++trial) {
            const OrderMove move = random.move(fixed, order.size());
            Sequence other = order;
            carryOut(move, other);
            const DayScore whole = timed.score(other);
            const DayScore unlimited = trials.after(move, kHoweverLate);
            ASSERT_EQ(unlimited, whole) << "day " << day;
            ASSERT_EQ(unlimited.lateGarments, whole.lateGarments) << "day " << day;
            const double most = trials.score().lateness;
            const DayScore limited = trials.after(move, most);
            if (whole.lateness <= most)
                EXPECT_EQ(limited, whole);
            else
                EXPECT_GT(limited.lateness, most);
        }
    }
}

// Settled move by move, where most of the day only comes earlier or later, it stands as settled at once.
TEST(DaySearch, SettledMoveByMoveIsAsSettledAtOnce) {
    RandomDays days{33};
    OrderRandom random{4};
    std::uint64_t run = 0, whole = 0;
    for (int day = 0; day < 200; ++day) {
        PlanRequest request = days.day(static_cast<std::size_t>(days.between(4, 50)), day % 3 == 0);
        if (day % 7 == 0)
            request.platens.push_back(platen(3, 140.0));
        const TimedDay timed{request};
        Sequence order = timed.cleaned(days.order(request));
        const std::size_t fixed = countUnderway(timed);
        if (order.size() < fixed + 2)
            continue;
        DayTrials trials{timed};
        trials.settle(order);
        for (int move = 0; move < 15; ++move) {
            carryOut(random.move(fixed, order.size()), order);
            const std::uint64_t before = trials.garmentsRun();
            trials.settle(order);
            run += trials.garmentsRun() - before;
            whole += order.size();
            DayTrials atOnce{timed};
            atOnce.settle(order);
            ASSERT_EQ(trials.score(), atOnce.score()) << "day " << day;
            ASSERT_EQ(trials.score().lateGarments, atOnce.score().lateGarments) << "day " << day;
            ASSERT_TRUE(std::ranges::equal(trials.ends(), atOnce.ends())) << "day " << day;
            const OrderMove next = random.move(fixed, order.size());
            ASSERT_EQ(trials.after(next, kHoweverLate), atOnce.after(next, kHoweverLate)) << "day " << day;
        }
    }
    EXPECT_LT(run, whole * 3 / 5);
}

TEST(DaySearch, NoDayGoesOnBetterThanItsBound) {
    RandomDays days{25};
    for (int day = 0; day < 400; ++day) {
        const PlanRequest request = days.day(static_cast<std::size_t>(days.between(1, 12)), day % 3 == 0);
        const TimedDay timed{request};
        const Sequence order = timed.cleaned(days.order(request));
        const DayScore reached = timed.score(order);
        DaySimulation simulation{timed};
        DayBound bound{timed};
        simulation.begin(order);
        for (std::size_t given = 0; given < order.size(); ++given) {
            simulation.run();
            const std::span<const std::size_t> left{order.begin() + static_cast<std::ptrdiff_t>(given),
                                                    order.end()};
            const DayScore least = bound.least(simulation.state(), left);
            EXPECT_LE(least.lateness, reached.lateness);
            EXPECT_LE(least.ends, reached.ends);
            EXPECT_LE(least.changes, reached.changes);
            simulation.give(order[given]);
        }
    }
}

TEST(DaySearch, AlikeGarmentsStandByTheirPromises) {
    PlanRequest request =
        aDay({{pressed(150, 10)}, {pressed(130, 10)}, {pressed(150, 10)}, {pressed(150, 10)}});
    request.jobs[0].due = after(9000);
    request.jobs[2].due = after(7000);
    request.jobs[3].due = after(8000);
    const DayPlan plan = planDay(request);
    EXPECT_LT(plan.find(GarmentId{3})->begins, plan.find(GarmentId{4})->begins);
    EXPECT_LT(plan.find(GarmentId{4})->begins, plan.find(GarmentId{1})->begins);
}

TEST(DaySearch, FindsWhatNoRuleDoes) {
    // A promise at another temperature that can just be kept between two runs: 130 °C now, 140 °C is due
    // after one garment at 130 °C, which is due first.
    PlanRequest request = aDay({{pressed(130, 60)}, {pressed(140, 30)}, {pressed(130, 200)}}, 130.0);
    request.jobs[0].due = after(60);
    request.jobs[1].due = after(60 + 30 + 30); // 10 °C up in 30 s
    request.jobs[2].due = after(3600);
    const DayPlan plan = planDay(request);
    EXPECT_EQ(plan.lateness, Seconds{0});
    EXPECT_EQ(plan.ends, after(60 + 30 + 30 + 120 + 200)); // and 10 °C down in 120 s
}

TEST(DaySearch, WithoutSearchThePlanIsThatOfTheBestRule) {
    RandomDays days{26};
    PlanRequest request = days.day(20, false);
    request.search.work = 0;
    const TimedDay timed{request};
    DayScore best{std::numeric_limits<double>::infinity(), 0, 0};
    for (const DispatchRule& rule : dispatchRules())
        best = std::min(best, timed.score(rule(timed)));
    EXPECT_EQ(scoreOf(planDay(request)), best);
}

// However busy the machine is, what is done between two questions whether to stop is the same: pretend that
// it is slower and slower, by a clock that moves on with each question, and the plan is still the same.
TEST(DaySearch, TheSameOnAFastMachineAndASlowOne) {
    RandomDays days{27};
    for (int day = 0; day < 20; ++day) {
        PlanRequest request = days.day(static_cast<std::size_t>(days.between(2, 60)), day % 2 == 0);
        const DayPlan fast = planDay(request);
        volatile std::uint64_t busy = 0;
        request.shouldStop = [&] {
            for (int turn = 0; turn < 20'000; ++turn)
                busy = busy + 1;
            return false;
        };
        const DayPlan slow = planDay(request);
        EXPECT_EQ(fast.order, slow.order) << "day " << day;
        EXPECT_EQ(fast.isCutShort, slow.isCutShort) << "day " << day;
    }
}

// The work until a stop is heard, from the very first on: no more than going through a few orders.
TEST(DaySearch, AStopIsHeardWithinAFewOrders) {
    for (const std::size_t garments : {8, 60, 400, 3000}) {
        const PlanRequest request = RandomDays{28}.day(garments, true);
        const TimedDay day{request};
        const Sequence given = day.cleaned(asGiven(request));
        const std::vector<ScoredOrder> starts(6, {given, day.score(given)});
        std::uint64_t before = 0, longest = 0;
        DayAnnealing annealing{day, starts, 1, [&](std::uint64_t spent) {
                                   longest = std::max(longest, spent - before);
                                   before = spent;
                                   return spent > 20 * garments + 100'000;
                               }};
        annealing.inOutline(100 * garments);
        annealing.byTrials(100'000);
        EXPECT_LE(longest, 3 * garments + 10) << garments;
        EXPECT_GT(annealing.spent(), 90'000U);
    }
}

// Not promised of each day, but of days in sum: what more work finds is worth it.
TEST(DaySearch, MoreWorkFindsLessLateness) {
    Seconds atOnce{0}, later{0};
    for (int day = 0; day < 6; ++day) {
        PlanRequest request = RandomDays{static_cast<unsigned>(340 + day)}.day(40, day % 2 == 0);
        for (PressJob& job : request.jobs)
            job.due = kStart + (job.due - kStart) / 2; // too close to be kept
        request.search.work = 4000;
        atOnce += planDay(request).lateness;
        request.search.work = 80'000;
        later += planDay(request).lateness;
    }
    EXPECT_LT(later.count(), atOnce.count() * 19 / 20);
}

// Asked after each rule and between the orders that a search learns from; a long day comes back without
// asking on.
TEST(DaySearch, ALongDayIsAskedAboutFromItsFirstOrderOn) {
    PlanRequest request = RandomDays{35}.day(3000, true);
    request.search.work = 1'000'000;
    for (const int after : {1, 3, 5, 20, 24}) {
        int asked = 0;
        request.shouldStop = [&] { return ++asked >= after; };
        const DayPlan plan = planDay(request);
        EXPECT_TRUE(plan.isCutShort);
        EXPECT_EQ(plan.order.size() + plan.unplaced.size(), request.jobs.size());
        EXPECT_LE(asked, after + 1);
    }
}

TEST(DaySearch, AStoppedPlanCanBeWalked) {
    RandomDays days{29};
    for (const std::size_t garments : {8, 200}) {
        PlanRequest request = unhurried(days.day(garments, true));
        for (const int after : {1, 2, 20, 200}) {
            int asked = 0, askedAfter = 0;
            request.shouldStop = [&] {
                askedAfter += asked >= after ? 1 : 0;
                return ++asked >= after;
            };
            const DayPlan plan = planDay(request);
            EXPECT_LE(askedAfter, 2) << "it asks on after a yes";
            EXPECT_TRUE(PlanValidator(request, plan).faults().empty());
        }
    }
}

// A search that goes on from what it found looks at other orders than before.
TEST(DaySearch, GoingOnFindsMore) {
    RandomDays days{30};
    int better = 0;
    for (int day = 0; day < 10; ++day) {
        PlanRequest request = days.day(60, day % 2 == 0);
        request.search.work = 5000;
        const DayPlan first = planDay(request);
        DayPlan last = first;
        for (int again = 0; again < 5; ++again) {
            request.search.goesOnFrom = last.order;
            DayPlan next = planDay(request);
            EXPECT_FALSE(last.isBetterThan(next));
            last = std::move(next);
        }
        better += last.isBetterThan(first) ? 1 : 0;
    }
    EXPECT_GE(better, 8);
}

TEST(DaySearch, NoMoreGarmentsAreLateThanByTheBestRule) {
    RandomDays days{31};
    for (int day = 0; day < 30; ++day) {
        PlanRequest request = days.day(static_cast<std::size_t>(days.between(9, 60)), day % 2 == 0);
        const DayPlan searched = planDay(request);
        request.search.work = 0;
        EXPECT_LE(searched.lateGarments(), planDay(request).lateGarments()) << "day " << day;
    }
}

// What the maker sees changes for fewer late garments or a twentieth of the lateness, not for less.
TEST(DaySearch, TheOrderShownIsKeptUnlessAnotherIsWorthTheChange) {
    RandomDays days{32};
    int kept = 0, changed = 0;
    for (int day = 0; day < 60; ++day) {
        PlanRequest request = days.day(static_cast<std::size_t>(days.between(9, 30)), day % 2 == 0);
        request.search.work = 3000;
        const DayPlan shown = planDay(request);
        request.search.goesOnFrom = request.search.shown = shown.order;
        request.search.work = 30'000;
        const DayPlan next = planDay(request);
        DayPlan better = next;
        if (next.bestOrder != next.order) {
            request.search = {};
            request.search.work = 0;
            request.search.goesOnFrom = next.bestOrder;
            better = planDay(request);
        }
        if (next.order == shown.order) {
            EXPECT_FALSE(isWorthTheChange(better, shown)) << "day " << day;
            kept += better.isBetterThan(shown) ? 1 : 0;
        } else {
            EXPECT_TRUE(isWorthTheChange(next, shown)) << "day " << day;
            ++changed;
        }
    }
    EXPECT_GE(kept, 5);
    EXPECT_GE(changed, 5);
}
