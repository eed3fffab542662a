// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
// What was asked to be printed, as papers.

#include "app/desk/shop_desk.h"
#include "app/papers/paper_printing.h"

namespace holdfast::app {

// Claim ticket: of matter.order. Care cards: of its pressed garments, also of those handed over. Bag tags: of
// its garments that are still here. Receipt: of what was paid on it. Invoice: matter.invoice, or the one of
// matter.order that is in force. Day sheet: of today. Roll label: of matter.roll. Buying list: of now. An
// error says what is missing.
Result<PaperErrand> paperErrand(ShopDesk& desk, PaperName name, const SlipTarget& matter);

// Garments that have left the press: what a care card is for.
std::vector<const Garment*> pressedGarments(const ReckonedShop& shop, OrderId order);
// Garments that still go about in the workshop: what a bag tag is for.
std::vector<const Garment*> garmentsHere(const ReckonedShop& shop, OrderId order);

} // namespace holdfast::app
