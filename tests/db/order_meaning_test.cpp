// SPDX-License-Identifier: GPL-3.0-or-later
// Words that mean something of an order: a day, that money is owed, that it is late. They go along with
// others.
#include "db/tables/order_book.h"
#include "db/tables/undone_orders.h"
#include "tests/db/small_shop.h"

namespace holdfast::db {
namespace {

class OrdersMeant : public SmallShop {
protected:
    // Promised for so many days from now.
    OrderTaken takeFor(const std::string& name, int days, const std::string& wording = "Juno") {
        auto draft = aDraft();
        draft.customerName = name;
        draft.promised = inDays(days);
        draft.garments[0].decals[0].content = Wording{wording};
        return take(draft);
    }
    void pay(OrderId order) {
        const Money owed{number("SELECT total_minor - paid_minor FROM order_card WHERE id = " +
                                std::to_string(order.value))};
        ASSERT_TRUE(moveMoney(shop(), order, MoneyKind::Payment, owed, PaidHow::Cash).ok());
    }
    DaySpan days(int first, int last) { return {now().today() + Days{first}, now().today() + Days{last}}; }
    OrderQuery wanted(const std::string& words, std::vector<MeantWords> meant) {
        return {connection(), OrderSearch{TypedSearch{words, std::move(meant), now()}}};
    }
    std::vector<std::int64_t> found(const std::string& words, std::vector<MeantWords> meant) {
        const OrderQuery query = wanted(words, std::move(meant));
        std::vector<std::int64_t> numbers;
        for (const OrderLine& line : findOrders(connection(), query, OrderFilter::All, 100))
            numbers.push_back(line.number);
        EXPECT_EQ(countOrders(connection(), query, OrderFilter::All), std::ssize(numbers));
        return numbers;
    }
    using Numbers = std::vector<std::int64_t>;

    const MeantWords m_owing{"owing", {OrderMeaning::Kind::Owing}};
    const MeantWords m_late{"late", {OrderMeaning::Kind::Late}};
    const MeantWords m_unconfirmed{"unconfirmed", {OrderMeaning::Kind::Unconfirmed}};
    MeantWords on(const std::string& words, DaySpan span) {
        return {words, {OrderMeaning::Kind::OnDays, {span}}};
    }
};

TEST_F(OrdersMeant, OwingGoesAlongWithOtherWords) {
    takeFor("Anna Reed", 3);
    const auto paid = takeFor("Anna Reed", 4);
    takeFor("Bree Tully", 5);
    pay(paid.id);
    EXPECT_EQ(found("", {m_owing}), (Numbers{3, 1}));
    EXPECT_EQ(found("anna", {m_owing}), Numbers{1});
    EXPECT_EQ(found("anan", {m_owing}), Numbers{1}) << "with a wrong letter, too";
    EXPECT_EQ(found("cleo", {m_owing}), Numbers{});
    ASSERT_TRUE(cancelOrder(shop(), OrderId{number("SELECT MIN(id) FROM shop_order")}, "changed mind").ok());
    EXPECT_EQ(found("anna", {m_owing}), Numbers{}) << "nothing is owed on what is cancelled";
}

TEST_F(OrdersMeant, WhoIsCalledSoIsFoundAsWell) {
    takeFor("Owing Brothers", 3, "Late again");
    pay(OrderId{number("SELECT MAX(id) FROM shop_order")});
    takeFor("Bree Tully", 3);
    EXPECT_EQ(found("", {m_owing}), (Numbers{2, 1}));
    EXPECT_EQ(found("", {m_late}), Numbers{1});
    EXPECT_EQ(found("", {on("owing brothers", days(90, 90))}), Numbers{1}) << "each of the words";
}

TEST_F(OrdersMeant, ADayIsThatOfThePromiseOrOfTheTaking) {
    takeFor("Anna", 3);
    takeFor("Bree", 9);
    wait(Days{9});
    takeFor("Cleo", 4);
    EXPECT_EQ(found("", {on("x", days(0, 0))}), (Numbers{3, 2})) << "taken today, and promised for it";
    EXPECT_EQ(found("", {on("x", days(-9, -9))}), (Numbers{2, 1}));
    EXPECT_EQ(found("", {on("x", days(-6, -6))}), Numbers{1});
    EXPECT_EQ(found("", {on("x", days(1, 3))}), Numbers{});
    EXPECT_EQ(found("", {on("x", days(1, 4))}), Numbers{3});
    EXPECT_EQ(found("bree", {on("x", days(-9, -9)), m_owing}), Numbers{2});
}

// The workshop's clock is an hour ahead of UTC: half past midnight is the day before there.
TEST_F(OrdersMeant, ADayIsThatOfTheWorkshopsClock) {
    wait(now().toInstant(LocalTime{now().today() + Days{1}} + Minutes{30}) - now().instant);
    takeFor("Anna", 5);
    EXPECT_EQ(found("", {on("x", days(0, 0))}), Numbers{1});
    EXPECT_EQ(found("", {on("x", days(-1, -1))}), Numbers{});
}

TEST_F(OrdersMeant, LateIsOpenAndPromisedForADayThatIsOver) {
    takeFor("Anna", 2);
    const auto cancelled = takeFor("Bree", 2);
    takeFor("Cleo", 3);
    ASSERT_TRUE(cancelOrder(shop(), cancelled.id, "changed mind").ok());
    wait(Days{2});
    EXPECT_EQ(found("", {m_late}), Numbers{}) << "today is not over";
    wait(Days{1});
    EXPECT_EQ(found("", {m_late}), Numbers{1});
}

TEST_F(OrdersMeant, UnconfirmedIsAQuotationOrAWordingNobodyAgreedTo) {
    takeFor("Anna", 3);
    auto quoted = aDraft();
    quoted.customerName = "Bree";
    quoted.isQuotation = true;
    take(quoted);
    auto open = aDraft();
    open.customerName = "Cleo";
    open.garments[0].decals[0].content = Wording{"Juno"};
    open.isConfirmed = false;
    const auto taken = take(open);
    EXPECT_EQ(found("", {m_unconfirmed}), (Numbers{3, 2}));
    ASSERT_TRUE(cancelOrder(shop(), taken.id, "changed mind").ok());
    EXPECT_EQ(found("", {m_unconfirmed}), Numbers{2});
}

TEST_F(OrdersMeant, AnUndoneOrderHasItsDaysAndOwesNothing) {
    takeFor("Anna", 3);
    ASSERT_TRUE(shop().undo(shop().recent(1).front().id).ok());
    const auto undone = [&](std::vector<MeantWords> meant) {
        return findUndone(connection(), wanted("anna", std::move(meant))).size();
    };
    EXPECT_EQ(undone({on("x", days(3, 3))}), 1U);
    EXPECT_EQ(undone({on("x", days(0, 0))}), 1U) << "taken today";
    EXPECT_EQ(undone({on("x", days(1, 2))}), 0U);
    EXPECT_EQ(undone({m_owing}), 0U);
    EXPECT_EQ(undone({m_late}), 0U);
}

} // namespace
} // namespace holdfast::db
