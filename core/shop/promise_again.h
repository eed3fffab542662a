// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
// When an order that was taken before can be ready at the soonest, every other promise kept.

#include "core/orders/promise.h"
#include "core/shop/reckoned_shop.h"

namespace holdfast {

// What is left to do of a garment that is not pressed yet; its own blank and allotted film stay its own.
AskedGarment stillToDo(const ReckonedShop& shop, const Garment& garment);

// From what is still to be done to its garments; its own blanks and allotted film stay its own. Errors as
// promiseFor has them. REQUIRES: an open order of the shop's facts.
Result<Promise> promiseAgain(const ReckonedShop& shop, OrderId order);

} // namespace holdfast
