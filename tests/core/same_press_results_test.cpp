// Days at the press of round times, so that things come due at once and limits are met exactly: one number
// for all that comes of them (see same_results_test.cpp). Which of two goes first is then seen.

#include "core/press/day_plan.h"
#include "core/press/next_at_press.h"
#include "core/press/one_machine.h"
#include "core/press/route.h"
#include "tests/core/builders.h"
#include "tests/core/day_plan_builders.h"
#include "tests/core/drawn_sum.h"

#include <gtest/gtest.h>

#include <array>
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
        request.platens.back().press.coolsPerMinute = draw.oneIn(6) ? 0 : 20;
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
            sum << whyUnplaced(request, job).value_or("");
    }
    return sum.value();
}

TEST(SamePressResults, RoundDaysInAGivenOrder) {
    EXPECT_EQ(sumOfRoundDays(), 14949269632868720497u);
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
    EXPECT_EQ(sumOfRoundSearches(), 9575752411995610533u);
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
    EXPECT_EQ(sumOfRoutes(), 14828465432243879538u);
}

} // namespace
} // namespace holdfast::press_days
