// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/shop/garment_cost.h"

#include "core/orders/film_waste.h"
#include "core/press/layers.h"

#include <algorithm>

namespace holdfast {

namespace {

std::vector<DecalOnFilm> decalsOnFilms(const ShopFacts& facts, const Garment& garment) {
    std::vector<DecalOnFilm> decals;
    for (const Decal& decal : garment.decals)
        if (const Film* film = facts.films.find(decal.film))
            decals.push_back(
                {film, decal.width, decal.height, std::holds_alternative<Wording>(decal.content)});
    return decals;
}

} // namespace

Cost garmentCost(const ShopFacts& facts, const Garment& garment, const Route& route) {
    const auto decals = decalsOnFilms(facts, garment);
    const BlankStyle& style = facts.styleOf(garment);
    const ShopSettings settings = pricingSettings(facts);
    return costOf(style, decals, handsFor(route, decals, style, settings), settings);
}

Money askedPriceOf(const ShopFacts& facts, const Garment& garment, const Cost& cost) {
    return askedPrice(cost, facts.styleOf(garment), decalsOnFilms(facts, garment), facts.settings);
}

GarmentCosts::GarmentCosts(const ShopFacts& facts)
    : m_facts(facts)
    , m_settings(pricingSettings(facts)) {}

Cost GarmentCosts::of(const Garment& garment, std::optional<PressId> begunOn) {
    liken(garment, begunOn);
    auto hands = m_hands.find(m_likeness);
    if (hands == m_hands.end()) {
        const Press* press = pressFor(m_facts, garment, begunOn);
        hands = m_hands.emplace(m_likeness, handsAlong(routeOn(press, m_facts, garment))).first;
    }
    const auto decals = decalsOnFilms(m_facts, garment);
    const BlankStyle& style = m_facts.styleOf(garment);
    return costOf(style, decals, handsFor(hands->second, decals, style, m_settings), m_settings);
}

// Where the garment fits every platen whole, its measures matter only by which decals lie on each other.
void GarmentCosts::liken(const Garment& garment, std::optional<PressId> begunOn) {
    const bool isSmall = fitsEveryPlaten(garment);
    m_likeness = {garment.style.value, begunOn ? begunOn->value : 0, isSmall};
    for (const Decal& decal : garment.decals) {
        m_likeness.insert(m_likeness.end(),
                          {decal.film.value, static_cast<std::int64_t>(decal.placement), decal.layer});
        if (!isSmall)
            m_likeness.insert(m_likeness.end(),
                              {decal.below.value, decal.aside.value, decal.width.value, decal.height.value});
        for (const Decal* other = garment.decals.data(); other != &decal; ++other)
            m_likeness.push_back(overlap(decal, *other));
    }
}

// All decals together in one piece, so that each is too, and any that are pressed together.
bool GarmentCosts::fitsEveryPlaten(const Garment& garment) const {
    if (garment.decals.empty())
        return true;
    std::vector<const Decal*> decals;
    for (const Decal& decal : garment.decals)
        decals.push_back(&decal);
    const Decal all = decalAround(decals);
    return std::ranges::all_of(m_facts.presses, [&](const Press& press) {
        return press.isRetired || piecesOn(press, all).count() == 1;
    });
}

std::size_t GarmentCosts::LikenessHash::operator()(const Likeness& likeness) const {
    std::uint64_t hash = likeness.size();
    for (const std::int64_t each : likeness)
        hash = (hash ^ static_cast<std::uint64_t>(each)) * 0x9E3779B97F4A7C15u;
    return static_cast<std::size_t>(hash ^ (hash >> 32));
}

} // namespace holdfast
