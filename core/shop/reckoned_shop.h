// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
// A shop at one moment with all that is reckoned from its facts: what every place and report shows.
// Never changed once made; a screen keeps the one it was handed until a newer one comes.

#include "core/facts/shop_facts.h"
#include "core/film/roll_condition.h"
#include "core/film/use_first.h"
#include "core/holds/assessment.h"
#include "core/press/day_plan.h"

#include <map>
#include <memory>

namespace holdfast {

struct ReckonedShop {
    Now now;
    ShopFacts facts;
    ClimateHistory climate;
    RecentUse recentUse;
    RollConditions conditions;
    Allotment allotment;
    std::map<GarmentId, Assessment> assessments;
    DayPlan plan; // of all garments under way or ready for the press, from now

    Surroundings around() const { return {facts, conditions, allotment, now}; }
    // REQUIRES: the garment is in the facts.
    const Assessment& of(GarmentId garment) const { return assessments.at(garment); }
};

// `reckoner` keeps its sums over the climate between calls. The usual search is short enough to be waited for
// at a window.
std::shared_ptr<const ReckonedShop> reckonShop(ShopFacts facts, ClimateHistory climate, RecentUse recentUse,
                                               ClimateReckoner& reckoner, const Now& now,
                                               const PlanSearch& search = {});

// The plan's request: garments on the press or cooling first, then those ready for the press; a platen is at
// the temperature of its last step of the day, else cold.
PlanRequest planRequest(const ShopFacts& facts, const std::map<GarmentId, Assessment>& assessments,
                        const Now& now);

} // namespace holdfast
