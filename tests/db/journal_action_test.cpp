// SPDX-License-Identifier: GPL-3.0-or-later
#include "tests/db/journal_fixture.h"

#include <sqlite3.h>

namespace holdfast::db {
namespace {

using namespace testing;

TEST(Action, WritesItsRowsAndOneEntry) {
    auto shop = aShop();
    const auto lot = receiveLot(*shop, "tees", 10);
    ASSERT_TRUE(lot) << wordsOf(lot);
    EXPECT_EQ(unitsOf(*shop, *lot), 10);
    const auto entries = shop->recent(10);
    ASSERT_EQ(entries.size(), 1U);
    EXPECT_EQ(entries[0].title, "Received tees");
    EXPECT_EQ(entries[0].at, kMorning);
    EXPECT_EQ(entries[0].seat, "This workshop");
    EXPECT_FALSE(entries[0].isUndone());
    EXPECT_FALSE(entries[0].undoes);
    EXPECT_GT(entries[0].id.value, lot->value) << "an entry lies above what it made";
}

TEST(Action, ItsErrorRollsEverythingBack) {
    auto shop = aShop();
    const auto refused = shop->act([](Writer& writer) -> Result<OrderId> {
        writer.connection().run("INSERT INTO lot (id, name) VALUES (1, 'tees')");
        writer.describe(said("Received tees"));
        return fieldError("name", said("Say which tees."));
    });
    ASSERT_FALSE(refused);
    EXPECT_EQ(refused.error().field, "name");
    EXPECT_EQ(rowsOf(*shop, "lot"), 0);
    EXPECT_TRUE(shop->recent(1).empty());
    EXPECT_TRUE(receiveLot(*shop, "tees", 1));
}

TEST(Action, AFailureOfTheFileComesBackInWords) {
    auto shop = aShop();
    const auto refused = shop->act([](Writer& writer) -> Result<Done> {
        writer.connection().run("INSERT INTO lot (id, name) VALUES (1, 'tees')");
        writer.connection().run("INSERT INTO lot (id, name) VALUES (2, 'tees')");
        writer.describe(said("Received tees twice"));
        return Done{};
    });
    ASSERT_FALSE(refused);
    EXPECT_NE(refused.error().message.english().find("refused"), std::string::npos)
        << refused.error().message.english();
    EXPECT_EQ(rowsOf(*shop, "lot"), 0);
}

TEST(Action, AnExceptionOfAnotherKindRollsBackAndPassesThrough) {
    auto shop = aShop();
    const auto throwing = [&] {
        (void)shop->act([](Writer& writer) -> Result<Done> {
            writer.connection().run("INSERT INTO lot (id, name) VALUES (1, 'tees')");
            throw std::bad_alloc{};
        });
    };
    EXPECT_THROW(throwing(), std::bad_alloc);
    EXPECT_EQ(rowsOf(*shop, "lot"), 0);
    EXPECT_TRUE(receiveLot(*shop, "tees", 1));
}

TEST(Action, ABrokenReferenceIsRefused) {
    auto shop = aShop();
    EXPECT_FALSE(moveUnits(*shop, BlankLotId{99}, 5, "Moved 5 units of nothing"));
    EXPECT_EQ(rowsOf(*shop, "move"), 0);
}

TEST(Action, ThatChangesNothingLeavesNoEntry) {
    auto shop = aShop();
    const auto lot = receiveLot(*shop, "tees", 10);
    int told = 0;
    shop->onChanged([&](const ChangedTables&) { ++told; });
    EXPECT_TRUE(write(*shop, "Looked", "SELECT name FROM lot WHERE id = ?1", *lot));
    EXPECT_TRUE(write(*shop, "Renamed to itself", "UPDATE lot SET name = name WHERE id = ?1", *lot));
    EXPECT_EQ(shop->recent(10).size(), 1U);
    EXPECT_EQ(told, 0);
}

TEST(Action, NothingElseWrites) {
    auto shop = aShop();
    const auto lot = receiveLot(*shop, "tees", 10);
    EXPECT_THROW(shop->connection().run("DELETE FROM move"), SqliteFailure);
    // The same text was prepared, and cached, while an action allowed it.
    EXPECT_THROW(shop->connection().run("INSERT INTO lot (id, name) VALUES (?1, ?2)", 77, "caps"),
                 SqliteFailure);
    EXPECT_THROW(shop->connection().script("DROP TABLE move"), SqliteFailure);
    const auto written = shop->read([](Connection& connection) {
        connection.run("DELETE FROM move");
        return 1;
    });
    EXPECT_FALSE(written);
    EXPECT_EQ(unitsOf(*shop, *lot), 10);
}

TEST(Action, WritingEndsWithARefusedAction) {
    auto shop = aShop();
    (void)shop->act([](Writer&) -> Result<Done> { return plainError(said("No.")); });
    EXPECT_THROW(shop->connection().run("INSERT INTO lot (id, name) VALUES (1, 'x')"), SqliteFailure);
}

TEST(Action, ListenersAreToldOnceWhichTablesWereTouched) {
    auto shop = aShop();
    std::vector<ChangedTables> told;
    const int listener = shop->onChanged([&](const ChangedTables& tables) { told.push_back(tables); });
    const auto lot = receiveLot(*shop, "tees", 10);
    (void)moveUnits(*shop, *lot, -1, "Used one");
    ASSERT_EQ(told.size(), 2U);
    EXPECT_EQ(told[0], (ChangedTables{"lot", "move"}));
    EXPECT_EQ(told[1], (ChangedTables{"move"}));
    shop->forget(listener);
    (void)moveUnits(*shop, *lot, -1, "Used one");
    EXPECT_EQ(told.size(), 2U);
}

TEST(Action, ListenersAreToldAfterTheCommitAndMayAct) {
    auto shop = aShop();
    bool acted = false;
    int second = 0;
    shop->onChanged([&](const ChangedTables&) {
        EXPECT_FALSE(shop->connection().inTransaction());
        if (!std::exchange(acted, true)) {
            EXPECT_TRUE(receiveLot(*shop, "caps", 3));
        }
        shop->forget(second);
    });
    int heard = 0;
    second = shop->onChanged([&](const ChangedTables&) { ++heard; });
    EXPECT_TRUE(receiveLot(*shop, "tees", 10));
    EXPECT_EQ(rowsOf(*shop, "lot"), 2);
    EXPECT_EQ(heard, 0) << "forgotten before its turn";
}

TEST(Action, ARefusedOneTellsNobody) {
    auto shop = aShop();
    int told = 0;
    shop->onChanged([&](const ChangedTables&) { ++told; });
    (void)shop->act([](Writer& writer) -> Result<Done> {
        writer.connection().run("INSERT INTO lot (id, name) VALUES (1, 'tees')");
        return plainError(said("No."));
    });
    EXPECT_EQ(told, 0);
}

TEST(Action, IsSeenByReadersOnlyWhenItIsWhole) {
    const TemporaryFolder folder;
    auto shop = aShopIn(folder / "shop.holdfast");
    auto reader = Shop::openReadOnly(folder / "shop.holdfast", standingClock(), smallSteps());
    ASSERT_TRUE(reader) << wordsOf(reader);
    const auto acted = shop->act([&](Writer& writer) -> Result<Done> {
        writer.connection().run("INSERT INTO lot (id, name) VALUES (1, 'tees')");
        EXPECT_EQ(rowsOf(**reader, "lot"), 0);
        writer.describe(said("Received tees"));
        return Done{};
    });
    EXPECT_TRUE(acted);
    EXPECT_EQ(rowsOf(**reader, "lot"), 1);
}

TEST(Action, WaitsShortlyForAnotherProgramThenSaysSo) {
    const TemporaryFolder folder;
    auto shop = aShopIn(folder / "shop.holdfast");
    {
        Connection other = Connection::open(folder / "shop.holdfast", Access::ReadWrite);
        Transaction held{other};
        const auto refused = receiveLot(*shop, "tees", 1);
        ASSERT_FALSE(refused);
        EXPECT_NE(refused.error().message.english().find("another program"), std::string::npos)
            << refused.error().message.english();
        EXPECT_EQ(rowsOf(*shop, "lot"), 0);
        EXPECT_FALSE(shop->keepNote("place", "rail"));
    }
    EXPECT_TRUE(receiveLot(*shop, "tees", 1));
}

TEST(Action, AReadSeesOneUnchangingView) {
    const TemporaryFolder folder;
    auto shop = aShopIn(folder / "shop.holdfast");
    auto reader = Shop::openReadOnly(folder / "shop.holdfast", standingClock(), smallSteps());
    ASSERT_TRUE(reader);
    const auto counts = (*reader)->read([&](Connection& connection) {
        const auto before = connection.number("SELECT COUNT(*) FROM lot");
        EXPECT_TRUE(receiveLot(*shop, "tees", 1));
        return std::pair{before, connection.number("SELECT COUNT(*) FROM lot")};
    });
    ASSERT_TRUE(counts);
    EXPECT_EQ(*counts, (std::pair<std::int64_t, std::int64_t>{0, 0}));
    EXPECT_EQ(rowsOf(**reader, "lot"), 1);
}

TEST(Action, IsRefusedWhereTheShopIsOpenForReading) {
    const TemporaryFolder folder;
    auto shop = aShopIn(folder / "shop.holdfast");
    ASSERT_TRUE(receiveLot(*shop, "tees", 1));
    auto reader = Shop::openReadOnly(folder / "shop.holdfast", standingClock(), smallSteps());
    ASSERT_TRUE(reader);
    EXPECT_EQ(wordsOf(receiveLot(**reader, "caps", 1)), "This shop is open for reading only.");
    EXPECT_EQ(wordsOf((*reader)->undo(lastEntry(**reader))), "This shop is open for reading only.");
    EXPECT_FALSE((*reader)->keepNote("place", "rail"));
    EXPECT_FALSE((*reader)->dropNote("place"));
    EXPECT_THROW((*reader)->connection().run("DELETE FROM lot"), SqliteFailure);
}

TEST(ActionDeathTest, NothingIsUndoneInsideAnActionAndItSaysWhatWasDone) {
    GTEST_FLAG_SET(death_test_style, "threadsafe");
    auto shop = aShop();
    (void)receiveLot(*shop, "tees", 1);
    EXPECT_DEATH((void)shop->act([&](Writer&) -> Result<Done> {
        const auto undone = shop->undo(lastEntry(*shop));
        return undone.ok() ? Result<Done>{Done{}} : undone.error();
    }),
                 "nothing is undone inside an action");
    EXPECT_DEATH((void)shop->act([&](Writer& writer) -> Result<Done> {
        writer.connection().run("INSERT INTO lot (id, name) VALUES (1, 'caps')");
        return Done{};
    }),
                 "says what was done");
}

} // namespace
} // namespace holdfast::db
