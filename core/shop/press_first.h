// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
// What if these were cut from that roll and pressed first: what becomes of each roll of the film, and which
// promises would slip. An estimate.
//
// As it is, work is taken up in the order of its promises, and what of a roll would be pressed only after its
// use-by counts as wasted with the rest. If they go first, the chosen decals are cut from the roll today, the
// others are allotted again, and the chosen garments come first at the press. Both orders are timed exactly
// (see core/press/day_plan.h) over the shop's working hours, with all that could be pressed once it is cut.

#include "core/shop/reckoned_shop.h"

#include <span>
#include <vector>

namespace holdfast {

struct RollOutlook {
    RollId roll;
    Millimetres leftAfter;   // on the roll, in addition to what is allotted
    Millimetres wasteBefore; // likely
    Millimetres wasteAfter;
};

struct SlippedGarment {
    GarmentId garment;
    Seconds lateBefore{0}; // beyond the rest before its promise
    Seconds lateAfter{0};  // more than before
};

struct PressedFirst {
    Millimetres length;                  // what the chosen decals take of the roll
    bool fits = true;                    // the roll has that much
    std::vector<RollOutlook> rolls;      // of the film, those to use up first in front
    std::vector<SlippedGarment> slipped; // the latest first
    std::vector<GarmentId> notReady;     // chosen, but held, not washed or not dry: cut, and pressed later
};

// REQUIRES: a roll on the shelf; decals of its film that wait to be cut.
PressedFirst pressedFirst(const ReckonedShop& shop, RollId roll, std::span<const DecalId> chosen);

} // namespace holdfast
