// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
// The tag that travels with one garment, 70 × 65 mm: its label, the blank, what is to be done with it and
// when, and where its decals go. Its code is the garment's label.

#include "app/papers/paper.h"
#include "core/shop/reckoned_shop.h"

namespace holdfast::app {

// REQUIRES: the garment is in the shop's facts.
Paper bagTag(const ReckonedShop& shop, GarmentId garment);

} // namespace holdfast::app
