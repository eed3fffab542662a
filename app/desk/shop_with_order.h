// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
// The reckoned shop with one order in it, open or closed: what shows or prints an order whole.

#include "app/desk/shop_desk.h"

namespace holdfast::app {

// The desk's own shop where the order is open; a closed one is read alone. None where the order is not in the
// file (it was taken back) or the file cannot be read.
std::shared_ptr<const ReckonedShop> shopWithOrder(ShopDesk& desk, OrderId order);

} // namespace holdfast::app
