// SPDX-License-Identifier: GPL-3.0-or-later
// The entries that would have made the rows of the large shop.

#include "db/check/history_sums.h"
#include "db/sqlite/connection.h"
#include "db/sqlite/transaction.h"
#include "tests/bench/large_shop.h"

#include <sqlite3.h>

#include <algorithm>
#include <string>

namespace holdfast::bench {
namespace {

db::Changeset headOf(const db::RecordedTable& table) {
    db::Changeset head{std::byte{'T'}, static_cast<std::byte>(table.columns.size())};
    for (const bool isKey : table.isKey)
        head.push_back(static_cast<std::byte>(isKey ? 1 : 0));
    for (const char letter : table.name)
        head.push_back(static_cast<std::byte>(letter));
    head.push_back(std::byte{0});
    return head;
}

std::int64_t rowsOf(db::Connection& connection) {
    std::int64_t rows = 0;
    for (const db::RecordedTable& table : db::tablesOfHistory(connection))
        rows += connection.number("SELECT COUNT(*) FROM \"" + table.name + "\"");
    return rows;
}

} // namespace

std::int64_t writeHistory(const std::filesystem::path& path, std::int64_t entries) {
    auto connection = db::Connection::open(path, db::Access::ReadWrite);
    const std::int64_t rowsEach =
        std::max<std::int64_t>(4, entries > 0 ? rowsOf(connection) / entries + 1 : 0);
    db::Transaction transaction{connection};
    std::int64_t id = std::int64_t{1} << 12;
    const auto write = [&](const db::Changeset& changeset) {
        id += std::int64_t{1} << 22;
        connection.run("INSERT INTO journal_entry (id, seat_id, at, title, changeset) "
                       "VALUES (?1, 1, 1700000000, 'Took order 426', ?2)",
                       id, changeset);
    };
    std::int64_t written = 0;
    for (const db::RecordedTable& table : db::tablesOfHistory(connection)) {
        db::Changeset changeset = headOf(table);
        std::int64_t rows = 0;
        db::RowBytes bytes;
        db::Query row{connection, "SELECT " + table.columnList() + " FROM \"" + table.name + "\""};
        while (row.step()) {
            changeset.push_back(std::byte{SQLITE_INSERT});
            changeset.push_back(std::byte{0});
            for (const db::ValueBytes value : bytes.of(row, table.columns.size()))
                changeset.insert(changeset.end(), value.begin(), value.end());
            if (++rows % rowsEach == 0) {
                write(changeset);
                changeset = headOf(table);
                ++written;
            }
        }
        if (rows % rowsEach != 0) {
            write(changeset);
            ++written;
        }
    }
    for (; written < entries; ++written) {
        db::Changeset both{std::byte{'T'}, std::byte{1}, std::byte{1}};
        for (const char letter : std::string{"closed_day"})
            both.push_back(static_cast<std::byte>(letter));
        both.push_back(std::byte{0});
        for (const int operation : {SQLITE_INSERT, SQLITE_DELETE}) {
            both.push_back(static_cast<std::byte>(operation));
            both.push_back(std::byte{0});
            both.push_back(std::byte{SQLITE_TEXT});
            both.push_back(std::byte{10});
            for (const char letter : std::string{"2026-12-24"})
                both.push_back(static_cast<std::byte>(letter));
        }
        write(both);
    }
    connection.run("UPDATE seat_here SET last_id = ?1", id);
    transaction.commit();
    return written;
}

} // namespace holdfast::bench
