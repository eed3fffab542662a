// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
// The shop's prices for its stall, in letters that are read at arm's length. It says nothing of what anything
// costs the shop.

#include "app/papers/paper.h"
#include "core/facts/shop_facts.h"

#include <vector>

namespace holdfast::app {

// At least one page, also where there is no price yet.
std::vector<Paper> priceListPapers(const ShopFacts& facts);

} // namespace holdfast::app
