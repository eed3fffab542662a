// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
// Lets long work of a connection be stopped: while one of these lives, it asks now and then, in the midst of
// statements too. A no ends the statement under way with a SqliteFailure that isStopped().

#include <functional>

namespace holdfast::db {

class Connection;

class Stopping {
public:
    // `mayGoOn` is asked every few milliseconds; it may be empty, then nobody is asked.
    Stopping(Connection& connection, std::function<bool()> mayGoOn);
    Stopping(const Stopping&) = delete;
    Stopping& operator=(const Stopping&) = delete;
    ~Stopping();

private:
    Connection& m_connection;
    std::function<bool()> m_mayGoOn;
};

} // namespace holdfast::db
