// SPDX-License-Identifier: GPL-3.0-or-later
#include "db/exchange/remarks.h"

#include "db/sqlite/connection.h"
#include "db/sqlite/query.h"

namespace holdfast::db {

std::vector<Remark> recentRemarks(Connection& connection, int limit) {
    std::vector<Remark> found;
    Query rows =
        connection.query("SELECT journal_remark.entry_id, at, title, seat.name, words FROM journal_remark "
                         "JOIN journal_entry ON journal_entry.id = journal_remark.entry_id "
                         "JOIN seat ON seat.id = seat_id "
                         "ORDER BY journal_remark.entry_id DESC LIMIT ?1",
                         limit);
    while (rows.step())
        found.push_back(
            {rows.id<EntryId>(0), rows.instant(1), asItIs(rows.text(2)), rows.text(3), asItIs(rows.text(4))});
    return found;
}

} // namespace holdfast::db
