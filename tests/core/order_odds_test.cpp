// SPDX-License-Identifier: GPL-3.0-or-later
// States of an order that two laptops bring about between them.
#include "core/orders/order_odds.h"

#include "tests/core/english.h"

#include <gtest/gtest.h>

namespace holdfast {
namespace {

using Sentences = std::vector<std::string>;

Order anOrderOf(std::int64_t total, std::int64_t paid, OrderState state = OrderState::Confirmed) {
    Order order;
    order.number = 423;
    order.state = state;
    order.total = {total};
    order.paid = {paid};
    return order;
}

TEST(OrderOdds, AreNoneWhereAFormCouldHaveLedThere) {
    const Currency pounds;
    EXPECT_EQ(test::english(orderOdds(anOrderOf(8100, 8100), 2, pounds)), Sentences{});
    EXPECT_EQ(test::english(orderOdds(anOrderOf(8100, 0, OrderState::HandedOver), 2, pounds)), Sentences{});
    EXPECT_EQ(test::english(orderOdds(anOrderOf(8100, 4000, OrderState::Cancelled), 0, pounds)), Sentences{})
        << "the deposit may be paid back";
}

TEST(OrderOdds, OfGarmentsThatWereHandedOverThoughTheOrderIsCancelled) {
    EXPECT_EQ(
        test::english(orderOdds(anOrderOf(8100, 4000, OrderState::Cancelled), 1, {})),
        Sentences{"Order 423 is cancelled, yet a garment of it was handed over. Put the order back to ask "
                  "for what is owed."});
    EXPECT_EQ(
        test::english(orderOdds(anOrderOf(8100, 9000, OrderState::Cancelled), 2, {})),
        Sentences{"Order 423 is cancelled, yet 2 garments of it were handed over. Put the order back to "
                  "ask for what is owed."});
}

TEST(OrderOdds, OfMoreMoneyThanItCosts) {
    EXPECT_EQ(test::english(orderOdds(anOrderOf(8100, 8805), 0, {})),
              Sentences{"£88.05 was paid for order 423, which costs £81.00. Give £7.05 back."});
}

TEST(OrderOdds, OfTwoGarmentsOnOnePress) {
    const std::vector<SharedPress> shared{{"423-a", "431-b", "Bench"}};
    EXPECT_EQ(test::english(orderOdds(anOrderOf(8100, 0), 0, {}, shared)),
              Sentences{"423-a and 431-b are both under the platen of Bench, which takes one. Finish the one "
                        "that lies there, and put the other back on the walk."});
}

TEST(OrderOdds, AreSaidInShortInALine) {
    EXPECT_EQ(oddInShort(OrderState::Confirmed, {8100}, {8100}, true), "");
    EXPECT_EQ(oddInShort(OrderState::Confirmed, {8100}, {8101}, false), "Paid too much");
    EXPECT_EQ(oddInShort(OrderState::HandedOver, {8100}, {8101}, true), "Paid too much");
    EXPECT_EQ(oddInShort(OrderState::Cancelled, {8100}, {4000}, false), "");
    EXPECT_EQ(oddInShort(OrderState::Cancelled, {8100}, {9000}, false), "") << "it may be paid back";
    EXPECT_EQ(oddInShort(OrderState::Cancelled, {8100}, {4000}, true), "Cancelled, yet handed over");
}

} // namespace
} // namespace holdfast
