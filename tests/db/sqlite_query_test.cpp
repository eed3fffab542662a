// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/trade/money.h"
#include "db/sqlite/connection.h"

#include <gtest/gtest.h>
#include <sqlite3.h>

#include <algorithm>
#include <unistd.h>

namespace holdfast::db {
namespace {

using namespace std::chrono_literals;

struct Queries : ::testing::Test {
    Connection connection = Connection::openInMemory();

    void SetUp() override {
        connection.script("CREATE TABLE thing (id INTEGER PRIMARY KEY, value ANY) STRICT");
    }

    std::string storedAs(const auto& value) {
        connection.run("INSERT INTO thing (value) VALUES (?1)", value);
        Query row =
            connection.query("SELECT typeof(value), quote(value) FROM thing ORDER BY id DESC LIMIT 1");
        EXPECT_TRUE(row.step());
        return row.text(0) + " " + row.text(1);
    }
};

TEST_F(Queries, StoreEachKindOfValueInItsOwnForm) {
    EXPECT_EQ(storedAs(41), "integer 41");
    EXPECT_EQ(storedAs(true), "integer 1");
    EXPECT_EQ(storedAs(std::int64_t{1} << 62), "integer 4611686018427387904");
    EXPECT_EQ(storedAs(2.5), "real 2.5");
    EXPECT_EQ(storedAs("tee"), "text 'tee'");
    EXPECT_EQ(storedAs(std::string{"naïve"}), "text 'naïve'");
    EXPECT_EQ(storedAs(std::string_view{}), "text ''");
    EXPECT_EQ(storedAs(nullptr), "null NULL");
    EXPECT_EQ(storedAs(OrderId{7}), "integer 7");
    EXPECT_EQ(storedAs(Millimetres{300}), "integer 300");
    EXPECT_EQ(storedAs(Grams{180}), "integer 180");
    EXPECT_EQ(storedAs(Money{2650}), "integer 2650");
    EXPECT_EQ(storedAs(Celsius{155.5}), "real 155.5");
    EXPECT_EQ(storedAs(Humidity{45}), "real 45.0");
    EXPECT_EQ(storedAs(Instant{90s}), "integer 90");
    EXPECT_EQ(storedAs(15s), "integer 15");
    EXPECT_EQ(storedAs(24h), "integer 24");
    EXPECT_EQ(storedAs(Days{30}), "integer 30");
    EXPECT_EQ(storedAs(localDate(2026, 11, 25)), "text '2026-11-25'");
    EXPECT_EQ(storedAs(LocalTime{localDate(2026, 11, 25)} + 9h + 30min), "text '2026-11-25T09:30'");
    EXPECT_EQ(storedAs(std::optional<OrderId>{}), "null NULL");
    EXPECT_EQ(storedAs(std::optional{localDate(2026, 1, 2)}), "text '2026-01-02'");
    EXPECT_EQ(storedAs(std::optional<std::string>{""}), "text ''");
}

TEST_F(Queries, ReadBackWhatWasStored) {
    Query row = connection.query("SELECT ?1, ?2, ?3, ?4, ?5, ?6, ?7, ?8", RollId{9}, "film", 1.5,
                                 Instant{77s}, localDate(2024, 2, 29),
                                 LocalTime{localDate(2026, 11, 25)} + 23h + 59min, false, nullptr);
    ASSERT_TRUE(row.step());
    EXPECT_EQ(row.id<RollId>(0), RollId{9});
    EXPECT_EQ(row.optionalId<RollId>(0), RollId{9});
    EXPECT_EQ(row.text(1), "film");
    EXPECT_EQ(row.optionalText(1), "film");
    EXPECT_EQ(row.real(2), 1.5);
    EXPECT_EQ(row.optionalReal(2), 1.5);
    EXPECT_EQ(row.instant(3), Instant{77s});
    EXPECT_EQ(row.optionalInstant(3), Instant{77s});
    EXPECT_EQ(row.date(4), localDate(2024, 2, 29));
    EXPECT_EQ(row.optionalDate(4), localDate(2024, 2, 29));
    EXPECT_EQ(row.localTime(5), LocalTime{localDate(2026, 11, 25)} + 23h + 59min);
    EXPECT_EQ(row.optionalLocalTime(5), row.localTime(5));
    EXPECT_FALSE(row.truth(6));
    EXPECT_TRUE(row.isNull(7));
    EXPECT_FALSE(row.optionalInteger(7) || row.optionalReal(7) || row.optionalText(7) ||
                 row.optionalInstant(7) || row.optionalDate(7) || row.optionalLocalTime(7) ||
                 row.optionalId<RollId>(7));
    EXPECT_FALSE(row.step());
}

TEST_F(Queries, RefuseTextThatIsNoDate) {
    for (const char* text : {"2026-02-30", "yesterday", "", "2026-11-25T09:30"}) {
        Query row = connection.query("SELECT ?1", text);
        ASSERT_TRUE(row.step());
        EXPECT_THROW(row.date(0), SqliteFailure) << text;
    }
    for (const char* text : {"2026-11-25", "2026-11-25T24:00", "2026-11-25T09:60", "2026-11-25 09:30",
                             "2026-02-30T09:30", "2026-11-25T0x:30"}) {
        Query row = connection.query("SELECT ?1", text);
        ASSERT_TRUE(row.step());
        EXPECT_THROW(row.localTime(0), SqliteFailure) << text;
    }
}

TEST_F(Queries, KeepBytesWithZerosInThem) {
    const std::vector<std::byte> bytes{std::byte{0}, std::byte{7}, std::byte{0}};
    EXPECT_EQ(storedAs(std::span<const std::byte>{bytes}), "blob X'000700'");
    EXPECT_EQ(storedAs(std::span<const std::byte>{}), "blob X''");
    Query row = connection.query("SELECT ?1", std::span<const std::byte>{bytes});
    ASSERT_TRUE(row.step());
    EXPECT_TRUE(std::ranges::equal(row.bytes(0), bytes));
}

TEST_F(Queries, TheSameTextMayBeInUseTwiceAtOnce) {
    connection.script("INSERT INTO thing (value) VALUES (1), (2), (3)");
    constexpr std::string_view kAll = "SELECT id FROM thing ORDER BY id";
    std::int64_t pairs = 0;
    Query outer{connection, kAll};
    while (outer.step()) {
        Query inner{connection, kAll};
        while (inner.step())
            ++pairs;
    }
    EXPECT_EQ(pairs, 9);
}

TEST_F(Queries, AStatementComesBackResetAndWithNothingBound) {
    constexpr std::string_view kEcho = "SELECT ?1";
    sqlite3_stmt* first = nullptr;
    {
        Query row{connection, kEcho};
        row.bind(1, 5);
        ASSERT_TRUE(row.step());
        first = sqlite3_next_stmt(connection.handle(), nullptr);
    }
    Query row{connection, kEcho};
    EXPECT_EQ(sqlite3_next_stmt(connection.handle(), nullptr), first) << "prepared anew";
    ASSERT_TRUE(row.step());
    EXPECT_TRUE(row.isNull(0));
}

TEST_F(Queries, CachedStatementsOutliveAChangeOfTheTables) {
    const auto count = [&] { return connection.number("SELECT COUNT(*) FROM thing"); };
    EXPECT_EQ(count(), 0);
    connection.script("ALTER TABLE thing ADD COLUMN note TEXT");
    connection.script("INSERT INTO thing (note) VALUES ('x')");
    EXPECT_EQ(count(), 1);
}

TEST_F(Queries, KeepNoMoreStatementsThanTheyUse) {
    for (int each = 0; each < 2000; ++each)
        connection.number("SELECT " + std::to_string(each));
    int kept = 0;
    for (auto* each = sqlite3_next_stmt(connection.handle(), nullptr); each != nullptr;
         each = sqlite3_next_stmt(connection.handle(), each))
        ++kept;
    EXPECT_LE(kept, 512);
}

TEST_F(Queries, SayWhatIsWrongWithAStatement) {
    try {
        connection.run("SELECT nonsense FROM thing");
        FAIL() << "no failure";
    } catch (const SqliteFailure& failure) {
        EXPECT_NE(std::string{failure.what()}.find("no such column: nonsense"), std::string::npos);
    }
    EXPECT_THROW(connection.query("SELECT ?1").bind(2, 1), SqliteFailure);
    EXPECT_THROW(connection.script("CREATE TABLE thing (id)"), SqliteFailure);
    EXPECT_THROW(connection.script("SELECT 1; nonsense"), SqliteFailure);
}

TEST_F(Queries, NothingIsWrittenWhileWritingIsOff) {
    connection.run("INSERT INTO thing (value) VALUES (1)"); // cached while writing was on
    connection.allowWriting(false);
    EXPECT_THROW(connection.run("INSERT INTO thing (value) VALUES (1)"), SqliteFailure);
    EXPECT_THROW(connection.run("UPDATE thing SET value = 2"), SqliteFailure);
    EXPECT_THROW(connection.run("DELETE FROM thing"), SqliteFailure);
    EXPECT_THROW(connection.script("DROP TABLE thing"), SqliteFailure);
    EXPECT_THROW(connection.script("CREATE TABLE other (id)"), SqliteFailure);
    EXPECT_THROW(connection.script("PRAGMA user_version = 5"), SqliteFailure);
    EXPECT_THROW(connection.query("INSERT INTO thing (value) VALUES (1) RETURNING id").step(), SqliteFailure);
    EXPECT_EQ(connection.number("SELECT COUNT(*) FROM thing WHERE value = 1"), 1);
    connection.allowWriting(true);
    connection.run("DELETE FROM thing");
    EXPECT_EQ(connection.changes(), 1);
}

TEST_F(Queries, ReadAPathWithSpecialLetters) {
    const auto path =
        std::filesystem::temp_directory_path() / ("hold?fast#50%25 ü-" + std::to_string(::getpid()) + ".db");
    sqlite3* handle = nullptr;
    ASSERT_EQ(sqlite3_open(path.c_str(), &handle), SQLITE_OK);
    sqlite3_exec(handle, "CREATE TABLE t (id); INSERT INTO t VALUES (3)", nullptr, nullptr, nullptr);
    sqlite3_close(handle);
    EXPECT_EQ(Connection::open(path, Access::Immutable).number("SELECT id FROM t"), 3);
    EXPECT_EQ(Connection::open(path, Access::ReadOnly).number("SELECT id FROM t"), 3);
    std::filesystem::remove(path);
    EXPECT_THROW(Connection::open(path, Access::ReadWrite), SqliteFailure);
    EXPECT_FALSE(std::filesystem::exists(path));
}

} // namespace
} // namespace holdfast::db
