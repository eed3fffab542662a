// SPDX-License-Identifier: GPL-3.0-or-later
#include "db/sqlite/changeset.h"
#include "db/sqlite/changeset_form.h"
#include "db/sqlite/connection.h"
#include "db/sqlite/foreign_keys.h"
#include "db/sqlite/session.h"
#include "db/sqlite/transaction.h"

#include <gtest/gtest.h>

#include <array>
#include <map>
#include <stdexcept>

namespace holdfast::db {
namespace {

struct Changesets : ::testing::Test {
    Connection connection = Connection::openInMemory();
    const std::array<std::string, 1> kFilm{"film"};

    void SetUp() override {
        connection.script("CREATE TABLE film (id INTEGER PRIMARY KEY, shade TEXT, width INTEGER) STRICT;"
                          "CREATE TABLE fibre (film INTEGER, name TEXT, PRIMARY KEY (film, name)) STRICT;"
                          "INSERT INTO film VALUES (1, 'red', 500), (2, 'blue', 500);");
    }

    Changeset recorded(std::string_view sql) {
        Session session{connection, kFilm};
        connection.script(sql);
        return session.changeset();
    }
};

TEST_F(Changesets, SayWhatWasChanged) {
    const auto changeset =
        recorded("INSERT INTO film VALUES (3, 'green', 300); UPDATE film SET width = 400 WHERE id = 1;"
                 "DELETE FROM film WHERE id = 2;");
    std::map<std::string, std::pair<ChangeKind, std::vector<bool>>> changes;
    forEachChange(changeset, [&](const RowChange& change) {
        EXPECT_EQ(change.table, "film");
        EXPECT_EQ(change.columns, 3);
        changes[change.key] = {change.kind, change.isChanged};
        return true;
    });
    ASSERT_EQ(changes.size(), 3U);
    EXPECT_EQ(changes["3"].first, ChangeKind::Insert);
    EXPECT_EQ(changes["2"].first, ChangeKind::Delete);
    EXPECT_EQ(changes["1"].first, ChangeKind::Update);
    EXPECT_EQ(changes["1"].second, (std::vector<bool>{false, false, true}));
}

TEST_F(Changesets, RecordOnlyTheNamedTables) {
    EXPECT_TRUE(recorded("INSERT INTO fibre VALUES (1, 'cotton')").empty());
}

TEST_F(Changesets, AreEmptyWhereNothingChangedOnTheWhole) {
    EXPECT_TRUE(
        recorded("UPDATE film SET width = 1 WHERE id = 1; UPDATE film SET width = 500 WHERE id = 1").empty());
    EXPECT_TRUE(recorded("INSERT INTO film VALUES (9, 'x', 1); DELETE FROM film WHERE id = 9").empty());
    EXPECT_TRUE(recorded("SELECT 1").empty());
}

TEST_F(Changesets, StopWhereTheLookerSaysSo) {
    const auto changeset = recorded("UPDATE film SET width = 1");
    int seen = 0;
    forEachChange(changeset, [&](const RowChange&) { return ++seen < 1; });
    EXPECT_EQ(seen, 1);
}

TEST_F(Changesets, TurnedRoundTheyTakeEverythingBack) {
    const auto changeset =
        recorded("INSERT INTO film VALUES (3, 'green', 300); UPDATE film SET width = 400 WHERE id = 1;"
                 "DELETE FROM film WHERE id = 2;");
    Transaction transaction{connection};
    EXPECT_FALSE(applyChangeset(connection, inverseOf(changeset)));
    transaction.commit();
    EXPECT_EQ(
        connection.number("SELECT COUNT(*) FROM film WHERE (id, shade, width) IN (VALUES (1, 'red', 500), "
                          "(2, 'blue', 500))"),
        2);
    EXPECT_EQ(connection.number("SELECT COUNT(*) FROM film"), 2);
}

TEST_F(Changesets, NameTheRowThatStandsDifferently) {
    const auto changeset = recorded("UPDATE film SET width = 400 WHERE id = 1");
    connection.script("UPDATE film SET width = 450 WHERE id = 1");
    Transaction transaction{connection};
    const auto conflict = applyChangeset(connection, inverseOf(changeset));
    ASSERT_TRUE(conflict);
    EXPECT_EQ(conflict->kind, Conflict::Kind::Differs);
    EXPECT_EQ(conflict->table, "film");
    EXPECT_EQ(conflict->key, "1");
    EXPECT_EQ(conflict->isChanged, (std::vector<bool>{false, false, true}));
}

TEST_F(Changesets, NameTheRowThatIsMissingOrThere) {
    const auto update = recorded("UPDATE film SET width = 400 WHERE id = 1");
    const auto removal = recorded("DELETE FROM film WHERE id = 1");
    {
        Transaction transaction{connection};
        const auto missing = applyChangeset(connection, inverseOf(update));
        ASSERT_TRUE(missing);
        EXPECT_EQ(missing->kind, Conflict::Kind::Missing);
    }
    connection.script("INSERT INTO film VALUES (1, 'black', 100)");
    Transaction transaction{connection};
    const auto exists = applyChangeset(connection, inverseOf(removal));
    ASSERT_TRUE(exists);
    EXPECT_EQ(exists->kind, Conflict::Kind::Exists);
    EXPECT_EQ(exists->key, "1");
}

TEST_F(Changesets, KeyOfSeveralColumnsIsOneText) {
    const std::array<std::string, 1> fibre{"fibre"};
    Session session{connection, fibre};
    connection.script("INSERT INTO fibre VALUES (4, 'linen')");
    std::string key;
    forEachChange(session.changeset(), [&](const RowChange& change) {
        key = change.key;
        return true;
    });
    const std::array<std::string, 2> values{"4", "linen"};
    EXPECT_EQ(key, keyText(values));
    const std::array<std::string, 2> others{"", "4linen"};
    EXPECT_NE(key, keyText(others));
}

TEST_F(Changesets, DamagedBytesAreNoticed) {
    auto changeset = recorded("UPDATE film SET width = 400");
    const auto whole = changeset;
    changeset.resize(changeset.size() - 3);
    EXPECT_THROW((void)tablesOf(changeset), SqliteFailure);
    const Changeset garbage(40, std::byte{0xAB});
    EXPECT_THROW((void)tablesOf(garbage), SqliteFailure);
    EXPECT_THROW(forEachChange(garbage, [](const RowChange&) { return true; }), SqliteFailure);
    EXPECT_EQ(tablesOf(whole), (std::vector<TableChanges>{{"film", {true, false, false}, 0, 2, 0}}));
}

TEST_F(Changesets, ATransactionRollsBackUnlessCommitted) {
    {
        Transaction transaction{connection};
        connection.run("DELETE FROM film");
    }
    EXPECT_FALSE(connection.inTransaction());
    EXPECT_EQ(connection.number("SELECT COUNT(*) FROM film"), 2);
}

TEST_F(Changesets, ForeignKeysComeBackOnEvenAfterAFailure) {
    connection.script("PRAGMA foreign_keys = ON");
    try {
        const ForeignKeysOff unchecked{connection};
        EXPECT_EQ(connection.number("PRAGMA foreign_keys"), 0);
        throw std::runtime_error{"in between"};
    } catch (const std::runtime_error&) {
    }
    EXPECT_EQ(connection.number("PRAGMA foreign_keys"), 1);
}

} // namespace
} // namespace holdfast::db
