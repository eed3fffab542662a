// SPDX-License-Identifier: GPL-3.0-or-later
// The check of a whole shop: what something or somebody did to the file, past its history, is named, and put
// right where the history tells how.
#include "db/check/check.h"
#include "db/check/mend.h"
#include "db/check/save.h"
#include "db/demo/demo_shop.h"
#include "db/tables/facts.h"
#include "tests/db/journal_fixture.h"

#include <sqlite3.h>

namespace holdfast::db {
namespace {

using namespace testing;

const LocalDate kDemoDay = localDate(2026, 11, 11);

// Made once: a shop of some hundred orders, written for every test.
const std::string& demoBytes() {
    static const std::string bytes = [] {
        TemporaryFolder folder;
        const auto made = makeDemoShop(folder / "demo.holdfast", kDemoDay);
        EXPECT_TRUE(made.ok()) << wordsOf(made);
        return bytesOf(folder / "demo.holdfast");
    }();
    return bytes;
}

struct CheckShop : ::testing::Test {
    TemporaryFolder folder;
    std::filesystem::path path = folder / "shop.holdfast";

    void SetUp() override { writeBytes(path, demoBytes()); }

    void meddle(const std::string& sql) {
        sqlite3* handle = nullptr;
        ASSERT_EQ(sqlite3_open(path.c_str(), &handle), SQLITE_OK);
        EXPECT_EQ(sqlite3_exec(handle, sql.c_str(), nullptr, nullptr, nullptr), SQLITE_OK)
            << sqlite3_errmsg(handle);
        sqlite3_close(handle);
    }

    std::string findings(const std::filesystem::path& of) {
        auto shop = Shop::openReadOnly(of, standingClock());
        if (!shop)
            return wordsOf(shop);
        const auto found = checkShop(**shop);
        if (!found)
            return wordsOf(found);
        std::string text;
        for (const auto& finding : *found)
            text += finding.english() + "\n";
        return text;
    }

    std::string findingsAfter(const std::string& sql) {
        meddle(sql);
        return findings(path);
    }

    std::string textOf(const std::string& sql) {
        auto shop = Shop::openReadOnly(path, standingClock());
        Query row = (*shop)->connection().query(sql);
        return row.step() ? row.text(0) : std::string{};
    }

    Mended mended() {
        auto shop = Shop::open(path, standingClock());
        EXPECT_TRUE(shop.ok()) << wordsOf(shop);
        auto done = mendShop(**shop);
        EXPECT_TRUE(done.ok()) << wordsOf(done);
        return done.ok() ? *done : Mended{};
    }

