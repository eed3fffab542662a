// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
// Where an order is, in an icon and words: held, on the walk, resting … It is as far as its least finished
// garment; what is on the press or cooling just now is said first.

#include "app/theme/tokens.h"
#include "core/holds/assessment.h"
#include "core/shop/reckoned_shop.h"
#include "db/tables/order_book.h"

#include <QString>

namespace holdfast::app {

struct WhereWords {
    QString iconName;
    QString words;
    Tone tone = Tone::Plain; // coloured only where it is held or ready
};

// Of one line of the book. Open orders are in the reckoned shop; the others say their state.
WhereWords whereIsOrder(const ReckonedShop& shop, const db::OrderLine& line);

// Of one garment.
WhereWords whereIsGarment(const ReckonedShop& shop, const Garment& garment);

} // namespace holdfast::app
