// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/shop/press_first.h"

#include "core/cutting/cut_length.h"
#include "core/orders/promise_hours.h"

#include <algorithm>
#include <map>
#include <numeric>
#include <set>
#include <utility>

namespace holdfast {

namespace {

constexpr Days kAskedAhead{366};

using Decals = std::vector<const Decal*>;

Decals decalsOf(const ShopFacts& facts, std::span<const DecalId> wanted) {
    const std::set<DecalId> ids(wanted.begin(), wanted.end());
    Decals decals;
    for (const Garment& garment : facts.garments)
        for (const Decal& decal : garment.decals)
            if (ids.contains(decal.id))
                decals.push_back(&decal);
    return decals;
}

// ── film ──

ShopFacts cutFrom(const ShopFacts& facts, RollId from, std::span<const DecalId> chosen, Millimetres length,
                  const Now& now) {
    ShopFacts cut = facts;
    std::vector<FilmRoll> rolls(facts.rolls.begin(), facts.rolls.end());
    for (FilmRoll& roll : rolls)
        if (roll.id == from)
            roll.left = std::max(Millimetres{}, roll.left - length);
    cut.rolls = Roster<FilmRoll>{std::move(rolls)};
    std::vector<Garment> garments(facts.garments.begin(), facts.garments.end());
    for (Garment& garment : garments)
        for (Decal& decal : garment.decals)
            if (std::ranges::find(chosen, decal.id) != chosen.end()) {
                decal.cutFrom = from;
                decal.cutAt = now.instant;
            }
    cut.garments = Roster<Garment>{std::move(garments)};
    return cut;
}

// What is likely wasted, with what will be where work is taken up by its promises. The chosen decals are laid
// apart from the others, as they will be if they go first, so that a nest broken up counts on neither side.
Millimetres wasteOf(const ShopFacts& facts, const RollForecast& forecast, std::span<const DecalId> chosen) {
    std::vector<DecalId> first;
    std::vector<DecalId> others;
    for (const DecalId decal : forecast.decals) {
        if (std::ranges::find(forecast.pressEarly, decal) == forecast.pressEarly.end())
            (std::ranges::find(chosen, decal) != chosen.end() ? first : others).push_back(decal);
    }
    const FilmRoll& roll = facts.rolls.at(forecast.roll);
    const auto length = [&](std::span<const DecalId> decals) {
        return nestedLength(decalsOf(facts, decals), facts.films.at(roll.film), roll.width, facts.settings);
    };
    const Millimetres used = length(first) + length(others);
    return std::max(Millimetres{}, forecast.expectedWaste + forecast.allotted - used);
}

std::vector<RollOutlook> outlooks(const ReckonedShop& shop, FilmId film, const ShopFacts& after,
                                  std::span<const DecalId> chosen) {
    const Allotment again = allot(after, shop.conditions, shop.recentUse, shop.now);
    std::vector<RollOutlook> rolls;
    for (const RollForecast& before : shop.allotment.useFirst) {
        const RollForecast* then = again.forecast(before.roll);
        if (shop.facts.rolls.at(before.roll).film != film || !then)
            continue;
        rolls.push_back({before.roll, then->left - then->allotted, wasteOf(shop.facts, before, chosen),
                         wasteOf(after, *then, {})});
    }
    return rolls;
}

// ── promises ──

// Everything that can be pressed once it is cut.
PlanRequest pressableOnceCut(const ReckonedShop& shop) {
    std::map<GarmentId, Assessment> assessments = shop.assessments;
    for (auto& [garment, assessment] : assessments)
        if (assessment.stage == Stage::ToCut)
            assessment.stage = Stage::ToPress;
    return planRequest(shop.facts, assessments, shop.now);
}

// How late each job is when work goes on in the shop's hours from now.
std::vector<Seconds> lateness(const ReckonedShop& shop, const PlanRequest& request,
                              const std::vector<std::size_t>& order, std::span<const OpenStretch> hours) {
    const DayPlan plan = planInOrder(request, order);
    std::vector<Seconds> late(request.jobs.size(), Seconds{0});
    for (std::size_t job = 0; job < request.jobs.size(); ++job) {
        const PlannedGarment* planned = plan.find(request.jobs[job].garment);
        if (!planned)
            continue;
        const Seconds work = std::max(Seconds{1}, planned->ends - request.start);
        const auto done = doneBy(hours, shop.now.local(), work);
        const Instant ends = done ? shop.now.toInstant(*done) : planned->ends;
        late[job] = std::max(Seconds{0}, ends - request.jobs[job].due);
    }
    return late;
}

void findSlipped(const ReckonedShop& shop, const std::set<GarmentId>& chosen, PressedFirst& answer) {
    const PlanRequest request = pressableOnceCut(shop);
    std::vector<std::size_t> order(request.jobs.size());
    std::iota(order.begin(), order.end(), std::size_t{0});
    std::ranges::stable_sort(order, {}, [&](std::size_t job) { return request.jobs[job].due; });
    const std::vector<OpenStretch> hours = openHours(shop.facts.settings, shop.now, kAskedAhead);

    const std::vector<Seconds> before = lateness(shop, request, order, hours);
    std::ranges::stable_partition(
        order, [&](std::size_t job) { return chosen.contains(request.jobs[job].garment); });
    const std::vector<Seconds> after = lateness(shop, request, order, hours);
    for (std::size_t job = 0; job < request.jobs.size(); ++job)
        if (after[job] > before[job])
            answer.slipped.push_back({request.jobs[job].garment, before[job], after[job]});
    std::ranges::stable_sort(answer.slipped, std::ranges::greater{}, &SlippedGarment::lateAfter);

    for (const GarmentId garment : chosen)
        if (std::ranges::find(request.jobs, garment, &PressJob::garment) == request.jobs.end())
            answer.notReady.push_back(garment);
}

} // namespace

PressedFirst pressedFirst(const ReckonedShop& shop, RollId roll, std::span<const DecalId> chosen) {
    const FilmRoll& from = shop.facts.rolls.at(roll);
    const Film& film = shop.facts.films.at(from.film);
    PressedFirst answer;
    answer.length = nestedLength(decalsOf(shop.facts, chosen), film, from.width, shop.facts.settings);
    answer.fits = answer.length <= from.left;
    answer.rolls =
        outlooks(shop, from.film, cutFrom(shop.facts, roll, chosen, answer.length, shop.now), chosen);

    std::set<GarmentId> garments;
    for (const Decal* decal : decalsOf(shop.facts, chosen))
        garments.insert(decal->garment);
    findSlipped(shop, garments, answer);
    return answer;
}

} // namespace holdfast
