// SPDX-License-Identifier: GPL-3.0-or-later
// Work beside the window: a second connection that writes under the same lock.
#include "tests/db/journal_fixture.h"

namespace holdfast::db::testing {
namespace {

class Beside : public ::testing::Test {
protected:
    Beside()
        : shop(aShopIn(folder / "shop.holdfast"))
        , lot(*receiveLot(*shop, "Moss", 10)) {}

    std::unique_ptr<Shop> opened() {
        auto beside = shop->openBeside(standingClock(kMorning + 1h));
        EXPECT_TRUE(beside.ok()) << wordsOf(beside);
        return std::move(beside).value();
    }

    TemporaryFolder folder;
    std::unique_ptr<Shop> shop;
    BlankLotId lot;
};

TEST_F(Beside, WhatItDoesIsAnEntryLikeAnyOther) {
    ChangedTables told;
    shop->onChanged([&](const ChangedTables& tables) { told = tables; });
    {
        const auto beside = opened();
        ASSERT_TRUE(moveUnits(*beside, lot, -3, "Took three"));
    }
    EXPECT_TRUE(told.empty());
    ASSERT_TRUE(shop->catchUp({"move"}));
    EXPECT_EQ(told, ChangedTables{"move"});
    EXPECT_EQ(unitsOf(*shop, lot), 7);
    EXPECT_EQ(shop->recent(1).at(0).title, "Took three");
    ASSERT_TRUE(shop->undo(lastEntry(*shop)));
    EXPECT_EQ(unitsOf(*shop, lot), 10);
}

TEST_F(Beside, IdsGoOnFromItsOwn) {
    ASSERT_TRUE(moveUnits(*opened(), lot, -1, "Beside"));
    const EntryId beside = lastEntry(*shop);
    ASSERT_TRUE(shop->catchUp({}));
    ASSERT_TRUE(moveUnits(*shop, lot, -1, "Here")); // an hour earlier by this one's clock
    EXPECT_GT(lastEntry(*shop), beside);
    EXPECT_EQ(rowsOf(*shop, "journal_entry"), 3);
}

TEST_F(Beside, TheWindowReadsOnAndIsRefusedToWriteMeanwhile) {
    const auto beside = opened();
    const auto outcome = beside->act([&](Writer& writer) -> Result<Done> {
        writer.connection().run("UPDATE lot SET name = 'Fog' WHERE id = ?1", lot);
        writer.describe(said("Renamed beside"));
        EXPECT_EQ(shop->connection().number("SELECT COUNT(*) FROM lot WHERE name = 'Moss'"), 1);
        EXPECT_NE(wordsOf(moveUnits(*shop, lot, -1, "Meanwhile")).find("try again in a moment"),
                  std::string::npos);
        return Done{};
    });
    EXPECT_TRUE(outcome);
    EXPECT_EQ(unitsOf(*shop, lot), 10);
    EXPECT_TRUE(moveUnits(*shop, lot, -1, "Afterwards"));
}

TEST_F(Beside, AnotherProgramIsStillShutOut) {
    const auto beside = opened();
    EXPECT_NE(
        wordsOf(Shop::open(folder / "shop.holdfast", standingClock(), smallSteps())).find("another window"),
        std::string::npos);
}

} // namespace
} // namespace holdfast::db::testing
