// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
// What of the walk will be late if the plan is kept, said before it is; empty where nothing will be.

#include "core/shop/reckoned_shop.h"
#include "core/shop/walk.h"

#include <QString>

namespace holdfast::app {

// "418-b will be ready 40 min late: at 17:40, and its promise needs it by 17:00. Also late: 409-d
// 12 min. One garment comes after closing."
QString lateWords(const ReckonedShop& shop, const Walk& walk);

// "418-b will be ready 40 min late, and 2 more": for the header.
QString lateInShort(const ReckonedShop& shop, const Walk& walk);

} // namespace holdfast::app
