// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
// What a garment that cannot be pressed now needs, in the same words on screen, on paper and in reports.

#include "core/shop/reckoned_shop.h"
#include "core/shop/walk.h"

#include <QString>

namespace holdfast::app {

// What has to be done first: "Cut from R-21", "Put in the wash". Empty where nothing can be done but wait.
QString neededFor(const ReckonedShop& shop, const AsideEntry& entry);
// The same for a line of text, which says that too.
QString neededInWords(const ReckonedShop& shop, const AsideEntry& entry);

} // namespace holdfast::app
