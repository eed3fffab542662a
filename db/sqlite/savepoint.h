// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
// A part of a transaction that can be undone by itself: rolled back at its end unless it is kept.

namespace holdfast::db {

class Connection;

class Savepoint {
public:
    // REQUIRES: a transaction is open. Savepoints end in the reverse order of their beginning.
    explicit Savepoint(Connection& connection);
    Savepoint(const Savepoint&) = delete;
    Savepoint& operator=(const Savepoint&) = delete;
    ~Savepoint();

    void keep();

private:
    Connection& m_connection;
    bool m_isKept = false;
};

} // namespace holdfast::db