    // What the check says of it, and nothing once it is mended.
    void expectNamedAndMended(const std::string& sql, const std::string& words) {
        SCOPED_TRACE(sql);
        const std::string found = findingsAfter(sql);
        EXPECT_NE(found.find(words), std::string::npos) << found;
        const Mended done = mended();
        EXPECT_TRUE(done.left.empty()) << done.left.front();
        EXPECT_EQ(findings(path), "");
    }
};

TEST_F(CheckShop, TheDemoIsWhole) {
    EXPECT_EQ(findings(path), "");
}

TEST_F(CheckShop, ARowThatIsNotAsItsHistorySaysIsNamedAndPutRight) {
    const std::string number = textOf("SELECT MIN(number) FROM shop_order WHERE state = 'confirmed'");
    const std::string promised = textOf("SELECT promised FROM shop_order WHERE number = " + number);
    expectNamedAndMended("UPDATE shop_order SET promised = '2026-11-30T16:00' WHERE number = " + number,
                         "Order " + number + ": its promise is “2026-11-30T16:00” and was entered as “" +
                             promised + "”.");
    EXPECT_EQ(textOf("SELECT promised FROM shop_order WHERE number = " + number), promised);
}

TEST_F(CheckShop, ALostRowComesBackFromItsHistory) {
    const std::string before = textOf("SELECT COUNT(*) FROM money_move");
    expectNamedAndMended("DELETE FROM money_move WHERE id = (SELECT MAX(id) FROM money_move)",
                         "is in the history and not in the file.");
    EXPECT_EQ(textOf("SELECT COUNT(*) FROM money_move"), before);
}

TEST_F(CheckShop, ALedgerThatWasChangedEverywhereIsPutRight) {
    const std::string before = textOf("SELECT SUM(minor) FROM money_move");
    expectNamedAndMended("UPDATE money_move SET minor = minor + 100",
                         "more rows are not as their history says");
    EXPECT_EQ(textOf("SELECT SUM(minor) FROM money_move"), before);
}

TEST_F(CheckShop, ARowThatNoEntryMadeIsNamedAndStays) {
    const std::string found = findingsAfter("INSERT INTO closed_day (day) VALUES ('2026-12-24')");
    EXPECT_NE(found.find("A closed day is in the file, but no entry of the history made it."),
              std::string::npos)
        << found;
    const Mended done = mended();
    ASSERT_EQ(done.left.size(), 1U);
    EXPECT_EQ(textOf("SELECT COUNT(*) FROM closed_day WHERE day = '2026-12-24'"), "1");
}

TEST_F(CheckShop, ASchemaThatIsNotOfAShopIsNamedAndMadeAgain) {
    expectNamedAndMended("DROP TABLE claim", "The table claim is missing from the file.");
    expectNamedAndMended("CREATE TRIGGER thief AFTER INSERT ON customer BEGIN DELETE FROM money_move; END",
                         "The file has a trigger thief, which is not of a shop.");
    expectNamedAndMended(
        "DROP INDEX film_roll_by_number; CREATE INDEX film_roll_by_number ON film_roll(number)",
        "The index film_roll_by_number is not as Holdfast makes it.");
}

TEST_F(CheckShop, WhatIsMadeOutOfRowsIsMadeAgain) {
    expectNamedAndMended("UPDATE order_card SET total_minor = 1", "is not in the order book as it is.");
    expectNamedAndMended("DELETE FROM order_text_data WHERE id > 10",
                         "The search does not find orders by the words they have.");
    expectNamedAndMended("DELETE FROM order_card WHERE id = (SELECT MAX(id) FROM order_card)",
                         "is not in the order book as it is.");
    constexpr const char* kWrongCard = "wrongly. “Mend the shop file” counts again.";
    expectNamedAndMended("UPDATE garment_card SET pressed_at = pressed_at - 86400", kWrongCard);
    expectNamedAndMended("UPDATE garment_card SET presses = ''", kWrongCard);
    expectNamedAndMended("DELETE FROM garment_card", kWrongCard);
    expectNamedAndMended("INSERT INTO garment_card VALUES (12345678, NULL, '')",
                         "The figures count 1 garment that is not there or was never begun.");
}

TEST_F(CheckShop, AFactThatTheWindowCannotReadIsNamedWithItsOrder) {
    const std::string number = textOf("SELECT MIN(number) FROM shop_order WHERE state = 'confirmed'");
    const std::string found =
        findingsAfter("UPDATE shop_order SET state = 'confirmee' WHERE number = " + number +
                      "; INSERT INTO setting VALUES ('deposit-percent', 'ninety') "
                      "ON CONFLICT DO UPDATE SET value = 'ninety'");
    EXPECT_NE(found.find("Order " + number + " of "), std::string::npos) << found;
    EXPECT_NE(found.find("Its state reads “confirmee”. The order is left out."), std::string::npos) << found;
    EXPECT_NE(found.find("The setting “deposit asked”: Its value reads “ninety”. The usual value is used."),
              std::string::npos)
        << found;
}

// As a flipped bit of a row's head does it: SQLite itself then says that the column holds what it must not.
TEST_F(CheckShop, ATextWhereANumberBelongsTakesAwayItsOrderAndNotTheFile) {
    const std::string roll = textOf("SELECT MIN(number) FROM film_roll WHERE state = 'on-shelf'");
    meddle("PRAGMA writable_schema = ON; UPDATE sqlite_schema SET sql = replace(sql, ') STRICT', ')') "
           "WHERE name = 'film_roll'; PRAGMA writable_schema = RESET; "
           "UPDATE film_roll SET width_mm = 'wide' WHERE number = " +
           roll +
           "; PRAGMA writable_schema = ON; "
           "UPDATE sqlite_schema SET sql = sql || ' STRICT' WHERE name = 'film_roll'");
    {
        auto shop = Shop::open(path, standingClock());
        ASSERT_TRUE(shop.ok()) << wordsOf(shop);
        const auto facts = loadOpenFacts((*shop)->connection());
        ASSERT_FALSE(facts.unread.empty());
        EXPECT_EQ(facts.unread.front().why, "Its width reads “wide”.");
        EXPECT_FALSE(facts.rolls.empty());
    }
    EXPECT_TRUE(mended().left.empty());
    EXPECT_EQ(findings(path), "");
}

TEST_F(CheckShop, AnEntryThatWasChangedIsFound) {
    const std::string found = findingsAfter("UPDATE journal_entry SET changeset = CAST(substr(changeset, 1, "
                                            "length(changeset) - 1) || x'7f' AS BLOB) "
                                            "WHERE id = (SELECT MAX(id) FROM journal_entry)");
    EXPECT_NE(found, "");
}

TEST_F(CheckShop, AMarkOfAnUndoThatIsWrongIsPutRight) {
    meddle("");
    {
        auto shop = Shop::open(path, [] { return demoNow(kDemoDay).instant + 1min; });
        ASSERT_TRUE(shop.ok());
        ASSERT_TRUE((*shop)->undo((*shop)->lastUndoable()->id).ok());
    }
    ASSERT_EQ(findings(path), "");
    expectNamedAndMended("UPDATE journal_entry SET undone_by = NULL",
                         "is not marked as undone by what undid it.");
}

TEST_F(CheckShop, NothingIsPutRightFromAJournalThatLostEntries) {
    meddle("PRAGMA foreign_keys = OFF; DELETE FROM journal_entry WHERE title LIKE 'Took order%' AND id = "
           "(SELECT MAX(id) FROM journal_entry WHERE title LIKE 'Took order%')");
    const std::string before = textOf("SELECT COUNT(*) FROM garment");
    const Mended done = mended();
    ASSERT_FALSE(done.left.empty());
    EXPECT_NE(done.left.front().english().find("the journal has lost entries"), std::string::npos);
    EXPECT_EQ(done.rows, 0U);
    EXPECT_EQ(textOf("SELECT COUNT(*) FROM garment"), before);
}

TEST_F(CheckShop, TheQuickCheckFindsRowsAndFacts) {
    meddle("UPDATE shop_order SET promised = 'soon' WHERE number = (SELECT MIN(number) FROM shop_order)");
    auto shop = Shop::openReadOnly(path, standingClock());
    ASSERT_TRUE(shop.ok());
    const auto found = checkQuickly(**shop);
    ASSERT_TRUE(found.ok());
    ASSERT_EQ(found->unread.size(), 1U);
    EXPECT_EQ(found->unread.front().why, "Its promise reads “soon”.");
    ASSERT_EQ(found->sentences.size(), 1U);
    EXPECT_NE(found->sentences.front().english().find("its promise is “soon” and was entered as"),
              std::string::npos);
}

TEST_F(CheckShop, ACheckSaysHowFarItIsAndStops) {
    auto shop = Shop::openReadOnly(path, standingClock());
    ASSERT_TRUE(shop.ok());
    double last = 0;
    bool isOrderly = true;
    const auto whole = checkShop(**shop, [&](double share, Phrase) {
        isOrderly = isOrderly && share >= last && share <= 1;
        last = share;
        return true;
    });
    ASSERT_TRUE(whole.ok());
    EXPECT_TRUE(isOrderly);
    EXPECT_GT(last, 0.8);
    const auto stopped = checkShop(**shop, [](double, Phrase) { return false; });
    ASSERT_FALSE(stopped.ok());
    EXPECT_EQ(stopped.error().message.english(), "Stopped. Nothing was changed.");
}

TEST_F(CheckShop, WhatCanBeSavedOfAWholeFileIsAllOfIt) {
    const auto saved = saveWhatCanBe(path, folder / "saved.holdfast");
    ASSERT_TRUE(saved.ok()) << wordsOf(saved);
    EXPECT_EQ(saved->lost, std::vector<Sentence>{});
    EXPECT_EQ(saved->fromHistory, 0);
    EXPECT_EQ(findings(folder / "saved.holdfast"), "");
}

// A page of the orders' table is lost: the history still has its rows.
TEST_F(CheckShop, RowsOfALostPageAreWrittenFromTheHistory) {
    const std::string before = textOf("SELECT group_concat(number || promised) FROM shop_order");
    const int page = std::stoi(textOf("SELECT rootpage FROM sqlite_schema WHERE name = 'shop_order'"));
    const auto size = static_cast<std::size_t>(std::stoi(textOf("PRAGMA page_size")));
    std::string bytes = demoBytes();
    bytes.replace(static_cast<std::size_t>(page - 1) * size, size, size, '\0');
    writeBytes(path, bytes);
    const auto saved = saveWhatCanBe(path, folder / "saved.holdfast");
    ASSERT_TRUE(saved.ok()) << wordsOf(saved);
    EXPECT_GT(saved->fromHistory, 0);
    ASSERT_FALSE(saved->lost.empty());
    EXPECT_EQ(saved->lost.front(), "Not every row of “shop order” could be read from the file.");
    path = folder / "saved.holdfast";
    EXPECT_EQ(findings(path), "");
    EXPECT_EQ(textOf("SELECT group_concat(number || promised) FROM shop_order"), before);
}

TEST_F(CheckShop, WhatIsNoShopIsNotSaved) {
    writeBytes(folder / "letter.txt", "Dear Maren,\n");
    const auto saved = saveWhatCanBe(folder / "letter.txt", folder / "saved.holdfast");
    ASSERT_FALSE(saved.ok());
    EXPECT_NE(saved.error().message.english().find("can be read as a shop"), std::string::npos);
    EXPECT_FALSE(std::filesystem::exists(folder / "saved.holdfast"));
}

} // namespace
} // namespace holdfast::db
