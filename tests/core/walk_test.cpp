// SPDX-License-Identifier: GPL-3.0-or-later
// The press walk of a day: heat runs of what was pressed, is under way and is planned; the rack; what stands
// aside and why.
#include "core/shop/walk.h"

#include "tests/core/builders.h"
#include "tests/core/day_plan_validator.h"

#include <gtest/gtest.h>

#include <algorithm>

namespace holdfast::test {

namespace {

// As db and app do it: facts into a reckoned shop, conditions and allotment as the builder made them.
ReckonedShop reckoned(const TestShop& made) {
    ReckonedShop shop;
    shop.now = made.now;
    shop.facts = made.facts;
    shop.conditions = made.conditions;
    shop.allotment = made.allotment;
    shop.assessments = assessAll(shop.around());
    shop.plan = planDay(planRequest(shop.facts, shop.assessments, shop.now));
    return shop;
}

std::vector<GarmentId> garmentsIn(const Walk& walk, WalkState state) {
    std::vector<GarmentId> garments;
    for (const WalkRun& run : walk.runs)
        for (const WalkEntry& entry : run.entries)
            if (entry.state == state)
                garments.push_back(entry.garment);
    return garments;
}

std::vector<GarmentId> allIds(const TestShop& shop) {
    std::vector<GarmentId> ids;
    for (const Garment& garment : shop.facts.garments)
        ids.push_back(garment.id);
    return ids;
}

GarmentBuilder atHeat(FilmId film, Celsius heat) {
    return aGarment()
        .film([film](Film& it) { it.id = film; })
        .recipe([heat](Recipe& it) { it.temperature = heat; })
        .decal([film](Decal& it) { it.film = film; });
}

GarmentBuilder promised(LocalTime when) {
    return aGarment().order([when](Order& order) { order.promised = when; });
}

} // namespace

TEST(Walk, NothingInTheShopIsAnEmptyWalk) {
    const Walk walk = walkOf(reckoned(aShop().build()));
    EXPECT_TRUE(walk.isEmpty());
    EXPECT_EQ(walk.total, 0u);
    EXPECT_FALSE(walk.next);
    EXPECT_EQ(walk.ends, theMoment().instant);
}

TEST(Walk, ReadyGarmentsArePlannedInOneRunAndTheFirstIsNext) {
    const TestShop made = aShop().with(aGarment()).with(aGarment()).build();
    const Walk walk = walkOf(reckoned(made));
    ASSERT_EQ(walk.runs.size(), 1u);
    EXPECT_EQ(walk.runs[0].temperature, 150_C);
    EXPECT_EQ(walk.runs[0].entries.size(), 2u);
    EXPECT_EQ(walk.pressed, 0u);
    EXPECT_EQ(walk.total, 2u);
    EXPECT_EQ(walk.next, walk.runs[0].entries[0].garment);
    EXPECT_FALSE(walk.onPress);
    EXPECT_GT(walk.ends, made.now.instant);
}

TEST(Walk, PressedTodayCountsAndPressedYesterdayDoesNot) {
    const Walk walk = walkOf(
        reckoned(aShop().with(aGarment().pressed(hoursAgo(1))).with(aGarment().pressed(daysAgo(1))).build()));
    EXPECT_EQ(walk.pressed, 1u);
    EXPECT_EQ(walk.total, 1u);
    ASSERT_EQ(walk.runs.size(), 1u);
    EXPECT_TRUE(walk.runs[0].isDone());
    EXPECT_EQ(walk.runs[0].entries[0].ends, hoursAgo(1));
    EXPECT_EQ(walk.ends, hoursAgo(1));
}

TEST(Walk, PressedUnderwayAndPlannedOfOneTemperatureShareARun) {
    const TestShop made = aShop()
                              .with(aGarment().pressed(hoursAgo(1)))
                              .with(aGarment().doneThrough("preheat-1").underway("place-1"))
                              .with(aGarment())
                              .build();
    const auto ids = allIds(made);
    const Walk walk = walkOf(reckoned(made));
    ASSERT_EQ(walk.runs.size(), 1u);
    const WalkRun& run = walk.runs[0];
    ASSERT_EQ(run.entries.size(), 3u);
    EXPECT_EQ(run.pressedCount(), 1u);
    EXPECT_FALSE(run.isDone());
    EXPECT_EQ(run.entries[0].garment, ids[0]);
    EXPECT_EQ(run.entries[1].state, WalkState::OnPress);
    EXPECT_EQ(run.entries[2].state, WalkState::Planned);
    EXPECT_EQ(walk.onPress, ids[1]);
    EXPECT_EQ(run.begins, run.entries[0].begins);
    EXPECT_GE(run.ends, run.entries[2].ends);
    EXPECT_EQ(walk.total, 3u);
}

TEST(Walk, EachGarmentStandsOnTheWalkOnce) {
    const TestShop made = aShop()
                              .with(aGarment().pressed(hoursAgo(1)))
                              .with(aGarment().doneThrough("press-1").underway("cool-1"))
                              .with(atHeat(FilmId{7}, 130_C))
                              .with(atHeat(FilmId{8}, 165_C))
                              .with(aGarment().uncut())
                              .build();
    const Walk walk = walkOf(reckoned(made));
    std::vector<GarmentId> all;
    for (const WalkRun& run : walk.runs)
        for (const WalkEntry& entry : run.entries)
            all.push_back(entry.garment);
    for (const AsideEntry& entry : walk.aside)
        all.push_back(entry.garment);
    std::ranges::sort(all);
    EXPECT_EQ(all, allIds(made));
}

TEST(Walk, ChangeOfTemperatureBetweenDoneRunsIsReckonedFromThePress) {
    const TestShop made = aShop()
                              .with(atHeat(FilmId{7}, 130_C).pressed(hoursAgo(2)))
                              .with(atHeat(FilmId{8}, 160_C).pressed(hoursAgo(1)))
                              .build();
    const Walk walk = walkOf(reckoned(made));
    ASSERT_EQ(walk.runs.size(), 2u);
    EXPECT_EQ(walk.runs[0].temperature, 130_C);
    EXPECT_FALSE(walk.runs[0].changedFrom);
    EXPECT_EQ(walk.runs[1].changedFrom, 130_C);
    EXPECT_EQ(walk.runs[1].change, changeTime(*made.facts.presses.begin(), 130_C, 160_C));
    EXPECT_GT(walk.runs[1].change, Seconds{0});
}

TEST(Walk, CoolingGarmentIsOnTheRackUntilItsTimeAndThenTheNext) {
    const TestShop made =
        aShop().with(aGarment().doneThrough("press-1").underway("cool-1")).with(aGarment()).build();
    const auto ids = allIds(made);
    ReckonedShop shop = reckoned(made);
    const Walk walk = walkOf(shop);
    ASSERT_EQ(walk.rack.size(), 1u);
    EXPECT_EQ(walk.rack[0].garment, ids[0]);
    EXPECT_EQ(walk.rack[0].after, "peel warm, one motion");
    EXPECT_EQ(walk.rack[0].until, *shop.of(ids[0]).progress.underwaySince + Seconds{40});
    EXPECT_EQ(garmentsIn(walk, WalkState::Cooling), std::vector{ids[0]});
    EXPECT_FALSE(walk.onPress) << "what cools leaves the hands free";

    shop.now.instant = walk.rack[0].until - Seconds{1};
    EXPECT_EQ(walkOf(shop).next, ids[1]);
    shop.now.instant = walk.rack[0].until;
    EXPECT_EQ(walkOf(shop).next, ids[0]) << "a cooled one first";
}

TEST(Walk, WarmPeelThatIsDueIsNextWhateverTheDelayOfACoolOne) {
    const TestShop made = aShop()
                              .with(atHeat(FilmId{7}, 150_C)
                                        .recipe([](Recipe& recipe) {
                                            recipe.peel = Peel::Cool;
                                            recipe.coolBeforePeel = Seconds{1};
                                        })
                                        .doneThrough("press-1")
                                        .underway("cool-1"))
                              .with(aGarment().doneThrough("press-1").underway("cool-1"))
                              .build();
    const auto ids = allIds(made);
    ReckonedShop shop = reckoned(made);
    shop.now.instant = walkOf(shop).rack[1].until;
    const Walk walk = walkOf(shop);
    ASSERT_EQ(walk.rack[0].garment, ids[0]) << "the rack is by time";
    EXPECT_EQ(walk.rack[0].peel, Peel::Cool);
    EXPECT_EQ(walk.rack[1].peel, Peel::Warm);
    EXPECT_EQ(walk.next, ids[1]);
}

TEST(Walk, RackHasTheSoonestFirst) {
    const TestShop made = aShop()
                              .with(atHeat(FilmId{7}, 150_C)
                                        .recipe([](Recipe& recipe) { recipe.coolBeforePeel = Seconds{600}; })
                                        .doneThrough("press-1")
                                        .underway("cool-1"))
                              .with(aGarment().doneThrough("press-1").underway("cool-1"))
                              .build();
    const Walk walk = walkOf(reckoned(made));
    ASSERT_EQ(walk.rack.size(), 2u);
    EXPECT_EQ(walk.rack[0].garment, allIds(made)[1]);
    EXPECT_LT(walk.rack[0].until, walk.rack[1].until);
}

TEST(Walk, UnwashedStandsAsideWithItsReasonAndWhatFreesIt) {
    const Walk walk = walkOf(reckoned(aShop().with(aGarment().onUnwashedTee()).build()));
    EXPECT_TRUE(walk.runs.empty());
    ASSERT_EQ(walk.aside.size(), 1u);
    const AsideEntry& aside = walk.aside[0];
    EXPECT_TRUE(aside.isHeld);
    EXPECT_EQ(aside.what, "Unwashed");
    EXPECT_FALSE(aside.why.empty());
    ASSERT_TRUE(aside.finding);
    EXPECT_EQ(aside.finding->rule, Rule::BlankUnwashed);
    EXPECT_EQ(aside.frees, FreeingAct::WashBlank);
}

TEST(Walk, WaivedUnwashedGarmentIsOnTheWalk) {
    const Walk walk =
        walkOf(reckoned(aShop().with(aGarment().onUnwashedTee().waived(Rule::BlankUnwashed)).build()));
    EXPECT_TRUE(walk.aside.empty());
    EXPECT_EQ(walk.total, 1u);
}

TEST(Walk, WaiverOfAnEarlierAttemptLetsNothingThrough) {
    const Walk walk = walkOf(reckoned(aShop()
                                          .with(aGarment()
                                                    .onUnwashedTee()
                                                    .garment([](Garment& garment) { garment.attempt = 2; })
                                                    .waived(Rule::BlankUnwashed, 1))
                                          .build()));
    EXPECT_EQ(walk.aside.size(), 1u);
    EXPECT_EQ(walk.total, 0u);
}

TEST(Walk, HeldGarmentIsNoneOfThePlans) {
    auto shop = aShop();
    std::size_t ready = 0;
    for (int each = 0; each < 12; ++each) {
        const bool isHeld = each % 3 == 0;
        shop.with(isHeld ? aGarment().onUnwashedTee()
                         : aGarment().onUnwashedTee().waived(Rule::BlankUnwashed));
        ready += isHeld ? 0 : 1;
    }
    const ReckonedShop reckonedShop = reckoned(shop.build());
    const PlanRequest request = planRequest(reckonedShop.facts, reckonedShop.assessments, reckonedShop.now);
    for (const auto& [garment, assessment] : reckonedShop.assessments) {
        const bool isAsked =
            std::ranges::find(request.jobs, garment, &PressJob::garment) != request.jobs.end();
        EXPECT_NE(isAsked, assessment.isHeld());
        EXPECT_NE(reckonedShop.plan.find(garment) != nullptr, assessment.isHeld());
    }
    EXPECT_EQ(request.jobs.size(), ready);
    EXPECT_EQ(press_days::PlanValidator(request, reckonedShop.plan).faults(), std::vector<std::string>{});
}

TEST(Walk, UncutGarmentNamesTheRollItIsCutFrom) {
    const Walk walk = walkOf(reckoned(aShop().with(aGarment().uncut()).build()));
    ASSERT_EQ(walk.aside.size(), 1u);
    const AsideEntry& aside = walk.aside[0];
    EXPECT_FALSE(aside.isHeld);
    EXPECT_EQ(aside.what, "To cut");
    EXPECT_EQ(aside.cutFrom, kRoll);
    EXPECT_EQ(aside.why, "1 decal to cut from R-09 Marram Soft, Dusk.");
}

TEST(Walk, UncutGarmentWithNoRollIsHeldForIt) {
    const Walk walk =
        walkOf(reckoned(aShop().with(aGarment().uncut().lacking("No roll is long enough.")).build()));
    ASSERT_EQ(walk.aside.size(), 1u);
    EXPECT_TRUE(walk.aside[0].isHeld);
    EXPECT_EQ(walk.aside[0].finding->rule, Rule::NoRollFits);
    EXPECT_FALSE(walk.aside[0].cutFrom);
}

TEST(Walk, QuotationIsNoWorkYet) {
    const auto quoted =
        aGarment().onUnwashedTee().order([](Order& order) { order.state = OrderState::Quoted; });
    EXPECT_TRUE(walkOf(reckoned(aShop().with(quoted).build())).isEmpty());
}

TEST(Walk, AsideHasTheEarliestPromiseFirst) {
    const LocalTime noon = LocalTime{theMoment().today()} + Hours{12};
    const TestShop made = aShop()
                              .with(promised(noon + Days{3}).uncut())
                              .with(promised(noon + Days{1}).uncut())
                              .with(promised(noon + Days{2}).uncut())
                              .build();
    const auto ids = allIds(made);
    const Walk walk = walkOf(reckoned(made));
    ASSERT_EQ(walk.aside.size(), 3u);
    EXPECT_EQ(walk.aside[0].garment, ids[1]);
    EXPECT_EQ(walk.aside[1].garment, ids[2]);
    EXPECT_EQ(walk.aside[2].garment, ids[0]);
}

TEST(Walk, LatenessOfThePlanIsSaidBeforeItIs) {
    // Rest of 24 h before the first wash: what is promised for this evening should have been pressed
    // yesterday.
    const LocalTime evening = LocalTime{theMoment().today()} + Hours{18};
    const Walk walk =
        walkOf(reckoned(aShop().with(promised(evening)).with(promised(evening + Days{9})).build()));
    ASSERT_EQ(walk.runs.size(), 1u);
    std::size_t late = 0;
    for (const WalkEntry& entry : walk.runs[0].entries)
        late += entry.late > Seconds{0} ? 1 : 0;
    EXPECT_EQ(late, 1u);
    EXPECT_GT(walk.runs[0].entries[0].late, Hours{15});
}

TEST(Walk, WhatEndsPastClosingIsMarked) {
    TestShop made = aShop().with(aGarment()).build();
    const auto closes = made.facts.settings.hoursOn(made.now.today())->closes;
    const Instant closing = made.now.toInstant(made.now.today() + closes);
    const Seconds takes = walkOf(reckoned(made)).runs.at(0).entries.at(0).ends - made.now.instant;
    const auto isMarkedFrom = [&](Instant begins) {
        made.now.instant = begins;
        return walkOf(reckoned(made)).runs.at(0).entries.at(0).isAfterClosing;
    };
    EXPECT_FALSE(isMarkedFrom(closing - takes)) << "over as the shop closes";
    EXPECT_TRUE(isMarkedFrom(closing - takes + Seconds{1}));
}

TEST(Walk, OfTwoOpenGarmentsTheOneTurnedToLastIsOnThePress) {
    TestShop made = aShop()
                        .with(aGarment().doneThrough("preheat-1").underway("place-1"))
                        .with(aGarment().doneThrough("cool-1").underway("peel-1"))
                        .build();
    const auto ids = allIds(made);
    for (StepRecord& record : made.facts.steps)
        if (!record.finishedAt)
            record.startedAt = record.garment == ids[0] ? hoursAgo(1) : made.now.instant;
    const Walk walk = walkOf(reckoned(made));
    EXPECT_EQ(walk.onPress, ids[1]);
    EXPECT_EQ(garmentsIn(walk, WalkState::OnPress).size(), 2u);
}

TEST(Walk, NoPressLeavesTheGarmentAsideForOne) {
    const Walk walk = walkOf(reckoned(aShop().withoutPress().with(aGarment()).build()));
    EXPECT_TRUE(walk.runs.empty());
    ASSERT_EQ(walk.aside.size(), 1u);
    EXPECT_EQ(walk.aside[0].frees, FreeingAct::AddPress);
}

TEST(Walk, TwoPressesKeepTheirOwnRuns) {
    Press second = aPress();
    second.id = PressId{2};
    second.name = "Hat press";
    auto onSecond = aGarment().pressed(hoursAgo(1));
    TestShop made = aShop().withPress(second).with(aGarment().pressed(hoursAgo(2))).with(onSecond).build();
    const auto ids = allIds(made);
    for (StepRecord& record : made.facts.steps)
        if (record.garment == ids[1])
            record.press = second.id;
    const Walk walk = walkOf(reckoned(made));
    ASSERT_EQ(walk.runs.size(), 2u);
    EXPECT_NE(walk.runs[0].press, walk.runs[1].press);
    EXPECT_EQ(walk.runs[1].change, Seconds{0}) << "the other press was not brought to another heat";
}

} // namespace holdfast::test
