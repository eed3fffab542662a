// SPDX-License-Identifier: GPL-3.0-or-later
// News that somebody has written to: well sealed, but with what no work with Holdfast does.
#include "db/exchange/news_file.h"
#include "db/journal/backup.h"
#include "db/sqlite/session.h"
#include "tests/db/exchange_fixture.h"

#include <gtest/gtest.h>

#include <array>
#include <optional>
#include <string>
#include <utility>

namespace holdfast::db {
namespace {

class ForgedNews : public Laptops {
protected:
    void SetUp() override {
        Laptops::SetUp();
        receiveCleanTees(3);
        m_fair = &aLaptop();
        m_order = taken(*m_fair->shop, aDraft()).id;
        exchange(*m_fair);
    }

    // What the statements change in the table, as a session records it in a copy of the workshop's file.
    Changeset changesOf(const std::string& table, const std::string& sql) {
        const auto path = newFileName();
        EXPECT_TRUE(backup(shop(), path).ok());
        Connection copy = Connection::open(path, Access::ReadWrite);
        const std::array<std::string, 1> tables{table};
        Session session{copy, tables};
        copy.script(sql);
        return session.changeset();
    }

    // News of the fair laptop with one entry, which changes what is handed in; the sum is right.
    std::filesystem::path newsWith(Changeset changeset, std::optional<EntryId> undoes = std::nullopt) {
        auto news = NewsReader::open(newsFrom(*m_fair->shop));
        EXPECT_TRUE(news.ok());
        const auto path = newFileName();
        testing::writeBytes(path, "");
        NewsWriter forged{path};
        CarriedEntry entry;
        entry.id = EntryId{m_fair->shop->connection().number("SELECT last_id + 1024 FROM seat_here")};
        entry.seat = m_fair->number;
        entry.at = now().instant;
        entry.title = KeptWords::of(said("A note"));
        entry.undoes = undoes;
        entry.changeset = std::move(changeset);
        entry.identity = identityOf(entry);
        for (std::int64_t number = 1; number <= news->label().ofTheLine(); ++number)
            forged.add(news->entry(number));
        forged.add(entry);
        forged.close(news->label());
        return path;
    }

    void
    expectRefused(Changeset changeset, std::optional<EntryId> undoes = std::nullopt,
                  const std::string& words = "This news has changes in it that Holdfast never makes. It was "
                                             "altered on the way, or was not saved by "
                                             "Holdfast. Nothing was brought in.") {
        ASSERT_FALSE(changeset.empty());
        const auto path = newsWith(std::move(changeset), undoes);
        const Dump before = everythingIn(shop());
        const auto outcome = takeInNews(shop(), path);
        ASSERT_FALSE(outcome.ok());
        EXPECT_EQ(outcome.error().message.english(), words);
        EXPECT_EQ(everythingIn(shop()), before);
    }

    // Every row of every table, the journal's and the laptops' too.
    static Dump everythingIn(Shop& shop) {
        Dump rows = dumpOf(shop);
        for (const std::string table : {"seat", "seat_here", "seat_note", "seat_known", "journal_shop",
                                        "journal_line", "journal_entry", "journal_aside"}) {
            std::string sql = "SELECT ''";
            Query columns = shop.connection().query("SELECT name FROM pragma_table_info(?1)", table);
            while (columns.step())
                sql += " || '|' || quote(" + columns.text(0) + ")";
            Query row = shop.connection().query(sql + " FROM " + table + " ORDER BY 1");
            while (row.step())
                rows[table].push_back(row.text(0));
        }
        return rows;
    }

