// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/desk/step_counts.h"

#include <algorithm>

namespace holdfast::app {

namespace {

// Starts are whole seconds: a step opened this moment may look as if it were a second old, or a second ahead.
constexpr Seconds kClockGrain{1};

} // namespace

Seconds StepCount::secondsLeft() const {
    return std::max(Seconds{0}, std::chrono::ceil<Seconds>(left));
}

Seconds StepCount::secondsOver() const {
    return std::max(Seconds{0}, std::chrono::floor<Seconds>(-left));
}

void StepCounts::see(const ReckonedShop& shop) {
    std::map<GarmentId, Sight> sights;
    for (const auto& [garmentId, assessment] : shop.assessments) {
        const auto& progress = assessment.progress;
        if (!progress.underway || *progress.underway >= assessment.route.steps.size())
            continue;
        const RouteStep& step = assessment.route.steps[*progress.underway];
        if (!step.isTimed())
            continue;
        const Garment& garment = shop.facts.garments.at(garmentId);
        const Instant startedAt = progress.underwaySince.value_or(shop.now.instant);
        const auto known = m_sights.find(garmentId);
        const bool isSame = known != m_sights.end() && known->second.key == step.key &&
                            known->second.attempt == garment.attempt && known->second.startedAt == startedAt;
        Sight sight = isSame ? known->second : firstSight(garment, step, startedAt);
        sight.counted = step.counted(); // a recipe may be mended while it counts
        sights.emplace(garmentId, std::move(sight));
    }
    m_sights = std::move(sights);
}

StepCounts::Sight StepCounts::firstSight(const Garment& garment, const RouteStep& step,
                                         Instant startedAt) const {
    const Seconds sinceStart = m_clock.now() - startedAt;
    Sight sight;
    sight.key = step.key;
    sight.attempt = garment.attempt;
    sight.startedAt = startedAt;
    sight.seenAt = m_clock.steady();
    sight.isAskew = sinceStart < -kClockGrain;
    sight.elapsed = sinceStart > kClockGrain ? sinceStart : Seconds{0};
    sight.isHeat = !step.isWaiting();
    return sight;
}

StepCount StepCounts::countOf(GarmentId garment, const Sight& sight) const {
    StepCount count{garment, sight.startedAt, sight.counted, sight.counted, sight.isAskew, sight.isHeat};
    if (!sight.isAskew)
        count.left -= sight.elapsed + (m_clock.steady() - sight.seenAt);
    return count;
}

std::optional<StepCount> StepCounts::of(GarmentId garment) const {
    const auto found = m_sights.find(garment);
    return found == m_sights.end() ? std::nullopt : std::optional{countOf(garment, found->second)};
}

std::vector<StepCount> StepCounts::all() const {
    std::vector<StepCount> counts;
    for (const auto& [garment, sight] : m_sights)
        counts.push_back(countOf(garment, sight));
    return counts;
}

std::optional<StepCount> StepCounts::soonest() const {
    std::optional<StepCount> next;
    for (const StepCount& count : all()) {
        if (count.isAskew || count.isOver())
            continue;
        if (!next || count.left < next->left)
            next = count;
    }
    return next;
}

} // namespace holdfast::app
