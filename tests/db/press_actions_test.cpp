// SPDX-License-Identifier: GPL-3.0-or-later
#include "tests/db/small_shop.h"

#include <limits>

namespace holdfast::db {
namespace {

using PressActions = SmallShop;
using Doing = Result<Done>;
using Finishing = Result<std::string>;

constexpr double kNoNumber = std::numeric_limits<double>::quiet_NaN();

TEST_F(PressActions, TakingUpOpensTheFirstStepAndTakesTheBlank) {
    const auto order = readyToPress();
    const auto garment = garmentOf(order);
    const auto lot = lotOf(garment);
    const Route route = routeFor(garment);
    expectUndoable<Doing>([&] { return takeUp(shop(), garment, route, now()); }, "1-a put on the press");
    EXPECT_EQ(unitsOf(*lot), 0);
    EXPECT_EQ(lotOf(garment), lot);
    EXPECT_EQ(text("SELECT step_key FROM press_step"), route.steps.front().key);
    EXPECT_EQ(number("SELECT press_id FROM press_step"), m_press.value);
    EXPECT_EQ(connection().number("SELECT garment_id FROM lot_move WHERE units = -1"), garment.value);
    expectRefused<Doing>([&] { return takeUp(shop(), garment, route, now()); }, "", "on the press already");
}

TEST_F(PressActions, WhatIsNotReadyIsNotTakenUp) {
    auto draft = aDraft();
    draft.isQuotation = true;
    draft.isConfirmed = false;
    const auto order = take(draft);
    const auto garment = garmentOf(order);
    const Route route = routeFor(garment);
    const auto refused = [&](const std::string& words) {
        expectRefused<Doing>([&] { return takeUp(shop(), garment, route, now()); }, "", words);
    };
    refused("is a quotation");
    ASSERT_TRUE(confirmQuotation(shop(), order.id).ok());
    refused("has no blank");
    receiveCleanTees(1);
    refused("not all of its decals are cut");
    ASSERT_TRUE(confirmWording(shop(), decalOf(order), "by phone").ok());
    cutAll(order);
    expectRefused<Doing>([&] { return takeUp(shop(), garment, Route{}, now()); }, "", "no step");
    Route elsewhere = route;
    elsewhere.press = PressId{4};
    expectRefused<Doing>([&] { return takeUp(shop(), garment, elsewhere, now()); }, "press");
    EXPECT_TRUE(takeUp(shop(), garment, route, now()).ok());
    expectRefused<Doing>([&] { return takeUp(shop(), GarmentId{3}, route, now()); }, "garment");
}

TEST_F(PressActions, WordingThatWasLetThroughIsTakenUp) {
    receiveCleanTees(1);
    auto draft = aDraft();
    draft.isConfirmed = false;
    const auto order = take(draft);
    const auto garment = garmentOf(order);
    expectRefused<Doing>([&] { return cutDecals(shop(), m_roll, decalsOf(garment), {240}, now()); }, "",
                         "1-a is held. ");
    ASSERT_TRUE(waive(shop(), garment, Rule::WordingUnconfirmed, "a sample for the stall").ok());
    cutAll(order);
    EXPECT_TRUE(takeUp(shop(), garment, routeFor(garment), now()).ok());
}

TEST_F(PressActions, LastBlankThatWasCountedAwayIsNotTakenUp) {
    const auto order = readyToPress();
    ASSERT_TRUE(correctCount(shop(), *lotOf(garmentOf(order)), 0, "not on the rail").ok());
    expectRefused<Doing>([&] { return takeUp(shop(), garmentOf(order), routeFor(garmentOf(order)), now()); },
                         "", "has no blank");
}

TEST_F(PressActions, OneIsTakenUpOnlyWhileTheOthersCool) {
    const auto order = readyToPress(2);
    const auto first = garmentOf(order, 0), second = garmentOf(order, 1);
    const Route route = routeFor(first);
    const Route other = routeFor(second);
    ASSERT_TRUE(takeUp(shop(), first, route, now()).ok());
    for (std::string open; !open.starts_with("cool"); open = finishStep(shop(), first, route).value())
        expectRefused<Doing>([&] { return takeUp(shop(), second, other, now()); }, "",
                             "1-a is on the press. Finish its step first.");
    EXPECT_TRUE(takeUp(shop(), second, other, now()).ok()) << "what cools needs neither platen nor hands";
}

TEST_F(PressActions, WarmPeelDoesNotWaitButThePlatenClosesOverOneGarmentAtATime) {
    const auto order = readyToPress(2);
    const auto first = garmentOf(order, 0), second = garmentOf(order, 1);
    const Route route = routeFor(first);
    const Route other = routeFor(second);
    const auto walkTo = [&](GarmentId garment, const Route& along, std::string_view stem) {
        std::string open;
        while (!open.starts_with(stem))
            open = finishStep(shop(), garment, along).value();
    };
    ASSERT_TRUE(takeUp(shop(), first, route, now()).ok());
    walkTo(first, route, "cool");
    ASSERT_TRUE(takeUp(shop(), second, other, now()).ok());
    walkTo(second, other, "preheat");
    expectRefused<Finishing>([&] { return finishStep(shop(), first, route); }, "",
                             "1-b is on the press. Finish its step first.");
    expectRefused<Doing>([&] { return backAStep(shop(), first); }, "", "1-b is on the press");
    walkTo(second, other, "place");
    EXPECT_EQ(finishStep(shop(), first, route).value(), "peel-1") << "between two steps of the other";
    EXPECT_EQ(finishStep(shop(), first, route).value(), "finish-front-1");
    expectRefused<Finishing>([&] { return finishStep(shop(), second, other); }, "",
                             "1-a is on the press. Finish its step first.");
    expectSound();
}

TEST_F(PressActions, EachStepOpensTheNextUntilItRests) {
    const auto order = readyToPress();
    const auto garment = garmentOf(order);
    const Route route = routeFor(garment);
    ASSERT_TRUE(takeUp(shop(), garment, route, now()).ok());
    for (std::size_t step = 0; step + 1 < route.steps.size(); ++step) {
        wait(Seconds{20});
        expectUndoable<Finishing>([&] { return finishStep(shop(), garment, route); },
                                  "1-a, done: " + route.steps[step].title.english());
        EXPECT_EQ(text("SELECT step_key FROM press_step WHERE finished_at IS NULL"),
                  route.steps[step + 1].key);
    }
    EXPECT_EQ(finishStep(shop(), garment, route).value(), "");
    EXPECT_EQ(lastTitle(), "1-a pressed, rests 24 h");
    EXPECT_EQ(number("SELECT COUNT(*) FROM press_step WHERE finished_at IS NULL"), 0);
    expectRefused<Finishing>([&] { return finishStep(shop(), garment, route); }, "", "not on the press");
    expectRefused<Doing>([&] { return takeUp(shop(), garment, route, now()); }, "", "pressed already");
    expectRefused<Doing>([&] { return restartStep(shop(), garment); }, "", "not on the press");
    expectRefused<Doing>([&] { return backAStep(shop(), garment); }, "", "not on the press");
}

TEST_F(PressActions, TooLongUnderHeatIsSaidInTheEntryOfItsStep) {
    const auto garment = garmentOf(readyToPress());
    const Route route = routeFor(garment);
    const auto pressed = std::ranges::find(route.steps, std::string{"press-1"}, &RouteStep::key);
    ASSERT_NE(pressed, route.steps.end());
    const Seconds allowed = loadSettings(connection()).mostOverUnderHeat;
    ASSERT_TRUE(takeUp(shop(), garment, route, now()).ok());
    std::string open;
    while (open != "press-1")
        open = finishStep(shop(), garment, route).value();
    wait(pressed->platen + allowed - Seconds{1});
    ASSERT_TRUE(finishStep(shop(), garment, route).ok());
    EXPECT_EQ(lastTitle(), "1-a, done: Press");
    ASSERT_TRUE(backAStep(shop(), garment).ok());
    wait(pressed->platen + allowed);
    expectUndoable<Finishing>([&] { return finishStep(shop(), garment, route); },
                              "1-a, done: Press, 30 s too long under heat");
    ASSERT_TRUE(backAStep(shop(), garment).ok());
    wait(pressed->platen + Minutes{155});
    ASSERT_TRUE(finishStep(shop(), garment, route).ok());
    EXPECT_EQ(lastTitle(), "1-a, done: Press, 155 min too long under heat");
}

TEST_F(PressActions, StepGoneFromTheRouteIsFinishedAllTheSame) {
    const auto order = readyToPress();
    const auto garment = garmentOf(order);
    const Route route = routeFor(garment);
    ASSERT_TRUE(takeUp(shop(), garment, route, now()).ok());
    std::string open;
    while (!open.starts_with("cool"))
        open = finishStep(shop(), garment, route).value();
    auto film = aFilm("Dusk");
    film.recipe->peel = Peel::Hot;
    ASSERT_TRUE(enterRecipe(shop(), m_film, *film.recipe).ok());
    EXPECT_EQ(finishStep(shop(), garment, routeFor(garment)).value(), "peel-1");
    EXPECT_EQ(lastTitle(), "1-a, done: Cool");
}

TEST_F(PressActions, ClockSetBackLeavesNoStepThatEndsBeforeItBegan) {
    const auto order = readyToPress();
    const auto garment = garmentOf(order);
    ASSERT_TRUE(takeUp(shop(), garment, routeFor(garment), now()).ok());
    wait(-Hours{1});
    ASSERT_TRUE(finishStep(shop(), garment, routeFor(garment)).ok());
    EXPECT_EQ(number("SELECT COUNT(*) FROM press_step WHERE finished_at < started_at"), 0);
}

TEST_F(PressActions, StepIsBegunAnew) {
    const auto order = readyToPress();
    const auto garment = garmentOf(order);
    expectRefused<Doing>([&] { return restartStep(shop(), garment); }, "", "not on the press");
    ASSERT_TRUE(takeUp(shop(), garment, routeFor(garment), now()).ok());
    wait(Seconds{90});
    expectUndoable<Doing>([&] { return restartStep(shop(), garment); }, "1-a, started again: Read tag");
    EXPECT_EQ(number("SELECT started_at FROM press_step"), now().instant.time_since_epoch().count());
}

TEST_F(PressActions, StepBackDropsTheOpenOneAndBeforeTheFirstGivesTheBlankBack) {
    const auto order = readyToPress();
    const auto garment = garmentOf(order);
    const auto lot = lotOf(garment);
    const Route route = routeFor(garment);
    ASSERT_TRUE(takeUp(shop(), garment, route, now()).ok());
    ASSERT_TRUE(finishStep(shop(), garment, route).ok());
    wait(Seconds{30});
    expectUndoable<Doing>([&] { return backAStep(shop(), garment); }, "1-a, a step back: read tag");
    EXPECT_EQ(number("SELECT COUNT(*) FROM press_step"), 1);
    EXPECT_EQ(number("SELECT started_at FROM press_step WHERE finished_at IS NULL"),
              now().instant.time_since_epoch().count());
    expectUndoable<Doing>([&] { return backAStep(shop(), garment); }, "1-a put back on the walk");
    EXPECT_EQ(number("SELECT COUNT(*) FROM press_step"), 0);
    EXPECT_EQ(unitsOf(*lot), 1);
    EXPECT_EQ(lotOf(garment), lot) << "it is still kept for it";
    EXPECT_EQ(takeTees().number, 2);
    EXPECT_FALSE(lotOf(garmentsOf(OrderId{number("SELECT MAX(id) FROM shop_order")}).at(0)));
    EXPECT_TRUE(takeUp(shop(), garment, route, now()).ok());
}

TEST_F(PressActions, WaiverStandsWithItsReasonInThisAttempt) {
    const auto order = readyToPress();
    const auto garment = garmentOf(order);
    expectUndoable<Doing>([&] { return waive(shop(), garment, Rule::RollPastAge, " strip looked fine "); },
                          "1-a let through, roll past age: strip looked fine");
    expectRefused<Doing>([&] { return waive(shop(), garment, Rule::RollPastAge, "again"); }, "", "already");
    for (const std::string& bad : {std::string{}, std::string{"ok"}, std::string(201, 'x')})
        expectRefused<Doing>([&] { return waive(shop(), garment, Rule::PressOff, bad); }, "reason");
    pressAll(garment);
    ASSERT_TRUE(markSpoiled(shop(), garment, "scorched").ok());
    EXPECT_TRUE(waive(shop(), garment, Rule::RollPastAge, "strip looked fine").ok());
    EXPECT_EQ(number("SELECT MAX(attempt) FROM waiver"), 2);
}

TEST_F(PressActions, SpoiledGarmentBeginsAnewWithAnotherBlank) {
    const auto lot = receiveCleanTees(2);
    const auto order = takeTees();
    cutAll(order);
    const auto garment = garmentOf(order);
    const Route route = routeFor(garment);
    expectRefused<Doing>([&] { return markSpoiled(shop(), garment, "scorched"); }, "",
                         "not been on the press");
    ASSERT_TRUE(takeUp(shop(), garment, route, now()).ok());
    ASSERT_TRUE(finishStep(shop(), garment, route).ok());
    for (const std::string& bad : {std::string{}, std::string{"ab"}, std::string(201, 'x')})
        expectRefused<Doing>([&] { return markSpoiled(shop(), garment, bad); }, "cause");
    expectUndoable<Doing>([&] { return markSpoiled(shop(), garment, "scorched"); }, "1-a spoiled: scorched");
    EXPECT_EQ(number("SELECT attempt FROM garment"), 2);
    EXPECT_EQ(number("SELECT COUNT(*) FROM decal WHERE cut_at IS NOT NULL OR cut_roll_id IS NOT NULL"), 0);
    EXPECT_EQ(text("SELECT attempt || cause FROM spoil"), "1scorched");
    EXPECT_EQ(unitsOf(lot), 1) << "the spoiled unit stays taken";
    EXPECT_EQ(lotOf(garment), lot);
    EXPECT_EQ(number("SELECT COUNT(*) FROM press_step WHERE finished_at IS NULL"), 0);
    cutAll(order);
    pressAll(garment);
    EXPECT_EQ(unitsOf(lot), 0);
    ASSERT_TRUE(handOver(shop(), order.id, now()).ok());
    expectRefused<Doing>([&] { return markSpoiled(shop(), garment, "scorched"); }, "", "handed over");
}

TEST_F(PressActions, SpoiledGarmentWaitsWhereNoBlankIsFree) {
    const auto order = readyToPress();
    const auto garment = garmentOf(order);
    pressAll(garment);
    ASSERT_TRUE(markSpoiled(shop(), garment, "peeled too soon").ok());
    EXPECT_FALSE(lotOf(garment));
    const auto fresh = receiveTees(1);
    EXPECT_EQ(lotOf(garment), fresh);
    EXPECT_EQ(titlesOf(order.id).front(), "Received 1 × Tee, M, Moss");
}

TEST_F(PressActions, PressIsSetUpWithinItsLimits) {
    Press press;
    press.name = "Right";
    press.platenWidth = {400};
    press.platenHeight = {500};
    expectUndoable<Result<PressId>>([&] { return addPress(shop(), press); }, "Press Right set up");
    const std::vector<std::pair<std::string, std::function<void(Press&)>>> wrong{
        {"name", [](auto& one) { one.name = ""; }},
        {"name", [](auto& one) { one.name = "left"; }},
        {"platenWidth", [](auto& one) { one.platenWidth = {0}; }},
        {"platenHeight", [](auto& one) { one.platenHeight = {9000}; }},
        {"heatsPerMinute", [](auto& one) { one.heatsPerMinute = kNoNumber; }},
        {"coolsPerMinute", [](auto& one) { one.coolsPerMinute = 0; }},
        {"tolerance", [](auto& one) { one.tolerance = {-3}; }},
        {"evenWithin", [](auto& one) { one.evenWithin = {500}; }},
        {"checkEvery", [](auto& one) { one.checkEvery = Days{0}; }},
    };
    for (const auto& [field, spoil] : wrong) {
        Press bad = press;
        bad.name = "Third";
        spoil(bad);
        expectRefused<Result<PressId>>([&] { return addPress(shop(), bad); }, field);
    }
}

TEST_F(PressActions, PressIsDescribedAnewWithinItsLimits) {
    Press press = loadFactsOf(connection(), {}).presses.at(m_press);
    press.name = "Left, by the window";
    press.platenWidth = {380};
    press.hasSmallPlaten = true;
    press.coolsPerMinute = 4.5;
    press.checkEvery = Days{14};
    expectUndoable<Doing>(
        [&] { return changePress(shop(), press); },
        "Press Left, by the window changed: name: Left, by the window (was Left), small platen: "
        "yes (was no), speed of cooling: 4.5 °C a minute (was 5 °C a minute), days between "
        "checks: 14 days (was 30 days)");
    const Press after = loadFactsOf(connection(), {}).presses.at(m_press);
    EXPECT_EQ(after.name, press.name);
    EXPECT_EQ(after.platenWidth, press.platenWidth);
    EXPECT_TRUE(after.hasSmallPlaten);
    EXPECT_EQ(after.coolsPerMinute, 4.5);
    EXPECT_EQ(after.checkEvery, Days{14});

    Press right = press;
    right.name = "Right";
    ASSERT_TRUE(addPress(shop(), right).ok());
    press.name = "right";
    expectRefused<Doing>([&] { return changePress(shop(), press); }, "name", "already");
    press.name = "Left";
    press.tolerance = {0};
    expectRefused<Doing>([&] { return changePress(shop(), press); }, "tolerance");
    press.id = PressId{7};
    expectRefused<Doing>([&] { return changePress(shop(), press); }, "press", "no such press");
}

TEST_F(PressActions, PressCheckKeepsItsReadingsInOrder) {
    expectUndoable<Doing>(
        [&] { return recordPressCheck(shop(), m_press, {150}, {{149}, {151.5}, {150}}, "Wren"); },
        "Press Left checked at 150 °C by Wren");
    const auto facts = loadFactsOf(connection(), {});
    ASSERT_NE(facts.lastCheck(m_press), nullptr);
    EXPECT_EQ(facts.lastCheck(m_press)->readings, (std::vector<Celsius>{{149}, {151.5}, {150}}));
    const auto refused = [&](double set, std::vector<Celsius> readings, const std::string& by,
                             const std::string& field) {
        expectRefused<Doing>([&] { return recordPressCheck(shop(), m_press, {set}, readings, by); }, field);
    };
    refused(39, {{40}}, "Wren", "set");
    refused(251, {{240}}, "Wren", "set");
    refused(kNoNumber, {{240}}, "Wren", "set");
    refused(150, {}, "Wren", "readings");
    refused(150, std::vector<Celsius>(26, Celsius{150}), "Wren", "readings");
    refused(150, {{150}, {301}}, "Wren", "readings");
    refused(150, {{-21}}, "Wren", "readings");
    refused(150, {{kNoNumber}}, "Wren", "readings");
    refused(150, {{150}}, " ", "by");
    expectRefused<Doing>([&] { return recordPressCheck(shop(), PressId{2}, {150}, {{150}}, "Wren"); },
                         "press");
}

} // namespace
} // namespace holdfast::db
