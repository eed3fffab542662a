// SPDX-License-Identifier: GPL-3.0-or-later
// Days at the press of round times, so that things come due at once and limits are met exactly: one number
// for all that comes of them (see same_results_test.cpp). Which of two goes first is then seen.

#include "core/press/day_bound.h"
#include "core/press/day_plan.h"
#include "core/press/next_at_press.h"
#include "core/press/one_machine.h"
#include "core/press/route.h"
#include "core/shop/walk.h"
#include "tests/core/builders.h"
#include "tests/core/day_plan_builders.h"
#include "tests/core/drawn_sum.h"

#include <gtest/gtest.h>

#include <array>
#include <span>
#include <utility>

namespace holdfast::press_days {
namespace {

using test::Draw;
using test::DrawnSum;

// ── days ──

std::vector<RouteStep> roundSteps(Draw& draw) {
    double temperature = 130 + 10 * static_cast<double>(draw.between(0, 3));
    const auto fives = [&](std::int64_t most) { return 5 * draw.between(0, most); };
    std::vector<RouteStep> steps;
    if (draw.oneIn(2))
        steps.push_back(byHand(fives(3)));
    for (std::int64_t layer = draw.between(0, 3); layer > 0; --layer) {
        if (draw.oneIn(4))
            steps.push_back(byHand(fives(4), StepKind::PlaceDecal));
        steps.push_back(pressed(temperature, fives(4), fives(2)));
        if (draw.oneIn(2))
            steps.push_back(cooled(fives(6)));
        if (draw.oneIn(2))
            steps.push_back(byHand(fives(2), StepKind::PeelCarrier));
        if (draw.oneIn(5))
            temperature += 10;
    }
    if (draw.oneIn(9) && !steps.empty())
        steps.back().waiting = Seconds{fives(3)};
    return steps;
}

PlanRequest roundDay(Draw& draw, std::size_t garments) {
    std::vector<std::vector<RouteStep>> all;
    for (std::size_t garment = 0; garment < garments; ++garment)
        all.push_back(roundSteps(draw));
    PlanRequest request = aDay(std::move(all), draw.oneIn(5) ? std::nullopt : std::optional{140.0});
    for (std::int64_t more = draw.between(0, 2); more > 0; --more) {
        request.platens.push_back(
            platen(std::ssize(request.platens) + 1, draw.oneIn(2) ? std::nullopt : std::optional{150.0}));
        Press& press = request.platens.back().press;
        press.heatsPerMinute = draw.oneIn(4) ? 0.5 * static_cast<double>(draw.between(0, 1)) : 20;
        press.coolsPerMinute = draw.oneIn(4) ? 0.5 * static_cast<double>(draw.between(0, 1)) : 20;
    }
    for (PressJob& job : request.jobs) {
        job.due = after(30 * draw.between(0, static_cast<std::int64_t>(garments)));
        job.weight = static_cast<double>(draw.between(0, 2));
        job.isUnderway = draw.oneIn(8);
        job.hasBeenOnPlaten = job.isUnderway && draw.oneIn(2);
        job.isOnPlaten = job.isUnderway && draw.oneIn(3);
        if (draw.oneIn(4))
            job.press = PressId{draw.between(1, 3)};
    }
    return request;
}

void addPlan(DrawnSum& sum, const DayPlan& plan) {
    const auto since = [](Instant at) { return (at - kStart).count(); };
    for (const HeatRun& run : plan.runs) {
        sum << run.press.value << run.temperature.value << run.change.count() << run.changedFrom.has_value()
            << since(run.begins) << since(run.ends) << run.again.size();
        for (const PlannedGarment& garment : run.garments)
            sum << garment.garment.value << garment.temperature.value << since(garment.begins)
                << since(garment.ends) << garment.late.count();
        for (const GarmentId again : run.again)
            sum << again.value;
    }
    for (const PlannedSpan& span : plan.spans)
        sum << span.garment.value << span.step << static_cast<int>(span.resource) << span.press.value
            << since(span.begins) << since(span.ends);
    for (const GarmentId garment : plan.unplaced)
        sum << garment.value;
    for (const GarmentId garment : plan.order)
        sum << garment.value;
    sum << since(plan.ends) << plan.lateness.count() << plan.changes << plan.isCutShort
        << plan.lateGarments();
}

std::uint64_t sumOfRoundDays() {
    Draw draw{61};
    DrawnSum sum;
    for (int day = 0; day < 1200; ++day) {
        const PlanRequest request = roundDay(draw, static_cast<std::size_t>(draw.between(0, 9)));
        std::vector<std::size_t> order = asGiven(request);
        for (std::size_t place = 1; place < order.size(); ++place)
            std::swap(order[place],
                      order[static_cast<std::size_t>(draw.between(0, static_cast<std::int64_t>(place)))]);
        addPlan(sum, planInOrder(request, order));
        for (const PressJob& job : request.jobs)
            sum << whyUnplaced(request, job).value_or(Sentence{});
    }
    return sum.value();
}

TEST(SamePressResults, RoundDaysInAGivenOrder) {
    EXPECT_EQ(sumOfRoundDays(), 12441860632219324994u);
}

// Orders that are as good are told apart by the rules for it.
std::uint64_t sumOfRoundSearches() {
    Draw draw{62};
    DrawnSum sum;
    for (int day = 0; day < 40; ++day) {
        PlanRequest request = roundDay(draw, static_cast<std::size_t>(draw.between(2, 24)));
        request.search.work = static_cast<std::uint64_t>(draw.between(0, 3)) * 400;
        const DayPlan plan = planDay(request);
        addPlan(sum, plan);
        request.search.goesOnFrom = plan.order;
        request.search.shown = plan.order;
        if (request.search.shown.size() > 2)
            std::swap(request.search.shown.front(), request.search.shown.back());
        request.start += Seconds{60};
        addPlan(sum, planDay(request));
    }
    return sum.value();
}

TEST(SamePressResults, RoundDaysSearched) {
    EXPECT_EQ(sumOfRoundSearches(), 14679696181390386064u);
}

std::uint64_t sumOfRoundBounds() {
    Draw draw{68};
    DrawnSum sum;
    for (int day = 0; day < 200; ++day) {
        const PlanRequest request = roundDay(draw, static_cast<std::size_t>(draw.between(1, 9)));
        const TimedDay timed{request};
        const std::vector<std::size_t> order = timed.cleaned(asGiven(request));
        DaySimulation simulation{timed};
        DayBound bound{timed};
        simulation.begin(order);
        for (std::size_t given = 0; given < order.size(); ++given) {
            simulation.run();
            const DayScore least = bound.least(simulation.state(), std::span{order}.subspan(given));
            sum << least.lateness << least.ends << least.changes;
            simulation.give(order[given]);
        }
    }
    return sum.value();
}

TEST(SamePressResults, BoundsOfRoundDays) {
    EXPECT_EQ(sumOfRoundBounds(), 14480331940796552308u);
}

std::uint64_t sumOfWorthwhileChanges() {
    Draw draw{63};
    DrawnSum sum;
    const auto aPlan = [&] {
        DayPlan plan;
        plan.lateness = Seconds{draw.oneIn(2) ? 0 : 20 * draw.between(0, 21)};
        plan.ends = after(60 * draw.between(0, 8));
        plan.changes = static_cast<int>(draw.between(0, 2));
        HeatRun run;
        for (std::int64_t garment = draw.between(0, 2); garment > 0; --garment) {
            run.garments.push_back({});
            run.garments.back().late = Seconds{draw.between(0, 1)};
        }
        plan.runs = {run};
        return plan;
    };
    for (int pair = 0; pair < 4000; ++pair) {
        const DayPlan one = aPlan();
        const DayPlan other = aPlan();
        sum << one.isBetterThan(other) << isWorthTheChange(one, other);
    }
    return sum.value();
}

TEST(SamePressResults, ChangesOfPlanThatAreWorthIt) {
    EXPECT_EQ(sumOfWorthwhileChanges(), 5691048190344844772u);
}

// ── one machine ──

std::uint64_t sumOfRoundOrders() {
    Draw draw{64};
    DrawnSum sum;
    for (int set = 0; set < 24; ++set) {
        const auto jobs = static_cast<std::size_t>(draw.between(1, 14));
        OneMachine machine;
        const auto tens = [&](std::int64_t least, std::int64_t most) {
            return static_cast<double>(10 * draw.between(least, most));
        };
        for (std::size_t job = 0; job < jobs; ++job)
            machine.tasks.push_back({tens(1, 4), tens(0, 30), static_cast<double>(draw.between(0, 3))});
        const bool hasSetups = draw.oneIn(2);
        for (std::size_t job = 0; hasSetups && job < jobs; ++job)
            machine.firstSetups.push_back(tens(0, 2));
        for (std::size_t pair = 0; hasSetups && pair < jobs * jobs; ++pair)
            machine.setups.push_back(tens(0, 2));
        for (const std::size_t job : dispatchedOrder(machine))
            sum << job;
        SearchLimits limits;
        limits.rounds = 6;
        const auto found = searchOneMachine(machine, limits);
        for (const std::size_t job : found.order)
            sum << job;
        sum << weightedTardiness(machine, found.order);
    }
    return sum.value();
}

TEST(SamePressResults, RoundTasksOnOneMachine) {
    EXPECT_EQ(sumOfRoundOrders(), 11068051170147413463u);
}

// ── what is next ──

std::uint64_t sumOfWhatIsNext() {
    Draw draw{65};
    DrawnSum sum;
    for (int moment = 0; moment < 4000; ++moment) {
        std::vector<OnTheRack> rack;
        for (std::int64_t entry = draw.between(0, 4); entry > 0; --entry)
            rack.push_back({GarmentId{entry}, static_cast<Peel>(draw.between(0, 2)),
                            std::chrono::milliseconds{draw.between(-2, 2)}, !draw.oneIn(3)});
        const auto inHand = draw.oneIn(2) ? std::optional{GarmentId{10}} : std::nullopt;
        const auto planned = draw.oneIn(2) ? std::optional{GarmentId{11}} : std::nullopt;
        const NextAtPress next = nextAtPress({inHand, inHand && draw.oneIn(2), rack, planned});
        sum << static_cast<int>(next.kind) << (next.garment ? next.garment->value : 0)
            << dueOnRack(rack).value_or(GarmentId{0}).value;
    }
    return sum.value();
}

TEST(SamePressResults, WhatIsNextOfThoseDueAtOnce) {
    EXPECT_EQ(sumOfWhatIsNext(), 6411058303230650880u);
}

// ── routes ──

Decal drawnDecal(Draw& draw, std::int64_t number) {
    const auto tens = [&](std::int64_t least, std::int64_t most) {
        return Millimetres{10 * draw.between(least, most)};
    };
    Decal decal;
    decal.id = DecalId{number};
    decal.film = draw.oneIn(2) ? test::kFilm : test::kOtherFilm;
    decal.placement = static_cast<Placement>(draw.between(0, 5));
    decal.below = tens(-2, 30);
    decal.aside = tens(-12, 12);
    decal.width = tens(1, 44);
    decal.height = tens(1, 44);
    decal.layer = static_cast<int>(draw.between(1, 3));
    return decal;
}

test::TestShop drawnGarment(Draw& draw) {
    const auto recipe = [&](Recipe& one) {
        one.temperature = Celsius{static_cast<double>(140 + 5 * draw.between(0, 3))};
        one.dwell = Seconds{5 * draw.between(1, 3)};
        one.preheat = Seconds{5 * draw.between(0, 2)};
        one.peel = static_cast<Peel>(draw.between(0, 2));
        one.coolBeforePeel = Seconds{20 * draw.between(0, 2)};
        one.finishFront = Seconds{5 * draw.between(0, 2)};
        one.finishBack = Seconds{5 * draw.between(0, 2)};
        one.pressure = static_cast<Pressure>(draw.between(0, 1));
    };
    test::GarmentBuilder garment = test::aGarment();
    garment.recipe(recipe);
    garment.withOtherFilm([&](Film& film) {
        film = test::aFilm(test::kOtherFilm);
        if (draw.oneIn(6))
            film.recipe.reset();
        else
            recipe(*film.recipe);
    });
    garment.style([&](BlankStyle& style) {
        style.obstacles.clear();
        for (const Obstacle obstacle : {Obstacle::Zip, Obstacle::Buttons, Obstacle::Seams})
            if (draw.oneIn(5))
                style.obstacles.push_back({obstacle, static_cast<WayRound>(draw.between(0, 2))});
    });
    garment.garment([&](Garment& one) {
        one.decals.clear();
        for (std::int64_t decal = draw.between(0, 4); decal > 0; --decal)
            one.decals.push_back(drawnDecal(draw, decal));
    });
    return test::aShop()
        .press([&](Press& press) {
            press.platenWidth = Millimetres{10 * draw.between(3, 40)};
            press.platenHeight = Millimetres{10 * draw.between(3, 40)};
        })
        .with(garment)
        .build();
}

std::uint64_t sumOfRoutes() {
    Draw draw{66};
    DrawnSum sum;
    for (int garment = 0; garment < 1500; ++garment) {
        const test::TestShop shop = drawnGarment(draw);
        const Route route = shop.route();
        for (const RouteStep& step : route.steps)
            sum << step.key << static_cast<int>(step.kind) << step.title << step.detail
                << step.attended.count() << step.platen.count() << step.waiting.count()
                << (step.temperature ? step.temperature->value : 0.0) << (step.decal ? step.decal->value : 0)
                << (step.peel ? static_cast<int>(*step.peel) : -1);
        sum << (route.press ? route.press->value : 0) << route.total().count();
        for (const Decal& decal : shop.garment().decals) {
            const PlatenPieces pieces = piecesOn(*shop.facts.presses.begin(), decal);
            sum << pieces.columns << pieces.rows;
        }
    }
    return sum.value();
}

TEST(SamePressResults, RoutesOfManyGarments) {
    EXPECT_EQ(sumOfRoutes(), 13049114175816261340u);
}

// ── the walk of shops at work ──

// Some steps of each garment's route done, one a minute, and perhaps the next one open since a while.
void beginSteps(Draw& draw, test::TestShop& shop) {
    for (const Garment& garment : shop.facts.garments) {
        if (draw.oneIn(2))
            continue;
        const Route route = routeOf(shop.facts, garment);
        // It is ten in the morning: some began as the day did, and some the day before.
        Instant at = shop.now.instant - (draw.oneIn(4) ? Hours{10} : Minutes{draw.between(0, 40)});
        for (std::int64_t step = draw.between(-1, std::ssize(route.steps) - 1); step >= 0; --step) {
            StepRecord record;
            record.garment = garment.id;
            record.attempt = garment.attempt;
            record.press = draw.oneIn(5) ? PressId{2} : test::kBench;
            record.key = route.steps[static_cast<std::size_t>(step)].key;
            const bool isOpen = record.key == "place-1" || draw.oneIn(6);
            record.startedAt = at;
            at -= Seconds{5 * draw.between(0, 12)};
            if (!isOpen)
                record.finishedAt = record.startedAt;
            shop.facts.steps.push_back(record);
        }
    }
}

test::TestShop shopAtWork(Draw& draw) {
    test::ShopBuilder builder = test::aShop();
    builder.press([&](Press& press) { press.hasSmallPlaten = draw.oneIn(2); });
    if (draw.oneIn(2)) {
        Press second = test::aPress();
        second.id = PressId{2};
        builder.withPress(second);
    }
    for (std::int64_t garment = draw.between(1, 5); garment > 0; --garment) {
        test::GarmentBuilder one = test::aGarment();
        one.recipe([](Recipe& recipe) { recipe.temperature = Celsius{150}; });
        const auto due = LocalTime{test::theMoment().today()} + Minutes{30 * draw.between(20, 90)};
        one.order([&](Order& order) { order.promised = due; });
        if (draw.oneIn(6))
            one.onUnwashedTee();
        if (draw.oneIn(6))
            one.withDecal([](Decal& decal) { decal.placement = Placement::Back; });
        builder.with(one);
    }
    test::TestShop shop = builder.build();
    beginSteps(draw, shop);
    return shop;
}

void addRequest(DrawnSum& sum, const PlanRequest& request) {
    for (const PlatenNow& platen : request.platens)
        sum << (platen.temperature ? platen.temperature->value : 0.0);
    for (const PressJob& job : request.jobs) {
        sum << job.garment.value << (job.due - request.start).count() << job.weight << job.isUnderway
            << job.hasBeenOnPlaten << job.isOnPlaten;
        for (const RouteStep& step : job.steps)
            sum << step.key << step.attended.count() << step.platen.count() << step.waiting.count();
    }
}

void addWalkOf(DrawnSum& sum, const ReckonedShop& shop) {
    const Walk walk = walkOf(shop);
    const auto since = [&](Instant at) { return (at - shop.now.instant).count(); };
    for (const WalkRun& run : walk.runs) {
        sum << run.temperature.value << run.change.count() << since(run.begins) << since(run.ends);
        for (const WalkEntry& entry : run.entries)
            sum << entry.garment.value << static_cast<int>(entry.state) << since(entry.begins)
                << since(entry.ends) << entry.late.count() << entry.isAfterClosing;
    }
    for (const RackEntry& entry : walk.rack)
        sum << entry.garment.value << since(entry.until) << entry.after << static_cast<int>(entry.peel);
    for (const AsideEntry& entry : walk.aside)
        sum << entry.garment.value << static_cast<int>(entry.stage) << entry.isHeld << entry.what
            << entry.why;
    sum << walk.onPress.value_or(GarmentId{0}).value << walk.next.value_or(GarmentId{0}).value << walk.pressed
        << walk.total << since(walk.ends);
}

std::uint64_t sumOfShopsAtWork() {
    Draw draw{67};
    DrawnSum sum;
    for (int day = 0; day < 250; ++day) {
        const test::TestShop made = shopAtWork(draw);
        ReckonedShop shop;
        shop.now = made.now;
        shop.facts = made.facts;
        shop.conditions = made.conditions;
        shop.allotment = made.allotment;
        shop.assessments = assessAll(shop.around());
        PlanRequest request = planRequest(shop.facts, shop.assessments, shop.now);
        addRequest(sum, request);
        request.search.work = 0;
        shop.plan = planDay(request);
        addWalkOf(sum, shop);
        for (const auto& [garment, assessment] : shop.assessments)
            sum << garment.value << static_cast<int>(assessment.stage) << assessment.progress.finished
                << assessment.progress.underway.value_or(99) << assessment.findings.size();
    }
    return sum.value();
}

TEST(SamePressResults, WalksOfShopsAtWork) {
    EXPECT_EQ(sumOfShopsAtWork(), 11511970284409156215u);
}

} // namespace
} // namespace holdfast::press_days
