// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
// Half an order must not be pressed, and a roll of no film cannot be cut: what refers to something that is
// not among the facts, because its row could not be read, is left out with everything that refers to it.

#include "core/facts/shop_facts.h"

#include <set>

namespace holdfast {

// Takes out of the facts the orders in `broken`, of which a row could not be read, and whatever refers to
// what is not there. What else is left out for it is added to facts.unread.
void leaveOutIncomplete(ShopFacts& facts, const std::set<OrderId>& broken);

// Why a garment cannot be shown: what it refers to is not among the facts. Empty where it all is.
Sentence whatIsMissingOf(const ShopFacts& facts, const Garment& garment);

// "Order 427 of Maren Holt", or without the name where the customer is not among the facts.
Sentence orderNamed(const ShopFacts& facts, const Order& order);

} // namespace holdfast
