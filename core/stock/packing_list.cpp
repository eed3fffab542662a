// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/stock/packing_list.h"

#include "core/shop/lot_state.h"

#include <algorithm>
#include <map>
#include <set>
#include <tuple>

namespace holdfast {

namespace {

std::optional<WhyPacked> whyPacked(const Order& order, const Fair& fair) {
    if (order.state != OrderState::Confirmed)
        return std::nullopt;
    if (order.takenAtPlace == fair.name)
        return WhyPacked::TakenThere;
    if (fair.isOn(dateOf(order.promised)))
        return WhyPacked::PromisedThen;
    return std::nullopt;
}

void addGarments(const ReckonedShop& shop, const Fair& fair, PackingList& list) {
    std::set<OrderId> orders;
    for (const Garment& garment : shop.facts.garments) {
        const auto why = whyPacked(shop.facts.orderOf(garment), fair);
        const Assessment& assessment = shop.of(garment.id);
        const Stage stage = assessment.stage;
        if (!why || stage == Stage::HandedOver || stage == Stage::Cancelled)
            continue;
        GarmentToPack packed{garment.id, *why, stage == Stage::Ready || stage == Stage::Resting, {}};
        if (stage == Stage::Resting)
            packed.restsUntil = assessment.restUntil;
        if (packed.isPressed) {
            ++list.careCards;
            orders.insert(garment.order);
        }
        list.garments.push_back(packed);
    }
    list.claimTickets = std::ssize(orders);
    std::ranges::sort(list.garments, {}, [&](const GarmentToPack& packed) {
        const Garment& garment = shop.facts.garments.at(packed.garment);
        return std::tuple{!packed.isPressed, shop.facts.orderOf(garment).number, garment.position,
                          garment.id};
    });
}

void addBlanks(const ShopFacts& facts, PackingList& list) {
    std::map<BlankKind, std::int64_t> units;
    for (const BlankLot& lot : facts.lots)
        if (stateOf(facts, lot) == LotState::Ready)
            units[{lot.style, lot.size, lot.colour}] += facts.freeUnits(lot);
    for (const BlankStyle& style : facts.styles) {
        if (style.isRetired)
            continue;
        for (const Colour& colour : style.colours)
            for (const std::string& size : style.sizes) {
                const auto found = units.find({style.id, size, colour.id});
                if (!colour.isRetired && found != units.end() && found->second > 0)
                    list.blanks.push_back({found->first, found->second});
            }
    }
}

void addFilms(const ReckonedShop& shop, PackingList& list) {
    for (const RollForecast& forecast : shop.allotment.useFirst) {
        const FilmRoll& roll = shop.facts.rolls.at(forecast.roll);
        if (!forecast.mayBeUsed || shop.facts.films.at(roll.film).isRetired)
            continue;
        auto film = std::ranges::find(list.films, roll.film, &FilmToPack::film);
        if (film == list.films.end())
            film = list.films.insert(film, {roll.film, {}, {}});
        film->rolls.push_back(roll.id);
        film->left = film->left + forecast.left - forecast.allotted;
    }
    std::ranges::sort(list.films, {}, [&](const FilmToPack& film) {
        return std::pair{shop.facts.films.at(film.film).name(), film.film};
    });
}

} // namespace

PackingList packingList(const ReckonedShop& shop, const Fair& fair) {
    PackingList list;
    addGarments(shop, fair, list);
    addBlanks(shop.facts, list);
    addFilms(shop, list);
    return list;
}

} // namespace holdfast
