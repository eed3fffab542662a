// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
// The day sheet, for A4 and Letter: the press walk of the day on paper, to be read from the press. Heat runs
// with their clock times, each garment with a box to tick and its steps, what is aside with what frees
// it, and the rolls to take down. As many pages as it needs, each with its head.

#include "app/papers/paper.h"
#include "core/shop/reckoned_shop.h"

namespace holdfast::app {

// At least one page, also of a day with nothing to press.
std::vector<Paper> daySheet(const ReckonedShop& shop);

} // namespace holdfast::app
