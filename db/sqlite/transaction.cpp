#include "db/sqlite/transaction.h"

#include "db/sqlite/connection.h"

namespace holdfast::db {

namespace {

// After a full disk SQLite may have rolled back by itself; a second ROLLBACK would be an error.
void rollBack(Connection& connection) noexcept {
    try {
        if (connection.inTransaction())
            connection.run("ROLLBACK");
    } catch (const SqliteFailure&) {
        // ROLLBACK reports the failure that led to it; the transaction is over all the same.
    }
}

} // namespace

Transaction::Transaction(Connection& connection)
    : m_connection(connection) {
    m_connection.run("BEGIN IMMEDIATE");
}

Transaction::~Transaction() {
    if (!m_isCommitted)
        rollBack(m_connection);
}

void Transaction::commit() {
    m_connection.run("COMMIT");
    m_isCommitted = true;
}

ReadingView::ReadingView(Connection& connection)
    : m_connection(connection)
    , m_began(!connection.inTransaction()) {
    if (m_began)
        m_connection.run("BEGIN");
}

ReadingView::~ReadingView() {
    if (m_began)
        rollBack(m_connection);
}

} // namespace holdfast::db
