// SPDX-License-Identifier: GPL-3.0-or-later
// The same request gives the same answer on every machine and with every compiler: what each search finds is
// written down here as one number. A change of a search changes it; where that was meant, and the benches say
// that the answers are no worse, the new number goes in.

#include "core/cutting/strip_packing.h"
#include "core/press/day_bound.h"
#include "core/press/day_plan.h"
#include "core/press/one_machine.h"
#include "tests/core/day_plan_builders.h"
#include "tests/core/drawn_sum.h"

#include <gtest/gtest.h>

#include <array>
#include <numeric>
#include <span>

namespace holdfast::press_days {
namespace {

using test::Draw;
using Sum = test::DrawnSum;

PlanRequest drawnDay(Draw& draw, std::size_t garments, bool hasTwoPresses) {
    const double temperatures[] = {130, 150, 160};
    std::vector<std::vector<RouteStep>> all;
    for (std::size_t garment = 0; garment < garments; ++garment) {
        const double temperature = temperatures[draw.between(0, 2)];
        all.push_back({byHand(draw.between(1, 20)), pressed(temperature, draw.between(3, 20), 5),
                       cooled(draw.between(5, 90)), byHand(draw.between(1, 10), StepKind::PeelCarrier),
                       pressed(temperature, draw.between(2, 10), 2)});
    }
    PlanRequest request = aDay(std::move(all), 150.0);
    if (hasTwoPresses)
        request.platens.push_back(platen(2, std::nullopt));
    for (PressJob& job : request.jobs) {
        job.due = after(draw.between(0, static_cast<std::int64_t>(garments) * 60));
        job.weight = static_cast<double>(draw.between(1, 3));
    }
    return request;
}

std::uint64_t sumOfDays(std::size_t garments, bool hasTwoPresses) {
    Draw draw{garments + (hasTwoPresses ? 1000u : 0u)};
    Sum sum;
    for (int day = 0; day < 4; ++day) {
        PlanRequest request = drawnDay(draw, garments, hasTwoPresses);
        request.search.work = 6000;
        const DayPlan plan = planDay(request);
        for (const PressJob& job : request.jobs) {
            const PlannedGarment* garment = plan.find(job.garment);
            sum << garment->press.value << (garment->begins - request.start).count()
                << (garment->ends - request.start).count();
        }
    }
    return sum.value();
}

// A bound that is lower than it need be is no fault, but the search of all orders then takes longer.
std::uint64_t sumOfBounds() {
    Draw draw{41};
    Sum sum;
    for (int day = 0; day < 60; ++day) {
        const PlanRequest request =
            drawnDay(draw, static_cast<std::size_t>(draw.between(2, 12)), draw.oneIn(2));
        const TimedDay timed{request};
        std::vector<std::size_t> order(request.jobs.size());
        std::iota(order.begin(), order.end(), std::size_t{0});
        order = timed.cleaned(order);
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

std::uint64_t sumOfOrders(bool hasSetups) {
    Draw draw{hasSetups ? 7u : 8u};
    Sum sum;
    for (int set = 0; set < 6; ++set) {
        constexpr std::size_t kJobs = 30;
        OneMachine machine;
        const auto drawn = [&](std::int64_t low, std::int64_t high) {
            return static_cast<double>(draw.between(low, high));
        };
        for (std::size_t job = 0; job < kJobs; ++job)
            machine.tasks.push_back({drawn(1, 40), drawn(0, 600), drawn(1, 9)});
        for (std::size_t job = 0; hasSetups && job < kJobs; ++job)
            machine.firstSetups.push_back(drawn(0, 30));
        for (std::size_t pair = 0; hasSetups && pair < kJobs * kJobs; ++pair)
            machine.setups.push_back(drawn(0, 30));
        SearchLimits limits;
        limits.rounds = 20;
        for (const std::size_t job : searchOneMachine(machine, limits).order)
            sum << static_cast<std::int64_t>(job);
    }
    return sum.value();
}

struct Strips {
    bool mayTurn = false;
    bool isBounded = false; // the strip ends, and not all pieces fit
    int pinned = 0;
};

std::uint64_t sumOfStrips(const Strips& strips) {
    Draw draw{strips.mayTurn ? 21u : 22u};
    Sum sum;
    for (int set = 0; set < 5; ++set) {
        StripTask task;
        task.width = draw.between(300, 600);
        if (strips.isBounded)
            task.length = 500;
        for (std::int64_t piece = draw.between(8, 40); piece > 0; --piece)
            task.pieces.push_back(
                {draw.between(20, 290), draw.between(20, 290), strips.mayTurn, std::nullopt});
        for (int pin = 0; pin < strips.pinned; ++pin)
            task.pieces[static_cast<std::size_t>(pin)] = {40, 60, false, StripPlace{10, 200 * pin, false}};
        StripSearch search;
        search.work = 150'000;
        const StripPacking packing = packWithin(task, search).value();
        for (const auto& place : packing.places)
            sum << (place ? place->across : -1) << (place ? place->along : -1) << (place && place->isTurned);
    }
    return sum.value();
}

TEST(SameEverywhere, PlansOfDays) {
    EXPECT_EQ(sumOfDays(8, false), 11739742409752944427u);
    EXPECT_EQ(sumOfDays(30, false), 663909351685508046u);
    EXPECT_EQ(sumOfDays(30, true), 14346961217321347041u);
    EXPECT_EQ(sumOfDays(70, true), 8300520759320054748u);
}

TEST(SameEverywhere, BoundsOfDays) {
    EXPECT_EQ(sumOfBounds(), 1805878447231895584u);
}

TEST(SameEverywhere, OrdersOnOneMachine) {
    EXPECT_EQ(sumOfOrders(false), 1191296144233617765u);
    EXPECT_EQ(sumOfOrders(true), 2671590353750367941u);
}

TEST(SameEverywhere, PackingsOfStrips) {
    EXPECT_EQ(sumOfStrips({}), 8830743658718750454u);
    EXPECT_EQ(sumOfStrips({.mayTurn = true}), 15355492212059501002u);
    EXPECT_EQ(sumOfStrips({.isBounded = true}), 9653923413360565284u);
    EXPECT_EQ(sumOfStrips({.mayTurn = true, .isBounded = true}), 11349293746422504886u);
    EXPECT_EQ(sumOfStrips({.mayTurn = true, .pinned = 3}), 18386039417300560725u);
}

} // namespace
} // namespace holdfast::press_days
