#pragma once
// The price of a garment: cost = blank + film (area with its share of waste) + minutes × rate + overhead;
// price = cost / (1 − margin), rounded up to the shop's price point. A first honest form: no breaks, no tax.

#include "core/blanks/blank_style.h"
#include "core/film/film.h"
#include "core/orders/order.h"
#include "core/press/route.h"
#include "core/shop/settings.h"

#include <span>

namespace holdfast {

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

// `hands` is the maker's attended time for the garment, washing and weeding included.
Cost costOf(const BlankStyle& style, std::span<const DecalOnFilm> decals, Seconds hands,
            const ShopSettings& settings);

// The maker's time from a route: attended and platen seconds, plus weeding by decal area, plus the shop's
// share of a wash load. Common practice, no source.
Seconds handsFor(const Route& route, std::span<const DecalOnFilm> decals, const BlankStyle& style);

// REQUIRES: margin 0 to 95.
Money priceOf(const Cost& cost, const ShopSettings& settings);

// Half of a price that adds two garments or a deposit of a share, rounded up to the price point.
Money depositDue(Money total, const ShopSettings& settings);

} // namespace holdfast
