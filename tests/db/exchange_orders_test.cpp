// SPDX-License-Identifier: GPL-3.0-or-later
// What an order keeps of itself travels with it: the outlines of its wordings, and that it was undone and put
// back again.
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

} // namespace
} // namespace holdfast::db
