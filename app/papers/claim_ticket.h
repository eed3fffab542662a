#pragma once
// The claim ticket, 148 × 74 mm: what the customer takes home, its number the largest thing on it, and a stub
// that is torn off and pinned to the bag. The stub's code is the order's number.

#include "app/papers/paper.h"
#include "core/shop/reckoned_shop.h"

namespace holdfast::app {

// REQUIRES: the order is in the shop's facts.
Paper claimTicket(const ReckonedShop& shop, OrderId order);

// "Bronagh T.": the first name and the last name's initial, for what others may read.
QString firstNameAndInitial(const QString& name);

} // namespace holdfast::app
