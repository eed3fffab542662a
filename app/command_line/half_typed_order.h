// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
// A half-typed order for the pictures of the tour: what a maker would have on the table a moment before it is
// taken.

#include "db/journal/shop.h"

namespace holdfast::app {

// Kept as the fair table keeps its own; false where the shop has no style and film that suit each other.
bool keepHalfTypedOrder(db::Shop& shop);

} // namespace holdfast::app
