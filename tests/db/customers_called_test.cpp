// SPDX-License-Identifier: GPL-3.0-or-later
// Who is meant by a name, a phone number or the number of an order.
#include "db/actions/forget_customer.h"
#include "db/tables/customers_called.h"
#include "tests/db/small_shop.h"

namespace holdfast::db {
namespace {

class CustomersCalled : public SmallShop {
protected:
    OrderTaken takeFor(const std::string& name, const std::string& phone) {
        auto draft = aDraft();
        draft.customerName = name;
        draft.customerPhone = phone;
        return take(draft);
    }
    using Names = std::vector<std::string>;
    Names called(std::string_view who) {
        Names names;
        for (const CustomerCalled& each : customersCalled(connection(), who))
            names.push_back(each.customer.name);
        return names;
    }
};

TEST_F(CustomersCalled, AreFoundByTheWholeNameThePhoneOrAnOrder) {
    takeFor("Åsa Lindkvist", "(07700) 900-421");
    takeFor("Teo Farrant", "07700 900421 5");
    takeFor("Åsa Lindkvist", "(07700) 900-421");
    for (const char* who : {"Åsa Lindkvist", "asa lindkvist", "07700900421", "07700 900421", "1", "3"})
        EXPECT_EQ(called(who), Names{"Åsa Lindkvist"}) << who;
    EXPECT_EQ(called("2"), Names{"Teo Farrant"});
    for (const char* who : {"Åsa", "Lindkvist", "900421", "07700", "4", "01", "", " ", "-", "a"})
        EXPECT_EQ(called(who), Names{}) << who;
    EXPECT_EQ(customersCalled(connection(), "asa lindkvist").at(0).orders, (std::vector<std::int64_t>{1, 3}));
}

TEST_F(CustomersCalled, AllAreNamedWhoMayBeMeant) {
    takeFor("Teo Farrant", "07700 900421");
    takeFor("Teo Farrant", "07700 900422");
    takeFor("Odile", "3");
    takeFor("Juno", "");
    EXPECT_EQ(called("teo farrant"), (Names{"Teo Farrant", "Teo Farrant"}));
    EXPECT_EQ(called("3"), Names{"Odile"}) << "order 3 is theirs too";
    EXPECT_EQ(called("4"), Names{"Juno"});
    EXPECT_EQ(called(""), Names{}) << "nobody is meant by no number";
}

TEST_F(CustomersCalled, NobodyIsMeantWhoWasForgotten) {
    const OrderTaken order = takeFor("Teo Farrant", "07700 900421");
    ASSERT_TRUE(cancelOrder(shop(), order.id, "changed mind").ok());
    ASSERT_TRUE(forgetCustomer(shop(), customersCalled(connection(), "1").at(0).customer.id).ok());
    for (const char* who : {"Teo Farrant", "(forgotten)", "07700900421", "1"})
        EXPECT_EQ(called(who), Names{}) << who;
}

} // namespace
} // namespace holdfast::db
