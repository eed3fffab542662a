// SPDX-License-Identifier: GPL-3.0-or-later
// What is done all day must not take longer because the shop has more orders: counted in instructions of
// SQLite.
#include "db/tables/order_book.h"
#include "tests/db/small_shop.h"
#include "tests/db/steps_of_sqlite.h"

namespace holdfast::db {
namespace {

class WorkOfALargeShop : public SmallShop {
protected:
    void takeOrders(int count) {
        for (int order = 0; order < count; ++order) {
            auto draft = aDraft();
            draft.customerName = "Teo Lindqvist " + std::to_string(order);
            draft.customerPhone = "07700 90" + std::to_string(1000 + order);
            draft.deposit = {500};
            take(draft);
        }
    }

    std::int64_t workOf(const std::function<void()>& work) {
        const StepsOfSqlite steps{connection()};
        work();
        return steps.taken();
    }

    std::int64_t workOfUndoingAPayment() {
        const OrderId order{number("SELECT MIN(id) FROM shop_order")};
        EXPECT_TRUE(moveMoney(shop(), order, MoneyKind::Payment, Money{100}, PaidHow::Cash).ok());
        return workOf([&] { EXPECT_TRUE(shop().undo(shop().recent(1).front().id).ok()); });
    }

    std::size_t found(std::string_view typed) {
        return findOrders(connection(), typed, OrderFilter::All, 100).size();
    }
};

TEST_F(WorkOfALargeShop, AnUndoLooksAtNoLedgerButItsOwn) {
    takeOrders(5);
    (void)workOfUndoingAPayment();
    const std::int64_t few = workOfUndoingAPayment();
    takeOrders(60);
    // What is reserved is looked at by way of all orders that are open: here all of them are.
    ASSERT_TRUE(shop().act([](Writer& writer) -> Result<Done> {
        writer.connection().run("UPDATE shop_order SET state = 'cancelled' WHERE number > 5");
        writer.describe(said("Closed them"));
        return Done{};
    }));
    EXPECT_LT(static_cast<double>(workOfUndoingAPayment()), 1.2 * static_cast<double>(few));
}

TEST_F(WorkOfALargeShop, AnUndoIsStillRefusedByTheLedgerThatItWouldEmpty) {
    const OrderTaken order = takeTees();
    ASSERT_TRUE(moveMoney(shop(), order.id, MoneyKind::Payment, Money{2000}, PaidHow::Cash).ok());
    const EntryId payment = shop().recent(1).front().id;
    ASSERT_TRUE(moveMoney(shop(), order.id, MoneyKind::Refund, Money{1500}, PaidHow::Cash).ok());
    const auto refused = shop().undo(payment);
    ASSERT_FALSE(refused.ok());
    EXPECT_NE(refused.error().message.english().find("paid less than nothing"), std::string::npos)
        << refused.error().message.english();
    const BlankLotId lot = receiveTees(1);
    const EntryId received = shop().recent(1).front().id;
    ASSERT_TRUE(correctCount(shop(), lot, 0, "none is there").ok());
    EXPECT_FALSE(shop().undo(received).ok());
}

TEST_F(WorkOfALargeShop, WordsAreReadAgainOnlyWhereTheSearchHasOthers) {
    takeOrders(40);
    const auto type = [&](std::string_view typed) { return workOf([&] { (void)found(typed); }); };
    (void)type("zzz"); // its statements are made
    const OrderId order{number("SELECT MIN(id) FROM shop_order")};
    ASSERT_TRUE(changeNote(shop(), order, "bittern").ok());
    const std::int64_t reads = type("zzz");
    EXPECT_LT(2 * type("zzz"), reads) << "they are kept";
    ASSERT_TRUE(moveMoney(shop(), order, MoneyKind::Payment, Money{100}, PaidHow::Cash).ok());
    EXPECT_LT(2 * type("zzz"), reads) << "a payment has no words";
    EXPECT_EQ(found("ittern"), 1U) << "inside a word";
    EXPECT_EQ(found("bitern"), 1U) << "but for a letter";
    ASSERT_TRUE(changeNote(shop(), order, "samphire").ok());
    EXPECT_EQ(found("ittern"), 0U);
    EXPECT_EQ(found("amphir"), 1U) << "as soon as it is written";
    ASSERT_TRUE(shop().undo(shop().recent(1).front().id).ok());
    EXPECT_EQ(found("ittern"), 1U);
}

TEST_F(WorkOfALargeShop, PhonesAreFoundWhateverSignsAreInThem) {
    takeOrders(12);
    auto draft = aDraft();
    draft.customerPhone = "(07700) 55-66.77/88";
    take(draft);
    EXPECT_EQ(found("0770055"), 1U);
    EXPECT_EQ(found("788"), 1U) << "its end";
    EXPECT_EQ(found("667"), 0U) << "three digits inside are too few";
    EXPECT_EQ(found("66778"), 1U);
}

// The first digits are those of nearly every phone number and of many orders, and only a page is shown.
TEST_F(WorkOfALargeShop, FirstDigitsSortNothing) {
    takeOrders(150);
    for (const char* typed : {"0", "07", "077", "07700", "07700 9", "1"}) {
        (void)countOrders(connection(), typed, OrderFilter::All); // what is kept of the shop is read
        (void)findOrders(connection(), typed, OrderFilter::All, 10);
        const std::int64_t work = workOf([&] {
            const OrderQuery wanted{connection(), typed};
            EXPECT_EQ(findOrders(connection(), wanted, OrderFilter::All, 10).size(), 10U) << typed;
            EXPECT_GE(countOrders(connection(), wanted, OrderFilter::All), 60) << typed;
        });
        // A line takes some thirty steps, a row that only the index is asked for three.
        EXPECT_LT(work, 10 * 40 + 150 * 5) << typed;
    }
}

} // namespace
} // namespace holdfast::db
