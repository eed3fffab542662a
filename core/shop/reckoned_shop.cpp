// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/shop/reckoned_shop.h"

#include "core/press/timed_steps.h"

#include <algorithm>
#include <utility>

namespace holdfast {

namespace {

// The temperature of the last heated step on a press today, by the routes of the garments in the facts.
std::optional<Celsius> lastTemperature(const ShopFacts& facts,
                                       const std::map<GarmentId, Assessment>& assessments, PressId press,
                                       const Now& now) {
    std::optional<Celsius> temperature;
    std::optional<Instant> when;
    for (const StepRecord& record : facts.steps) {
        if (record.press != press || now.toLocal(record.startedAt) < LocalTime{now.today()})
            continue;
        const auto found = assessments.find(record.garment);
        if (found == assessments.end() || (when && *when > record.startedAt))
            continue;
        for (const RouteStep& step : found->second.route.steps)
            if (step.key == record.key && step.temperature) {
                temperature = step.temperature;
                when = record.startedAt;
            }
    }
    return temperature;
}

PressJob jobFor(const ShopFacts& facts, const Garment& garment, const Assessment& assessment,
                const Now& now) {
    PressJob job;
    job.garment = garment.id;
    const std::size_t behind = assessment.progress.underway.value_or(
        std::min(assessment.progress.finished, assessment.route.steps.size()));
    job.steps.assign(assessment.route.steps.begin() + static_cast<std::ptrdiff_t>(behind),
                     assessment.route.steps.end());
    // What the step under way has done already needs no second time.
    if (assessment.progress.underway && assessment.progress.underwaySince && !job.steps.empty()) {
        RouteStep& open = job.steps.front();
        const Seconds gone = std::max(Seconds{0}, now.instant - *assessment.progress.underwaySince);
        open.platen = std::max(Seconds{0}, open.platen - gone);
        open.waiting = std::max(Seconds{0}, open.waiting - gone);
        open.attended = std::max(Seconds{0}, open.attended - gone);
    }
    job.press = assessment.route.press;
    job.due = now.toInstant(facts.orderOf(garment).promised) - facts.settings.restBeforeWash;
    job.isUnderway = assessment.progress.hasBegun();
    const PlatenSoFar soFar =
        platenSoFar(assessment.route.steps, behind, assessment.progress.underway.has_value());
    job.hasBeenOnPlaten = soFar.hasBeenThere;
    job.isOnPlaten = job.isUnderway && soFar.liesThere;
    return job;
}

} // namespace

PlanRequest planRequest(const ShopFacts& facts, const std::map<GarmentId, Assessment>& assessments,
                        const Now& now) {
    PlanRequest request;
    request.start = now.instant;
    // On a retired press only what was begun there is finished.
    const auto isUsed = [&](const Press& press) {
        return !press.isRetired || std::ranges::any_of(assessments, [&](const auto& each) {
            return each.second.progress.hasBegun() && each.second.route.press == press.id;
        });
    };
    for (const Press& press : facts.presses)
        if (isUsed(press))
            request.platens.push_back({press, lastTemperature(facts, assessments, press.id, now)});
    for (const auto& [id, assessment] : assessments) {
        const bool isPressable = assessment.stage == Stage::ToPress && !assessment.isHeld();
        if (isPressable || assessment.stage == Stage::OnPress || assessment.stage == Stage::Cooling)
            request.jobs.push_back(jobFor(facts, facts.garments.at(id), assessment, now));
    }
    return request;
}

std::shared_ptr<const ReckonedShop> reckonShop(ShopFacts facts, ClimateHistory climate, RecentUse recentUse,
                                               ClimateReckoner& reckoner, const Now& now,
                                               const PlanSearch& search) {
    auto shop = std::make_shared<ReckonedShop>();
    shop->now = now;
    shop->facts = std::move(facts);
    shop->climate = std::move(climate);
    shop->recentUse = std::move(recentUse);
    shop->conditions = reckoner.reckon(shop->facts, shop->climate, now);
    shop->allotment = allot(shop->facts, shop->conditions, shop->recentUse, now);
    shop->assessments = assessAll(shop->around());
    PlanRequest request = planRequest(shop->facts, shop->assessments, now);
    request.search = search;
    shop->plan = planDay(request);
    return shop;
}

} // namespace holdfast
