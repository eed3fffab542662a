// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/press/day_plan.h"

#include "tests/core/day_plan_builders.h"
#include "tests/core/day_plan_validator.h"

#include <gtest/gtest.h>

#include <limits>

using namespace holdfast;
using namespace holdfast::press_days;

namespace {

std::vector<std::int64_t> garmentsOf(const HeatRun& run) {
    std::vector<std::int64_t> numbers;
    for (const PlannedGarment& garment : run.garments)
        numbers.push_back(garment.garment.value);
    return numbers;
}

const PlannedGarment& planned(const DayPlan& plan, std::int64_t garment) {
    const PlannedGarment* found = plan.find(GarmentId{garment});
    EXPECT_NE(found, nullptr);
    return *found;
}

using Numbers = std::vector<std::int64_t>;

} // namespace

TEST(DayPlan, NextGarmentIsPressedWhileTheFirstCools) {
    const PlanRequest request = aDay({{pressed(150, 10), cooled(30), pressed(150, 5)}, {pressed(150, 10)}});
    const DayPlan plan = planInOrder(request, {0, 1});
    EXPECT_EQ(planned(plan, 2).begins, after(10));
    EXPECT_EQ(planned(plan, 2).ends, after(20));
    EXPECT_EQ(planned(plan, 1).ends, after(45));
    EXPECT_EQ(plan.changes, 0);
    ASSERT_EQ(plan.runs.size(), 1U);
    EXPECT_EQ(garmentsOf(plan.runs[0]), (Numbers{1, 2}));
}

TEST(DayPlan, GarmentOfAnotherTemperatureWaitsUntilThePlatenIsLetGo) {
    const PlanRequest request = aDay({{pressed(150, 10), cooled(30), pressed(150, 5)}, {pressed(160, 10)}});
    const DayPlan plan = planInOrder(request, {0, 1});
    // 10 °C up at 20 °C a minute take half a minute, begun when the first garment needs no heat any more.
    EXPECT_EQ(planned(plan, 2).begins, after(45 + 30));
    ASSERT_EQ(plan.runs.size(), 2U);
    EXPECT_EQ(plan.runs[1].change, Seconds{30});
    EXPECT_EQ(plan.runs[1].changedFrom, Celsius{150});
    EXPECT_EQ(plan.changes, 1);
}

TEST(DayPlan, PlatenChangesWhileTheLastGarmentOfARunIsFinishedByHand) {
    const PlanRequest request =
        aDay({{pressed(150, 10), cooled(60), byHand(20, StepKind::PeelCarrier)}, {pressed(160, 10)}});
    const DayPlan plan = planInOrder(request, {0, 1});
    EXPECT_EQ(planned(plan, 2).begins, after(40));
    EXPECT_EQ(planned(plan, 1).ends, after(90));
    ASSERT_EQ(plan.runs.size(), 2U);
    EXPECT_EQ(plan.runs[0].ends, after(90)); // its last garment is over, though the next run has begun
    EXPECT_EQ(plan.runs[1].begins, after(40));
}

TEST(DayPlan, CoolingTakesLongerThanHeating) {
    Press press;
    press.heatsPerMinute = 20;
    press.coolsPerMinute = 5;
    EXPECT_EQ(changeTime(press, Celsius{130}, Celsius{150}), Seconds{60});
    EXPECT_EQ(changeTime(press, Celsius{150}, Celsius{130}), Seconds{240});
    EXPECT_EQ(changeTime(press, Celsius{150}, Celsius{150}), Seconds{0});
    EXPECT_EQ(changeTime(press, Celsius{150}, Celsius{151}), Seconds{3});
    press.heatsPerMinute = 0.7; // 10 °C in 857.14 s
    EXPECT_EQ(changeTime(press, Celsius{150}, Celsius{160}), Seconds{858});
}

TEST(DayPlan, PressThatDoesNotHeatOrCoolNeverGetsThere) {
    Press press;
    press.heatsPerMinute = 0;
    EXPECT_EQ(changeTime(press, Celsius{20}, Celsius{150}), Seconds::max());
    EXPECT_EQ(changeTime(press, Celsius{150}, Celsius{150}), Seconds{0});
    press.heatsPerMinute = 20;
    press.coolsPerMinute = -5;
    EXPECT_EQ(changeTime(press, Celsius{150}, Celsius{130}), Seconds::max());
    press.coolsPerMinute = std::numeric_limits<double>::quiet_NaN();
    EXPECT_EQ(changeTime(press, Celsius{150}, Celsius{130}), Seconds::max());
}

