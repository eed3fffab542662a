// SPDX-License-Identifier: GPL-3.0-or-later
#include "db/sqlite/savepoint.h"

#include "core/trade/assertion.h"
#include "db/sqlite/connection.h"

namespace holdfast::db {

Savepoint::Savepoint(Connection& connection)
    : m_connection(connection) {
    HOLDFAST_ASSERT(connection.inTransaction());
    m_connection.run("SAVEPOINT part");
}

Savepoint::~Savepoint() {
    if (m_isKept)
        return;
    try {
        // After a full disk or a stop SQLite may have rolled back the whole transaction by itself.
        if (m_connection.inTransaction()) {
            m_connection.run("ROLLBACK TO part");
            m_connection.run("RELEASE part");
        }
    } catch (const SqliteFailure&) {
        // The failure that led here is under way already; the transaction around is rolled back by it.
    }
}

void Savepoint::keep() {
    m_connection.run("RELEASE part");
    m_isKept = true;
}

} // namespace holdfast::db
