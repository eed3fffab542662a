// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
// The rules of the trade that look at a garment, each by its name. What they say is in core/holds.

#include <optional>
#include <string_view>

namespace holdfast {

enum class Rule {
    BlankUnwashed,
    BlankDamp,
    SoftenerLeft,
    LabelUnread,
    FilmUnfitStretch,
    FilmUnfitCoating,
    FilmUnfitHeat,
    FilmUnfitFibre,
    BlankOutOfStock,
    BlankShrank,
    NoRollFits,
    RollPastAge,
    RollBadlyKept,
    StripFailed,
    RollUnplaced,
    ReadingsStale,
    RecipeMissing,
    RecipeUnconfirmed,
    PressCheckOverdue,
    PressOff,
    PressUneven,
    NoPress,
    ObstacleUnsolved,
    ObstacleSolved,
    DecalBeyondPlaten,
    LayersNotAllowed,
    FilmsDisagree,
    WordingUnconfirmed,
    DepositShort,
    LocalLaw,
    DecalOffCloth,
    LetteringTooSmall,
};

// "blank-unwashed": how a rule is written in the shop file and in reports; stable.
std::string_view ruleCode(Rule rule);
std::optional<Rule> ruleFromCode(std::string_view code);

} // namespace holdfast
