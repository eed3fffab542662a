// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
// What a customer is told of an order, to be copied into whatever the shop sends: that it is ready, that its
// day has moved, or the day it is promised for. The program sends nothing itself.

#include "core/shop/reckoned_shop.h"
#include "core/trade/sentence.h"

namespace holdfast {

// REQUIRES: an order of the shop's facts that is open. Late is an order that can be ready only after its
// promise; where no day can be found for it, it says so without one.
Sentence orderMessage(const ReckonedShop& shop, OrderId order);

} // namespace holdfast
