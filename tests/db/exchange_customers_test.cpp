// SPDX-License-Identifier: GPL-3.0-or-later
// Customers who are joined on one laptop while another goes on with them.
#include "db/actions/forget_customer.h"
#include "db/tables/customer_page.h"
#include "db/tables/joined_customers.h"
#include "tests/db/exchange_fixture.h"

namespace holdfast::db {
namespace {

class CustomersOnTwoLaptops : public Laptops {
protected:
    OrderTaken takeFor(Shop& on, const std::string& name, std::optional<CustomerId> customer = {}) {
        auto draft = aDraft();
        draft.customerName = name;
        draft.customer = customer;
        auto order = takeOrder(on, draft, now());
        if (!order.ok())
            throw std::runtime_error(order.error().message.english());
        return *order;
    }
    CustomerId customerOf(const OrderTaken& order) {
        return CustomerId{
            number("SELECT customer_id FROM shop_order WHERE id = " + std::to_string(order.id.value))};
    }
    static std::vector<std::int64_t> numbersOf(Shop& on, CustomerId customer) {
        std::vector<std::int64_t> numbers;
        if (const auto page = customerPage(on.connection(), customer))
            for (const OrderOfCustomer& order : page->orders)
                numbers.push_back(order.line.number);
        std::ranges::sort(numbers);
        return numbers;
    }
    void expectBothSame(Laptop& laptop) {
        exchange(laptop);
        exchange(laptop);
        EXPECT_EQ(dumpOf(shop()), dumpOf(*laptop.shop));
        for (Shop* each : {&shop(), laptop.shop})
            EXPECT_TRUE(checkShop(*each)->empty());
    }

    OrderTaken m_one = takeFor(shop(), "Anna Reed");
    OrderTaken m_two = takeFor(shop(), "Ana Reed");
    CustomerId m_anna = customerOf(m_one);
    CustomerId m_ana = customerOf(m_two);
};

TEST_F(CustomersOnTwoLaptops, TheJoinAndTheNoteGoOver) {
    Laptop& fair = aLaptop();
    ASSERT_TRUE(changeCustomer(*fair.shop, m_ana, "Ana Reed", "", "a gift").ok());
    ASSERT_TRUE(joinCustomers(*fair.shop, m_anna, m_ana).ok());
    expectBothSame(fair);
    EXPECT_EQ(numbersOf(shop(), m_anna), (std::vector{m_one.number, m_two.number}));
    EXPECT_EQ(customerPage(shop().connection(), m_anna)->note, "a gift");
}

TEST_F(CustomersOnTwoLaptops, AnOrderForTheOtherComesInAndIsHers) {
    Laptop& fair = aLaptop();
    const auto late = takeFor(*fair.shop, "Ana Reed", m_ana);
    ASSERT_TRUE(joinCustomers(shop(), m_anna, m_ana).ok());
    expectBothSame(fair);
    for (Shop* each : {&shop(), fair.shop}) {
        EXPECT_EQ(numbersOf(*each, m_anna), (std::vector{m_one.number, m_two.number, late.number}));
        EXPECT_TRUE(setAside(each->connection()).empty());
    }
    // Undone, each has their own again.
    const auto entries = shop().recent(100);
    const auto undone = std::ranges::find_if(entries, [](const HistoryEntry& entry) {
        return entry.title.english().starts_with("Customers joined");
    });
    ASSERT_TRUE(shop().undo(undone->id).ok());
    EXPECT_EQ(numbersOf(shop(), m_anna), std::vector{m_one.number});
    EXPECT_EQ(numbersOf(shop(), m_ana), (std::vector{m_two.number, late.number}));
    expectBothSame(fair);
}

// Each was joined to the other: neither may be hidden by it, and whoever sees it joins them again.
TEST_F(CustomersOnTwoLaptops, JoinedBothWaysBothAreThere) {
    Laptop& fair = aLaptop();
    ASSERT_TRUE(joinCustomers(*fair.shop, m_anna, m_ana).ok());
    ASSERT_TRUE(joinCustomers(shop(), m_ana, m_anna).ok());
    expectBothSame(fair);
    EXPECT_EQ(keptCustomer(connection(), m_anna), m_anna);
    EXPECT_EQ(keptCustomer(connection(), m_ana), m_ana);
    EXPECT_EQ(findCustomers(connection(), "reed", 10).size(), 2U);
    EXPECT_EQ(numbersOf(shop(), m_anna).size() + numbersOf(shop(), m_ana).size(), 2U);
    ASSERT_TRUE(joinCustomers(shop(), m_anna, m_ana).ok());
    EXPECT_EQ(numbersOf(shop(), m_ana), (std::vector{m_one.number, m_two.number}));
    EXPECT_EQ(findCustomers(connection(), "reed", 10).size(), 1U);
    expectBothSame(fair);
}

// Forgotten here, joined there: the join is set aside on both, and nobody gets a name again or loses one.
TEST_F(CustomersOnTwoLaptops, WhoWasForgottenIsJoinedWithNobody) {
    for (const bool isKeptForgotten : {true, false}) {
        const auto three = takeFor(shop(), isKeptForgotten ? "Zyxcleo Marsh" : "Zyxcleo Tarn");
        const auto four = takeFor(shop(), isKeptForgotten ? "Zyxclea Marsh" : "Zyxclea Tarn");
        Laptop& fair = aLaptop(isKeptForgotten ? "Fair laptop" : "Attic laptop");
        const OrderTaken& gone = isKeptForgotten ? three : four;
        const OrderTaken& stays = isKeptForgotten ? four : three;
        ASSERT_TRUE(cancelOrder(shop(), gone.id, "changed mind").ok());
        ASSERT_TRUE(forgetCustomer(shop(), customerOf(gone)).ok());
        ASSERT_TRUE(joinCustomers(*fair.shop, customerOf(three), customerOf(four)).ok());
        expectBothSame(fair);
        for (Shop* each : {&shop(), fair.shop}) {
            EXPECT_EQ(numbersOf(*each, customerOf(gone)), std::vector{gone.number});
            EXPECT_EQ(numbersOf(*each, customerOf(stays)), std::vector{stays.number});
            EXPECT_TRUE(customerPage(each->connection(), customerOf(gone))->isForgotten);
            ASSERT_EQ(setAside(each->connection()).size(), isKeptForgotten ? 1U : 2U);
            EXPECT_EQ(setAside(each->connection()).front().why.english(),
                      "One of the two customers was forgotten meanwhile.");
        }
    }
}

TEST_F(CustomersOnTwoLaptops, ForgettingWhoWasJoinedForgetsBothOnBoth) {
    ASSERT_TRUE(joinCustomers(shop(), m_anna, m_ana).ok());
    Laptop& fair = aLaptop();
    for (const OrderTaken& order : {m_one, m_two})
        ASSERT_TRUE(cancelOrder(shop(), order.id, "changed mind").ok());
    const auto open = takeFor(*fair.shop, "Ana Reed", m_ana); // the workshop does not know of it
    ASSERT_TRUE(forgetCustomer(shop(), m_anna).ok());
    expectBothSame(fair);
    for (Shop* each : {&shop(), fair.shop}) {
        EXPECT_EQ(each->connection().number("SELECT COUNT(*) FROM customer WHERE name = '(forgotten)'"), 2);
        EXPECT_EQ(each->connection().number(
                      "SELECT COUNT(*) FROM order_card WHERE customer LIKE 'An%' AND id = ?1", open.id),
                  1)
            << "an order is not lost over it";
    }
}

} // namespace
} // namespace holdfast::db
