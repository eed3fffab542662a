// SPDX-License-Identifier: GPL-3.0-or-later
#include "db/sqlite/transaction.h"

#include "db/sqlite/connection.h"

#include <cstdint>
#include <string>

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

// Where the disk fails at the very end of a commit, all of it may have reached the disk, and would be found
// there once this program is gone. The next commit is written over it: a small one, at once. Throws where
// that fails too.
void writeOverWhatFailed(Connection& connection) {
    rollBack(connection);
    const std::int64_t step = connection.number("PRAGMA user_version");
    connection.run("BEGIN IMMEDIATE");
    connection.script("PRAGMA user_version = " + std::to_string(step));
    connection.run("COMMIT");
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
    try {
        m_connection.run("COMMIT");
    } catch (const SqliteFailure& failure) {
        if (!failure.isOfTheDisk())
            throw;
        try {
            writeOverWhatFailed(m_connection);
        } catch (const SqliteFailure&) {
            throw SqliteFailure::notKnown(
                said("The disk failed while this was being saved. Whether it was saved "
                     "can be seen only when the shop is "
                     "opened again: close Holdfast, see to the disk, and look in the "
                     "history before you enter it again."));
        }
        throw;
    }
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
