// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
// The label of a film roll, 70 × 40 mm: number, film, width, when it came and by when it should be used. Its
// code is the roll's number.

#include "app/papers/paper.h"
#include "core/shop/reckoned_shop.h"

namespace holdfast::app {

// The use-by is as it is estimated now, with its range, and says so. REQUIRES: the roll is in the shop's
// facts.
Paper labelOfRoll(const ReckonedShop& shop, RollId roll);

} // namespace holdfast::app
