// SPDX-License-Identifier: GPL-3.0-or-later
// What core reckons, at sizes beyond a small workshop's busiest day.

#include "core/film/ageing.h"
#include "core/film/climate_log.h"
#include "core/film/roll_condition.h"
#include "core/orders/promise.h"
#include "core/orders/promise_hours.h"
#include "core/shop/reckoned_shop.h"
#include "tests/bench/core_shop.h"
#include "tests/bench/floor.h"

#include <cstring>
#include <numeric>

namespace holdfast::bench {
namespace {

using namespace literals;

constexpr int kJobs = 200;
constexpr int kOpenGarments = 300;
constexpr int kRolls = 500;
constexpr std::size_t kLines = 1'000'000;

std::map<GarmentId, Assessment> assessed(const ShopFacts& facts) {
    ClimateReckoner reckoner;
    const RollConditions conditions = reckoner.reckon(facts, {}, benchNow());
    const Allotment allotment = allot(facts, conditions, {}, benchNow());
    return assessAll({facts, conditions, allotment, benchNow()});
}

// Floor: the times of the day in one given order.
void planOfTheDay(benchmark::State& state) {
    const ShopFacts facts = readyGarments(kJobs);
    const PlanRequest request = planRequest(facts, assessed(facts), benchNow());
    std::vector<std::size_t> order(request.jobs.size());
    std::iota(order.begin(), order.end(), std::size_t{0});
    if (order.size() != kJobs)
        state.SkipWithError("not all garments are ready for the press");
    runBesideFloor(
        state, [&] { benchmark::DoNotOptimize(planDay(request)); },
        [&] { benchmark::DoNotOptimize(planInOrder(request, order)); });
}
BENCHMARK(planOfTheDay)->Name("Plan of the day, 200 garments")->UseManualTime()->Iterations(20);

// Floor: the hours that are left beside what is promised, which any promise must look at.
void promise(benchmark::State& state) {
    const ShopFacts facts = readyGarments(kOpenGarments);
    const Now now = benchNow();
    Promised load;
    for (const auto& [id, assessment] : assessed(facts))
        load.work.push_back({facts.orderOf(facts.garments.at(id)).promised - assessment.route.restAfter,
                             assessment.route.total()});
    for (const FilmRoll& roll : facts.rolls)
        load.film.push_back({roll.film, roll.width, roll.left, std::nullopt});
    const Garment& first = *facts.garments.begin();
    AskedGarment one{
        first.style, first.size, first.colour, {{first.decals.front().film, 200_mm, 275_mm}}, Seconds{240}};
    const std::vector<AskedGarment> asked(3, one);
    if (!promiseFor(asked, facts, load, now).ok())
        state.SkipWithError("no day can be promised");
    runBesideFloor(
        state, [&] { benchmark::DoNotOptimize(promiseFor(asked, facts, load, now)); },
        [&] {
            const auto hours = openHours(facts.settings, now.local(), Days{366});
            benchmark::DoNotOptimize(hoursLeft(hours, load.work));
        });
}
BENCHMARK(promise)->Name("Promise of 3 garments after 300 open ones")->UseManualTime()->Iterations(200);

// Floor: one factor of ageing for each reading of the places.
void conditionsOfRolls(benchmark::State& state) {
    const RollsInClimate shelves = rollsOnShelves(kRolls);
    const AgeingModel model;
    runBesideFloor(
        state,
        [&] {
            ClimateReckoner reckoner; // its sums are built anew, as after a new reading
            benchmark::DoNotOptimize(reckoner.reckon(shelves.facts, shelves.climate, benchNow()));
        },
        [&] {
            double sum = 0;
            for (const auto& [place, series] : shelves.climate)
                for (const ClimateReading& each : *series)
                    sum += ageingFactor(model, each.temperature);
            benchmark::DoNotOptimize(sum);
        });
}
BENCHMARK(conditionsOfRolls)->Name("Age and exposure of 500 rolls")->UseManualTime()->Iterations(50);

// Floor: finding the ends of the lines.
void loggerLines(benchmark::State& state) {
    const std::string text = loggerFile(kLines);
    const auto log = readClimateLog(text, alwaysAhead(Seconds{0}));
    if (!log.ok() || log->readings.size() != kLines)
        state.SkipWithError("the logger's file is not read whole");
    runBesideFloor(
        state, [&] { benchmark::DoNotOptimize(readClimateLog(text, alwaysAhead(Seconds{0}))); },
        [&] {
            std::size_t lines = 0;
            const char* const end = text.data() + text.size();
            for (const char* at = text.data(); at < end; ++lines) {
                at = static_cast<const char*>(std::memchr(at, '\n', static_cast<std::size_t>(end - at)));
                at = at ? at + 1 : end;
            }
            benchmark::DoNotOptimize(lines);
        });
}
BENCHMARK(loggerLines)->Name("Logger's file of 1,000,000 lines read")->UseManualTime()->Iterations(5);

} // namespace
} // namespace holdfast::bench
