// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/shop/settled_day.h"

#include <algorithm>
#include <cctype>

namespace holdfast {

bool leavesDayTrue(Rule rule) {
    switch (rule) {
    case Rule::BlankUnwashed:
    case Rule::BlankDamp:
    case Rule::SoftenerLeft:
    case Rule::BlankOutOfStock:
    case Rule::NoRollFits:
    case Rule::RollPastAge:
    case Rule::RollBadlyKept:
    case Rule::StripFailed:
    case Rule::RollUnplaced:
    case Rule::ReadingsStale:
    case Rule::PressCheckOverdue:
    case Rule::PressOff:
    case Rule::PressUneven:
        return true;
    case Rule::LabelUnread:
    case Rule::FilmUnfitStretch:
    case Rule::FilmUnfitCoating:
    case Rule::FilmUnfitHeat:
    case Rule::FilmUnfitFibre:
    case Rule::BlankShrank:
    case Rule::RecipeMissing:
    case Rule::RecipeUnconfirmed:
    case Rule::NoPress:
    case Rule::ObstacleUnsolved:
    case Rule::ObstacleSolved:
    case Rule::DecalBeyondPlaten:
    case Rule::LayersNotAllowed:
    case Rule::FilmsDisagree:
    case Rule::WordingUnconfirmed:
    case Rule::DepositShort:
    case Rule::LocalLaw:
    case Rule::DecalOffCloth:
    case Rule::LetteringTooSmall:
        return false;
    }
    return false;
}

const Finding* whatUnsettlesDay(std::span<const Finding> findings) {
    const auto found = std::ranges::find_if(
        findings, [](const Finding& finding) { return finding.holds() && !leavesDayTrue(finding.rule); });
    return found == findings.end() ? nullptr : &*found;
}

const Finding* whatUnsettlesDay(const ReckonedShop& shop, const Order& order) {
    if (order.state != OrderState::Confirmed)
        return nullptr;
    for (const Garment* garment : shop.facts.garmentsOf(order.id))
        if (const Finding* finding = whatUnsettlesDay(shop.of(garment->id).findings))
            return finding;
    return nullptr;
}

Sentence unsettledWords(const Finding& finding) {
    if (finding.frees.empty())
        return said("{what}.", {{"what", finding.what}});
    return said("{what}: {act} first.",
                {{"what", finding.what}, {"act", withinLine(freeingWords(finding.frees.front()))}});
}

} // namespace holdfast
