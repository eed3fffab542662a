// SPDX-License-Identifier: GPL-3.0-or-later
// Rows written down by hand are what a session would have recorded of them.
#include "db/sqlite/inserted_rows.h"

#include "db/sqlite/connection.h"
#include "db/sqlite/session.h"

#include <gtest/gtest.h>
#include <sqlite3.h>

#include <limits>
#include <set>
#include <string>
#include <tuple>

namespace holdfast::db {
namespace {

using Row = std::tuple<std::string, int, int, std::int64_t, std::int64_t, double, double>;

std::set<Row> rowsIn(const Changeset& changeset) {
    sqlite3_changeset_iter* rows = nullptr;
    Changeset bytes = changeset;
    EXPECT_EQ(sqlite3changeset_start(&rows, static_cast<int>(bytes.size()), bytes.data()), SQLITE_OK);
    std::set<Row> found;
    while (sqlite3changeset_next(rows) == SQLITE_ROW) {
        const char* table = nullptr;
        int columns = 0;
        int operation = 0;
        int isIndirect = 0;
        sqlite3changeset_op(rows, &table, &columns, &operation, &isIndirect);
        unsigned char* keys = nullptr;
        sqlite3changeset_pk(rows, &keys, nullptr);
        EXPECT_EQ(columns, 4);
        EXPECT_EQ(operation, SQLITE_INSERT);
        EXPECT_EQ(std::string(keys, keys + 4), std::string("\1\2\0\0", 4));
        sqlite3_value* values[4] = {};
        for (int column = 0; column < 4; ++column)
            sqlite3changeset_new(rows, column, &values[column]);
        EXPECT_EQ(sqlite3_value_type(values[1]), SQLITE_INTEGER);
        EXPECT_EQ(sqlite3_value_type(values[2]), SQLITE_FLOAT);
        found.insert({table, operation, isIndirect, sqlite3_value_int64(values[0]),
                      sqlite3_value_int64(values[1]), sqlite3_value_double(values[2]),
                      sqlite3_value_double(values[3])});
    }
    EXPECT_EQ(sqlite3changeset_finalize(rows), SQLITE_OK);
    return found;
}

TEST(InsertedRows, AreWhatASessionRecords) {
    Connection connection = Connection::openInMemory();
    connection.script("CREATE TABLE climate_reading (place_id INTEGER NOT NULL, at INTEGER NOT NULL, "
                      "celsius REAL NOT NULL, humidity REAL NOT NULL, PRIMARY KEY (place_id, at)) "
                      "STRICT, WITHOUT ROWID");
    const std::string tables[] = {"climate_reading"};
    Session session{connection, tables};
    constexpr std::uint8_t kKeys[] = {1, 2, 0, 0};
    InsertedRows byHand{"climate_reading", kKeys};
    const std::tuple<std::int64_t, std::int64_t, double, double> rows[] = {
        {7, 1'700'000'000, 19.5, 44},
        {7, 1'700'000'060, 20, 0.1},
        {std::numeric_limits<std::int64_t>::max(), -5, -40, 100}};
    for (const auto& [place, at, celsius, humidity] : rows) {
        connection.run("INSERT INTO climate_reading VALUES (?1, ?2, ?3, ?4)", place, at, celsius, humidity);
        byHand.beginRow();
        byHand.integer(place);
        byHand.integer(at);
        byHand.real(celsius);
        byHand.real(humidity);
    }
    const Changeset recorded = session.changeset();
    const Changeset written = byHand.take();
    EXPECT_EQ(written.size(), recorded.size());
    EXPECT_EQ(rowsIn(written), rowsIn(recorded));
    EXPECT_EQ(rowsIn(written).size(), 3u);
}

TEST(InsertedRows, NoneAreNoChangeset) {
    constexpr std::uint8_t kKeys[] = {1};
    EXPECT_TRUE(InsertedRows("lot", kKeys).take().empty());
}

} // namespace
} // namespace holdfast::db
