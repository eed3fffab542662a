// SPDX-License-Identifier: GPL-3.0-or-later
// Damaged and forged changesets: each is either refused before SQLite reads it, or read and turned round to
// its end.
#include "db/sqlite/changeset_form.h"
#include "db/sqlite/connection.h"
#include "db/sqlite/inserted_rows.h"
#include "db/sqlite/merge_rows.h"
#include "db/sqlite/session.h"
#include "db/sqlite/transaction.h"

#include <gtest/gtest.h>

#include <array>
#include <random>
#include <string>

namespace holdfast::db {
namespace {

Changeset bytes(std::initializer_list<int> values) {
    Changeset changeset;
    for (const int value : values)
        changeset.push_back(static_cast<std::byte>(value));
    return changeset;
}

struct ChangesetForm : ::testing::Test {
    Connection connection = Connection::openInMemory();
    const std::array<std::string, 3> kTables{"film", "fibre", "note"};

    void SetUp() override {
        connection.script(
            "CREATE TABLE film (id INTEGER PRIMARY KEY, shade TEXT, width REAL, icon BLOB) STRICT;"
            "CREATE TABLE fibre (film INTEGER, name TEXT, PRIMARY KEY (film, name)) STRICT;"
            "CREATE TABLE note (key TEXT PRIMARY KEY, text TEXT) STRICT, WITHOUT ROWID;"
            "INSERT INTO film VALUES (1, 'red', 500, NULL), (2, 'blue', 500.5, x'00ff');");
    }

    Changeset recorded() {
        Session session{connection, kTables};
        connection.script("INSERT INTO film VALUES (3, 'green', 300, x''), (4, NULL, -1, zeroblob(40));"
                          "UPDATE film SET width = 400, icon = NULL WHERE id = 2;"
                          "DELETE FROM film WHERE id = 1;"
                          "INSERT INTO fibre VALUES (3, 'cotton'), (3, '');"
                          "INSERT INTO note VALUES ('a', printf('%.150c', 'x'));");
        return session.changeset();
    }

