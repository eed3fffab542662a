// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/places/fair_table/table_cloth.h"

#include <vector>

namespace holdfast::app {

namespace {

DecalSpot spotOfDraft(const DecalDraft& decal) {
    return {decal.placement, decal.below, decal.aside, decal.width, decal.height};
}

} // namespace

Sentence offClothOf(const TableGarment& garment, const BlankStyle& style, std::size_t decal) {
    return offClothWords(style, garment.size, spotOfDraft(garment.decals[decal].decal));
}

std::optional<DecalSpot> spotOnCloth(const TableGarment& garment, const BlankStyle& style,
                                     std::size_t decal) {
    std::vector<DecalSpot> others;
    for (std::size_t at = 0; at < garment.decals.size(); ++at)
        if (at != decal)
            others.push_back(spotOfDraft(garment.decals[at].decal));
    return betterSpot(style, garment.size, spotOfDraft(garment.decals[decal].decal), others);
}

void layOn(TableDecal& decal, const DecalSpot& spot) {
    decal.decal.below = spot.below;
    decal.decal.aside = spot.aside;
    decal.decal.width = spot.width;
    decal.decal.height = spot.height;
}

} // namespace holdfast::app
