// SPDX-License-Identifier: GPL-3.0-or-later
// A changeset over rows that went on meanwhile.
#include "db/sqlite/merge_rows.h"
#include "db/sqlite/session.h"
#include "tests/db/journal_fixture.h"

namespace holdfast::db {
namespace {

using namespace testing;

struct MergeRows : ::testing::Test {
    MergeRows() {
        connection.script(
            "CREATE TABLE card (id INTEGER PRIMARY KEY, number INTEGER UNIQUE, a TEXT, b TEXT, c REAL, "
            "CHECK (a IS NULL OR b IS NOT NULL)) STRICT;"
            "INSERT INTO card VALUES (1, 10, 'a', 'b', 0.5), (2, 20, 'a', 'b', NULL)");
        connection.script("BEGIN");
    }

    Changeset changing(const std::string& sql) {
        connection.script("SAVEPOINT other");
        Changeset changeset;
        {
            Session session{connection, tables};
            connection.script(sql);
            changeset = session.changeset();
        }
        connection.script("ROLLBACK TO other; RELEASE other");
        return changeset;
    }

    std::string row(int id) {
        Query found =
            connection.query("SELECT quote(number) || ' ' || quote(a) || ' ' || quote(b) || ' ' || quote(c) "
                             "FROM card WHERE id = ?1",
                             id);
        return found.step() ? found.text(0) : "gone";
    }

    Connection connection = Connection::openInMemory();
    std::vector<std::string> tables{"card"};
    MergeRules rules{{}, {{"card", "number", "SELECT MAX(number) + 1 FROM card WHERE number < 99"}}};
    using Kind = RowDifference::Kind;
};

TEST_F(MergeRows, ColumnByColumnWhatWasChangedHereStands) {
    const Changeset changeset = changing("UPDATE card SET a = 'theirs', b = 'theirs', c = 0.75 WHERE id = 1");
    connection.script("UPDATE card SET a = 'ours', c = 0.75 WHERE id = 1");
    const auto differences = mergeRows(connection, changeset, rules);
    EXPECT_EQ(row(1), "10 'ours' 'theirs' 0.75");
    ASSERT_EQ(differences.size(), 1U);
    EXPECT_EQ(differences[0].kind, Kind::ColumnsStand);
    EXPECT_EQ(differences[0].key, "1");
    EXPECT_EQ(differences[0].columns, std::vector<std::string>{"a"});
}

TEST_F(MergeRows, ColumnsThatBelongTogetherStandTogether) {
    rules.together = {{"card", {"a", "b"}}};
    const Changeset changeset = changing("UPDATE card SET a = 'theirs', b = 'theirs', c = 0.75 WHERE id = 1");
    connection.script("UPDATE card SET a = 'ours' WHERE id = 1");
    const auto differences = mergeRows(connection, changeset, rules);
    EXPECT_EQ(row(1), "10 'ours' 'b' 0.75");
    ASSERT_EQ(differences.size(), 1U);
    EXPECT_EQ(differences[0].columns, (std::vector<std::string>{"a", "b"}));
}

TEST_F(MergeRows, NullIsAValueLikeAnother) {
    const Changeset changeset =
        changing("UPDATE card SET c = 1.5 WHERE id = 2; UPDATE card SET a = NULL WHERE id = 1");
    EXPECT_TRUE(mergeRows(connection, changeset, rules).empty());
    EXPECT_EQ(row(1), "10 NULL 'b' 0.5");
    EXPECT_EQ(row(2), "20 'a' 'b' 1.5");
}

TEST_F(MergeRows, ARowThatIsGoneIsSaidAndOneThatWasChangedIsNotDeleted) {
    const Changeset update = changing("UPDATE card SET a = 'theirs' WHERE id = 1");
    const Changeset remove = changing("DELETE FROM card WHERE id = 2");
    connection.script("DELETE FROM card WHERE id = 1; UPDATE card SET a = 'ours' WHERE id = 2");
    EXPECT_EQ(mergeRows(connection, update, rules).at(0).kind, Kind::RowGone);
    EXPECT_EQ(mergeRows(connection, remove, rules).at(0).kind, Kind::RowStands);
    EXPECT_EQ(row(2), "20 'ours' 'b' NULL");
    connection.script("DELETE FROM card WHERE id = 2");
    EXPECT_TRUE(mergeRows(connection, remove, rules).empty()) << "gone is gone";
}

TEST_F(MergeRows, ANumberThatIsTakenBecomesTheNext) {
    const Changeset insert = changing("INSERT INTO card VALUES (3, 30, 'a', 'b', NULL)");
    connection.script("INSERT INTO card VALUES (4, 30, 'x', 'y', NULL)");
    const auto differences = mergeRows(connection, insert, rules);
    ASSERT_EQ(differences.size(), 1U);
    EXPECT_EQ(differences[0].kind, Kind::Renumbered);
    EXPECT_EQ(differences[0].columns, std::vector<std::string>{"30"});
    EXPECT_EQ(row(3), "31 'a' 'b' NULL");
    EXPECT_EQ(mergeRows(connection, insert, rules).at(0).kind, Kind::RowThere) << "here, with another number";
}

TEST_F(MergeRows, ABrokenRuleIsSaidAndTheRestGoesOn) {
    rules.numbered.clear();
    const Changeset changeset = changing("INSERT INTO card VALUES (3, 30, 'a', 'b', NULL);"
                                         "INSERT INTO card VALUES (5, 50, 'a', 'b', NULL);"
                                         "UPDATE card SET a = 'theirs' WHERE id = 2");
    connection.script(
        "INSERT INTO card VALUES (4, 30, 'x', 'y', NULL); UPDATE card SET a = NULL, b = NULL WHERE id = 2");
    const auto differences = mergeRows(connection, changeset, rules);
    EXPECT_EQ(row(3), "gone");
    EXPECT_EQ(row(5), "50 'a' 'b' NULL");
    ASSERT_EQ(differences.size(), 2U);
    EXPECT_TRUE(
        std::ranges::any_of(differences, [](const auto& each) { return each.kind == Kind::Refused; }));
}

} // namespace
} // namespace holdfast::db
