// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
// The claim ticket, 148 × 74 mm: what the customer takes home, its number the largest thing on it, and a stub
// that is torn off and pinned to the bag. Both have the order's number as a code.

#include "app/papers/paper.h"
#include "core/shop/reckoned_shop.h"

namespace holdfast::app {

// REQUIRES: the order is in the shop's facts.
Paper claimTicket(const ReckonedShop& shop, OrderId order);

// What others may read on the stub: "Bronagh T." hides the family name; a firm, "Fen & Fold Books", stays
// whole.
QString nameForStub(const QString& name);

} // namespace holdfast::app
