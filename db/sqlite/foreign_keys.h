// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
// Foreign keys are checked row by row, except while one of these lives: then whoever made it checks them at
// the end of his transaction with PRAGMA foreign_key_check.

namespace holdfast::db {

class Connection;

class ForeignKeysOff {
public:
    // REQUIRES: no transaction is open, for inside one the pragma does nothing. The same holds at the end.
    explicit ForeignKeysOff(Connection& connection);
    ForeignKeysOff(const ForeignKeysOff&) = delete;
    ForeignKeysOff& operator=(const ForeignKeysOff&) = delete;
    ~ForeignKeysOff();

private:
    Connection& m_connection;
};

} // namespace holdfast::db
