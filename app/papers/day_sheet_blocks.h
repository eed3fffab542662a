// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
// What the day sheet is made of: blocks that are below each other and are never parted by the end of a
// page.

#include "app/papers/paper.h"
#include "core/shop/walk.h"

#include <functional>
#include <vector>

namespace holdfast::app {

inline constexpr double kDaySheetWidth = 182; // mm, between the margins

struct DayBlock {
    double height = 0;                   // mm
    std::function<void(PaperInk&)> draw; // from its own upper left corner
    bool leads = false;                  // is on one page with the block after it
};

// Paper cannot beep: what a person must have read before the first garment.
DayBlock cautionBlock();
DayBlock headingBlock(const QString& words);
DayBlock sentenceBlock(const QString& words);

std::vector<DayBlock> runBlocks(const ReckonedShop& shop, const WalkRun& run, int number);
DayBlock asideBlock(const ReckonedShop& shop, const AsideEntry& entry);
// A roll for each that a garment waits to be cut from, if nothing holds it; none: nothing is to be taken
// down.
std::vector<DayBlock> rollBlocks(const ReckonedShop& shop, const Walk& walk);

} // namespace holdfast::app
