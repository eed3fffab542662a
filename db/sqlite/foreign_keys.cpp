// SPDX-License-Identifier: GPL-3.0-or-later
#include "db/sqlite/foreign_keys.h"

#include "core/trade/assertion.h"
#include "db/sqlite/connection.h"

#include <sqlite3.h>

namespace holdfast::db {

// sqlite3_db_config does what PRAGMA foreign_keys does and cannot fail for want of memory or disk.
ForeignKeysOff::ForeignKeysOff(Connection& connection)
    : m_connection(connection) {
    HOLDFAST_ASSERT(!connection.inTransaction());
    sqlite3_db_config(m_connection.handle(), SQLITE_DBCONFIG_ENABLE_FKEY, 0, nullptr);
}

ForeignKeysOff::~ForeignKeysOff() {
    HOLDFAST_ASSERT(!m_connection.inTransaction());
    sqlite3_db_config(m_connection.handle(), SQLITE_DBCONFIG_ENABLE_FKEY, 1, nullptr);
}

} // namespace holdfast::db