TEST(DayPlan, ColdPlatenWarmsUpFirstAndThatIsNoChange) {
    const DayPlan plan = planDay(aDay({{pressed(150, 12)}}, std::nullopt));
    ASSERT_EQ(plan.runs.size(), 1U);
    EXPECT_EQ(plan.runs[0].change, Seconds{130 * 3});
    EXPECT_FALSE(plan.runs[0].changedFrom);
    EXPECT_EQ(plan.runs[0].begins, after(390));
    EXPECT_EQ(plan.changes, 0);
}

TEST(DayPlan, MakerHasOnePairOfHands) {
    const PlanRequest request = aDay({{byHand(20), pressed(150, 10)}, {byHand(20), pressed(150, 10)}});
    PlanRequest twoPresses = request;
    twoPresses.platens.push_back(platen(2, 150.0));
    const DayPlan plan = planInOrder(twoPresses, {0, 1});
    EXPECT_NE(planned(plan, 1).press, planned(plan, 2).press);
    EXPECT_EQ(planned(plan, 1).begins, after(0));
    EXPECT_EQ(planned(plan, 2).begins, after(30)); // 20 s of hand work would run past the opening at 30
    EXPECT_TRUE(PlanValidator(twoPresses, plan).faults().empty());
}

TEST(DayPlan, HandWorkFitsIntoTheTimeThePlatenIsClosed) {
    const PlanRequest request = aDay({{pressed(150, 30)}, {byHand(20), pressed(150, 10)}});
    const DayPlan plan = planInOrder(request, {0, 1});
    EXPECT_EQ(planned(plan, 2).begins, after(0));
    EXPECT_EQ(plan.ends, after(40));
}

TEST(DayPlan, HandsAreFreeWhenAPlatenOpens) {
    const PlanRequest request = aDay({{pressed(150, 12), byHand(5, StepKind::PeelCarrier)}, {byHand(20)}});
    const DayPlan plan = planInOrder(request, {0, 1});
    EXPECT_EQ(planned(plan, 1).ends, after(17));
    EXPECT_EQ(planned(plan, 2).begins, after(17));
}

TEST(DayPlan, PlatenIsBusyWhileADecalIsLaidOnIt) {
    PlanRequest request = aDay(
        {{cooled(30), byHand(25, StepKind::PlaceDecal), pressed(150, 12)}, {cooled(35), pressed(150, 8)}});
    for (PressJob& job : request.jobs)
        job.isUnderway = true;
    const DayPlan plan = planInOrder(request, {0, 1});
    EXPECT_EQ(planned(plan, 1).ends, after(67));
    EXPECT_EQ(planned(plan, 2).ends, after(75)); // cool at 35, when the decal is being laid
}

TEST(DayPlan, PlatenIsBusyWhileItIsLoaded) {
    PlanRequest request = aDay({{pressed(150, 12, 10)}, {pressed(150, 8)}});
    const DayPlan plan = planInOrder(request, {0, 1});
    EXPECT_EQ(planned(plan, 2).begins, after(22));
}

TEST(DayPlan, GarmentStaysOnThePlatenBetweenPreheatAndPress) {
    RouteStep preheat = pressed(150, 15);
    preheat.kind = StepKind::Preheat;
    const PlanRequest request = aDay(
        {{pressed(150, 2)}, {preheat, byHand(5, StepKind::WayRound), pressed(150, 12)}, {pressed(150, 3)}});
    const DayPlan plan = planInOrder(request, {1, 0, 2});
    EXPECT_EQ(planned(plan, 2).ends, after(32));
    EXPECT_EQ(planned(plan, 1).begins, after(32));
    EXPECT_EQ(planned(plan, 3).begins, after(34));
}

