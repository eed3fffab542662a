// SPDX-License-Identifier: GPL-3.0-or-later
#include "db/exchange/remarks.h"

#include "db/sqlite/connection.h"
#include "db/sqlite/query.h"
#include "db/tables/kept_words.h"

namespace holdfast::db {

std::vector<Remark> recentRemarks(Connection& connection, int limit) {
    std::vector<Remark> found;
    Query rows =
        connection.query("SELECT journal_remark.entry_id, at, title, seat.name, words, journal_entry.said, "
                         "journal_remark.said FROM journal_remark "
                         "JOIN journal_entry ON journal_entry.id = journal_remark.entry_id "
                         "JOIN seat ON seat.id = seat_id "
                         "ORDER BY journal_remark.entry_id DESC LIMIT ?1",
                         limit);
    while (rows.step())
        found.push_back({rows.id<EntryId>(0), rows.instant(1), keptWords(rows, 2, 5).sentence(), rows.text(3),
                         keptWords(rows, 4, 6).sentence()});
    return found;
}

} // namespace holdfast::db
