// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
// How much work a file was asked for: instructions of SQLite's own machine, to the ten. It is the same
// however busy the computer is.

#include "db/sqlite/connection.h"

#include <sqlite3.h>

#include <cstdint>

namespace holdfast::db {

// Counts from its making until its end, on one connection and one of them at a time.
class StepsOfSqlite {
public:
    explicit StepsOfSqlite(Connection& connection)
        : m_handle(connection.handle()) {
        sqlite3_progress_handler(
            m_handle, kBetweenCounts,
            [](void* counted) {
                ++*static_cast<std::int64_t*>(counted);
                return 0;
            },
            &m_counts);
    }
    ~StepsOfSqlite() { sqlite3_progress_handler(m_handle, 0, nullptr, nullptr); }
    StepsOfSqlite(const StepsOfSqlite&) = delete;
    StepsOfSqlite& operator=(const StepsOfSqlite&) = delete;

    std::int64_t taken() const { return m_counts * kBetweenCounts; }

private:
    static constexpr int kBetweenCounts = 10;

    sqlite3* m_handle;
    std::int64_t m_counts = 0;
};

} // namespace holdfast::db