TEST(DayPlan, GarmentUnderWayGoesFirstWhateverTheOrder) {
    PlanRequest request = aDay({{pressed(150, 10)}, {pressed(150, 10)}, {cooled(25), byHand(5)}});
    request.jobs[2].isUnderway = true;
    request.jobs[1].isUnderway = true;
    const DayPlan plan = planInOrder(request, {0, 1, 2});
    EXPECT_EQ(planned(plan, 2).begins, after(0));
    EXPECT_EQ(planned(plan, 3).begins, after(0));
    EXPECT_EQ(planned(plan, 1).begins, after(10));
    EXPECT_EQ(planned(plan, 3).ends, after(30));
}

TEST(DayPlan, GarmentUnderWayAtAnotherTemperatureIsFinishedBeforeOthersAreTakenUp) {
    PlanRequest request = aDay({{pressed(150, 10)}, {pressed(130, 10)}});
    request.jobs[1].isUnderway = true;
    const DayPlan plan = planDay(request);
    EXPECT_EQ(planned(plan, 2).begins, after(240));
    EXPECT_EQ(planned(plan, 1).begins, after(240 + 10 + 60));
}

TEST(DayPlan, SecondPassAtAnotherTemperatureIsARunOfItsOwn) {
    const PlanRequest request = aDay({{pressed(150, 10), cooled(60), pressed(130, 8)}, {pressed(150, 10)}});
    const DayPlan plan = planInOrder(request, {0, 1});
    ASSERT_EQ(plan.runs.size(), 2U);
    EXPECT_EQ(garmentsOf(plan.runs[0]),
              (Numbers{1, 2})); // the second garment is pressed while the first cools
    EXPECT_TRUE(plan.runs[1].garments.empty());
    EXPECT_EQ(plan.runs[1].again, (std::vector{GarmentId{1}}));
    EXPECT_EQ(plan.runs[1].change, Seconds{240});
    EXPECT_EQ(planned(plan, 1).temperature, Celsius{150});
    EXPECT_EQ(planned(plan, 1).ends, after(20 + 240 + 8));
    EXPECT_EQ(plan.runs[0].ends, after(20));
    EXPECT_EQ(plan.runs[1].ends, planned(plan, 1).ends);
    EXPECT_TRUE(PlanValidator(request, plan).faults().empty());
}

TEST(DayPlan, GarmentReadyForAnotherTemperatureIsNotPassedOverForEver) {
    std::vector<std::vector<RouteStep>> garments{{pressed(150, 10), cooled(15), pressed(130, 8)}};
    for (int more = 0; more < 20; ++more)
        garments.push_back({pressed(150, 10)});
    const PlanRequest request = aDay(std::move(garments));
    const DayPlan plan = planInOrder(request, asGiven(request));
    // It is ready at 25, when the third garment is on the platen; then the platen goes down for it.
    EXPECT_EQ(planned(plan, 1).ends, after(30 + 240 + 8));
}

TEST(DayPlan, OnlyOneGarmentIsPreparedAhead) {
    std::vector<std::vector<RouteStep>> garments;
    for (int more = 0; more < 4; ++more)
        garments.push_back({byHand(10), pressed(150, 60)});
    const PlanRequest request = aDay(std::move(garments));
    const DayPlan plan = planInOrder(request, asGiven(request));
    EXPECT_EQ(planned(plan, 2).begins, after(10));
    EXPECT_EQ(planned(plan, 3).begins, after(70));
    EXPECT_EQ(planned(plan, 4).begins, after(130));
}

TEST(DayPlan, SayingHowLateEachGarmentWillBe) {
    PlanRequest request = aDay({{pressed(150, 100)}, {pressed(150, 50)}});
    request.jobs[0].due = after(90);
    request.jobs[1].due = after(160);
    request.jobs[0].weight = 2.5;
    const DayPlan plan = planInOrder(request, {0, 1});
    EXPECT_EQ(planned(plan, 1).late, Seconds{10});
    EXPECT_EQ(planned(plan, 2).late, Seconds{0});
    EXPECT_EQ(plan.lateness, Seconds{25});
}

