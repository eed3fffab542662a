// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
// How long cutting keeps the maker's hands: each film of an order is cut once (roll in, the knife's run, cut
// off), then every decal is weeded: the shop's time for a decal and 25 s for each 100 cm² of it, half as much
// again for letters. Common practice, no source; the shop's own times are settings.

#include "core/facts/settings.h"
#include "core/trade/ids.h"
#include "core/trade/units.h"

#include <span>

namespace holdfast {

struct DecalToCut {
    FilmId film;
    Millimetres width;
    Millimetres height;
    bool isLettering = false;
    bool hasFilm = false; // a roll is set aside for it already
};

// Beyond this nothing is reckoned with.
inline constexpr Seconds kLongestWork{Days{366}};

// Both at most kLongestWork; what is below zero counts as zero.
Seconds weedingTime(const DecalToCut& decal, const ShopSettings& settings);
Seconds cuttingTime(std::span<const DecalToCut> decals, const ShopSettings& settings); // cut together

} // namespace holdfast
