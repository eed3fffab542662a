// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
// The care card, A6 upright: what goes out with one garment. When it may first be washed, how it is cared
// for, and what to do when an edge lifts, if the shop says so. Its code is the garment's label.

#include "app/papers/paper.h"
#include "core/shop/reckoned_shop.h"

namespace holdfast::app {

// REQUIRES: the garment is in the shop's facts.
Paper careCardPaper(const ReckonedShop& shop, GarmentId garment);

} // namespace holdfast::app
