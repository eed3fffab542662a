// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
// What the figures of a shop are reckoned from. Throws SqliteFailure; Shop::read is its door.

#include "core/quality/shop_figures.h"
#include "db/sqlite/connection.h"

namespace holdfast::db {

// What was handed over, promised, moved, taken and reported from `from` until now; cancelled orders and
// quotations count nowhere. One query a table, none for a row of another.
ShopFigures loadFigures(Connection& connection, LocalDate from, const Now& now);

// The day of the first order, or of the first roll; today where there is none.
LocalDate firstDay(Connection& connection, const Now& now);

} // namespace holdfast::db
