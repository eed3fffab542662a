// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/places/fair_table/film_offer.h"

#include "app/places/fair_table/opened_order.h"
#include "core/cutting/cut_length.h"

#include <algorithm>
#include <tuple>

namespace holdfast::app {

RollShelf::RollShelf(const ReckonedShop& shop)
    : m_shop(shop) {
    for (const RollForecast& forecast : shop.allotment.useFirst) {
        const FilmRoll* roll = shop.facts.rolls.find(forecast.roll);
        if (!roll || roll->state != RollState::OnShelf)
            continue;
        const Millimetres left{std::max<std::int64_t>(0, forecast.left.value - forecast.allotted.value)};
        m_rolls[roll->film].push_back({roll, left, forecast.mayBeUsed});
    }
    // As waiting decals will be allotted once the order is taken: what may be used, what must be used
    // soonest, offcuts before longer rolls.
    const auto order = [&shop](const OnShelf& shelf) {
        const RollCondition* condition = shop.conditions.find(shelf.roll->id);
        const LocalDate useBy = condition ? condition->useBy.value_or(LocalDate::max()) : LocalDate::max();
        return std::tuple(!shelf.mayBeUsed, useBy, shelf.roll->left, shelf.roll->number);
    };
    for (auto& [film, rolls] : m_rolls)
        std::ranges::sort(rolls, {}, order);
}

RollPick RollShelf::find(const Decal& decal, const Film& film) const {
    RollPick pick;
    const auto found = m_rolls.find(film.id);
    if (found == m_rolls.end()) {
        pick.lack = RollLack::NoRoll;
        return pick;
    }
    pick.lack = RollLack::TooNarrow;
    for (const OnShelf& shelf : found->second) {
        pick.widest = std::max(pick.widest, shelf.roll->width);
        const auto length = lengthFor(decal, film, shelf.roll->width, m_shop.facts.settings);
        if (!length)
            continue;
        if (*length <= shelf.left) {
            pick.roll = shelf.roll;
            pick.mayBeUsed = shelf.mayBeUsed;
            pick.lack = RollLack::None;
            pick.needed = *length;
            return pick;
        }
        pick.lack = RollLack::TooShort;
        pick.needed = pick.needed.value == 0 ? *length : std::min(pick.needed, *length);
        pick.left = std::max(pick.left, shelf.left);
    }
    return pick;
}

RollPick RollShelf::take(const Decal& decal, const Film& film) {
    const RollPick pick = find(decal, film);
    if (pick.roll) {
        auto& rolls = m_rolls.at(film.id);
        OnShelf& taken = *std::ranges::find(rolls, pick.roll, &OnShelf::roll);
        taken.left = taken.left - pick.needed;
    }
    return pick;
}

Millimetres RollShelf::leftOf(FilmId film) const {
    Millimetres sum;
    if (const auto found = m_rolls.find(film); found != m_rolls.end())
        for (const OnShelf& shelf : found->second)
            sum += shelf.left;
    return sum;
}

int RollShelf::rollsOf(FilmId film) const {
    const auto found = m_rolls.find(film);
    if (found == m_rolls.end())
        return 0;
    return static_cast<int>(
        std::ranges::count_if(found->second, [](const OnShelf& shelf) { return shelf.left.value > 0; }));
}

const FilmRoll* RollShelf::firstOf(FilmId film, bool* mayBeUsed) const {
    const auto found = m_rolls.find(film);
    if (found == m_rolls.end())
        return nullptr;
    const auto first =
        std::ranges::find_if(found->second, [](const OnShelf& shelf) { return shelf.left.value > 0; });
    if (first == found->second.end())
        return nullptr;
    if (mayBeUsed)
        *mayBeUsed = first->mayBeUsed;
    return first->roll;
}

RollPicks pickRolls(const TableDraft& draft, const ReckonedShop& shop) {
    RollShelf shelf{shop};
    RollPicks picks;
    for (const TableGarment& garment : draft.garments) {
        const Garment asked = asGarment(garmentDraft(garment));
        auto& ofGarment = picks.emplace_back(asked.decals.size());
        // What is as it was taken has its film.
        const int first = garment.copies - copiesToMake(draft, garment);
        for (int copy = first; copy < garment.copies; ++copy) {
            for (std::size_t at = 0; at < asked.decals.size(); ++at) {
                const Film* film = shop.facts.films.find(asked.decals[at].film);
                if (!film)
                    continue;
                const RollPick pick = shelf.take(asked.decals[at], *film);
                RollPick& kept = ofGarment[at];
                const bool isWorse = pick.lack != RollLack::None || (kept.mayBeUsed && !pick.mayBeUsed);
                if (copy == first || (kept.lack == RollLack::None && isWorse))
                    kept = pick;
            }
        }
    }
    return picks;
}

std::vector<FilmOffer> filmOffers(const ReckonedShop& shop, const BlankStyle* style,
                                  const DecalDraft* decal) {
    const RollShelf shelf{shop};
    std::optional<Decal> asked;
    if (decal) {
        GarmentDraft garment;
        garment.decals.push_back(*decal);
        asked = asGarment(garment).decals.front();
    }
    std::vector<FilmOffer> offers;
    offers.reserve(shop.facts.films.size());
    for (const Film& film : shop.facts.films) {
        if (film.isRetired && !(decal && decal->film == film.id))
            continue;
        FilmOffer& offer = offers.emplace_back();
        offer.film = &film;
        if (style)
            offer.unfit = fitness(film, *style);
        offer.left = shelf.leftOf(film.id);
        offer.rolls = shelf.rollsOf(film.id);
        if (asked) {
            asked->film = film.id;
            offer.pick = shelf.find(*asked, film);
        } else {
            offer.pick.roll = shelf.firstOf(film.id, &offer.pick.mayBeUsed);
            offer.pick.lack = offer.pick.roll ? RollLack::None : RollLack::NoRoll;
        }
    }
    const auto order = [](const FilmOffer& offer) {
        return std::tuple(!offer.unfit.empty(), offer.pick.lack != RollLack::None, !offer.pick.mayBeUsed);
    };
    std::ranges::sort(offers, [&](const FilmOffer& one, const FilmOffer& other) {
        return std::tuple(order(one), one.film->finish, one.film->shade, one.film->id) <
               std::tuple(order(other), other.film->finish, other.film->shade, other.film->id);
    });
    return offers;
}

} // namespace holdfast::app
