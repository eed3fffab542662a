// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/holds/assessment.h"

#include "core/holds/rules.h"

#include <algorithm>

namespace holdfast {

namespace {

bool isSilent(SilentAfter after, const Route& route, const Progress& progress) {
    switch (after) {
    case SilentAfter::FirstHeat:
        return firstHeatIsBehind(route, progress);
    case SilentAfter::LastPress:
        return lastPressIsBehind(route, progress);
    case SilentAfter::Pressed:
        return progress.isPressed();
    case SilentAfter::HandedOver:
        return false; // what is handed over is not asked at all
    }
    return false;
}

bool isOutOfOurHands(const Garment& garment, const Order& order) {
    return garment.handedOverAt || !order.isOpen();
}

void applyWaivers(const ShopFacts& facts, const Garment& garment, Findings& findings) {
    const auto waivers = facts.waiversOf(garment.id);
    if (waivers.empty())
        return;
    for (Finding& finding : findings)
        finding.isWaived =
            finding.grade == Grade::Hold && std::ranges::any_of(waivers, [&](const Waiver& waiver) {
                return waiver.attempt == garment.attempt && waiver.rule == finding.rule;
            });
}

Findings look(const Surroundings& around, const Garment& garment, const Route& route,
              const Progress& progress) {
    const ShopFacts& facts = around.facts;
    const Order& order = facts.orderOf(garment);
    Findings findings;
    if (isOutOfOurHands(garment, order))
        return findings;
    const Subject subject{around,
                          garment,
                          order,
                          facts.styleOf(garment),
                          garment.lot ? facts.lots.find(*garment.lot) : nullptr,
                          route.press ? facts.presses.find(*route.press) : nullptr};
    for (const RuleOnList& rule : allRules())
        if (!isSilent(rule.silentAfter, route, progress))
            rule.look(subject, findings);
    applyWaivers(facts, garment, findings);
    std::ranges::stable_sort(findings, {}, &Finding::grade);
    return findings;
}

} // namespace

bool Assessment::isHeld() const {
    return firstHold() != nullptr;
}

const Finding* Assessment::firstHold() const {
    const auto found = std::ranges::find_if(findings, &Finding::holds);
    return found == findings.end() ? nullptr : &*found;
}

std::vector<Finding> findingsFor(const Surroundings& around, const Garment& garment) {
    const Route route = routeOf(around.facts, garment);
    return look(around, garment, route, progressOf(around.facts, garment, route));
}

Assessment assess(const Surroundings& around, const Garment& garment) {
    Assessment assessment;
    assessment.garment = garment.id;
    assessment.route = routeOf(around.facts, garment);
    assessment.progress = progressOf(around.facts, garment, assessment.route);
    assessment.restUntil = restUntil(around.facts, assessment.progress);
    assessment.stage = stageOf(around.facts, garment, assessment.route, assessment.progress, around.now);
    assessment.findings = look(around, garment, assessment.route, assessment.progress);
    return assessment;
}

std::map<GarmentId, Assessment> assessAll(const Surroundings& around) {
    std::map<GarmentId, Assessment> all;
    // Garments are sorted by id, so each goes in at the end.
    for (const Garment& garment : around.facts.garments)
        all.emplace_hint(all.end(), garment.id, assess(around, garment));
    return all;
}

std::vector<Finding> fitness(const Film& film, const BlankStyle& style) {
    Findings findings;
    if (auto finding = unreadLabel(style))
        findings.push_back(std::move(*finding));
    if (auto finding = missingRecipe(film))
        findings.push_back(std::move(*finding));
    unfitness(film, style, findings);
    return findings;
}

} // namespace holdfast
