// SPDX-License-Identifier: GPL-3.0-or-later
#include "db/sqlite/session.h"

#include "db/sqlite/connection.h"

#include <sqlite3.h>

#include <memory>
#include <utility>

namespace holdfast::db {

Session::Session(Connection& connection, std::span<const std::string> tables)
    : m_connection(&connection) {
    require(connection.handle(), sqlite3session_create(connection.handle(), "main", &m_session));
    for (const std::string& table : tables) {
        const int code = sqlite3session_attach(m_session, table.c_str());
        if (code != SQLITE_OK) {
            sqlite3session_delete(m_session);
            throw SqliteFailure::of(connection.handle(), code);
        }
    }
}

Session::Session(Session&& other) noexcept
    : m_session(std::exchange(other.m_session, nullptr))
    , m_connection(other.m_connection) {}

Session::~Session() {
    if (m_session != nullptr)
        sqlite3session_delete(m_session);
}

void Session::pause(bool isPaused) {
    sqlite3session_enable(m_session, isPaused ? 0 : 1);
}

Changeset Session::changeset() {
    if (sqlite3session_isempty(m_session) != 0)
        return {};
    int size = 0;
    void* bytes = nullptr;
    require(m_connection->handle(), sqlite3session_changeset(m_session, &size, &bytes));
    const std::unique_ptr<void, decltype(&sqlite3_free)> owned{bytes, &sqlite3_free};
    const auto* start = static_cast<const std::byte*>(bytes);
    return Changeset(start, start + size);
}

} // namespace holdfast::db
