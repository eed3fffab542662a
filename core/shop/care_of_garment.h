// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
// The care card of a garment of the shop: its blank's label, its films, and the day from which it may be
// washed.

#include "core/care/care_card.h"
#include "core/shop/reckoned_shop.h"

namespace holdfast {

// REQUIRES: the garment is in the shop's facts.
CareCard careOf(const ReckonedShop& shop, const Garment& garment);

} // namespace holdfast
