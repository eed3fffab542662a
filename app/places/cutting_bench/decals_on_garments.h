// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
// Decals found by their ids, each with the garment it goes onto.

#include "core/shop/reckoned_shop.h"

#include <map>

namespace holdfast::app {

struct DecalOnGarment {
    const Garment* garment = nullptr;
    const Decal* decal = nullptr;
};

using DecalsOnGarments = std::map<DecalId, DecalOnGarment>;

// They are valid as long as the facts are.
DecalsOnGarments decalsOnGarments(const ShopFacts& facts);
DecalOnGarment decalIn(const DecalsOnGarments& decals, DecalId id); // nulls where it is none of them

// Decals of one order that are cut alike: the same content in the same size.
bool areAlike(const DecalOnGarment& one, const DecalOnGarment& other);

} // namespace holdfast::app
