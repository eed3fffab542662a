// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
// Which rolls to use up first, and from which roll each waiting decal is to be cut. An estimate.
//
// For each roll: days left to its use-by, metres left, metres allotted to waiting decals, metres that the
// film's usual use will take before the use-by (see usual_use.h), and so the metres that will be wasted.
// Rank: earliest use-by, then most expected waste, then least left; rolls with no limit last. Of rolls of one
// film, taking the one that spoils first wastes least (any other order can be exchanged into this one without
// loss), so the earliest use-by leads and the waste says how much depends on it.

#include "core/facts/shop_facts.h"
#include "core/film/roll_condition.h"
#include "core/trade/units.h"

#include <map>
#include <optional>
#include <string>
#include <vector>

namespace holdfast {

struct RollForecast {
    RollId roll;
    std::optional<Days> daysLeft;
    Millimetres left;
    Millimetres allotted; // for waiting decals
    Millimetres usualUse; // usual use of the film before the use-by, beyond what is allotted
    Millimetres expectedWaste;
    Millimetres wasteLow; // in eight of ten cases it lies between these two
    Millimetres wasteHigh;
    std::vector<DecalId> decals;     // waiting decals allotted to it, by promise
    std::vector<DecalId> pressEarly; // of those: by their promise they would be pressed after its use-by
    bool mayBeUsed = true;           // not past its age, not badly kept
};

struct Allotment {
    std::map<DecalId, RollId> rollOf; // decals without an entry have no roll that fits
    std::map<DecalId, Sentence> lack; // of exactly those: why not, a sentence with numbers
    // The same of quotations, each as if it alone were confirmed now. It takes nothing off a roll.
    std::map<DecalId, RollId> rollIfConfirmed;
    std::map<DecalId, Sentence> lackIfConfirmed;
    std::vector<RollForecast> useFirst; // rolls of every film on the shelf, first to use up first
    const RollForecast* forecast(RollId roll) const;
    // Of waiting decals and those of quotations alike; none: no roll fits, or it was not asked for.
    std::optional<RollId> rollFor(DecalId decal) const;
    const Sentence* lackOf(DecalId decal) const;
};

// Length cut of each film week by week, the last seven days first: as many weeks as the film has been here,
// at most kUseWeeks.
using RecentUse = std::map<FilmId, std::vector<Millimetres>>;

// Waiting decals are those of open, confirmed orders that are not cut, earliest promise first. Each goes to
// the roll of its film with the earliest use-by among those that may be used and still take it, one decal
// after the other or, where that grows too long, in rows or nested. Where none of those takes it, it goes to
// the least spoiled that does, so that the rule over that roll is what is said; never to one too short or too
// narrow. Rolls put away or used up are not looked at. A quotation is looked at after all that waits.
Allotment allot(const ShopFacts& facts, const RollConditions& conditions, const RecentUse& recentUse,
                const Now& now);

} // namespace holdfast
