// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
// The money of a day, and what was counted in the till. Throws SqliteFailure.

#include "core/orders/till.h"
#include "db/sqlite/connection.h"
#include "db/tables/unread_facts.h"

#include <vector>

namespace holdfast::db {

DayMoney moneyOfDay(Connection& connection, LocalDate day, const Now& now);

// The latest day first; of two counts of a day (two laptops), the latest first.
std::vector<TillCount> readTillCounts(Connection& connection, UnreadFacts& unread);

} // namespace holdfast::db
