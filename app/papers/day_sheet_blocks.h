// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
// What the day sheet is made of: blocks that are below each other and are never parted by the end of a
// page.

#include "app/papers/paper_pages.h"
#include "core/shop/walk.h"

#include <vector>

namespace holdfast::app {

// Paper cannot beep: what a person must have read before the first garment.
PageBlock cautionBlock();

std::vector<PageBlock> runBlocks(const ReckonedShop& shop, const WalkRun& run, int number);
PageBlock asideBlock(const ReckonedShop& shop, const AsideEntry& entry);
// A roll for each that a garment waits to be cut from, if nothing holds it; none: nothing is to be taken
// down.
std::vector<PageBlock> rollBlocks(const ReckonedShop& shop, const Walk& walk);

} // namespace holdfast::app
