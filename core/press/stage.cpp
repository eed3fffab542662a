// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/press/stage.h"

#include "core/trade/assertion.h"
#include "core/trade/enumerators.h"

#include <algorithm>
#include <array>
#include <utility>

namespace holdfast {

namespace {

struct StageName {
    Stage stage;
    std::string_view code;
    Phrase words;
};

constexpr std::array kStageNames{
    StageName{Stage::ToConfirm, "to-confirm", phrase("To confirm")},
    StageName{Stage::ToBuy, "to-buy", phrase("To buy")},
    StageName{Stage::ToWash, "to-wash", phrase("To wash")},
    StageName{Stage::Drying, "drying", phrase("Drying")},
    StageName{Stage::ToCut, "to-cut", phrase("To cut")},
    StageName{Stage::ToPress, "to-press", phrase("To press")},
    StageName{Stage::OnPress, "on-press", phrase("On the press")},
    StageName{Stage::Cooling, "cooling", phrase("Cooling")},
    StageName{Stage::Resting, "resting", phrase("Resting")},
    StageName{Stage::Ready, "ready", phrase("Ready")},
    StageName{Stage::HandedOver, "handed-over", phrase("Handed over")},
    StageName{Stage::Cancelled, "cancelled", phrase("Cancelled")},
};
static_assert(hasEach<Stage>(kStageNames, &StageName::stage));

const StageName& nameOf(Stage stage) {
    const auto* found = std::ranges::find(kStageNames, stage, &StageName::stage);
    HOLDFAST_ASSERT(found != std::end(kStageNames) && "each stage has a name");
    return *found;
}

std::optional<std::size_t> stepWithKey(const Route& route, std::string_view key) {
    const auto found = std::ranges::find(route.steps, key, &RouteStep::key);
    if (found == route.steps.end())
        return std::nullopt;
    return static_cast<std::size_t>(found - route.steps.begin());
}

bool hasHeat(const RouteStep& step) {
    return step.temperature.has_value();
}

bool isPressPass(const RouteStep& step) {
    return step.kind == StepKind::Press;
}

// A key says its kind even where the route no longer has it, so that heat given under an older recipe counts.
bool wasHeat(std::string_view key) {
    return key.starts_with("press-") || key.starts_with("preheat-") || key.starts_with("finish-");
}

// A person let it through in this attempt: it goes on as if the rule's work were done.
bool isLetThrough(const ShopFacts& facts, const Garment& garment, Rule rule) {
    return std::ranges::any_of(facts.waiversOf(garment.id), [&](const Waiver& waiver) {
        return waiver.attempt == garment.attempt && waiver.rule == rule;
    });
}

Stage stageOfBlank(const ShopFacts& facts, const Garment& garment, const BlankLot& lot) {
    const WashLoad* load = facts.lastLoadOf(lot);
    if (!load && facts.styleOf(garment).washedFirst() && !isLetThrough(facts, garment, Rule::BlankUnwashed))
        return Stage::ToWash;
    if (load && !load->isDry() && !isLetThrough(facts, garment, Rule::BlankDamp))
        return Stage::Drying;
    return std::ranges::all_of(garment.decals, &Decal::isCut) ? Stage::ToPress : Stage::ToCut;
}

} // namespace

Progress progressOf(const ShopFacts& facts, const Garment& garment, const Route& route) {
    Progress progress;
    std::optional<Instant> lastFinish;
    bool hadHeat = false;
    const auto records = facts.stepsOf(garment);
    for (const StepRecord& record : records) {
        if (!record.finishedAt)
            continue;
        hadHeat = hadHeat || wasHeat(record.key);
        lastFinish = std::max(lastFinish, record.finishedAt);
        if (const auto step = stepWithKey(route, record.key))
            progress.finished = std::max(progress.finished, *step + 1);
    }
    const bool isOpen = !records.empty() && !records.back().finishedAt;
    if (isOpen)
        progress.underway = stepWithKey(route, records.back().key);
    if (progress.underway)
        progress.underwaySince = records.back().startedAt;
    const bool wantsHeat = std::ranges::any_of(route.steps, hasHeat);
    if (!route.steps.empty() && progress.finished == route.steps.size() && !isOpen && (hadHeat || !wantsHeat))
        progress.pressedAt = lastFinish;
    return progress;
}

std::optional<Instant> restUntil(const ShopFacts& facts, const Progress& progress) {
    if (!progress.pressedAt)
        return std::nullopt;
    return *progress.pressedAt + facts.settings.restBeforeWash;
}

bool firstHeatIsBehind(const Route& route, const Progress& progress) {
    const auto done = std::span(route.steps).first(std::min(progress.finished, route.steps.size()));
    return progress.isPressed() || std::ranges::any_of(done, hasHeat);
}

bool lastPressIsBehind(const Route& route, const Progress& progress) {
    if (progress.isPressed())
        return true;
    const std::span steps(route.steps);
    const std::size_t finished = std::min(progress.finished, steps.size());
    return std::ranges::any_of(steps.first(finished), isPressPass) &&
           std::ranges::none_of(steps.subspan(finished), isPressPass);
}

Stage stageOf(const ShopFacts& facts, const Garment& garment, const Route& route, const Progress& progress,
              const Now& now) {
    const Order& order = facts.orderOf(garment);
    if (order.state == OrderState::Cancelled)
        return Stage::Cancelled;
    if (garment.handedOverAt || order.state == OrderState::HandedOver)
        return Stage::HandedOver;
    if (const auto until = restUntil(facts, progress))
        return now.instant < *until ? Stage::Resting : Stage::Ready;
    if (progress.underway)
        return route.steps.at(*progress.underway).isWaiting() ? Stage::Cooling : Stage::OnPress;
    if (progress.hasBegun())
        return Stage::ToPress;
    if (order.state == OrderState::Quoted)
        return Stage::ToConfirm;
    if (!std::ranges::all_of(garment.decals, &Decal::isConfirmed) &&
        !isLetThrough(facts, garment, Rule::WordingUnconfirmed))
        return Stage::ToConfirm;
    const BlankLot* lot = garment.lot ? facts.lots.find(*garment.lot) : nullptr;
    return lot ? stageOfBlank(facts, garment, *lot) : Stage::ToBuy;
}

std::string_view stageCode(Stage stage) {
    return nameOf(stage).code;
}

Phrase stageWords(Stage stage) {
    return nameOf(stage).words;
}

} // namespace holdfast
