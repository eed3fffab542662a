// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/holds/rules.h"

#include <array>

namespace holdfast {

namespace {

constexpr std::array kRules{
    RuleOnList{SilentAfter::FirstHeat, blankOutOfStock},
    RuleOnList{SilentAfter::FirstHeat, blankUnwashed},
    RuleOnList{SilentAfter::FirstHeat, blankDamp},
    RuleOnList{SilentAfter::FirstHeat, softenerLeft},
    RuleOnList{SilentAfter::FirstHeat, blankShrank},
    RuleOnList{SilentAfter::FirstHeat, labelUnread},
    RuleOnList{SilentAfter::FirstHeat, obstacles},
    RuleOnList{SilentAfter::FirstHeat, noRollFits},
    RuleOnList{SilentAfter::LastPress, decalOffCloth},
    RuleOnList{SilentAfter::LastPress, letteringTooSmall},
    RuleOnList{SilentAfter::LastPress, filmUnfit},
    RuleOnList{SilentAfter::LastPress, recipeMissing},
    RuleOnList{SilentAfter::LastPress, recipeUnconfirmed},
    RuleOnList{SilentAfter::LastPress, layersNotAllowed},
    RuleOnList{SilentAfter::LastPress, filmsDisagree},
    RuleOnList{SilentAfter::LastPress, rollPastAge},
    RuleOnList{SilentAfter::LastPress, rollBadlyKept},
    RuleOnList{SilentAfter::LastPress, stripFailed},
    RuleOnList{SilentAfter::LastPress, rollUnplaced},
    RuleOnList{SilentAfter::LastPress, readingsStale},
    RuleOnList{SilentAfter::LastPress, decalBeyondPlaten},
    RuleOnList{SilentAfter::LastPress, wordingUnconfirmed},
    RuleOnList{SilentAfter::Pressed, noPress},
    RuleOnList{SilentAfter::Pressed, pressCheckOverdue},
    RuleOnList{SilentAfter::Pressed, pressOff},
    RuleOnList{SilentAfter::Pressed, pressUneven},
    RuleOnList{SilentAfter::Pressed, depositShort},
    RuleOnList{SilentAfter::HandedOver, localLaw},
};

} // namespace

std::span<const RuleOnList> allRules() {
    return kRules;
}

} // namespace holdfast
