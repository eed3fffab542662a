// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
// Decals that are still to be cut.

#include "core/facts/film.h"
#include "core/facts/order.h"
#include "core/facts/shop_facts.h"

#include <vector>

namespace holdfast {

struct WaitingDecal {
    const Decal* decal = nullptr;
    const Film* film = nullptr; // none: the facts do not have it
    const Garment* garment = nullptr;
    LocalTime promised{};
    std::int64_t orderNumber = 0;
};

// Of open, confirmed orders and not cut, earliest promise first. They point into the facts.
std::vector<WaitingDecal> waitingDecals(const ShopFacts& facts);

// The same of quotations, which wait for nothing yet.
std::vector<WaitingDecal> quotedDecals(const ShopFacts& facts);

} // namespace holdfast
