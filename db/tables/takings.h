// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
// All money that moved and all invoices and credit notes that were made, by month. Throws SqliteFailure.

#include "core/orders/takings.h"
#include "db/sqlite/connection.h"
#include "db/tables/unread_facts.h"

namespace holdfast::db {

// Since the beginning, whatever became of the orders. Invoices in another currency than this one are not
// added up with the others; they are left out and counted.
struct TakingsRead {
    TakingsByMonth months;
    std::int64_t inOtherCurrency = 0;
};
TakingsRead readTakingsByMonth(Connection& connection, const std::string& currency, const Now& now,
                               UnreadFacts& unread);

} // namespace holdfast::db
