// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/shop/care_of_garment.h"

namespace holdfast {

CareCard careOf(const ReckonedShop& shop, const Garment& garment) {
    const BlankStyle& style = shop.facts.styleOf(garment);
    std::vector<const Film*> films;
    for (const Decal& decal : garment.decals)
        films.push_back(&shop.facts.films.at(decal.film));

    std::optional<LocalTime> washFrom;
    std::optional<LocalTime> betterFrom;
    if (const auto pressedAt = shop.of(garment.id).progress.pressedAt) {
        washFrom = shop.now.toLocal(*pressedAt + shop.facts.settings.restBeforeWash);
        betterFrom = shop.now.toLocal(*pressedAt + shop.facts.settings.betterRest);
    }
    return careCard(style.label ? std::optional{style.label->care} : std::nullopt, films, washFrom,
                    betterFrom);
}

} // namespace holdfast
