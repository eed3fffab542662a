// SPDX-License-Identifier: GPL-3.0-or-later
#include "tests/db/journal_fixture.h"

namespace holdfast::db {
namespace {

using namespace testing;

std::string contents(Shop& shop) {
    std::string text;
    for (const char* sql :
         {"SELECT quote(id) || quote(name) || quote(shade) FROM lot ORDER BY id",
          "SELECT quote(id) || quote(lot_id) || quote(units) FROM move ORDER BY id",
          "SELECT quote(lot_id) || quote(fibre) || quote(percent) FROM lot_fibre ORDER BY 1"}) {
        Query rows = shop.connection().query(sql);
        while (rows.step())
            text += rows.text(0) + "\n";
    }
    return text;
}

TEST(Undo, PutsEverythingBackExactly) {
    auto shop = aShop();
    const auto lot = receiveLot(*shop, "tees", 10);
    const auto before = contents(*shop);
    ASSERT_TRUE(shop->act([&](Writer& writer) -> Result<Done> {
        writer.connection().run("UPDATE lot SET shade = 'red' WHERE id = ?1", *lot);
        writer.connection().run("DELETE FROM move WHERE lot_id = ?1", *lot);
        writer.connection().run("INSERT INTO lot (id, name) VALUES (5, 'caps')");
        writer.connection().run("INSERT INTO lot_fibre VALUES (5, 'cotton', 100)");
        writer.describe(said("Did a great deal"));
        return Done{};
    }));
    const auto after = contents(*shop);
    const auto undone = shop->undo(lastEntry(*shop));
    ASSERT_TRUE(undone) << wordsOf(undone);
    EXPECT_EQ(contents(*shop), before);
    EXPECT_EQ(shop->connection().number("PRAGMA foreign_keys"), 1);
    ASSERT_TRUE(shop->undo(*undone)) << "an undo can be undone";
    EXPECT_EQ(contents(*shop), after);
}

TEST(Undo, IsAnEntryOfItsOwn) {
    auto shop = aShop();
    const auto lot = receiveLot(*shop, "tees", 10);
    const auto received = lastEntry(*shop);
    ChangedTables told;
    shop->onChanged([&](const ChangedTables& tables) { told = tables; });
    const auto undone = shop->undo(received);
    ASSERT_TRUE(undone);
    EXPECT_EQ(told, (ChangedTables{"lot", "move"}));
    const auto entries = shop->recent(10);
    ASSERT_EQ(entries.size(), 2U);
    EXPECT_EQ(entries[0].title, "Undone: Received tees");
    EXPECT_EQ(entries[0].undoes, received);
    EXPECT_EQ(entries[1].undoneBy, entries[0].id);
    EXPECT_EQ(shop->history(*lot, 10).size(), 2U) << "it shows in the lot's history too";
}

TEST(Undo, TwiceIsRefusedInWords) {
    auto shop = aShop();
    (void)receiveLot(*shop, "tees", 10);
    const auto received = lastEntry(*shop);
    ASSERT_TRUE(shop->undo(received));
    EXPECT_EQ(wordsOf(shop->undo(received)), "“Received tees” has been undone already.");
    EXPECT_EQ(shop->recent(10).size(), 2U);
}

TEST(Undo, TakenBackItselfLetsTheActionStandAgain) {
    auto shop = aShop();
    const auto lot = receiveLot(*shop, "tees", 10);
    const auto received = lastEntry(*shop);
    const auto back = shop->undo(received);
    const auto again = shop->undo(*back);
    ASSERT_TRUE(again) << wordsOf(again);
    EXPECT_EQ(unitsOf(*shop, *lot), 10);
    auto entries = shop->recent(10);
    EXPECT_EQ(entries[0].title, "Redone: Received tees");
    EXPECT_TRUE(entries[1].isUndone());
    EXPECT_FALSE(entries[2].isUndone());
    // And down again, by the entry itself or by the last one.
    ASSERT_TRUE(shop->undo(*again));
    entries = shop->recent(10);
    EXPECT_EQ(rowsOf(*shop, "lot"), 0);
    EXPECT_TRUE(entries[1].isUndone());
    EXPECT_FALSE(entries[2].isUndone());
    EXPECT_EQ(entries[3].undoneBy, *back);
}

TEST(Undo, SurvivesLaterEditsOfOtherColumns) {
    auto shop = aShop();
    const auto lot = receiveLot(*shop, "tees", 10);
    ASSERT_TRUE(rename(*shop, *lot, "shirts"));
    const auto renamed = lastEntry(*shop);
    ASSERT_TRUE(write(*shop, "Dyed", "UPDATE lot SET shade = 'red' WHERE id = ?1", *lot));
    ASSERT_TRUE(shop->undo(renamed));
    EXPECT_EQ(shop->connection().number("SELECT COUNT(*) FROM lot WHERE name = 'tees' AND shade = 'red'"), 1);
}

TEST(Undo, NamesTheLaterActionThatChangedTheSameThing) {
    auto shop = aShop();
    const auto lot = receiveLot(*shop, "tees", 10);
    ASSERT_TRUE(rename(*shop, *lot, "shirts"));
    const auto first = lastEntry(*shop);
    ASSERT_TRUE(rename(*shop, *lot, "vests"));
    ASSERT_TRUE(write(*shop, "Dyed", "UPDATE lot SET shade = 'red' WHERE id = ?1", *lot));
    ASSERT_TRUE(receiveLot(*shop, "caps", 4));
    const auto before = contents(*shop);
    EXPECT_EQ(wordsOf(shop->undo(first)), "“Renamed to shirts” cannot be undone. “Renamed to vests” came "
                                          "later and is in the way. Undo that first.");
    EXPECT_EQ(contents(*shop), before);
    EXPECT_EQ(shop->connection().number("PRAGMA foreign_keys"), 1);
    EXPECT_EQ(shop->recent(10).size(), 5U);
}

TEST(Undo, DoesNotNameAnActionThatWasTakenBack) {
    auto shop = aShop();
    const auto lot = receiveLot(*shop, "tees", 10);
    const auto received = lastEntry(*shop);
    ASSERT_TRUE(rename(*shop, *lot, "shirts"));
    ASSERT_TRUE(rename(*shop, *lot, "vests"));
    ASSERT_TRUE(shop->undo(lastEntry(*shop)));
    EXPECT_EQ(wordsOf(shop->undo(received)), "“Received tees” cannot be undone. “Renamed to shirts” came "
                                             "later and is in the way. Undo that first.");
    ASSERT_TRUE(shop->undo(shop->lastUndoable()->id));
    EXPECT_TRUE(shop->undo(received));
    EXPECT_EQ(contents(*shop), "");
}

TEST(Undo, NamesTheLaterActionThatLeansOnWhatWouldGo) {
    auto shop = aShop();
    const auto lot = receiveLot(*shop, "tees", 10);
    const auto received = lastEntry(*shop);
    ASSERT_TRUE(moveUnits(*shop, *lot, -2, "Spoiled 2 blanks"));
    const auto before = contents(*shop);
    EXPECT_EQ(wordsOf(shop->undo(received)), "“Received tees” cannot be undone. “Spoiled 2 blanks” came "
                                             "later and is in the way. Undo that first.");
    EXPECT_EQ(contents(*shop), before);
}

TEST(Undo, NamesWhatLeansOnItInATableWithoutRowNumbers) {
    auto shop = aShop();
    const auto lot = receiveLot(*shop, "tees", 10);
    const auto received = lastEntry(*shop);
    ASSERT_TRUE(write(*shop, "Read the label", "INSERT INTO lot_fibre VALUES (?1, 'cotton', 100)", *lot));
    EXPECT_EQ(
        wordsOf(shop->undo(received)),
        "“Received tees” cannot be undone. “Read the label” came later and is in the way. Undo that first.");
}

TEST(Undo, NamesTheLaterActionThatTookAwayWhatItWouldLeanOn) {
    auto shop = aShop();
    const auto lot = receiveLot(*shop, "tees", 10);
    ASSERT_TRUE(write(*shop, "Crossed out the moves", "DELETE FROM move WHERE lot_id = ?1", *lot));
    const auto crossed = lastEntry(*shop);
    ASSERT_TRUE(write(*shop, "Threw the lot away", "DELETE FROM lot WHERE id = ?1", *lot));
    EXPECT_EQ(wordsOf(shop->undo(crossed)), "“Crossed out the moves” cannot be undone. “Threw the lot away” "
                                            "came later and is in the way. Undo that first.");
}

TEST(Undo, NamesTheLaterActionThatTookItsName) {
    auto shop = aShop();
    const auto lot = receiveLot(*shop, "tees", 10);
    ASSERT_TRUE(rename(*shop, *lot, "shirts"));
    const auto renamed = lastEntry(*shop);
    ASSERT_TRUE(receiveLot(*shop, "tees", 3));
    EXPECT_EQ(wordsOf(shop->undo(renamed)), "“Renamed to shirts” cannot be undone. “Received tees” came "
                                            "later and is in the way. Undo that first.");
}

TEST(Undo, IsRefusedWhereALedgerWouldFallBelowZero) {
    auto shop = aShop();
    const auto lot = receiveLot(*shop, "tees", 2);
    ASSERT_TRUE(moveUnits(*shop, *lot, 8, "Received 8 more"));
    const auto more = lastEntry(*shop);
    ASSERT_TRUE(moveUnits(*shop, *lot, -6, "Pressed 6"));
    EXPECT_EQ(wordsOf(shop->undo(more)), "“Received 8 more” cannot be undone. tees would have -4 left.");
    EXPECT_EQ(unitsOf(*shop, *lot), 4);
    ASSERT_TRUE(shop->undo(lastEntry(*shop)));
    EXPECT_TRUE(shop->undo(more));
    EXPECT_EQ(unitsOf(*shop, *lot), 2);
}

TEST(Undo, KeepsTheSearchRight) {
    auto shop = aShop();
    const auto lot = receiveLot(*shop, "tees", 2);
    ASSERT_TRUE(rename(*shop, *lot, "shirts"));
    EXPECT_EQ(found(*shop, "shirts"), 1);
    const auto back = shop->undo(lastEntry(*shop));
    ASSERT_TRUE(back);
    EXPECT_EQ(found(*shop, "shirts"), 0);
    EXPECT_EQ(found(*shop, "tees"), 1);
    ASSERT_TRUE(shop->undo(*back));
    EXPECT_EQ(found(*shop, "shirts"), 1);
    EXPECT_EQ(found(*shop, "tees"), 0);
}

TEST(Undo, OfAnEntryThatIsNotThereIsRefused) {
    auto shop = aShop();
    EXPECT_EQ(wordsOf(shop->undo(EntryId{12})), "The history has no such entry.");
}

TEST(Undo, OfWhatATableNoLongerHoldsIsRefused) {
    const TemporaryFolder folder;
    const auto path = folder / "shop.holdfast";
    EntryId received;
    {
        auto shop = aShopIn(path);
        ASSERT_TRUE(
            write(*shop, "Read a label", "INSERT INTO lot (id, name) VALUES (?1, 'x')", BlankLotId{1}));
        received = lastEntry(*shop);
    }
    const std::array steps{smallSteps()[0], smallSteps()[1], "ALTER TABLE lot DROP COLUMN shade;"};
    auto shop = Shop::open(path, standingClock(), steps);
    ASSERT_TRUE(shop) << wordsOf(shop);
    EXPECT_EQ(wordsOf((*shop)->undo(received)),
              "“Read a label” cannot be undone. It was done with an older form of the shop file.");
    EXPECT_EQ(rowsOf(**shop, "lot"), 1);
}

TEST(Undo, WorksAcrossAStepThatAppendsAColumn) {
    const TemporaryFolder folder;
    const auto path = folder / "shop.holdfast";
    {
        auto shop = aShopIn(path);
        ASSERT_TRUE(receiveLot(*shop, "tees", 4));
    }
    const std::array steps{smallSteps()[0], smallSteps()[1], "ALTER TABLE lot ADD COLUMN weight INTEGER;"};
    auto shop = Shop::open(path, standingClock(), steps);
    ASSERT_TRUE(shop) << wordsOf(shop);
    const auto back = (*shop)->undo(lastEntry(**shop));
    EXPECT_TRUE(back) << wordsOf(back);
    EXPECT_EQ(rowsOf(**shop, "lot"), 0);
}

TEST(Undo, ManyStepsBackAndForthEndWhereTheyBegan) {
    auto shop = aShop();
    std::vector<std::string> states{contents(*shop)};
    std::vector<EntryId> entries;
    std::vector<BlankLotId> lots;
    for (int step = 0; step < 40; ++step) {
        if (step % 4 == 0)
            lots.push_back(*receiveLot(*shop, "lot " + std::to_string(step), 20));
        else if (step % 4 == 1)
            ASSERT_TRUE(moveUnits(*shop, lots.back(), -step % 7 - 1, "Used some"));
        else if (step % 4 == 2)
            ASSERT_TRUE(rename(*shop, lots[static_cast<std::size_t>(step) % lots.size()],
                               "n" + std::to_string(step)));
        else
            ASSERT_TRUE(write(*shop, "Read a label",
                              "INSERT INTO lot_fibre VALUES (?1, 'f" + std::to_string(step) + "', 50)",
                              lots[0]));
        states.push_back(contents(*shop));
        entries.push_back(lastEntry(*shop));
    }
    for (int step = 39; step >= 0; --step) {
        const auto last = shop->lastUndoable();
        ASSERT_TRUE(last);
        EXPECT_EQ(last->id, entries[static_cast<std::size_t>(step)]);
        ASSERT_TRUE(shop->undo(last->id));
        ASSERT_EQ(contents(*shop), states[static_cast<std::size_t>(step)]);
    }
    EXPECT_FALSE(shop->lastUndoable());
}

// A long action: twenty thousand moves, the lot's units as before.
void moveOften(Shop& shop, BlankLotId lot) {
    ASSERT_TRUE(shop.act([&](Writer& writer) -> Result<Done> {
        for (int move = 0; move < 20'000; ++move)
            writer.connection().run("INSERT INTO move (id, lot_id, units) VALUES (?1, ?2, ?3)",
                                    writer.newId<EntryId>(), lot, move % 2 == 0 ? 1 : -1);
        writer.describe(said("Moved to and fro"));
        return Done{};
    }));
}

TEST(Undo, TellsHowFarItIs) {
    auto shop = aShop();
    const auto lot = receiveLot(*shop, "tees", 10);
    const auto before = contents(*shop);
    moveOften(*shop, *lot);
    EXPECT_GT(shop->lastUndoable()->bytes, 100'000);
    std::vector<double> told;
    ASSERT_TRUE(shop->undo(lastEntry(*shop), [&](double share) {
        told.push_back(share);
        return true;
    }));
    EXPECT_EQ(contents(*shop), before);
    ASSERT_GT(told.size(), 3U);
    EXPECT_TRUE(std::ranges::is_sorted(told));
    EXPECT_GE(told.front(), 0);
    EXPECT_LE(told.back(), 1);
    EXPECT_GT(told.back(), 0.5);
}

TEST(Undo, StoppedAtAnyMomentItHasChangedNothing) {
    auto shop = aShop();
    const auto lot = receiveLot(*shop, "tees", 10);
    moveOften(*shop, *lot);
    const auto before = contents(*shop);
    const EntryId entry = lastEntry(*shop);
    for (const int asked : {1, 2, 7, 20}) {
        int times = 0;
        const auto undone = shop->undo(entry, [&](double) { return ++times < asked; });
        EXPECT_FALSE(undone);
        EXPECT_EQ(wordsOf(undone), "Stopped. Nothing was changed.");
        EXPECT_EQ(times, asked);
        EXPECT_EQ(contents(*shop), before);
        EXPECT_EQ(lastEntry(*shop), entry);
    }
    EXPECT_TRUE(shop->undo(entry)) << "and then, to its end";
}

} // namespace
} // namespace holdfast::db
