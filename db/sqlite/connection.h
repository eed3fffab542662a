// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
// One open SQLite file, with its prepared statements kept by their text.
//
// For one thread at a time. Everything throws SqliteFailure. Schema changes and pragmas go through script();
// they end no statement that is in use.

#include "db/sqlite/failure.h"
#include "db/sqlite/query.h"

#include <cstdint>
#include <filesystem>
#include <functional>
#include <string>
#include <string_view>
#include <unordered_map>
#include <vector>

struct sqlite3;
struct sqlite3_stmt;

namespace holdfast::db {

enum class Access {
    ReadWrite, // the file must exist
    ReadOnly,  // alongside a program that writes
    Immutable, // in a place where nothing can be written, so nobody else does either
    Untrusted, // as Immutable, of a file that anybody may have made: nothing in its schema is run
};

class Connection {
public:
    static Connection open(const std::filesystem::path& path, Access access);
    static Connection openInMemory();

    Connection(Connection&& other) noexcept;
    Connection(const Connection&) = delete;
    Connection& operator=(const Connection&) = delete;
    Connection& operator=(Connection&&) = delete;
    ~Connection();

    // A statement with its values bound, ready to step.
    template <class... Values>
    Query query(std::string_view sql, const Values&... values) {
        Query prepared{*this, sql};
        prepared.bindAll(values...);
        return prepared;
    }

    // A statement run to its end.
    template <class... Values>
    void run(std::string_view sql, const Values&... values) {
        query(sql, values...).run();
    }

    // The first column of the first row, or 0 where there is none.
    template <class... Values>
    std::int64_t number(std::string_view sql, const Values&... values) {
        Query only = query(sql, values...);
        return only.step() ? only.integer(0) : 0;
    }

    // Any number of statements, none of them kept.
    void script(std::string_view sql);

    // Rows that the last INSERT, UPDATE or DELETE touched.
    std::int64_t changes() const;
    // Rows touched since it was opened.
    std::int64_t changesInAll() const;
    bool inTransaction() const;

    // While writing is off, any statement that would change the file throws. A shop keeps it off except
    // inside an action. (PRAGMA query_only would do the same, but each change of it expires every prepared
    // statement.)
    void allowWriting(bool allowed) { m_mayWrite = allowed; }
    bool mayWrite() const { return m_mayWrite; }

    sqlite3* handle() const { return m_handle; }

private:
    friend class Query;

    explicit Connection(sqlite3* handle);

    struct TextHash {
        using is_transparent = void;
        std::size_t operator()(std::string_view text) const { return std::hash<std::string_view>{}(text); }
    };
    using IdleStatements =
        std::unordered_map<std::string, std::vector<sqlite3_stmt*>, TextHash, std::equal_to<>>;

    sqlite3_stmt* take(std::string_view sql);
    void giveBack(sqlite3_stmt* statement) noexcept;
    void requireWritable(sqlite3_stmt* statement) const;

    sqlite3* m_handle;
    IdleStatements m_idle;
    std::size_t m_idleCount = 0;
    bool m_mayWrite = true;
};

} // namespace holdfast::db