TEST(DayPlan, EachTemperatureOnceWhereNothingPresses) {
    PlanRequest request =
        aDay({{pressed(150, 12)}, {pressed(130, 12)}, {pressed(150, 12)}, {pressed(130, 12)}}, 130.0);
    for (PressJob& job : request.jobs)
        job.due = after(24 * 3600);
    const DayPlan plan = planDay(request);
    ASSERT_EQ(plan.runs.size(), 2U);
    EXPECT_EQ(garmentsOf(plan.runs[0]), (Numbers{2, 4}));
    EXPECT_EQ(garmentsOf(plan.runs[1]), (Numbers{1, 3}));
    EXPECT_EQ(plan.changes, 1);
}

TEST(DayPlan, PromiseGoesBeforeAChangeOfTemperature) {
    PlanRequest request = aDay({{pressed(130, 12)}, {pressed(150, 12)}}, 130.0);
    request.jobs[1].due = after(80); // 60 s of heating and 12 s at the press
    request.jobs[0].due = after(24 * 3600);
    const DayPlan plan = planDay(request);
    ASSERT_EQ(plan.runs.size(), 2U);
    EXPECT_EQ(garmentsOf(plan.runs[0]), (Numbers{2}));
    EXPECT_EQ(plan.lateness, Seconds{0});
}

TEST(DayPlan, TwoPressesKeepTheirTemperatures) {
    PlanRequest request =
        aDay({{pressed(130, 60)}, {pressed(160, 60)}, {pressed(130, 60)}, {pressed(160, 60)}}, 130.0);
    request.platens.push_back(platen(2, 160.0));
    const DayPlan plan = planDay(request);
    EXPECT_EQ(plan.changes, 0);
    EXPECT_EQ(plan.ends, after(120));
    EXPECT_EQ(planned(plan, 2).press, PressId{2});
}

TEST(DayPlan, GarmentKeptForAPressIsPressedThere) {
    PlanRequest request = aDay({{pressed(150, 10)}, {pressed(150, 10)}});
    request.platens.push_back(platen(2, std::nullopt));
    request.jobs[1].press = PressId{2};
    const DayPlan plan = planDay(request);
    EXPECT_EQ(planned(plan, 2).press, PressId{2});
    EXPECT_EQ(planned(plan, 2).begins, after(390));
}

TEST(DayPlan, GarmentWithNothingLeftForThePlatenStandsInARunToo) {
    const PlanRequest request = aDay({{byHand(10, StepKind::LookForTexture)}, {}});
    const DayPlan plan = planDay(request);
    ASSERT_EQ(plan.runs.size(), 1U);
    EXPECT_EQ(plan.runs[0].temperature, Celsius{150});
    EXPECT_EQ(planned(plan, 1).ends, after(10));
    EXPECT_EQ(planned(plan, 2).ends, planned(plan, 2).begins);
}

TEST(DayPlan, StepWithoutATemperatureIsDoneAtThatOfItsGarment) {
    RouteStep preheat = pressed(150, 15);
    preheat.temperature.reset();
    const PlanRequest request = aDay({{preheat, pressed(160, 12)}});
    const DayPlan plan = planDay(request);
    ASSERT_EQ(plan.runs.size(), 1U);
    EXPECT_EQ(plan.runs[0].temperature, Celsius{160});
    EXPECT_EQ(planned(plan, 1).begins, after(30));
}

TEST(DayPlan, NoPressLeavesEveryGarmentUnplaced) {
    PlanRequest request = aDay({{pressed(150, 10)}, {pressed(160, 10)}});
    request.platens.clear();
    const DayPlan plan = planDay(request);
    EXPECT_EQ(plan.unplaced, (std::vector{GarmentId{1}, GarmentId{2}}));
    EXPECT_TRUE(plan.runs.empty());
    EXPECT_EQ(plan.ends, kStart);
    EXPECT_EQ(whyUnplaced(request, request.jobs[0]), "The shop has no press.");
}

TEST(DayPlan, PressThatIsNotInUseLeavesItsGarmentsUnplaced) {
    PlanRequest request = aDay({{pressed(150, 10)}, {pressed(150, 10)}});
    request.jobs[0].press = PressId{9};
    const DayPlan plan = planDay(request);
    EXPECT_EQ(plan.unplaced, (std::vector{GarmentId{1}}));
    EXPECT_EQ(plan.find(GarmentId{1}), nullptr);
    EXPECT_EQ(whyUnplaced(request, request.jobs[0]), "The press it is to be pressed on is not in use.");
    EXPECT_FALSE(whyUnplaced(request, request.jobs[1]));
}

