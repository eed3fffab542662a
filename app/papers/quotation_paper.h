// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
// A quotation on paper, with its last day; and the receipt for what was paid on an order.

#include "app/papers/paper.h"
#include "core/shop/reckoned_shop.h"
#include "db/tables/order_book.h"

#include <span>
#include <vector>

namespace holdfast::app {

// REQUIRES of both: the order is in the shop's facts.
std::vector<Paper> quotationPapers(const ReckonedShop& shop, OrderId order);

// Each payment with its day and how it came, cash, by card or by transfer, and no more of it: of a card the
// shop knows nothing.
std::vector<Paper> receiptPapers(const ReckonedShop& shop, OrderId order,
                                 std::span<const db::MoneyMove> moves);

} // namespace holdfast::app
