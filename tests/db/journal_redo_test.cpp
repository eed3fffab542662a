// SPDX-License-Identifier: GPL-3.0-or-later
// Redo: whatever was undone can be done again, also after a restart, in the order that a person expects.
#include "db/journal/undo_words.h"
#include "tests/db/journal_fixture.h"

namespace holdfast::db {
namespace {

using namespace testing;

// As Ctrl+Z and Ctrl+Shift+Z do.
std::string undoLast(Shop& shop) {
    const auto last = shop.lastUndoable();
    return last ? wordsOf(shop.undo(last->id)) : "nothing to undo";
}
std::string redoLast(Shop& shop) {
    const auto last = shop.lastRedoable();
    return last ? wordsOf(shop.undo(last->id)) : "nothing to redo";
}

std::string lots(Shop& shop) {
    std::string names;
    Query rows = shop.connection().query("SELECT name FROM lot ORDER BY name");
    while (rows.step())
        names += rows.text(0) + " ";
    return names;
}

TEST(Redo, DoesTheWorkAgainLastUndoneFirst) {
    auto shop = aShop();
    for (const char* name : {"a", "b", "c"})
        (void)receiveLot(*shop, name, 10);
    EXPECT_EQ(redoLast(*shop), "nothing to redo");
    EXPECT_EQ(undoLast(*shop), "done");
    EXPECT_EQ(undoLast(*shop), "done");
    EXPECT_EQ(lots(*shop), "a ");
    EXPECT_EQ(shop->lastRedoable()->title, "Undone: Received b");
    EXPECT_EQ(redoLast(*shop), "done");
    EXPECT_EQ(lots(*shop), "a b ");
    EXPECT_EQ(shop->recent(1)[0].title, "Redone: Received b");
    EXPECT_EQ(redoLast(*shop), "done");
    EXPECT_EQ(lots(*shop), "a b c ");
    EXPECT_EQ(redoLast(*shop), "nothing to redo");
}

TEST(Redo, AndUndoGoBackAndForthOverTheSameActs) {
    auto shop = aShop();
    for (const char* name : {"a", "b"})
        (void)receiveLot(*shop, name, 10);
    for (int round = 0; round < 5; ++round) {
        EXPECT_EQ(undoLast(*shop), "done");
        EXPECT_EQ(undoLast(*shop), "done");
        EXPECT_EQ(undoLast(*shop), "nothing to undo");
        EXPECT_EQ(lots(*shop), "");
        EXPECT_EQ(redoLast(*shop), "done");
        EXPECT_EQ(redoLast(*shop), "done");
        EXPECT_EQ(redoLast(*shop), "nothing to redo");
        EXPECT_EQ(lots(*shop), "a b ");
    }
}

TEST(Redo, EndsWithTheNextActButTheHistoryStillPutsBack) {
    auto shop = aShop();
    (void)receiveLot(*shop, "a", 10);
    EXPECT_EQ(undoLast(*shop), "done");
    const EntryId undo = shop->recent(1)[0].id;
    (void)receiveLot(*shop, "b", 10);
    EXPECT_EQ(redoLast(*shop), "nothing to redo");
    EXPECT_EQ(wordsOf(shop->undo(undo)), "done");
    EXPECT_EQ(lots(*shop), "a b ");
    // The act in between is undone and redone as ever.
    EXPECT_EQ(undoLast(*shop), "done");
    EXPECT_EQ(lots(*shop), "a ");
    EXPECT_EQ(redoLast(*shop), "done");
    EXPECT_EQ(lots(*shop), "a b ");
}

TEST(Redo, IsThereAfterARestart) {
    TemporaryFolder folder;
    const auto path = folder / "shop.holdfast";
    {
        auto shop = aShopIn(path);
        (void)receiveLot(*shop, "a", 10);
        (void)receiveLot(*shop, "b", 10);
        EXPECT_EQ(undoLast(*shop), "done");
        EXPECT_EQ(undoLast(*shop), "done");
    }
    auto again = Shop::open(path, standingClock(), smallSteps());
    ASSERT_TRUE(again) << wordsOf(again);
    EXPECT_EQ(redoLast(**again), "done");
    EXPECT_EQ(redoLast(**again), "done");
    EXPECT_EQ(lots(**again), "a b ");
}

TEST(Redo, IsRefusedInWordsWhereLaterWorkIsInTheWay) {
    auto shop = aShop();
    (void)receiveLot(*shop, "tees", 10);
    EXPECT_EQ(undoLast(*shop), "done");
    const EntryId undo = shop->recent(1)[0].id;
    (void)receiveLot(*shop, "tees", 4); // names are taken once
    EXPECT_EQ(wordsOf(shop->undo(undo)),
              "“Received tees” cannot be redone. “Received tees” came later and is in "
              "the way. Undo that first.");
    EXPECT_EQ(undoLast(*shop), "done");
    EXPECT_EQ(wordsOf(shop->undo(undo)), "done");
    EXPECT_EQ(wordsOf(shop->undo(undo)), "“Received tees” has been redone already.");
}

TEST(Redo, OfAnUndoneRedoStandsForTheActItself) {
    auto shop = aShop();
    (void)receiveLot(*shop, "a", 10);
    EXPECT_EQ(undoLast(*shop), "done");
    EXPECT_EQ(redoLast(*shop), "done");
    const EntryId redone = shop->recent(1)[0].id;
    ASSERT_TRUE(shop->undo(redone)) << "from the history";
    EXPECT_EQ(lots(*shop), "");
    EXPECT_EQ(redoLast(*shop), "done");
    EXPECT_EQ(lots(*shop), "a ");
    EXPECT_EQ(redoLast(*shop), "nothing to redo");
    EXPECT_EQ(undoLast(*shop), "done");
    EXPECT_EQ(lots(*shop), "");
}

TEST(Redo, TitlesOfEarlierVersionsAreUnderstood) {
    EXPECT_EQ(withoutUndo(asItIs("Took back: Took order 4")), "Took order 4");
    EXPECT_EQ(titleOfUndo(asItIs("Took back: Took order 4")), "Redone: Took order 4");
    EXPECT_EQ(titleOfUndo(asItIs("Done again: Took order 4")), "Undone: Took order 4");
    EXPECT_EQ(titleOfUndo(asItIs("Took order 4")), "Undone: Took order 4");
    EXPECT_FALSE(isTitleOfUndo(asItIs("Redone: Took order 4")));
}

// ── several actions as one ────────────────────────────────────────────────────────────────────────────

TEST(ActionsAsOne, AreOneEntryAndOneUndo) {
    auto shop = aShop();
    int told = 0;
    shop->onChanged([&](const ChangedTables& tables) {
        EXPECT_EQ(tables, (ChangedTables{"lot", "move"}));
        ++told;
    });
    const auto both = shop->asOne([&]() -> Result<Done> {
        const auto lot = receiveLot(*shop, "tees", 10);
        return lot.ok() ? moveUnits(*shop, *lot, -2, "Spoiled 2 blanks") : lot.error();
    });
    ASSERT_TRUE(both) << wordsOf(both);
    EXPECT_EQ(told, 1);
    const auto entries = shop->recent(10);
    ASSERT_EQ(entries.size(), 1U);
    EXPECT_EQ(entries[0].title, "Spoiled 2 blanks") << "the one given last";
    EXPECT_EQ(undoLast(*shop), "done");
    EXPECT_EQ(rowsOf(*shop, "lot") + rowsOf(*shop, "move"), 0);
    EXPECT_EQ(redoLast(*shop), "done");
    EXPECT_EQ(rowsOf(*shop, "move"), 2);
}

TEST(ActionsAsOne, ARefusedPartRefusesAllEvenIfNobodyAsks) {
    auto shop = aShop();
    (void)receiveLot(*shop, "tees", 10);
    const auto refused = shop->asOne([&]() -> Result<Done> {
        (void)receiveLot(*shop, "caps", 10);
        (void)shop->act([](Writer& writer) -> Result<Done> {
            writer.connection().run("INSERT INTO lot (id, name) VALUES (77, 'half written')");
            return plainError(said("Not so."));
        });
        return Done{};
    });
    EXPECT_EQ(wordsOf(refused), "Not so.");
    EXPECT_EQ(lots(*shop), "tees ");
    EXPECT_EQ(shop->recent(10).size(), 1U);
    // A rule of the file that a part breaks comes back in words, and the shop goes on.
    const auto broken = shop->asOne([&] { return receiveLot(*shop, "tees", 3); });
    EXPECT_FALSE(broken.ok());
    EXPECT_TRUE(receiveLot(*shop, "caps", 3).ok());
}

} // namespace
} // namespace holdfast::db
