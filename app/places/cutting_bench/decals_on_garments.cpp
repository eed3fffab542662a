// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/places/cutting_bench/decals_on_garments.h"

namespace holdfast::app {

DecalsOnGarments decalsOnGarments(const ShopFacts& facts) {
    DecalsOnGarments decals;
    for (const Garment& garment : facts.garments)
        for (const Decal& decal : garment.decals)
            decals[decal.id] = {&garment, &decal};
    return decals;
}

DecalOnGarment decalIn(const DecalsOnGarments& decals, DecalId id) {
    const auto found = decals.find(id);
    return found == decals.end() ? DecalOnGarment{} : found->second;
}

bool areAlike(const DecalOnGarment& one, const DecalOnGarment& other) {
    return one.garment && other.garment && one.garment->order == other.garment->order &&
           one.decal->content == other.decal->content && one.decal->width == other.decal->width &&
           one.decal->height == other.decal->height;
}

} // namespace holdfast::app
