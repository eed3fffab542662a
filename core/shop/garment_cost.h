#pragma once
// What a garment costs the shop, out of the facts: its blank, its decals on their films, the hands of its
// route.

#include "core/orders/price.h"

namespace holdfast {

// By today's costs and the shop's pricingSettings. Decals of films that are gone cost nothing. REQUIRES: the
// garment's style is in the facts; `route` is its route without such decals.
Cost garmentCost(const ShopFacts& facts, const Garment& garment, const Route& route);

} // namespace holdfast
