// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
// What to buy now, on paper: a section for each supplier, a box to tick at each thing.

#include "app/papers/paper.h"
#include "core/stock/what_to_buy.h"

namespace holdfast::app {

// At least one page, also where nothing is to be bought.
std::vector<Paper> buyingList(const ReckonedShop& shop, const WhatToBuy& what);

} // namespace holdfast::app
