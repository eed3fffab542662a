// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
// The rules over a garment, one a function, in files by what they look at; and the one list of them all.
// Each adds what it has to say and decides nothing else.

#include "core/holds/assessment.h"

#include <span>
#include <string>
#include <vector>

namespace holdfast {

// A garment with all that is looked up for it once, for every rule.
struct Subject {
    const Surroundings& around;
    const Garment& garment;
    const Order& order;
    const BlankStyle& style;
    const BlankLot* lot = nullptr; // none is kept for it
    const Press* press = nullptr;  // the shop has none

    const ShopFacts& facts() const { return around.facts; }
};

using Findings = std::vector<Finding>;

// From when on a rule has nothing more to say.
enum class SilentAfter { FirstHeat, LastPress, Pressed, HandedOver };

struct RuleOnList {
    SilentAfter silentAfter;
    void (*look)(const Subject&, Findings&);
};

std::span<const RuleOnList> allRules();

// blank_rules.cpp
void blankOutOfStock(const Subject& subject, Findings& findings);
void blankUnwashed(const Subject& subject, Findings& findings);
void blankDamp(const Subject& subject, Findings& findings);
void softenerLeft(const Subject& subject, Findings& findings);
void blankShrank(const Subject& subject, Findings& findings);
void labelUnread(const Subject& subject, Findings& findings);
void obstacles(const Subject& subject, Findings& findings);

// film_rules.cpp
void filmUnfit(const Subject& subject, Findings& findings);
void recipeMissing(const Subject& subject, Findings& findings);
void recipeUnconfirmed(const Subject& subject, Findings& findings);
void layersNotAllowed(const Subject& subject, Findings& findings);
void filmsDisagree(const Subject& subject, Findings& findings);

// cloth_rules.cpp
void decalOffCloth(const Subject& subject, Findings& findings);

// lettering_rules.cpp
void letteringTooSmall(const Subject& subject, Findings& findings);

// roll_rules.cpp
void noRollFits(const Subject& subject, Findings& findings);
void rollPastAge(const Subject& subject, Findings& findings);
void rollBadlyKept(const Subject& subject, Findings& findings);
void stripFailed(const Subject& subject, Findings& findings);
void rollUnplaced(const Subject& subject, Findings& findings);
void readingsStale(const Subject& subject, Findings& findings);

// press_rules.cpp
void noPress(const Subject& subject, Findings& findings);
void pressCheckOverdue(const Subject& subject, Findings& findings);
void pressOff(const Subject& subject, Findings& findings);
void pressUneven(const Subject& subject, Findings& findings);
void decalBeyondPlaten(const Subject& subject, Findings& findings);

// order_rules.cpp
void wordingUnconfirmed(const Subject& subject, Findings& findings);
void depositShort(const Subject& subject, Findings& findings);
void localLaw(const Subject& subject, Findings& findings);

// What of a style and of a film can be judged on its own, without a garment.
std::optional<Finding> unreadLabel(const BlankStyle& style);
std::optional<Finding> missingRecipe(const Film& film);
void unfitness(const Film& film, const BlankStyle& style, Findings& findings);

} // namespace holdfast
