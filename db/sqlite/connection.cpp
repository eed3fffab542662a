// SPDX-License-Identifier: GPL-3.0-or-later
#include "db/sqlite/connection.h"

#include "core/trade/assertion.h"

#include <sqlite3.h>

#include <memory>
#include <utility>

namespace holdfast::db {

namespace {

// A program that asks for more texts than this builds them from values, and need not have them all kept.
constexpr std::size_t kMostIdleStatements = 512;

// Bytes: the changeset of ten million readings is shorter.
constexpr int kLongestUntrustedValue = 400'000'000;

// A file: address, in which a path's own ? and # and % mean nothing.
std::string fileAddress(const std::filesystem::path& path, std::string_view options) {
    static constexpr char kHex[] = "0123456789ABCDEF";
    std::string address = "file://";
    for (const char letter : std::filesystem::absolute(path).string()) {
        const auto byte = static_cast<unsigned char>(letter);
        if (letter == '?' || letter == '#' || letter == '%') {
            address += '%';
            address += kHex[byte >> 4];
            address += kHex[byte & 15];
        } else {
            address += letter;
        }
    }
    return address.append(options);
}

// A view or a trigger could run for ever or fill the memory (SQLite's advice, "Defense Against The Dark
// Arts").
void trustNothing(sqlite3* handle) {
    for (const int what :
         {SQLITE_DBCONFIG_TRUSTED_SCHEMA, SQLITE_DBCONFIG_ENABLE_VIEW, SQLITE_DBCONFIG_ENABLE_TRIGGER})
        sqlite3_db_config(handle, what, 0, nullptr);
    sqlite3_limit(handle, SQLITE_LIMIT_LENGTH, kLongestUntrustedValue);
    sqlite3_limit(handle, SQLITE_LIMIT_ATTACHED, 0);
}

sqlite3* opened(const char* name, int flags) {
    sqlite3* handle = nullptr;
    const int code = sqlite3_open_v2(name, &handle, flags | SQLITE_OPEN_EXRESCODE, nullptr);
    if (code != SQLITE_OK) {
        const auto failure = SqliteFailure::of(handle, code);
        sqlite3_close_v2(handle);
        throw failure;
    }
    return handle;
}

} // namespace

Connection Connection::open(const std::filesystem::path& path, Access access) {
    switch (access) {
    case Access::ReadWrite:
        return Connection{opened(path.c_str(), SQLITE_OPEN_READWRITE)};
    case Access::ReadOnly:
        return Connection{opened(path.c_str(), SQLITE_OPEN_READONLY)};
    case Access::Immutable:
    case Access::Untrusted:
        break;
    }
    const std::string address = fileAddress(path, "?immutable=1");
    Connection file{opened(address.c_str(), SQLITE_OPEN_READONLY | SQLITE_OPEN_URI)};
    if (access == Access::Untrusted)
        trustNothing(file.m_handle);
    return file;
}

Connection Connection::openInMemory() {
    return Connection{opened(":memory:", SQLITE_OPEN_READWRITE)};
}

Connection::Connection(sqlite3* handle)
    : m_handle(handle) {
    // Nothing writes to a full-text table's shadows or the schema itself, in error or by a crafted file.
    // TRUSTED_SCHEMA stays on: without it this SQLite lets no trigger write to a full-text table.
    sqlite3_db_config(m_handle, SQLITE_DBCONFIG_DEFENSIVE, 1, nullptr);
}

Connection::Connection(Connection&& other) noexcept
    : m_handle(std::exchange(other.m_handle, nullptr))
    , m_idle(std::move(other.m_idle))
    , m_idleCount(std::exchange(other.m_idleCount, 0))
    , m_mayWrite(other.m_mayWrite) {
    other.m_idle.clear();
}

Connection::~Connection() {
    for (auto& [sql, statements] : m_idle)
        for (sqlite3_stmt* statement : statements)
            sqlite3_finalize(statement);
    [[maybe_unused]] const int code = sqlite3_close(m_handle);
    HOLDFAST_ASSERT(code == SQLITE_OK && "a Query or Session outlived its Connection");
}

void Connection::script(std::string_view sql) {
    // Statement by statement rather than sqlite3_exec, so that each passes the check of writing.
    const std::string text{sql};
    const char* rest = text.c_str();
    while (*rest != '\0') {
        sqlite3_stmt* prepared = nullptr;
        require(m_handle, sqlite3_prepare_v2(m_handle, rest, -1, &prepared, &rest), sql.substr(0, 60));
        const std::unique_ptr<sqlite3_stmt, decltype(&sqlite3_finalize)> statement{prepared,
                                                                                   &sqlite3_finalize};
        if (prepared == nullptr) // white space or a comment
            continue;
        requireWritable(prepared);
        int code = SQLITE_ROW;
        while (code == SQLITE_ROW)
            code = sqlite3_step(prepared);
        if (code != SQLITE_DONE)
            throw SqliteFailure::of(m_handle, code, sqlite3_sql(prepared));
    }
}

std::int64_t Connection::changes() const {
    return sqlite3_changes64(m_handle);
}

std::int64_t Connection::changesInAll() const {
    return sqlite3_total_changes64(m_handle);
}

bool Connection::inTransaction() const {
    return sqlite3_get_autocommit(m_handle) == 0;
}

sqlite3_stmt* Connection::take(std::string_view sql) {
    if (const auto found = m_idle.find(sql); found != m_idle.end() && !found->second.empty()) {
        sqlite3_stmt* statement = found->second.back();
        found->second.pop_back();
        --m_idleCount;
        return statement;
    }
    sqlite3_stmt* statement = nullptr;
    require(m_handle,
            sqlite3_prepare_v3(m_handle, sql.data(), static_cast<int>(sql.size()), SQLITE_PREPARE_PERSISTENT,
                               &statement, nullptr),
            sql);
    HOLDFAST_ASSERT(statement != nullptr && "a query needs a statement");
    return statement;
}

void Connection::giveBack(sqlite3_stmt* statement) noexcept {
    sqlite3_reset(statement);
    sqlite3_clear_bindings(statement);
    if (m_idleCount >= kMostIdleStatements) {
        sqlite3_finalize(statement);
        return;
    }
    try {
        const std::string_view sql = sqlite3_sql(statement);
        auto found = m_idle.find(sql);
        if (found == m_idle.end())
            found = m_idle.try_emplace(std::string{sql}).first;
        found->second.push_back(statement);
        ++m_idleCount;
    } catch (...) { // no memory to keep it
        sqlite3_finalize(statement);
    }
}

void Connection::requireWritable(sqlite3_stmt* statement) const {
    if (!m_mayWrite && sqlite3_stmt_readonly(statement) == 0)
        throw SqliteFailure{SQLITE_MISUSE, "the shop is written to by actions only", sqlite3_sql(statement)};
}

} // namespace holdfast::db
