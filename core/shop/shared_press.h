// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
// Two laptops can each put a garment on the same press.

#include "core/facts/shop_facts.h"
#include "core/orders/order_odds.h"

#include <vector>

namespace holdfast {

// Each garment of the order that is on a press, with another garment that is on it too. Empty for nearly
// every order.
std::vector<SharedPress> sharedPresses(const ShopFacts& facts, OrderId order);

} // namespace holdfast
