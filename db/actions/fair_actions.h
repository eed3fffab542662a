// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
// Fairs in the shop's list. Each is one journaled action.

#include "core/facts/fair.h"
#include "core/trade/result.h"
#include "db/journal/shop.h"

namespace holdfast::db {

// Its id is made here. Refused where a fair of that name is on one of its days already, and where its name is
// "workshop", which is what orders say that were taken at none.
Result<FairId> addFair(Shop& shop, const Fair& fair);

// Its new name goes to the orders that were taken there, and to the next ones where they are being taken at
// it today. Refused where orders were taken on a day that it would no longer have.
Result<Done> changeFair(Shop& shop, const Fair& fair, const Now& now);

// Off the list, while no order was taken there.
Result<Done> takeFairOffList(Shop& shop, FairId fair, const Now& now);

} // namespace holdfast::db
