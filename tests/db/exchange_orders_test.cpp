// SPDX-License-Identifier: GPL-3.0-or-later
// What an order keeps of itself travels with it: the outlines of its wordings, and that it was undone and put
// back again.
#include "core/orders/order_change.h"
#include "db/actions/put_back.h"
#include "db/tables/undone_orders.h"
#include "tests/db/exchange_fixture.h"

namespace holdfast::db {
namespace {

class OrdersBetweenLaptops : public Laptops {
protected:
    // As many as stand in the book, and whether those that were undone can be found and put back.
    static void expectInTheBook(Shop& shop, std::int64_t orders, std::size_t undone) {
        EXPECT_EQ(numberOf(shop, "SELECT COUNT(*) FROM shop_order"), orders);
        EXPECT_EQ(undoneOrders(shop.connection()).size(), undone);
        expectWhole(shop);
    }

    static void undoOrder(Shop& shop, OrderId order) {
        const auto undone = shop.undo(shop.history(order, 1).at(0).id);
        ASSERT_TRUE(undone.ok()) << undone.error().message.english();
    }
    static void putBack(Shop& shop, OrderId order) {
        const auto back = putBackOrder(shop, order);
        ASSERT_TRUE(back.ok()) << back.error().message.english();
    }
};

TEST_F(OrdersBetweenLaptops, TheOutlineOfAWordingIsTheSameOnBoth) {
    Laptop& fair = aLaptop();
    auto draft = aDraft();
    const std::string outline = "M0 0L10 0C10 5 5 10 0 10L0 0";
    draft.garments[0].decals[0].content = Wording{"Juno", Face::Plain, outline};
    taken(*fair.shop, draft);
    exchange(fair);
    for (Shop* each : {&shop(), fair.shop})
        EXPECT_EQ(textOf(*each, "SELECT outline FROM decal WHERE wording = 'Juno'"), outline);
    expectSame(shop(), *fair.shop);
}

TEST_F(OrdersBetweenLaptops, WhatWasUndoneOnOneIsPutBackOnTheOther) {
    receiveCleanTees(1);
    Laptop& fair = aLaptop();
    const auto order = taken(*fair.shop, aDraft());
    undoOrder(*fair.shop, order.id);
    exchange(fair);
    expectInTheBook(shop(), 0, 1);
    putBack(shop(), order.id);
    expectInTheBook(shop(), 1, 0);
    exchange(fair);
    expectInTheBook(*fair.shop, 1, 0);
    EXPECT_EQ(numberOf(*fair.shop, "SELECT number FROM shop_order"), order.number);
    expectSame(shop(), *fair.shop);
}

TEST_F(OrdersBetweenLaptops, PutBackOnBothItIsThereOnce) {
    receiveCleanTees(2);
    Laptop& fair = aLaptop();
    const auto order = taken(*fair.shop, aDraft());
    undoOrder(*fair.shop, order.id);
    exchange(fair);
    putBack(shop(), order.id);
    wait(Minutes{1});
    putBack(*fair.shop, order.id);
    exchange(fair);
    exchange(fair);
    for (Shop* each : {&shop(), fair.shop})
        expectInTheBook(*each, 1, 0);
    EXPECT_EQ(numberOf(shop(), "SELECT COUNT(*) FROM garment"), 1);
    expectSame(shop(), *fair.shop);
}

TEST_F(OrdersBetweenLaptops, ABlankThatTheOtherReservedMeanwhileIsNobodysTwice) {
    receiveCleanTees(1);
    Laptop& fair = aLaptop();
    const auto order = taken(*fair.shop, aDraft());
    exchange(fair);
    undoOrder(*fair.shop, order.id);
    exchange(fair);
    takeTees(); // the only blank, at home
    wait(Minutes{1});
    putBack(*fair.shop, order.id);
    exchange(fair);
    exchange(fair);
    for (Shop* each : {&shop(), fair.shop}) {
        expectInTheBook(*each, 2, 0);
        EXPECT_EQ(numberOf(*each, "SELECT COUNT(*) FROM garment WHERE lot_id IS NOT NULL"), 1);
    }
    expectSame(shop(), *fair.shop);
}

// ── an order changed on two laptops ──

class ChangedOnTwoLaptops : public OrdersBetweenLaptops {
protected:
    void change(Shop& on, OrderId order, const std::function<void(OrderDraft&)>& edit) {
        const OrderDraft before = draftOf(loadFactsOf(on.connection(), std::span{&order, 1}), order);
        OrderDraft after = before;
        edit(after);
        const auto changed = changeOrder(on, order, before, after, now());
        ASSERT_TRUE(changed.ok()) << changed.error().message.english();
    }
};

TEST_F(ChangedOnTwoLaptops, TwoGarmentsOfItStandAsEachLaptopChangedThem) {
    receiveCleanTees(2);
    const auto order = takeTees(2);
    Laptop& fair = aLaptop();
    change(shop(), order.id, [](OrderDraft& draft) { draft.garments[0].size = "L"; });
    change(*fair.shop, order.id,
           [](OrderDraft& draft) { draft.garments[1].decals[0].content = Artwork{"waves"}; });
    exchange(fair);
    EXPECT_EQ(text("SELECT group_concat(size || artwork, ' ') FROM (SELECT size, artwork FROM garment "
                   "JOIN decal ON decal.garment_id = garment.id ORDER BY position)"),
              "Lheron Mwaves");
    expectWhole(shop());
    expectSame(shop(), *fair.shop);
}

TEST_F(ChangedOnTwoLaptops, OfOneGarmentTheWorkshopsChangeStandsAndTheOtherIsTold) {
    const auto order = takeTees(2);
    Laptop& fair = aLaptop();
    change(shop(), order.id, [](OrderDraft& draft) { draft.garments[0].size = "L"; });
    change(*fair.shop, order.id, [](OrderDraft& draft) { draft.garments[0].size = "S"; });
    const NewsTakenIn brought = bring(fair);
    ASSERT_EQ(brought.differences.size(), 1U);
    EXPECT_NE(
        brought.differences[0].words.english().find("1-a: its size stays as “Order 1 changed: 1-a is Tee, L"),
        std::string::npos)
        << brought.differences[0].words.english();
    fetch(fair);
    EXPECT_EQ(text("SELECT group_concat(size, ' ') FROM (SELECT size FROM garment ORDER BY position)"),
              "L M");
    expectWhole(shop());
    expectSame(shop(), *fair.shop);
}

TEST_F(ChangedOnTwoLaptops, AGarmentCancelledHereAndGivenABlankThereGivesItBack) {
    const auto order = takeTees(2);
    Laptop& fair = aLaptop();
    const GarmentId garment = garmentOf(order, 1);
    ASSERT_TRUE(cancelGarment(shop(), garment, "too many", now()).ok());
    change(*fair.shop, order.id, [](OrderDraft& draft) { draft.garments[1].price = {100}; });
    ASSERT_TRUE(receiveBlanks(*fair.shop, m_tee, "M", m_moss, 2, now()).ok());
    exchange(fair);
    EXPECT_EQ(number("SELECT COUNT(*) FROM garment WHERE cancelled_at IS NOT NULL AND lot_id IS NOT NULL"),
              0);
    EXPECT_EQ(number("SELECT garments FROM order_card"), 1);
    expectWhole(shop());
    expectSame(shop(), *fair.shop);
}

TEST_F(ChangedOnTwoLaptops, AGarmentUnderThePlatenHereMayBeChangedThereAndIsPressedAsItLies) {
    const auto order = readyToPress(2);
    Laptop& fair = aLaptop();
    const GarmentId garment = garmentOf(order);
    ASSERT_TRUE(takeUp(shop(), garment, routeFor(garment), now()).ok());
    change(*fair.shop, order.id, [](OrderDraft& draft) { draft.garments[0].price = {100}; });
    change(*fair.shop, order.id, [](OrderDraft& draft) { draft.garments[1].size = "L"; });
    exchange(fair);
    EXPECT_EQ(number("SELECT COUNT(*) FROM press_step WHERE finished_at IS NULL"), 1);
    EXPECT_EQ(
        text("SELECT group_concat(size || price_minor, ' ') FROM (SELECT * FROM garment ORDER BY position)"),
        "M100 L2650");
    expectWhole(shop());
    expectSame(shop(), *fair.shop);
}

} // namespace
} // namespace holdfast::db
