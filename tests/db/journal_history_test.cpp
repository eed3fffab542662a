// SPDX-License-Identifier: GPL-3.0-or-later
#include "tests/db/journal_fixture.h"

namespace holdfast::db {
namespace {

using namespace testing;

TEST(History, ReadsWhatConcernsOneSubjectNewestFirst) {
    auto shop = aShop();
    const auto tees = receiveLot(*shop, "tees", 10);
    const auto caps = receiveLot(*shop, "caps", 5);
    ASSERT_TRUE(moveUnits(*shop, *tees, -1, "Used one tee"));
    ASSERT_TRUE(moveUnits(*shop, *caps, -1, "Used one cap"));
    const auto entries = shop->history(*tees, 10);
    ASSERT_EQ(entries.size(), 2U);
    EXPECT_EQ(entries[0].title, "Used one tee");
    EXPECT_EQ(entries[1].title, "Received tees");
    EXPECT_EQ(shop->history(*tees, 1).size(), 1U);
    EXPECT_TRUE(shop->history(OrderId{tees->value}, 10).empty()) << "the kind counts, not only the number";
    EXPECT_EQ(shop->recent(3).size(), 3U);
    EXPECT_EQ(shop->recent(10)[0].title, "Used one cap");
}

TEST(History, AnEntryMayConcernManyAndTheSameTwice) {
    auto shop = aShop();
    ASSERT_TRUE(shop->act([](Writer& writer) -> Result<Done> {
        writer.connection().run("INSERT INTO lot (id, name) VALUES (1, 'tees')");
        writer.describe(said("Took order 1"));
        writer.concerns(OrderId{4});
        writer.concerns(OrderId{4});
        writer.concerns(GarmentId{4});
        writer.concerns(CustomerId{9});
        return Done{};
    }));
    EXPECT_EQ(shop->history(OrderId{4}, 10).size(), 1U);
    EXPECT_EQ(shop->history(GarmentId{4}, 10).size(), 1U);
    EXPECT_EQ(shop->history(CustomerId{9}, 10).size(), 1U);
    EXPECT_TRUE(shop->history(CustomerId{4}, 10).empty());
}

TEST(History, TheLastUndoableIsNeitherTakenBackNorATakingBack) {
    auto shop = aShop();
    EXPECT_FALSE(shop->lastUndoable());
    (void)receiveLot(*shop, "tees", 10);
    const auto first = lastEntry(*shop);
    (void)receiveLot(*shop, "caps", 10);
    ASSERT_TRUE(shop->undo(shop->lastUndoable()->id));
    ASSERT_TRUE(shop->lastUndoable());
    EXPECT_EQ(shop->lastUndoable()->id, first);
}

TEST(History, EntriesStayInOrderWhenTheClockIsSetBack) {
    Instant now = kMorning;
    auto shop = Shop::createInMemory([&] { return now; }, smallSteps());
    (void)receiveLot(*shop, "tees", 10);
    now -= 72h;
    (void)receiveLot(*shop, "caps", 10);
    const auto entries = shop->recent(10);
    EXPECT_EQ(entries[0].title, "Received caps");
    EXPECT_EQ(entries[0].at, kMorning - 72h);
    EXPECT_GT(entries[0].id, entries[1].id);
}

TEST(Seat, IdsGoOnAboveTheLastRunsEvenIfTheClockWasSetBack) {
    const TemporaryFolder folder;
    const auto path = folder / "shop.holdfast";
    EntryId last;
    {
        auto shop = aShopIn(path);
        (void)receiveLot(*shop, "tees", 10);
        last = lastEntry(*shop);
    }
    auto shop = Shop::open(path, standingClock(kMorning - 24h * 365), smallSteps());
    ASSERT_TRUE(shop);
    const auto lot = receiveLot(**shop, "caps", 1);
    ASSERT_TRUE(lot) << wordsOf(lot);
    EXPECT_GT(lot->value, last.value);
}

TEST(Seat, OrderNumbersAreGivenOnceEvenIfTheActionIsTakenBack) {
    auto shop = aShop();
    const auto take = [&](bool fails) {
        return shop->act([&](Writer& writer) -> Result<std::int64_t> {
            const auto number = writer.nextOrderNumber();
            writer.connection().run("INSERT INTO lot (id, name) VALUES (?1, ?2)", writer.newId<OrderId>(),
                                    "order " + std::to_string(number));
            writer.describe(asItIs("Took order " + std::to_string(number)));
            if (fails)
                return plainError(said("No."));
            return number;
        });
    };
    EXPECT_EQ(*take(false), 1);
    EXPECT_EQ(*take(false), 2);
    ASSERT_TRUE(shop->undo(lastEntry(*shop)));
    EXPECT_FALSE(take(true)) << "was never given to anybody";
    EXPECT_EQ(*take(false), 3);
}

TEST(Seat, OrderNumbersStayInTheSeatsRange) {
    const std::array steps{smallSteps()[0], smallSteps()[1],
                           "UPDATE seat SET first_order_number = 200, last_order_number = 201;"
                           "UPDATE seat_here SET next_order_number = 200;"};
    auto shop = Shop::createInMemory(standingClock(), steps);
    const auto next = [&] {
        return shop->act([](Writer& writer) -> Result<std::int64_t> { return writer.nextOrderNumber(); });
    };
    EXPECT_EQ(*next(), 200);
    EXPECT_EQ(*next(), 201) << "a number that was given out is kept even where no row changed";
    const auto none = next();
    ASSERT_FALSE(none);
    EXPECT_NE(none.error().message.english().find("used up its order numbers"), std::string::npos);
}

TEST(Notes, AreKeptReplacedAndDropped) {
    const TemporaryFolder folder;
    const auto path = folder / "shop.holdfast";
    {
        auto shop = aShopIn(path);
        EXPECT_FALSE(shop->note("draft"));
        EXPECT_TRUE(shop->keepNote("draft", "2 tees, re"));
        EXPECT_TRUE(shop->keepNote("draft", "2 tees, red"));
        EXPECT_TRUE(shop->keepNote("empty", ""));
        EXPECT_TRUE(shop->recent(10).empty()) << "no entry tells of a note";
    }
    auto shop = Shop::open(path, standingClock(), smallSteps());
    ASSERT_TRUE(shop);
    EXPECT_EQ((*shop)->note("draft"), "2 tees, red");
    EXPECT_EQ((*shop)->note("empty"), "");
    EXPECT_TRUE((*shop)->dropNote("draft"));
    EXPECT_TRUE((*shop)->dropNote("draft"));
    EXPECT_FALSE((*shop)->note("draft"));
    EXPECT_THROW((*shop)->connection().run("DELETE FROM seat_note"), SqliteFailure) << "writing is off again";
}

} // namespace
} // namespace holdfast::db
