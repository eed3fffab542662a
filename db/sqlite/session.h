// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
// Records what its connection changes in the named tables while it lives.
//
// Tables are attached by name, never all of them: a full-text table's shadow tables must not be recorded,
// since applying their rows breaks the search without a word.

#include "db/sqlite/changeset.h"

#include <span>
#include <string>

struct sqlite3_session;

namespace holdfast::db {

class Connection;

class Session {
public:
    Session(Connection& connection, std::span<const std::string> tables);
    Session(Session&& other) noexcept;
    Session(const Session&) = delete;
    Session& operator=(const Session&) = delete;
    Session& operator=(Session&&) = delete;
    ~Session();

    // Nothing is recorded while it is paused.
    void pause(bool isPaused);

    // What has changed on the whole since the session began; empty when nothing has.
    Changeset changeset();

private:
    sqlite3_session* m_session = nullptr;
    Connection* m_connection;
};

} // namespace holdfast::db
