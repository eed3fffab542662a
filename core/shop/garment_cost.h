// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
// What a garment costs the shop, out of the facts: its blank, its decals on their films, the hands of its
// route.

#include "core/orders/price.h"

#include <cstdint>
#include <optional>
#include <unordered_map>
#include <vector>

namespace holdfast {

// By today's costs and the shop's pricingSettings. Decals of films that are gone cost nothing. REQUIRES: the
// garment's style is in the facts; `route` is its route without such decals.
Cost garmentCost(const ShopFacts& facts, const Garment& garment, const Route& route);

// What the shop asks for such a garment: by its price list, or by what it costs.
Money askedPriceOf(const ShopFacts& facts, const Garment& garment, const Cost& cost);

// The costs of many garments. A route is laid out once for all garments that have the same one to the
// second, which is most of them; what is not a matter of the route is reckoned for each.
class GarmentCosts {
public:
    explicit GarmentCosts(const ShopFacts& facts);

    // As garmentCost, of a garment whose present attempt was begun on this press. REQUIRES: as there, and
    // its decals' films are in the facts.
    Cost of(const Garment& garment, std::optional<PressId> begunOn);

private:
    // All that the length of a route depends on.
    using Likeness = std::vector<std::int64_t>;
    struct LikenessHash {
        std::size_t operator()(const Likeness& likeness) const;
    };
    void liken(const Garment& garment, std::optional<PressId> begunOn);
    bool fitsEveryPlaten(const Garment& garment) const;

    const ShopFacts& m_facts;
    ShopSettings m_settings;
    Likeness m_likeness; // of the garment in hand
    std::unordered_map<Likeness, Seconds, LikenessHash> m_hands;
};

} // namespace holdfast
