// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
// How much of the film that is cut becomes no decal: what lies between decals and next to them, what was cut
// wrong and what was spoiled and cut again.
//
// waste = (film − decals) / decals in percent, rounded up: what a decal's area is to be raised by for its
// price. Film is the width of its roll times the length taken off it, less the offcuts that were kept; decals
// are rectangles of their widths and heights. Our own reckoning, by areas over all those cuts together.

#include "core/facts/cutting_history.h"
#include "core/facts/shop_facts.h"

namespace holdfast {

inline constexpr int kFewestCuts = 12; // fewer say nothing yet

struct FilmWaste {
    int percent = 0;         // of a decal's area, 0 to 500
    bool isMeasured = false; // by the shop's own cuts; else as the settings have it
};

FilmWaste filmWaste(const CuttingHistory& history, const ShopSettings& settings);

// The shop's settings with the waste of film that its own cuts show, where they do.
ShopSettings pricingSettings(const ShopFacts& facts);

} // namespace holdfast
