// SPDX-License-Identifier: GPL-3.0-or-later
#include "db/exchange/written_rows.h"

#include "db/sqlite/failure.h"
#include "db/tables/unread_everywhere.h"

namespace holdfast::db {

void WrittenRows::add(ChangesetView changeset) {
    forEachChange(changeset, [this](const RowChange& change) {
        if (change.kind != ChangeKind::Delete)
            m_rows.emplace(change.table, change.key);
        return true;
    });
}

void WrittenRows::requireReadable(Connection& connection) const {
    if (m_rows.empty())
        return;
    for (const UnreadRow& row : unreadEverywhere(connection, {}))
        if (m_rows.contains({row.table, row.key}))
            throw SqliteFailure::inWords(
                said("This news has something in it that Holdfast never writes. {row}: {why} "
                     "Nothing was brought in.",
                     {{"row", row.what}, {"why", row.why}}));
}

} // namespace holdfast::db
