// SPDX-License-Identifier: GPL-3.0-or-later
// Orders that were undone or cancelled: they stay findable, with all that was typed, and can be put back.
#include "db/actions/put_back.h"

#include "db/check/check.h"
#include "db/journal/backup.h"
#include "db/tables/undone_orders.h"
#include "tests/db/journal_fixture.h"
#include "tests/db/small_shop.h"

namespace holdfast::db {
namespace {

class PutBack : public SmallShop {
protected:
    EntryId lastEntry() { return shop().recent(1).at(0).id; }
    std::vector<std::int64_t> undoneNumbers(Connection& at) {
        std::vector<std::int64_t> numbers;
        for (const UndoneOrder& order : undoneOrders(at))
            numbers.push_back(order.line.number);
        return numbers;
    }
    std::string stateOf(const OrderTaken& order) {
        Query found = connection().query("SELECT state FROM shop_order WHERE id = ?1", order.id);
        return found.step() ? found.text(0) : "gone";
    }
};

TEST_F(PutBack, AnUndoneOrderIsFoundWithAllThatWasTyped) {
    receiveCleanTees(2);
    auto draft = aDraft(2);
    draft.note = "Blue bag";
    draft.deposit = {1000};
    const auto order = take(draft);
    ASSERT_TRUE(shop().undo(lastEntry()));
    ASSERT_EQ(number("SELECT COUNT(*) FROM shop_order"), 0);
    ASSERT_EQ(number("SELECT COUNT(*) FROM customer"), 0);

    const auto orders = undoneOrders(connection());
    ASSERT_EQ(orders.size(), 1U);
    EXPECT_EQ(countUndone(connection()), 1);
    const UndoneOrder& undone = orders[0];
    EXPECT_EQ(undone.line.id, order.id);
    EXPECT_EQ(undone.line.number, order.number);
    EXPECT_TRUE(undone.line.isUndone);
    EXPECT_EQ(undone.line.customer, draft.customerName);
    EXPECT_EQ(undone.phone, draft.customerPhone);
    EXPECT_EQ(undone.line.promised, draft.promised);
    EXPECT_EQ(undone.line.garments, 2);
    EXPECT_EQ(undone.line.total, draft.total());
    EXPECT_EQ(undone.line.paid, Money{1000});
    EXPECT_EQ(undone.note, "Blue bag");
    EXPECT_EQ(undone.takenAtPlace, "workshop");
    ASSERT_EQ(undone.garments.size(), 2U);
    EXPECT_EQ(undone.garments[0].blank, "Tee, M, Moss");
    ASSERT_EQ(undone.garments[0].decals.size(), 1U);
    EXPECT_NE(undone.garments[0].decals[0].english().find(" in Dusk"), std::string::npos)
        << undone.garments[0].decals[0];
    const auto alone = undoneOrder(connection(), order.id);
    ASSERT_TRUE(alone);
    EXPECT_EQ(alone->undo, undone.undo);

    for (const char* typed : {"", "1", "farr", "arran", "MOSS", "dusk tee", "workshop", "blue"})
        EXPECT_TRUE(matches(undone, OrderSearch{typed}, Spelling::Right)) << typed;
    for (const char* typed : {"2", "heronxy", "dusk linen"})
        EXPECT_FALSE(matches(undone, OrderSearch{typed}, Spelling::Right)) << typed;
}

TEST_F(PutBack, AnUndoneOrderComesBackExactly) {
    receiveCleanTees(1);
    const auto order = takeTees();
    const Dump taken = dump();
    ASSERT_TRUE(shop().undo(lastEntry()));
    const auto back = putBackOrder(shop(), order.id);
    ASSERT_TRUE(back.ok()) << back.error().message.english();
    EXPECT_EQ(dump(), taken);
    EXPECT_EQ(lastTitle(), "Redone: Took order 1");
    EXPECT_TRUE(undoneOrders(connection()).empty());
    EXPECT_FALSE(undoneOrder(connection(), order.id));
    expectSound();
    expectRefused<Result<Done>>([&] { return putBackOrder(shop(), order.id); }, "",
                                "neither undone nor cancelled");
    expectRefused<Result<Done>>([&] { return putBackOrder(shop(), OrderId{5}); }, "order");
}

TEST_F(PutBack, TwoUndoneAtTheStallBothComeBack) {
    const auto first = takeTees();
    auto draft = aDraft();
    draft.customer = CustomerId{number("SELECT id FROM customer")};
    const auto second = take(draft); // of the customer that the first made known
    ASSERT_TRUE(shop().undo(lastEntry()));
    ASSERT_TRUE(shop().undo(shop().lastUndoable()->id));
    EXPECT_EQ(undoneNumbers(connection()), (std::vector<std::int64_t>{2, 1}));
    for (const UndoneOrder& each : undoneOrders(connection()))
        EXPECT_FALSE(each.line.customer.empty()) << each.line.number;
    const auto tooSoon = putBackOrder(shop(), second.id);
    ASSERT_FALSE(tooSoon.ok()) << "its customer is not there yet";
    EXPECT_NE(tooSoon.error().message.english().find("Took order 1"), std::string::npos)
        << tooSoon.error().message.english();
    ASSERT_TRUE(redo(shop(), shop().lastRedoable()->id).ok());
    ASSERT_TRUE(redo(shop(), shop().lastRedoable()->id).ok());
    EXPECT_EQ(stateOf(first) + stateOf(second), "confirmedconfirmed");
    EXPECT_TRUE(undoneOrders(connection()).empty());
    expectSound();
}

TEST_F(PutBack, ABlankThatWentToAnotherGarmentDoesNotStandInTheWay) {
    const auto lot = receiveCleanTees(1);
    const auto order = takeTees();
    ASSERT_EQ(lotOf(garmentOf(order)), lot);
    ASSERT_TRUE(shop().undo(lastEntry()));
    const auto other = takeTees();
    ASSERT_EQ(lotOf(garmentOf(other)), lot);
    const auto back = putBackOrder(shop(), order.id);
    ASSERT_TRUE(back.ok()) << back.error().message.english();
    EXPECT_FALSE(lotOf(garmentOf(order))) << "it waits for one";
    EXPECT_EQ(lotOf(garmentOf(other)), lot);
    expectSound();
    // With another lot there, that one.
    ASSERT_TRUE(shop().undo(lastEntry()));
    const auto more = receiveCleanTees(1);
    ASSERT_TRUE(putBackOrder(shop(), order.id).ok());
    EXPECT_EQ(lotOf(garmentOf(order)), more);
    expectSound();
}

TEST_F(PutBack, ACancelledOrderIsWhatItWasBefore) {
    const auto lot = receiveCleanTees(1);
    const auto order = takeTees();
    auto draft = aDraft();
    draft.isQuotation = true;
    const auto quoted = take(draft);
    ASSERT_TRUE(cancelOrder(shop(), order.id, "changed their mind").ok());
    ASSERT_TRUE(cancelOrder(shop(), quoted.id, "too dear").ok());
    EXPECT_FALSE(lotOf(garmentOf(order)));
    EXPECT_TRUE(undoneOrders(connection()).empty());
    expectUndoable<Result<Done>>([&] { return putBackOrder(shop(), order.id); }, "Order 1 put back");
    EXPECT_EQ(stateOf(order), "confirmed");
    EXPECT_EQ(lotOf(garmentOf(order)), lot);
    expectUndoable<Result<Done>>([&] { return putBackOrder(shop(), quoted.id); }, "Order 2 put back");
    EXPECT_EQ(stateOf(quoted), "quoted");
    EXPECT_FALSE(lotOf(garmentOf(quoted)));
    expectSound();
}

TEST_F(PutBack, ACancelledOrderLeavesOthersTheBlankTheyGot) {
    const auto lot = receiveCleanTees(1);
    const auto order = takeTees();
    const auto waiting = takeTees();
    ASSERT_TRUE(cancelOrder(shop(), order.id, "changed their mind").ok());
    ASSERT_EQ(lotOf(garmentOf(waiting)), lot);
    ASSERT_TRUE(putBackOrder(shop(), order.id).ok());
    EXPECT_EQ(lotOf(garmentOf(waiting)), lot);
    EXPECT_FALSE(lotOf(garmentOf(order)));
    expectSound();
}

// What the journal holds outlives the program, and goes into a copy.
TEST(UndoneOrders, AreThereAfterARestartAndInABackup) {
    const testing::TemporaryFolder folder;
    const auto clock = testing::standingClock();
    OrderId order;
    {
        auto made = Shop::create(folder / "shop.holdfast", clock);
        ASSERT_TRUE(made.ok());
        Shop& shop = **made;
        BlankStyle style;
        style.name = "Tee";
        style.outline = "tee";
        style.sizes = {"M"};
        style.colours = {{{}, "Moss", 0x6B7F5A}};
        style.weight = {180};
        style.cost = {450};
        const auto tee = addStyle(shop, style);
        ASSERT_TRUE(tee.ok()) << tee.error().message.english();
        Film film;
        film.finish = "Marram Soft";
        film.shade = "Dusk";
        const auto dusk = addFilm(shop, film);
        ASSERT_TRUE(dusk.ok()) << dusk.error().message.english();
        OrderDraft draft;
        draft.customerName = "Odile Farrant";
        GarmentDraft garment;
        garment.style = *tee;
        garment.size = "M";
        garment.colour = loadFactsOf(shop.connection(), {}).styles.at(*tee).colours.front().id;
        garment.price = {1400};
        DecalDraft decal;
        decal.film = *dusk;
        decal.content = Artwork{"heron"};
        decal.width = {100};
        decal.height = {80};
        garment.decals = {decal};
        draft.garments = {garment};
        const Now now{clock(), Hours{0}};
        draft.promised = LocalTime{now.today() + Days{3}} + Hours{15};
        const auto taken = takeOrder(shop, draft, now);
        ASSERT_TRUE(taken.ok()) << taken.error().message.english();
        order = taken->id;
        ASSERT_TRUE(shop.undo(shop.recent(1).at(0).id));
        ASSERT_TRUE(backup(shop, folder / "copy.holdfast").ok());
    }
    for (const char* name : {"shop.holdfast", "copy.holdfast"}) {
        auto opened = Shop::open(folder / name, clock);
        ASSERT_TRUE(opened.ok()) << testing::wordsOf(opened);
        const auto orders = undoneOrders((*opened)->connection());
        ASSERT_EQ(orders.size(), 1U) << name;
        EXPECT_EQ(orders[0].line.customer, "Odile Farrant");
        EXPECT_EQ(*checkShop(**opened), std::vector<Sentence>{});
        ASSERT_TRUE(putBackOrder(**opened, order).ok()) << name;
        EXPECT_EQ((*opened)->connection().number("SELECT COUNT(*) FROM order_card"), 1);
        EXPECT_EQ(*checkShop(**opened), std::vector<Sentence>{});
    }
}

} // namespace
} // namespace holdfast::db
