// SPDX-License-Identifier: GPL-3.0-or-later
// What an order comes to besides its garments: as it is taken, changed, split and joined, and as the order
// book adds it up.
#include "core/fairs/fair_sales.h"
#include "core/orders/order_change.h"
#include "core/orders/order_sum.h"
#include "tests/db/small_shop.h"

#include <random>

namespace holdfast::db {
namespace {

constexpr std::int64_t kPrice = 2000;

class Bills : public SmallShop {
protected:
    using Edit = std::function<void(OrderDraft&)>;

    OrderDraft bill(std::vector<Money> prices, std::vector<BillLine> lines, TaxRule tax = {}) {
        OrderDraft draft = aDraft(static_cast<int>(prices.size()));
        for (std::size_t at = 0; at < prices.size(); ++at)
            draft.garments[at].price = prices[at];
        draft.lines = std::move(lines);
        draft.tax = tax;
        return draft;
    }

    Order orderOf(const OrderTaken& order) {
        return loadFactsOf(connection(), std::span{&order.id, 1}).orders.at(order.id);
    }
    Money totalOf(const OrderTaken& order) { return orderOf(order).total; }

    Result<Done> change(const OrderTaken& order, const Edit& edit) {
        const OrderDraft before = draftOf(loadFactsOf(connection(), std::span{&order.id, 1}), order.id);
        OrderDraft after = before;
        edit(after);
        return changeOrder(shop(), order.id, before, after, now());
    }
};

BillLine wrap() {
    return {BillLineKind::Extra, "Gift wrap", Money{250}};
}
BillLine tenOff() {
    return {BillLineKind::Discount, "regular customer", Percentage{-10'00}};
}
TaxRule addedAtFive() {
    return {TaxKind::Added, {5'00}, TaxedBy::Line, Rounding::HalfEven};
}

TEST_F(Bills, OrderKeepsItsLinesAndItsTax) {
    const OrderDraft typed = bill({{kPrice}, {kPrice}}, {wrap(), tenOff()}, addedAtFive());
    OrderTaken order;
    expectUndoable<Result<OrderTaken>>(
        [&] {
            const auto taken = takeOrder(shop(), typed, now());
            order = *taken;
            return taken;
        },
        "Took order 1");
    const Order found = orderOf(order);
    ASSERT_EQ(found.lines.size(), 2U);
    EXPECT_EQ(found.lines[0].words, "Gift wrap");
    EXPECT_EQ(found.lines[1].worth, tenOff().worth);
    EXPECT_EQ(found.tax, addedAtFive());
    EXPECT_EQ(found.total, Money{4042}); // 4000 + 250 − 400, and 5 % of each: 100 + 100 + 12 − 20
    EXPECT_EQ(found.total, typed.total());
    expectSound();
}

// The order book adds up in the tables what core adds up in memory.
TEST_F(Bills, TotalInTheTablesIsTheTotalOfTheDraft) {
    std::mt19937 random{7};
    const auto from = [&](int low, int high) {
        return std::uniform_int_distribution<int>{low, high}(random);
    };
    for (int round = 0; round < 400; ++round) {
        std::vector<Money> prices;
        for (int garments = from(1, 5); garments > 0; --garments)
            prices.push_back({from(0, 4'000)});
        std::vector<BillLine> lines;
        for (int count = from(0, 3); count > 0; --count) {
            const auto kind = static_cast<BillLineKind>(from(0, 3));
            if (from(0, 1) == 0)
                lines.push_back({kind, "x", Money{from(-300, 900)}});
            else
                lines.push_back({kind, "x", Percentage{from(-3'000, 9'000)}});
        }
        const TaxRule tax{static_cast<TaxKind>(from(0, 2)),
                          {from(0, 20) * 50},
                          static_cast<TaxedBy>(from(0, 1)),
                          static_cast<Rounding>(from(0, 1))};
        const OrderDraft draft = bill(prices, lines, tax);
        if (draft.total() < Money{})
            continue;
        const OrderTaken order = take(draft);
        ASSERT_EQ(totalOf(order), draft.total()) << round;
    }
    expectSound();
}

TEST_F(Bills, LineIsRefusedWithItsField) {
    const auto refused = [&](const BillLine& line, const std::string& words) {
        expectRefused<Result<OrderTaken>>([&] { return takeOrder(shop(), bill({{kPrice}}, {line}), now()); },
                                          "lines", words);
    };
    refused({BillLineKind::Extra, " ", Money{250}}, "What an extra is for");
    refused({BillLineKind::Extra, std::string(61, 'x'), Money{250}}, "60");
    refused({BillLineKind::Discount, "", Money{-2001}}, "More is taken off than the order comes to");
    refused({BillLineKind::Discount, "", Percentage{-100'01}}, "100 %");
    refused({BillLineKind::Extra, "Gold", Money{1'000'000'00}}, "below £1,000,000.00");
    OrderDraft long_ = bill({{kPrice}}, std::vector<BillLine>(21, wrap()));
    expectRefused<Result<OrderTaken>>([&] { return takeOrder(shop(), long_, now()); }, "lines", "20");
}

TEST_F(Bills, DepositMayBeAsMuchAsTheOrderComesTo) {
    OrderDraft draft = bill({{kPrice}}, {tenOff()});
    draft.deposit = Money{1801};
    expectRefused<Result<OrderTaken>>([&] { return takeOrder(shop(), draft, now()); }, "deposit", "£18.00");
    draft.deposit = Money{1800};
    const OrderTaken order = take(draft);
    EXPECT_EQ(orderOf(order).owed(), Money{});
}

TEST_F(Bills, ChangeSaysEachLineWithWhatItWas) {
    const OrderTaken order = take(bill({{kPrice}}, {wrap(), tenOff()}));
    const Edit edit = [](OrderDraft& draft) {
        draft.lines[1].worth = Percentage{-15'00};
        draft.lines.erase(draft.lines.begin());
        draft.lines.push_back({BillLineKind::Rush, {}, Percentage{25'00}});
        draft.garments[0].price = Money{3000};
    };
    expectUndoable<Result<Done>>(
        [&] { return change(order, edit); },
        "Order 1 changed: 1-a costs £30.00 (was £20.00), Gift wrap £2.50 left off, Discount 15 %, regular "
        "customer (was Discount 10 %, regular customer), Rush 25 % added");
    EXPECT_EQ(totalOf(order), Money{3300});
    expectSound();
}

TEST_F(Bills, PercentagesFollowTheGarmentsThatAreLeft) {
    const OrderTaken order = take(bill({{kPrice}, {1000}}, {tenOff()}));
    EXPECT_EQ(totalOf(order), Money{2700});
    ASSERT_TRUE(cancelGarment(shop(), garmentOf(order, 1), "changed her mind", now()).ok());
    EXPECT_EQ(totalOf(order), Money{1800});
    expectSound();
}

TEST_F(Bills, GarmentStaysWhereMoreWouldBeTakenOffThanIsLeft) {
    const OrderTaken order = take(bill({{kPrice}, {1000}}, {{BillLineKind::Discount, "", Money{-1500}}}));
    expectRefused<Result<Done>>([&] { return cancelGarment(shop(), garmentOf(order), "changed", now()); },
                                "garments", "Change its discount first");
    const GarmentId dear = garmentOf(order);
    expectRefused<Result<OrderTaken>>([&] { return splitOrder(shop(), order.id, std::span{&dear, 1}); },
                                      "garments", "Change its discount first");
}

TEST_F(Bills, JoinedOrdersComeToWhatBothDid) {
    const OrderTaken one = take(bill({{kPrice}}, {tenOff()}));
    OrderDraft second = bill({{1000}}, {wrap()});
    second.customer = orderOf(one).customer;
    const OrderTaken other = take(second);
    ASSERT_TRUE(mergeOrders(shop(), one.id, other.id).ok());
    EXPECT_EQ(totalOf(one), Money{3050}) << "ten per cent of the first garment alone";
    EXPECT_EQ(totalOf(other), Money{});
    EXPECT_EQ(orderOf(one).lines.size(), 2U);
    expectSound();
}

TEST_F(Bills, OrdersOfTwoTaxesStayTwo) {
    const OrderTaken one = take(bill({{kPrice}}, {}));
    OrderDraft second = bill({{1000}}, {}, addedAtFive());
    second.customer = orderOf(one).customer;
    const OrderTaken other = take(second);
    expectRefused<Result<Done>>([&] { return mergeOrders(shop(), one.id, other.id); }, "order",
                                "taxed otherwise");
}

TEST_F(Bills, SplitOrdersShareTheirPercentagesAndTheTax) {
    const OrderTaken order = take(bill({{kPrice}, {1000}}, {wrap(), tenOff()}, addedAtFive()));
    const Money before = totalOf(order);
    const GarmentId second = garmentOf(order, 1);
    const auto made = splitOrder(shop(), order.id, std::span{&second, 1});
    ASSERT_TRUE(made.ok());
    EXPECT_EQ(totalOf(order) + totalOf(*made), before);
    EXPECT_EQ(orderOf(*made).tax, addedAtFive());
    ASSERT_EQ(orderOf(*made).lines.size(), 1U);
    EXPECT_EQ(orderOf(*made).lines[0].worth, tenOff().worth);
    expectSound();
}

TEST_F(Bills, WhatBroughtTheShopIsWithoutTaxAndDiscount) {
    ShopSettings settings = loadSettings(connection());
    settings.fairName = "Harbour fair";
    ASSERT_TRUE(changeSettings(shop(), settings).ok());
    take(
        bill({{kPrice}, {1000}}, {tenOff()}, {TaxKind::Included, {20'00}, TaxedBy::Total, Rounding::HalfUp}));
    const auto sold = fairOrders(loadOpenFacts(connection()), now().today(), now());
    ASSERT_EQ(sold.size(), 1U);
    const FairOrder& order = sold.begin()->second;
    ASSERT_EQ(order.garments.size(), 2U);
    EXPECT_EQ(order.garments[0].price, Money{1500}); // of 2700 paid, 450 is tax
    EXPECT_EQ(order.garments[1].price, Money{750});
}

} // namespace
} // namespace holdfast::db
