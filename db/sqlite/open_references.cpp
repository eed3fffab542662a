// SPDX-License-Identifier: GPL-3.0-or-later
#include "db/sqlite/open_references.h"

#include "core/trade/assertion.h"
#include "db/sqlite/connection.h"

#include <sqlite3.h>

namespace holdfast::db {

void deferReferences(Connection& connection) {
    HOLDFAST_ASSERT(connection.inTransaction());
    connection.script("PRAGMA defer_foreign_keys = ON");
}

bool hasOpenReferences(Connection& connection) {
    int open = 0;
    int unused = 0;
    require(connection.handle(),
            sqlite3_db_status(connection.handle(), SQLITE_DBSTATUS_DEFERRED_FKS, &open, &unused, 0));
    return open != 0;
}

} // namespace holdfast::db