    Laptop* m_fair = nullptr;
    OrderId m_order{};
};

TEST_F(ForgedNews, MayNotWriteToTheJournalOrToWhatALaptopIs) {
    expectRefused(changesOf("seat_here", "UPDATE seat_here SET seat_id = 2"));
    expectRefused(changesOf("seat", "UPDATE seat SET name = 'Ours now' WHERE id = 1"));
    expectRefused(changesOf("seat_note", "INSERT INTO seat_note VALUES ('a', 'b')"));
    expectRefused(changesOf("seat_known", "DELETE FROM seat_known"));
    expectRefused(changesOf("journal_shop", "UPDATE journal_shop SET shop = shop + 1"));
    expectRefused(changesOf("journal_line", "DELETE FROM journal_line WHERE place = 1"));
    expectRefused(changesOf("journal_entry", "UPDATE journal_entry SET title = 'Nothing'"));
    expectRefused(changesOf("order_card", "UPDATE order_card SET total_minor = 1"));
}

TEST_F(ForgedNews, MayNotChangeOrTakeAwayWhatALedgerHas) {
    ASSERT_GT(number("SELECT COUNT(*) FROM lot_move"), 0);
    ASSERT_GT(number("SELECT COUNT(*) FROM roll_move"), 0);
    expectRefused(changesOf("lot_move", "UPDATE lot_move SET units = units + 1"));
    expectRefused(changesOf("roll_move", "UPDATE roll_move SET mm = mm + 1"));
    expectRefused(changesOf("lot_move", "DELETE FROM lot_move"));
    expectRefused(changesOf("roll_move", "DELETE FROM roll_move"));
    // Nor under the name of an undo of something else.
    const EntryId taken{number("SELECT MAX(id) FROM journal_entry WHERE title LIKE 'Took order%'")};
    expectRefused(changesOf("roll_move", "DELETE FROM roll_move"), taken);
}

TEST_F(ForgedNews, MayNotSpeakOfATableThatIsNotThereOrHasAnotherKey) {
    expectRefused(changesOf(
        "shelf", "CREATE TABLE shelf (id INTEGER PRIMARY KEY) STRICT; INSERT INTO shelf VALUES (1)"));
    expectRefused(changesOf("closed_day",
                            "DROP TABLE closed_day; CREATE TABLE closed_day (a TEXT, b TEXT PRIMARY KEY); "
                            "INSERT INTO closed_day VALUES ('a', 'b')"));
    expectRefused(changesOf("setting",
                            "DROP TABLE setting; CREATE TABLE setting (key TEXT PRIMARY KEY, a TEXT, b TEXT, "
                            "c TEXT, d TEXT); INSERT INTO setting VALUES ('a', 'b', 'c', 'd', 'e')"));
}

TEST_F(ForgedNews, WithAnEntryThatHasNoEndIsRefused) {
    const Dump before = everythingIn(shop());
    const auto outcome = takeInNews(shop(), newsWith({std::byte{'T'}, std::byte{'S'}}));
    ASSERT_FALSE(outcome.ok());
    EXPECT_EQ(everythingIn(shop()), before);
}

TEST_F(ForgedNews, WhatIsNotForgedIsTakenInAsBefore) {
    const auto outcome = takeInNews(
        shop(), newsWith(changesOf("closed_day", "INSERT INTO closed_day (day) VALUES ('2026-12-24')")));
    ASSERT_TRUE(outcome.ok()) << outcome.error().message.english();
    EXPECT_EQ(outcome->added, 1);
    EXPECT_EQ(number("SELECT COUNT(*) FROM closed_day WHERE day = '2026-12-24'"), 1);
}

// What is in the file beside our own tables is never run: each of these would go on for ever or fill the
// memory.
TEST_F(ForgedNews, WithASchemaOfItsOwnIsRefusedBeforeAnythingOfItIsRead) {
    const std::string endless =
        "WITH RECURSIVE forever (n) AS (SELECT 1 UNION ALL SELECT n + 1 FROM forever) ";
    for (const std::string& sql :
         {"ALTER TABLE label RENAME TO old; CREATE VIEW label AS " + endless +
              "SELECT old.*, COUNT(n) AS sum2 FROM old, forever",
          std::string{"ALTER TABLE seat RENAME TO old; CREATE VIEW seat AS SELECT id, "
                      "hex(zeroblob(490000000)) AS name, "
                      "first_order_number, last_order_number FROM old"},
          std::string{"CREATE TRIGGER planted AFTER INSERT ON entry BEGIN DELETE FROM label; END"},
          std::string{"CREATE INDEX planted ON entry (title)"}, std::string{"CREATE TABLE planted (a)"},
          std::string{"ALTER TABLE entry ADD COLUMN planted TEXT"}}) {
        const auto path = newsFrom(*m_fair->shop);
        Connection::open(path, Access::ReadWrite).script(sql);
        const auto head = lookAtNews(shop(), path);
        ASSERT_FALSE(head.ok()) << sql;
        EXPECT_NE(head.error().message.english().find("is damaged or was copied only in part"),
                  std::string::npos)
            << head.error().message.english();
    }
}

TEST_F(ForgedNews, ReadingStopsWhenAsked) {
    ASSERT_TRUE(moveMoney(*m_fair->shop, m_order, MoneyKind::Payment, Money{500}, PaidHow::Cash).ok());
    const auto head = lookAtNews(shop(), newsFrom(*m_fair->shop), [](double) { return false; });
    ASSERT_FALSE(head.ok());
    EXPECT_EQ(head.error().message.english(), "Reading the news was stopped. Nothing was changed.");
}

// Undoing a payment takes its row out of the ledger again.
TEST_F(ForgedNews, AnUndoTakesAwayWhatItsOwnEntryAdded) {
    const auto paid = moveMoney(*m_fair->shop, m_order, MoneyKind::Payment, Money{500}, PaidHow::Cash);
    ASSERT_TRUE(paid.ok()) << paid.error().message.english();
    bring(*m_fair);
    ASSERT_EQ(number("SELECT COUNT(*) FROM money_move"), 1);
    ASSERT_TRUE(m_fair->shop->undo(m_fair->shop->lastUndoable()->id).ok());
    EXPECT_EQ(bring(*m_fair).differences.size(), 0U);
    EXPECT_EQ(number("SELECT COUNT(*) FROM money_move"), 0);
}

// Of the right form, but no action writes it: the shop would be left with rows that it cannot read.
TEST_F(ForgedNews, WhatNoActionWritesIntoARowIsRefusedAndNamed) {
    const std::string order = std::to_string(m_order.value);
    const std::string words =
        "This news has something in it that Holdfast never writes. Order 99000 of Odile Farrant: ";
    expectRefused(changesOf("decal", "UPDATE decal SET width_mm = 4611686018427387904 WHERE garment_id IN "
                                     "(SELECT id FROM garment WHERE order_id = " +
                                         order + ")"),
                  std::nullopt,
                  words + "A decal’s width reads “4611686018427387904”. Nothing was brought in.");
    expectRefused(changesOf("shop_order", "UPDATE shop_order SET promised = 'soon' WHERE id = " + order),
                  std::nullopt, words + "Its promise reads “soon”. Nothing was brought in.");
    expectRefused(changesOf("setting", "INSERT OR REPLACE INTO setting VALUES ('margin-percent', 'ninety')"),
                  std::nullopt,
                  "This news has something in it that Holdfast never writes. The setting “margin”: Its value "
                  "reads “ninety”. "
                  "Nothing was brought in.");
}

} // namespace
} // namespace holdfast::db
