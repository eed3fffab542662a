// SPDX-License-Identifier: GPL-3.0-or-later
// What is known of a customer on one page, and two who are one joined: by one entry, with one undo.
#include "db/actions/claim_actions.h"
#include "db/actions/forget_customer.h"
#include "db/check/check.h"
#include "db/tables/customer_page.h"
#include "db/tables/customers_called.h"
#include "db/tables/joined_customers.h"
#include "tests/db/small_shop.h"

namespace holdfast::db {
namespace {

class Customers : public SmallShop {
protected:
    OrderTaken takeFor(const std::string& name, const std::string& phone = "", int garments = 1) {
        auto draft = aDraft(garments);
        draft.customerName = name;
        draft.customerPhone = phone;
        return take(draft);
    }
    CustomerId customerOf(const OrderTaken& order) {
        return CustomerId{
            number("SELECT customer_id FROM shop_order WHERE id = " + std::to_string(order.id.value))};
    }
    CustomerPage pageOf(CustomerId customer) {
        auto page = customerPage(connection(), customer);
        if (!page)
            throw std::runtime_error("no such customer");
        return std::move(*page);
    }
    std::vector<std::int64_t> numbersOf(CustomerId customer) {
        std::vector<std::int64_t> numbers;
        for (const OrderOfCustomer& order : pageOf(customer).orders)
            numbers.push_back(order.line.number);
        return numbers;
    }
    std::vector<std::string> found(const std::string& typed) {
        std::vector<std::string> names;
        for (const CustomerFound& each :
             customersFound(connection(), OrderQuery{connection(), typed}, typed, 10))
            names.push_back(each.customer.name);
        return names;
    }
    using Numbers = std::vector<std::int64_t>;
    using Names = std::vector<std::string>;
    using Doing = Result<Done>;
};

TEST_F(Customers, ThePageHasAllOrdersWithTheirMoney) {
    const auto first = takeFor("Anna Reed", "07700 900421");
    wait(Hours{24});
    auto again = aDraft(2);
    again.customer = customerOf(first);
    again.garments[1].size = "L";
    const auto second = take(again);
    takeFor("Bree Tully");
    auto quoted = aDraft();
    quoted.customer = customerOf(first);
    quoted.isQuotation = true;
    take(quoted);
    ASSERT_TRUE(moveMoney(shop(), first.id, MoneyKind::Payment, Money{700}, PaidHow::Cash).ok());
    ASSERT_TRUE(cancelOrder(shop(), first.id, "changed mind").ok());
    const CustomerPage page = pageOf(customerOf(first));
    EXPECT_EQ(page.customer.name, "Anna Reed");
    EXPECT_EQ(page.customer.phone, "07700 900421");
    EXPECT_EQ(numbersOf(customerOf(first)), (Numbers{4, 2, 1})) << "the newest first";
    EXPECT_EQ(page.orders[2].line.state, OrderState::Cancelled);
    EXPECT_EQ(page.orders[2].line.paid, Money{700});
    EXPECT_EQ(page.orders[1].takenAt - page.orders[2].takenAt, Hours{24});
    EXPECT_EQ(page.owed, page.orders[0].line.total + page.orders[1].line.total)
        << "nothing on what is cancelled; as the order book counts it";
    ASSERT_EQ(page.sizes.size(), 2U) << "of what was ordered and not cancelled";
    EXPECT_EQ(page.sizes[0].style, "Tee");
    EXPECT_EQ(page.sizes[0].size, "L");
    EXPECT_EQ(page.sizes[1].size, "M");
    EXPECT_EQ(page.sizes[1].garments, 1);
    EXPECT_FALSE(customerPage(connection(), CustomerId{12345}));
    EXPECT_EQ(numbersOf(customerOf(second)), numbersOf(customerOf(first)));
}

TEST_F(Customers, ANoteIsWrittenTakenOffAndUndone) {
    const auto order = takeFor("Anna Reed", "07700 900421");
    const CustomerId anna = customerOf(order);
    const auto change = [&](const std::string& name, const std::optional<std::string>& note) {
        return [=, this] { return changeCustomer(shop(), anna, name, "07700 900421", note); };
    };
    expectUndoable<Doing>(change("Anna Reed", "likes long sleeves\nrings in the evening"),
                          "Note of a customer written: Anna Reed");
    expectUndoable<Doing>(change("Anna Moss", "likes short ones"),
                          "Customer is now Anna Moss, 07700 900421, with another note");
    EXPECT_EQ(pageOf(anna).note, "likes short ones");
    expectUndoable<Doing>(change("Anna Reed", {}), "Customer is now Anna Reed, 07700 900421");
    EXPECT_EQ(pageOf(anna).note, "likes short ones") << "who does not speak of it leaves it";
    expectUndoable<Doing>(change("Anna Reed", ""), "Note of a customer taken off: Anna Reed");
    expectRefused<Doing>(change("Anna Reed", std::string(501, 'x')), "customerNote");
}

TEST_F(Customers, TwoWhoAreOneAreJoinedAndUndone) {
    const auto one = takeFor("Anna Reed");
    const auto other = takeFor("Ana Reed", "07700 900421");
    const auto third = takeFor("Ana Reed", "07700 900421");
    const CustomerId anna = customerOf(one);
    const CustomerId ana = customerOf(other);
    ASSERT_EQ(customerOf(third), ana);
    ASSERT_TRUE(changeCustomer(shop(), anna, "Anna Reed", "", "likes long sleeves").ok());
    ASSERT_TRUE(changeCustomer(shop(), ana, "Ana Reed", "07700 900421", "a gift").ok());
    const auto entries = shop().recent(1'000).size();
    expectUndoable<Doing>([&] { return joinCustomers(shop(), anna, ana); },
                          "Customers joined: Ana Reed is Anna Reed");
    EXPECT_EQ(shop().recent(1'000).size(), entries + 3) << "the entry, its undo and its redo";
    const CustomerPage page = pageOf(anna);
    EXPECT_EQ(numbersOf(anna), (Numbers{3, 2, 1}));
    EXPECT_EQ(page.customer.phone, "07700 900421") << "there was none";
    EXPECT_EQ(page.note, "likes long sleeves\na gift");
    EXPECT_EQ(page.alsoCalled, Names{"Ana Reed"});
    EXPECT_EQ(pageOf(ana).customer.id, anna) << "the other one's page is this one";
    EXPECT_EQ(number("SELECT COUNT(*) FROM order_card WHERE customer = 'Anna Reed'"), 3);
    for (const OrderTaken& order : {one, other, third})
        EXPECT_EQ(shop().history(order.id, 1).size(), 1U);
    EXPECT_EQ(found("reed"), Names{"Anna Reed"}) << "one of them, not two";
    EXPECT_EQ(findCustomers(connection(), "reed", 10).size(), 1U);
    EXPECT_TRUE(checkShop(shop())->empty());
    ASSERT_TRUE(shop().undo(shop().lastUndoable()->id).ok());
    EXPECT_EQ(numbersOf(anna), Numbers{1});
    EXPECT_EQ(numbersOf(ana), (Numbers{3, 2}));
    EXPECT_EQ(pageOf(anna).customer.phone, "");
}

TEST_F(Customers, WhoIsKeptKeepsTheirPhoneAndSameNotesAreOne) {
    const CustomerId anna = customerOf(takeFor("Anna Reed", "07700 900421"));
    const CustomerId ana = customerOf(takeFor("Ana Reed", "07700 900422"));
    ASSERT_TRUE(changeCustomer(shop(), anna, "Anna Reed", "07700 900421", "a gift").ok());
    ASSERT_TRUE(changeCustomer(shop(), ana, "Ana Reed", "07700 900422", "a gift").ok());
    ASSERT_TRUE(joinCustomers(shop(), anna, ana).ok());
    EXPECT_EQ(pageOf(anna).customer.phone, "07700 900421");
    EXPECT_EQ(pageOf(anna).note, "a gift");
}

TEST_F(Customers, JoiningIsRefusedInWords) {
    const auto order = takeFor("Anna Reed");
    const CustomerId anna = customerOf(order);
    const CustomerId ana = customerOf(takeFor("Ana Reed", "1"));
    const auto gone = takeFor("Bree Tully", "2");
    const CustomerId bree = customerOf(gone);
    expectRefused<Doing>([&] { return joinCustomers(shop(), anna, anna); }, "other", "same customer");
    expectRefused<Doing>([&] { return joinCustomers(shop(), anna, CustomerId{8}); }, "customer", "no such");
    expectRefused<Doing>([&] { return joinCustomers(shop(), CustomerId{8}, anna); }, "customer", "no such");
    ASSERT_TRUE(changeCustomer(shop(), anna, "Anna Reed", "", std::string(300, 'x')).ok());
    ASSERT_TRUE(changeCustomer(shop(), ana, "Ana Reed", "1", std::string(200, 'y')).ok());
    expectRefused<Doing>([&] { return joinCustomers(shop(), anna, ana); }, "other", "longer than 500");
    ASSERT_TRUE(changeCustomer(shop(), ana, "Ana Reed", "1", std::string(199, 'y')).ok());
    ASSERT_TRUE(joinCustomers(shop(), anna, ana).ok());
    expectRefused<Doing>([&] { return joinCustomers(shop(), anna, ana); }, "other", "same customer");
    expectRefused<Doing>([&] { return joinCustomers(shop(), ana, anna); }, "other", "same customer");
    ASSERT_TRUE(cancelOrder(shop(), gone.id, "changed mind").ok());
    ASSERT_TRUE(forgetCustomer(shop(), bree).ok());
    expectRefused<Doing>([&] { return joinCustomers(shop(), anna, bree); }, "other", "forgotten");
    expectRefused<Doing>([&] { return joinCustomers(shop(), bree, anna); }, "other", "forgotten");
}

TEST_F(Customers, SeveralJoinsLeadToOne) {
    const CustomerId anna = customerOf(takeFor("Anna Reed"));
    const CustomerId ana = customerOf(takeFor("Ana Reed"));
    const CustomerId ann = customerOf(takeFor("Ann Reed"));
    ASSERT_TRUE(joinCustomers(shop(), ana, ann).ok());
    ASSERT_TRUE(joinCustomers(shop(), anna, ann).ok()) << "who is Ana by now";
    EXPECT_EQ(rowsOfCustomer(connection(), ann), (std::vector{anna, ana, ann}));
    EXPECT_EQ(keptCustomer(connection(), ana), anna);
    EXPECT_EQ(numbersOf(ann), (Numbers{3, 2, 1}));
}

// An order that is taken for the one who was joined is one of who is kept.
TEST_F(Customers, WhatIsTakenForTheOtherIsTakenForWhoIsKept) {
    const CustomerId anna = customerOf(takeFor("Anna Reed", "1"));
    const CustomerId ana = customerOf(takeFor("Ana Reed", "2"));
    ASSERT_TRUE(joinCustomers(shop(), anna, ana).ok());
    auto draft = aDraft();
    draft.customer = ana;
    EXPECT_EQ(customerOf(take(draft)), anna);
    EXPECT_EQ(customerOf(takeFor("ana reed", "2")), anna) << "by name and phone number";
    const auto called = customersCalled(connection(), "Ana Reed");
    ASSERT_EQ(called.size(), 1U);
    EXPECT_EQ(called[0].customer.id, anna);
    EXPECT_EQ(called[0].orders, (Numbers{1, 2, 3, 4}));
}

TEST_F(Customers, ForgettingReachesNoteAndBothNames) {
    const auto one = takeFor("Zyxanna Reed");
    const auto two = takeFor("Zyxana Reed", "07700 900421");
    const CustomerId anna = customerOf(one);
    ASSERT_TRUE(changeCustomer(shop(), anna, "Zyxanna Reed", "", "zyxnote of hers").ok());
    ASSERT_TRUE(changeCustomer(shop(), customerOf(two), "Zyxana Reed", "07700 900421", "zyxnote too").ok());
    ASSERT_TRUE(joinCustomers(shop(), anna, customerOf(two)).ok());
    const auto refused = forgetCustomer(shop(), anna);
    ASSERT_FALSE(refused.ok());
    EXPECT_EQ(refused.error().message.english(),
              "Orders 1 and 2 are still open. Hand them over or cancel them first.");
    for (const OrderTaken& order : {one, two})
        ASSERT_TRUE(cancelOrder(shop(), order.id, "changed mind").ok());
    ASSERT_TRUE(forgetCustomer(shop(), anna).ok());
    EXPECT_EQ(number("SELECT COUNT(*) FROM customer WHERE name = '(forgotten)' AND phone = '' AND note = ''"),
              2);
    EXPECT_EQ(number("SELECT COUNT(*) FROM journal_entry WHERE instr(title, 'yx') > 0 OR instr(changeset, "
                     "CAST('yxnote' AS BLOB)) > 0 OR instr(changeset, CAST('yxan' AS BLOB)) > 0"),
              0);
    EXPECT_EQ(number("SELECT COUNT(*) FROM forgotten_order"), 2);
    EXPECT_TRUE(pageOf(anna).isForgotten);
    EXPECT_TRUE(found("zyx").empty());
    EXPECT_TRUE(checkShop(shop())->empty());
}

TEST_F(Customers, AreFoundByNameAndPhoneAlone) {
    takeFor("Anna Reed", "07700 900421");
    auto worded = aDraft();
    worded.customerName = "Bree Tully";
    worded.garments[0].decals[0].content = Wording{"Anna 900421"};
    take(worded);
    EXPECT_EQ(found("anna"), Names{"Anna Reed"});
    EXPECT_EQ(found("+447700900421"), Names{"Anna Reed"});
    EXPECT_EQ(found("anan reed"), Names{"Anna Reed"});
    EXPECT_EQ(found("421"), Names{"Anna Reed"});
    EXPECT_EQ(found("1"), Names{}) << "the number of an order";
    EXPECT_EQ(found("dusk"), Names{});
    EXPECT_EQ(found(""), Names{});
    const auto one = customersFound(connection(), OrderQuery{connection(), "anna"}, "anna", 10);
    EXPECT_EQ(one[0].orders, 1);
    EXPECT_GT(one[0].owed, Money{});
}

} // namespace
} // namespace holdfast::db
