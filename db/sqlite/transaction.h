// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
// A transaction that rolls back unless it is committed, and leaves the connection usable either way.

namespace holdfast::db {

class Connection;

class Transaction {
public:
    // Takes the right to write at once, so that what is read inside stays true until the commit.
    explicit Transaction(Connection& connection);
    Transaction(const Transaction&) = delete;
    Transaction& operator=(const Transaction&) = delete;
    ~Transaction();

    // Throws where nothing was kept; where the disk fails in such a way that nobody can tell, the words say
    // so.
    void commit();

private:
    Connection& m_connection;
    bool m_isCommitted = false;
};

// One unchanging view of the file for several statements. Inside a transaction it adds nothing.
class ReadingView {
public:
    explicit ReadingView(Connection& connection);
    ReadingView(const ReadingView&) = delete;
    ReadingView& operator=(const ReadingView&) = delete;
    ~ReadingView();

private:
    Connection& m_connection;
    bool m_began;
};

} // namespace holdfast::db
