// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
// What the slips of the tour are about: garments, rolls and claims of the shop that is drawn.

#include "app/desk/shop_desk.h"

namespace holdfast::app {

// A garment that as many slips as can be have something to say about: held first, then any.
SlipTarget matterOf(const ReckonedShop& shop);

// The claim that waits longest.
SlipTarget openClaim(ShopDesk& desk);

// What the slip can be about; most have something to say of the usual garment.
SlipTarget matterFor(SlipName slip, ShopDesk& desk, const SlipTarget& usual);

} // namespace holdfast::app
