// The search for a day's order: the best of all orders of a small day, never worse than dispatch on any.

#include "core/press/day_search.h"

#include "core/press/day_bound.h"
#include "core/press/day_plan_rules.h"
#include "core/press/day_trials.h"
#include "tests/core/day_plan_validator.h"
#include "tests/core/random_days.h"

#include <gtest/gtest.h>

#include <chrono>
#include <ctime>
#include <limits>

using namespace holdfast;
using namespace holdfast::press_days;

namespace {

using Sequence = std::vector<std::size_t>;

// Long enough for a slow machine: what is found then depends on the request alone.
PlanRequest unhurried(PlanRequest request) {
    request.search.atMost = std::chrono::minutes{5};
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
    for (int day = 0; day < 400; ++day) {
        const PlanRequest request = days.day(static_cast<std::size_t>(days.between(3, 40)), day % 3 == 0);
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
            const DayScore unlimited{std::numeric_limits<double>::infinity(), 0, 0};
            ASSERT_EQ(trials.after(move, unlimited), whole) << "day " << day;
            const DayScore limited = trials.after(move, trials.score());
            if (whole < trials.score())
                EXPECT_EQ(limited, whole);
            else
                EXPECT_GE(limited, trials.score());
        }
    }
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
    request.search.garments = 0;
    const TimedDay timed{request};
    DayScore best{std::numeric_limits<double>::infinity(), 0, 0};
    for (const DispatchRule& rule : dispatchRules())
        best = std::min(best, timed.score(rule(timed)));
    EXPECT_EQ(scoreOf(planDay(request)), best);
}

// The sanitizers make all that is done between two questions several times as long.
#ifdef __SANITIZE_ADDRESS__
constexpr std::chrono::milliseconds kHeardWithin{1000};
#else
constexpr std::chrono::milliseconds kHeardWithin{50};
#endif

TEST(DaySearch, StopIsHeardWithinFiftyMilliseconds) {
    RandomDays days{27};
    for (const std::size_t garments : {8, 200}) {
        PlanRequest request = unhurried(days.day(garments, true));
        request.search.garments = std::numeric_limits<std::uint32_t>::max();
        std::clock_t asked = 0; // of this process, so that others on the machine do not count
        int times = 0;
        request.shouldStop = [&] {
            if (++times == 200)
                asked = std::clock();
            return times >= 200;
        };
        const DayPlan plan = planDay(request);
        const std::chrono::duration<double> heard{static_cast<double>(std::clock() - asked) / CLOCKS_PER_SEC};
        EXPECT_LT(heard, kHeardWithin);
        EXPECT_TRUE(PlanValidator(request, plan).faults().empty());
    }
}

TEST(DaySearch, TimeAtMostIsKept) {
    RandomDays days{28};
    PlanRequest request = days.day(200, true);
    request.search.garments = std::numeric_limits<std::uint32_t>::max();
    request.search.atMost = std::chrono::milliseconds{20};
    const TimedDay timed{request};
    const Sequence start = timed.cleaned(asGiven(request));
    const auto begins = std::chrono::steady_clock::now();
    const SearchedOrder found = searchedOrder(timed, start);
    EXPECT_LT(std::chrono::steady_clock::now() - begins, std::chrono::milliseconds{120});
    EXPECT_LE(timed.score(found.order), timed.score(start));
    EXPECT_TRUE(found.isCutShort);
}
