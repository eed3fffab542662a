// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/places/cutting_bench/cut_not_pressed.h"

#include <algorithm>
#include <tuple>

namespace holdfast::app {

std::vector<DecalOnGarment> cutNotPressed(const ReckonedShop& shop, std::optional<FilmId> film) {
    std::vector<DecalOnGarment> found;
    for (const Garment& garment : shop.facts.garments) {
        const Assessment& assessment = shop.of(garment.id);
        if (!shop.facts.orderOf(garment).isOpen() || garment.handedOverAt || assessment.progress.hasBegun())
            continue;
        for (const Decal& decal : garment.decals)
            if (decal.isCut() && decal.cutFrom)
                found.push_back({&garment, &decal});
    }
    std::ranges::sort(found, {}, [&](const DecalOnGarment& each) {
        return std::tuple{each.decal->film != film, -each.decal->cutAt->time_since_epoch().count(),
                          each.decal->id};
    });
    return found;
}

} // namespace holdfast::app
