// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
// The price of a garment: cost = blank + film (area with its share of waste) + minutes × rate + overhead;
// price = cost / (1 − margin), or cost × (1 + mark-up), with the tax where prices include it, rounded up to
// the shop's price point; or what the shop's price list asks for the style and for each decal.
//
// Whole minor units throughout; each cost is rounded up to one. What is below zero counts as zero, and no
// cost counts as more than kMostCost, so that sums of many garments stay within 64 bits whatever is typed.

#include "core/facts/blank_style.h"
#include "core/facts/film.h"
#include "core/facts/order.h"
#include "core/facts/settings.h"
#include "core/press/route.h"

#include <optional>
#include <span>

namespace holdfast {

inline constexpr Money kMostCost{1'000'000'000'000}; // of each part of a cost

struct DecalOnFilm {
    const Film* film = nullptr;
    Millimetres width;
    Millimetres height;
    bool isLettering = false;
};

struct Cost {
    Money blank;
    Money film;
    Money work;
    Money overhead;

    Money total() const { return blank + film + work + overhead; }
};

// A decal costs its area of film, with the shop's share of waste on it, at the film's cost by the metre of
// its roll's width. `hands` is the maker's attended time for the garment, washing and weeding included. A
// film whose roll has no width is reckoned at 500 mm.
Cost costOf(const BlankStyle& style, std::span<const DecalOnFilm> decals, Seconds hands,
            const ShopSettings& settings);

// The maker's time: attended and platen seconds of a route; weeding (see cutting_time.h); and for a blank
// that is washed first, its share of filling, hanging and folding a load, 15 s for each 100 g. Common
// practice, no source. At most 366 days.
Seconds handsFor(const Route& route, std::span<const DecalOnFilm> decals, const BlankStyle& style,
                 const ShopSettings& settings);
// The same where the attended and platen seconds of the route are known.
Seconds handsFor(Seconds alongRoute, std::span<const DecalOnFilm> decals, const BlankStyle& style,
                 const ShopSettings& settings);
Seconds handsAlong(const Route& route); // attended and platen seconds; at most 366 days

// By margin or mark-up. A margin below 0 counts as 0, above 95 as 95. Nothing is asked only for what costs
// nothing.
Money priceOf(const Cost& cost, const ShopSettings& settings);

// By the price list: the style, and each decal by its longer side; a decal longer than any on the list costs
// what the longest does. None where the list says nothing of the style, or of decals.
std::optional<Money> listPrice(const BlankStyle& style, std::span<const DecalOnFilm> decals,
                               const PriceRules& prices);

// As the shop makes its prices: by its list where it has one and the garment is on it, else by the cost.
Money askedPrice(const Cost& cost, const BlankStyle& style, std::span<const DecalOnFilm> decals,
                 const ShopSettings& settings);

// The deposit that the shop asks of a total: its share, rounded up to the price point, never above the total.
Money depositDue(Money total, const ShopSettings& settings);

} // namespace holdfast
