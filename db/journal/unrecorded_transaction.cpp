// SPDX-License-Identifier: GPL-3.0-or-later
#include "db/journal/unrecorded_transaction.h"

namespace holdfast::db {

UnrecordedTransaction::Permit::Permit(Connection& connection)
    : m_connection(connection) {
    m_connection.allowWriting(true);
}

UnrecordedTransaction::Permit::~Permit() {
    m_connection.allowWriting(false);
}

UnrecordedTransaction::UnrecordedTransaction(Connection& connection)
    : m_permit(connection)
    , m_transaction(connection) {}

} // namespace holdfast::db