    // Reads it in every way there is; damage is refused, and nothing else is thrown.
    void readInEveryWay(ChangesetView changeset) {
        try {
            (void)tablesOf(changeset);
            (void)changeCount(changeset);
            (void)inverseOf(changeset);
            forEachChange(changeset, [](const RowChange& change) {
                for (int column = 0; column < change.columns; ++column) {
                    (void)change.before(column);
                    (void)change.after(column);
                }
                return true;
            });
            Transaction transaction{connection};
            (void)applyChangeset(connection, changeset);
            (void)mergeRows(connection, changeset, {});
        } catch (const SqliteFailure&) {
        }
    }
};

TEST_F(ChangesetForm, WhatSqliteRecordsIsWhole) {
    const Changeset changeset = recorded();
    EXPECT_TRUE(isWhole(changeset));
    EXPECT_TRUE(isWhole(inverseOf(changeset)));
    EXPECT_TRUE(isWhole(inverseOf(inverseOf(changeset))));
    EXPECT_TRUE(isWhole({}));
}

TEST_F(ChangesetForm, WhatIsWrittenByUsIsWhole) {
    InsertedRows rows{"film", std::array<std::uint8_t, 4>{1, 0, 0, 0}};
    rows.beginRow();
    rows.integer(7);
    rows.null();
    rows.real(0.5);
    rows.null();
    EXPECT_TRUE(isWhole(rows.take()));
}

TEST_F(ChangesetForm, CutOffAnywhereInAChangeItIsNotWhole) {
    const Changeset changeset = recorded();
    std::size_t whole = 0;
    for (std::size_t length = 0; length < changeset.size(); ++length)
        whole += isWhole(ChangesetView{changeset}.first(length)) ? 1 : 0;
    // At its start, behind each table's head and behind each change but the last.
    EXPECT_EQ(whole, 1U + 3U + 6U);
}

// One byte: a head that goes on for ever, which SQLite 3.40 never comes back from.
TEST_F(ChangesetForm, ATableWithoutAnEndIsRefused) {
    for (const Changeset& damaged :
         {bytes({'T', 'S'}), bytes({'T', 2, 1, 0, 'f'}), bytes({'T', 0, 'f', 0}), bytes({'T'}),
          bytes({'T', 1, 1, 0}), bytes({'T', 2, 0, 0, 'f', 0}), bytes({'T', 0xFF, 0xFF, 0xFF, 0xFF})}) {
        EXPECT_FALSE(isWhole(damaged));
        EXPECT_THROW((void)tablesOf(damaged), SqliteFailure);
        EXPECT_THROW((void)changeCount(damaged), SqliteFailure);
        EXPECT_THROW((void)inverseOf(damaged), SqliteFailure);
        Transaction transaction{connection};
        EXPECT_THROW((void)applyChangeset(connection, damaged), SqliteFailure);
        EXPECT_THROW((void)mergeRows(connection, damaged, {}), SqliteFailure);
    }
}

TEST_F(ChangesetForm, AKeyWithNoValueIsRefused) {
    const auto row = [](std::initializer_list<int> change) {
        Changeset changeset = bytes({'T', 2, 1, 0, 'f', 0});
        const Changeset rest = bytes(change);
        changeset.insert(changeset.end(), rest.begin(), rest.end());
        return changeset;
    };
    constexpr int kInsert = 18;
    constexpr int kUpdate = 23;
    constexpr int kDelete = 9;
    EXPECT_TRUE(isWhole(row({kInsert, 0, 3, 1, 'a', 5})));
    EXPECT_FALSE(isWhole(row({kInsert, 0, 0, 3, 1, 'a'}))) << "no key";
    EXPECT_FALSE(isWhole(row({kInsert, 0, 5, 3, 1, 'a'}))) << "a key that is NULL";
    EXPECT_FALSE(isWhole(row({kInsert, 0, 3, 1, 'a', 0}))) << "a column left out";
    EXPECT_FALSE(isWhole(row({kInsert, 0, 3, 1, 'a', 6}))) << "a type that there is not";
    EXPECT_FALSE(isWhole(row({kDelete, 0, 0, 5})));
    EXPECT_FALSE(isWhole(row({kDelete, 0, 3, 1, 'a', 0})));
    EXPECT_TRUE(isWhole(row({kUpdate, 0, 3, 1, 'a', 5, 0, 3, 1, 'b'})));
    EXPECT_FALSE(isWhole(row({kUpdate, 0, 0, 5, 0, 3, 1, 'b'}))) << "no key before";
    EXPECT_FALSE(isWhole(row({kUpdate, 0, 3, 1, 'a', 5, 3, 1, 'a', 5}))) << "a key after";
    EXPECT_FALSE(isWhole(row({kUpdate, 0, 3, 1, 'a', 0, 0, 5}))) << "after, but not before";
    EXPECT_FALSE(isWhole(row({kUpdate, 0, 3, 1, 'a', 5, 0, 0}))) << "before, but not after";
    EXPECT_FALSE(isWhole(row({11, 0, 3, 1, 'a', 5}))) << "neither insert, update nor deletion";
    EXPECT_FALSE(isWhole(row({kInsert, 0, 3, 0xFF, 0xFF, 0xFF, 0xFF, 0xFF, 0xFF, 0xFF, 0xFF, 0xFF})))
        << "a length beyond all bounds";
    EXPECT_FALSE(isWhole(bytes({kInsert, 0, 3, 1, 'a'}))) << "no table";
}

// Comes back from each; under the sanitizers nothing is read that is not there.
TEST_F(ChangesetForm, EveryByteFlippedIsReadToItsEndOrRefused) {
    const Changeset changeset = recorded();
    for (std::size_t at = 0; at < changeset.size(); ++at) {
        for (const int instead : {0, 0x80, 0xFF, std::to_integer<int>(changeset[at]) ^ 1}) {
            Changeset flipped = changeset;
            flipped[at] = static_cast<std::byte>(instead);
            readInEveryWay(flipped);
        }
    }
}

TEST_F(ChangesetForm, NumbersAreReplacedWhereTheyAreIdsAndNowhereElse) {
    connection.script(
        "CREATE TABLE roll (id INTEGER PRIMARY KEY, film INTEGER, mm INTEGER, note TEXT) STRICT;"
        "INSERT INTO roll VALUES (8, 7, 7, '7')");
    Changeset changeset;
    {
        const std::array<std::string, 2> tables{"film", "roll"};
        Session session{connection, tables};
        connection.script(
            "INSERT INTO film VALUES (7, '7', 7, x'07'); INSERT INTO roll VALUES (9, 7, 7, '7');"
            "UPDATE roll SET film = 1, mm = 9 WHERE id = 8;");
        changeset = session.changeset();
        connection.script("DELETE FROM film WHERE id = 7; DELETE FROM roll WHERE id = 9;"
                          "UPDATE roll SET film = 70, mm = 7 WHERE id = 8");
    }
    const auto isId = [](const std::string& table, std::size_t column) {
        return column == 0 || (table == "roll" && column == 1);
    };
    Transaction transaction{connection};
    EXPECT_FALSE(applyChangeset(connection, withOtherNumbers(changeset, {{7, 70}, {9, 90}}, isId)));
    Query films = connection.query("SELECT id || ' ' || shade || ' ' || width || ' ' || hex(icon) FROM film "
                                   "WHERE id > 2");
    ASSERT_TRUE(films.step());
    EXPECT_EQ(films.text(0), "70 7 7.0 07");
    Query rolls = connection.query("SELECT group_concat(id || ' ' || film || ' ' || mm || ' ' || note, ', ') "
                                   "FROM (SELECT * FROM roll ORDER BY id)");
    ASSERT_TRUE(rolls.step());
    EXPECT_EQ(rolls.text(0), "8 1 9 7, 90 70 7 7");
    EXPECT_EQ(withOtherNumbers(changeset, {{5, 50}}, isId), changeset);
}

TEST_F(ChangesetForm, SeveralBytesChangedAreReadToTheirEndOrRefused) {
    const Changeset changeset = recorded();
    std::mt19937 random{12};
    const auto below = [&](std::size_t bound) { return static_cast<std::size_t>(random()) % bound; };
    for (int round = 0; round < 500; ++round) {
        Changeset changed = changeset;
        for (std::size_t count = 1 + below(4); count > 0; --count)
            changed[below(changed.size())] = static_cast<std::byte>(random() & 0xFF);
        if (below(3) == 0)
            changed.resize(below(changed.size()) + 1);
        readInEveryWay(changed);
    }
}

} // namespace
} // namespace holdfast::db
