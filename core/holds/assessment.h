// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
// Every garment of a shop with its stage, its route and all that the rules have to say of it. This is what
// the places show.

#include "core/facts/shop_facts.h"
#include "core/film/use_first.h"
#include "core/holds/finding.h"
#include "core/press/route.h"
#include "core/press/stage.h"

#include <map>
#include <vector>

namespace holdfast {

struct Assessment {
    GarmentId garment;
    Stage stage = Stage::ToWash;
    Route route;
    Progress progress;
    std::optional<Instant> restUntil;
    std::vector<Finding> findings; // holds first, then cautions, then steps added

    bool isHeld() const;
    const Finding* firstHold() const; // not waived
};

// What the rules look at in addition to the facts.
struct Surroundings {
    const ShopFacts& facts;
    const RollConditions& conditions;
    const Allotment& allotment;
    Now now;
};

// All rules over one garment, holds first. Rules about work that is already done are silent: those over
// the blank and the cutting once its first step with heat is finished, those over film and roll once its last
// press pass is. Nothing holds what is pressed, handed over or cancelled. A waiver given for the same attempt
// and rule lifts a hold; cautions and steps added are never silenced. REQUIRES: the garment's order, style
// and films are in the facts.
std::vector<Finding> findingsFor(const Surroundings& around, const Garment& garment);

Assessment assess(const Surroundings& around, const Garment& garment);

// Every garment in the facts.
std::map<GarmentId, Assessment> assessAll(const Surroundings& around);

// Whether a film may be pressed on a blank style; said at once at the fair table. Empty: it fits. An unread
// label or a film without a recipe leave it open, and are said as the holds they are.
std::vector<Finding> fitness(const Film& film, const BlankStyle& style);

} // namespace holdfast
