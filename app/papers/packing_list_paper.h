// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
// What to take to a fair, on paper: a box to tick at each garment, blank, film and kind of paper.

#include "app/papers/paper.h"
#include "core/stock/packing_list.h"

namespace holdfast::app {

// At least one page, also where nothing is to be taken.
std::vector<Paper> packingListPapers(const ReckonedShop& shop, const Fair& fair);

} // namespace holdfast::app
