// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/command_line/tour_matters.h"

#include "app/places/cutting_bench/cut_not_pressed.h"
#include "db/tables/claims.h"

namespace holdfast::app {

SlipTarget matterOf(const ReckonedShop& shop) {
    SlipTarget matter;
    const Garment* chosen = nullptr;
    for (const Garment& garment : shop.facts.garments) {
        const Finding* hold = shop.of(garment.id).firstHold();
        if (chosen == nullptr || (hold != nullptr && !matter.rule && !garment.decals.empty())) {
            chosen = &garment;
            matter = hold != nullptr ? SlipTarget::of(*hold, garment) : SlipTarget{};
        }
    }
    if (chosen != nullptr) {
        matter.order = chosen->order;
        matter.garment = chosen->id;
        matter.style = chosen->style;
        matter.size = QString::fromStdString(chosen->size);
        matter.colour = chosen->colour;
        if (!chosen->decals.empty()) {
            matter.decal = chosen->decals.front().id;
            matter.film = chosen->decals.front().film;
        }
    }
    if (!shop.allotment.useFirst.empty())
        matter.roll = shop.allotment.useFirst.front().roll;
    if (!matter.film && !shop.facts.films.empty())
        matter.film = shop.facts.films.begin()->id;
    if (!shop.facts.lots.empty())
        matter.lot = shop.facts.lots.begin()->id;
    if (!shop.facts.fairs.empty())
        matter.fair = shop.facts.fairs.begin()->id;
    if (!shop.facts.places.empty())
        matter.place = shop.facts.places.begin()->id;
    if (const auto air = shop.climate.find(matter.place.value_or(PlaceId{}));
        air != shop.climate.end() && !air->second->empty())
        matter.at = air->second->back().at;
    if (!shop.facts.presses.empty())
        matter.press = shop.facts.presses.begin()->id;
    return matter;
}

SlipTarget openClaim(ShopDesk& desk) {
    SlipTarget matter;
    const auto open = desk.file().read(db::openClaims);
    if (open.ok() && !open->empty()) {
        matter.order = open->front().order;
        matter.claim = open->front().claim;
    }
    return matter;
}

SlipTarget matterFor(SlipName slip, ShopDesk& desk, const SlipTarget& usual) {
    if (slip == SlipName::CameBack || slip == SlipName::AnswerClaim)
        return openClaim(desk);
    if (slip != SlipName::Miscut)
        return usual;
    const ReckonedShop& shop = *desk.shop();
    SlipTarget matter;
    if (const auto cut = cutNotPressed(shop, std::nullopt); !cut.empty()) {
        matter.garment = cut.front().garment->id;
        matter.decal = cut.front().decal->id;
    }
    return matter;
}

} // namespace holdfast::app
