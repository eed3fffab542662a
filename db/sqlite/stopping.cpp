// SPDX-License-Identifier: GPL-3.0-or-later
#include "db/sqlite/stopping.h"

#include "db/sqlite/connection.h"

#include <sqlite3.h>

#include <utility>

namespace holdfast::db {

namespace {

constexpr int kInstructionsBetween = 20'000; // of SQLite's machine: about a millisecond

} // namespace

Stopping::Stopping(Connection& connection, std::function<bool()> mayGoOn)
    : m_connection(connection)
    , m_mayGoOn(std::move(mayGoOn)) {
    if (!m_mayGoOn)
        return;
    sqlite3_progress_handler(
        m_connection.handle(), kInstructionsBetween,
        [](void* asked) { return (*static_cast<std::function<bool()>*>(asked))() ? 0 : 1; }, &m_mayGoOn);
}

Stopping::~Stopping() {
    if (m_mayGoOn)
        sqlite3_progress_handler(m_connection.handle(), 0, nullptr, nullptr);
}

} // namespace holdfast::db