TEST(DayPlan, PressThatCannotChangeServesOnlyItsPresentTemperature) {
    PlanRequest request = aDay({{pressed(150, 10)}, {pressed(160, 10)}});
    for (const double rate : {0.0, -4.0, std::numeric_limits<double>::quiet_NaN()}) {
        request.platens[0].press.heatsPerMinute = rate;
        const DayPlan plan = planDay(request);
        EXPECT_EQ(plan.unplaced, (std::vector{GarmentId{2}}));
        EXPECT_EQ(planned(plan, 1).ends, after(10));
        EXPECT_EQ(whyUnplaced(request, request.jobs[1]), "Bench press cannot come to 160 °C: its heating and "
                                                         "cooling, in °C a minute, must both be above 0.");
    }
}

TEST(DayPlan, TemperatureThatIsNoNumberIsUnplaced) {
    const PlanRequest request = aDay({{pressed(std::numeric_limits<double>::infinity(), 10)},
                                      {pressed(std::numeric_limits<double>::quiet_NaN(), 10)}});
    EXPECT_EQ(planDay(request).unplaced.size(), 2U);
}

TEST(DayPlan, AbsurdDurationsSaturate) {
    constexpr auto kMost = std::numeric_limits<std::int64_t>::max();
    PlanRequest request =
        aDay({{pressed(150, kMost, kMost), cooled(kMost)}, {pressed(150, -5), cooled(-kMost)}});
    request.jobs[0].due = Instant{Seconds{std::numeric_limits<std::int64_t>::min()}};
    request.jobs[1].due = Instant{Seconds{kMost}};
    request.jobs[0].weight = std::numeric_limits<double>::infinity();
    request.jobs[1].weight = std::numeric_limits<double>::quiet_NaN();
    const DayPlan plan = planDay(request);
    EXPECT_EQ(planned(plan, 1).ends - planned(plan, 1).begins, Days{3 * 366});
    EXPECT_GT(plan.lateness, Seconds{0});
    EXPECT_EQ(planned(plan, 2).late, Seconds{0});

    request.start = Instant{Seconds{kMost - 100}};
    EXPECT_EQ(planDay(request).ends, Instant{Seconds{kMost}});
}

TEST(DayPlan, AbsurdHeatDoesNotHang) {
    PlanRequest request = aDay({{pressed(1e300, 10)}, {pressed(-1e300, 10)}});
    request.platens[0].press.heatsPerMinute = 1e-300;
    const DayPlan plan = planDay(request);
    EXPECT_TRUE(plan.unplaced.empty());
    EXPECT_GE(plan.ends, kStart + Days{366});
}

TEST(DayPlan, NothingToDoEndsWhereItBegins) {
    const DayPlan plan = planDay(aDay({}));
    EXPECT_TRUE(plan.runs.empty());
    EXPECT_EQ(plan.ends, kStart);
    EXPECT_EQ(plan.lateness, Seconds{0});
}

TEST(DayPlan, StoppedAtOnceThereIsStillAPlan) {
    PlanRequest request = aDay({{pressed(150, 10)}, {pressed(160, 10)}, {pressed(150, 10)}});
    int asked = 0;
    request.shouldStop = [&] { return ++asked > 0; };
    const DayPlan plan = planDay(request);
    EXPECT_EQ(asked, 1);
    EXPECT_NE(plan.find(GarmentId{3}), nullptr);
    EXPECT_TRUE(PlanValidator(request, plan).faults().empty());
}

TEST(DayPlan, JobsThatTheOrderDoesNotNameAreNotPlanned) {
    const PlanRequest request = aDay({{pressed(150, 10)}, {pressed(150, 10)}});
    const DayPlan plan = planInOrder(request, {1});
    EXPECT_EQ(plan.find(GarmentId{1}), nullptr);
    EXPECT_NE(plan.find(GarmentId{2}), nullptr);
    EXPECT_TRUE(plan.unplaced.empty());
}
