// SPDX-License-Identifier: GPL-3.0-or-later
#include "db/check/check.h"
#include "tests/db/journal_fixture.h"

#include <sqlite3.h>

namespace holdfast::db {
namespace {

using namespace testing;

struct Check : ::testing::Test {
    TemporaryFolder folder;
    std::filesystem::path path = folder / "shop.holdfast";

    void SetUp() override {
        auto shop = aShopIn(path);
        const auto lot = receiveLot(*shop, "tees", 10);
        ASSERT_TRUE(moveUnits(*shop, *lot, -2, "Used 2"));
        ASSERT_TRUE(shop->undo(lastEntry(*shop)));
    }

    // What the check finds after somebody has meddled with the file.
    std::string findingsAfter(const std::string& sql) {
        sqlite3* handle = nullptr;
        EXPECT_EQ(sqlite3_open(path.c_str(), &handle), SQLITE_OK);
        EXPECT_EQ(sqlite3_exec(handle, sql.c_str(), nullptr, nullptr, nullptr), SQLITE_OK)
            << sqlite3_errmsg(handle);
        sqlite3_close(handle);
        auto shop = Shop::openReadOnly(path, standingClock(), smallSteps());
        if (!shop)
            return wordsOf(shop);
        const auto findings = checkShop(**shop);
        if (!findings)
            return wordsOf(findings);
        std::string text;
        for (const auto& finding : *findings)
            text += finding.english() + "\n";
        return text;
    }
};

TEST_F(Check, AWholeShopHasNoFindings) {
    EXPECT_EQ(findingsAfter(""), "");
}

TEST_F(Check, FindsARowThatRefersToNothing) {
    EXPECT_EQ(findingsAfter("INSERT INTO move VALUES (1, 77, 1)"),
              "In move, 1 row refers to a row of lot that is not there.\n"
              "A row of move is in the file, but no entry of the history made it.\n");
}

TEST_F(Check, FindsALedgerBelowZero) {
    EXPECT_EQ(findingsAfter("INSERT INTO move SELECT 1, id, -50 FROM lot"),
              "tees would have -40 left.\n"
              "A row of move is in the file, but no entry of the history made it.\n");
}

TEST_F(Check, FindsAnEntryThatCannotBeRead) {
    EXPECT_NE(findingsAfter("UPDATE journal_entry SET changeset = x'00112233' WHERE title = 'Used 2'")
                  .find("“Used 2”, cannot be read."),
              std::string::npos);
    EXPECT_NE(findingsAfter("UPDATE journal_entry SET changeset = x'' WHERE title = 'Used 2'")
                  .find("“Used 2”, does not say what was changed."),
              std::string::npos);
}

TEST_F(Check, FindsEntriesOutOfOrder) {
    EXPECT_NE(findingsAfter("UPDATE journal_entry SET undoes = id WHERE undoes IS NOT NULL")
                  .find("undoes an entry that came after it"),
              std::string::npos);
    EXPECT_NE(findingsAfter("UPDATE journal_entry SET undone_by = id WHERE title = 'Used 2'")
                  .find("was undone by an entry that came before it"),
              std::string::npos);
    EXPECT_NE(findingsAfter("UPDATE seat_here SET last_id = 5").find("above the last number it gave out"),
              std::string::npos);
}

TEST_F(Check, FindsAnEntryOfAnotherSeatsNumber) {
    EXPECT_NE(
        findingsAfter("INSERT INTO seat VALUES (2, 'Stall', 200, 300); UPDATE journal_entry SET seat_id = 2 "
                      "WHERE title = 'Used 2'")
            .find("bears the number of another laptop"),
        std::string::npos);
}

TEST_F(Check, FindsAnEntryThatIsNotAsItWasWritten) {
    std::filesystem::remove(path);
    for (const std::string changed :
         {"UPDATE journal_entry SET title = 'Used 3' WHERE title = 'Used 2'",
          "UPDATE journal_entry SET at = at + 1 WHERE title = 'Received tees'",
          "UPDATE journal_subject SET subject_id = subject_id + 1",
          "UPDATE journal_seal SET identity = zeroblob(16) WHERE entry_id = (SELECT MAX(id) FROM "
          "journal_entry)",
          "UPDATE journal_seal SET salt = x'0102030405060708'",
          "DELETE FROM journal_seal WHERE entry_id = (SELECT MIN(id) FROM journal_entry)",
          "UPDATE journal_entry SET changeset = CAST(REPLACE(changeset, 'tees', 'ties') AS BLOB)"}) {
        SetUp();
        EXPECT_NE(findingsAfter(changed).find("is not as it was written."), std::string::npos) << changed;
        std::filesystem::remove(path);
    }
}

TEST_F(Check, FindsAnIndexThatLeavesRowsOut) {
    const auto findings =
        findingsAfter("PRAGMA writable_schema = ON;"
                      "UPDATE sqlite_master SET sql = 'CREATE INDEX journal_subject_by_entry "
                      "ON journal_subject (kind)' WHERE name = 'journal_subject_by_entry';");
    EXPECT_NE(findings.find("The file is damaged: "), std::string::npos) << findings;
    EXPECT_NE(findings.find("missing from index"), std::string::npos) << findings;
}

} // namespace
} // namespace holdfast::db
