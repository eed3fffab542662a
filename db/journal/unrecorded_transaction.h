// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
// Allows writing in a transaction of its own, outside of any action: for the bookkeeping of the laptops, and
// for what takes in entries that are actions already.

#include "db/sqlite/connection.h"
#include "db/sqlite/transaction.h"

namespace holdfast::db {

class UnrecordedTransaction {
public:
    // Throws SqliteFailure where the file cannot be written to now.
    explicit UnrecordedTransaction(Connection& connection);
    UnrecordedTransaction(const UnrecordedTransaction&) = delete;
    UnrecordedTransaction& operator=(const UnrecordedTransaction&) = delete;

    void commit() { m_transaction.commit(); }

private:
    class Permit {
    public:
        explicit Permit(Connection& connection);
        Permit(const Permit&) = delete;
        Permit& operator=(const Permit&) = delete;
        ~Permit();

    private:
        Connection& m_connection;
    };

    Permit m_permit;
    Transaction m_transaction;
};

} // namespace holdfast::db
