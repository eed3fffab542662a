// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
// The figures the plain way: all facts of all orders in memory at once, every step of every garment, sums by
// hand. Slow and easy to follow; what the program shows must be the same.

#include "core/quality/shop_figures.h"
#include "db/sqlite/connection.h"

namespace holdfast::db {

// All but film, takings, faults by kind and what is unanswered, which are single queries anyway.
ShopFigures plainFigures(Connection& connection, LocalDate from, const Now& now);

// Everything that plainFigures has, as text.
std::string figureWords(const ShopFigures& figures);

} // namespace holdfast::db
