// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/facts/rule.h"

#include "core/trade/assertion.h"
#include "core/trade/enumerators.h"

#include <algorithm>
#include <array>
#include <utility>

namespace holdfast {

namespace {

using RuleAndCode = std::pair<Rule, std::string_view>;

constexpr std::array kRuleCodes{
    RuleAndCode{Rule::BlankUnwashed, "blank-unwashed"},
    RuleAndCode{Rule::BlankDamp, "blank-damp"},
    RuleAndCode{Rule::SoftenerLeft, "softener-left"},
    RuleAndCode{Rule::LabelUnread, "label-unread"},
    RuleAndCode{Rule::FilmUnfitStretch, "film-unfit-stretch"},
    RuleAndCode{Rule::FilmUnfitCoating, "film-unfit-coating"},
    RuleAndCode{Rule::FilmUnfitHeat, "film-unfit-heat"},
    RuleAndCode{Rule::FilmUnfitFibre, "film-unfit-fibre"},
    RuleAndCode{Rule::BlankOutOfStock, "blank-out-of-stock"},
    RuleAndCode{Rule::BlankShrank, "blank-shrank"},
    RuleAndCode{Rule::NoRollFits, "no-roll-fits"},
    RuleAndCode{Rule::RollPastAge, "roll-past-age"},
    RuleAndCode{Rule::RollBadlyKept, "roll-badly-kept"},
    RuleAndCode{Rule::StripFailed, "strip-failed"},
    RuleAndCode{Rule::RollUnplaced, "roll-unplaced"},
    RuleAndCode{Rule::ReadingsStale, "readings-stale"},
    RuleAndCode{Rule::RecipeMissing, "recipe-missing"},
    RuleAndCode{Rule::RecipeUnconfirmed, "recipe-unconfirmed"},
    RuleAndCode{Rule::PressCheckOverdue, "press-check-overdue"},
    RuleAndCode{Rule::PressOff, "press-off"},
    RuleAndCode{Rule::PressUneven, "press-uneven"},
    RuleAndCode{Rule::NoPress, "no-press"},
    RuleAndCode{Rule::ObstacleUnsolved, "obstacle-unsolved"},
    RuleAndCode{Rule::ObstacleSolved, "obstacle-solved"},
    RuleAndCode{Rule::DecalBeyondPlaten, "decal-beyond-platen"},
    RuleAndCode{Rule::LayersNotAllowed, "layers-not-allowed"},
    RuleAndCode{Rule::FilmsDisagree, "films-disagree"},
    RuleAndCode{Rule::WordingUnconfirmed, "wording-unconfirmed"},
    RuleAndCode{Rule::DepositShort, "deposit-short"},
    RuleAndCode{Rule::LocalLaw, "local-law"},
    RuleAndCode{Rule::DecalOffCloth, "decal-off-cloth"},
    RuleAndCode{Rule::LetteringTooSmall, "lettering-too-small"},
};
static_assert(hasEach<Rule>(kRuleCodes, &RuleAndCode::first));

} // namespace

std::string_view ruleCode(Rule rule) {
    const auto* found = std::ranges::find(kRuleCodes, rule, &RuleAndCode::first);
    HOLDFAST_ASSERT(found != std::end(kRuleCodes) && "each rule has a code");
    return found->second;
}

std::optional<Rule> ruleFromCode(std::string_view code) {
    const auto* found = std::ranges::find(kRuleCodes, code, &RuleAndCode::second);
    if (found == kRuleCodes.end())
        return std::nullopt;
    return found->first;
}

} // namespace holdfast
