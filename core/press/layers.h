// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
// Decals that lie on each other on one garment, and what that does to their recipes.
//
// Measures are those of the placement: two decals overlap if they are on the same side of the garment and
// their rectangles share cloth; edges that only touch do not. A lower decal under another is only tacked,
// then pressed for good together with the upper one: at the cooler of the two temperatures and for the longer
// of the two dwells, as long as the films agree within kFilmsAgreeWithin (common practice, no source). Films
// further apart keep their own temperatures and are a hold (core/holds).

#include "core/facts/order.h"
#include "core/facts/shop_facts.h"

#include <optional>
#include <span>
#include <vector>

namespace holdfast {

inline constexpr double kFilmsAgreeWithin = 10; // °C

bool overlap(const Decal& one, const Decal& other);
// The rectangle round all of them, as one decal. REQUIRES: one or more.
Decal decalAround(std::span<const Decal* const> decals);

// How one decal goes through the press, after its neighbours have been heard.
struct DecalPass {
    const Decal* decal = nullptr;
    Side side = Side::Front;
    Recipe recipe;         // temperature and dwell as shared with what lies over or under it
    bool isTacked = false; // another layer will be pressed on it

    Seconds closed() const { return isTacked ? recipe.tack : recipe.dwell; }
    // Passes of one side and layer that are alike to the platen and the hands can be one.
    bool mayJoin(const DecalPass& other) const;
};

// By side, then layer, then cooler first; those that may join are together. Decals whose film has no recipe
// are left out. REQUIRES: each decal's film is in facts.
std::vector<DecalPass> passesOf(const ShopFacts& facts, const Garment& garment);

} // namespace holdfast
