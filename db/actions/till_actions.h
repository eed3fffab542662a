// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
// The till counted: one journaled action.

#include "core/orders/till.h"
#include "core/trade/result.h"
#include "db/journal/shop.h"

namespace holdfast::db {

// Cash in and out of the day is read here. A day that was counted already is counted again. Refused for a day
// to come; amounts are 0 or more and below a million units.
Result<TillCount> countTill(Shop& shop, LocalDate day, Money floatAtStart, Money counted, const Now& now);

} // namespace holdfast::db
