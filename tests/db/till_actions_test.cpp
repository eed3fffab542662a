// SPDX-License-Identifier: GPL-3.0-or-later
#include "db/actions/till_actions.h"

#include "db/tables/till.h"
#include "tests/db/small_shop.h"

namespace holdfast::db {
namespace {

using Counted = Result<TillCount>;

class TillActions : public SmallShop {
protected:
    std::vector<TillCount> counts() {
        UnreadFacts unread;
        return readTillCounts(connection(), unread);
    }
    void payInCash(std::int64_t minor) {
        ASSERT_TRUE(moveMoney(shop(), takeTees().id, MoneyKind::Payment, Money{minor}, PaidHow::Cash).ok());
    }
    Counted count(std::int64_t counted, std::int64_t floatAtStart = 5000) {
        return countTill(shop(), now().today(), Money{floatAtStart}, Money{counted}, now());
    }
};

TEST_F(TillActions, ACountIsOneEntryThatCanBeTakenBack) {
    payInCash(1000);
    expectUndoable<Counted>([&] { return count(6250); },
                            "Counted the till of Wed 11 Nov: £62.50, £2.50 too much");
    ASSERT_EQ(counts().size(), 1U);
    const TillCount kept = counts().front();
    EXPECT_EQ(kept.day, now().today());
    EXPECT_EQ(kept.expected(), Money{6000});
    EXPECT_EQ(kept.difference(), Money{250});
}

TEST_F(TillActions, CountingAgainIsANewEntryOverTheSameRow) {
    payInCash(1000);
    ASSERT_TRUE(count(5900).ok());
    payInCash(500);
    expectUndoable<Counted>([&] { return count(6500); },
                            "Counted the till of Wed 11 Nov again: £65.00, as it should be");
    ASSERT_EQ(counts().size(), 1U);
    EXPECT_EQ(counts().front().counted, Money{6500});
    ASSERT_TRUE(shop().undo(shop().recent(1).front().id).ok());
    EXPECT_EQ(counts().front().counted, Money{5900}) << "the count before";
    EXPECT_EQ(counts().front().cash, Money{1000}) << "as it was known then";
}

TEST_F(TillActions, MoneyIsOfTheDayAndByWayOfPayment) {
    const auto order = takeTees().id;
    ASSERT_TRUE(moveMoney(shop(), order, MoneyKind::Deposit, Money{700}, PaidHow::Card).ok());
    wait(Days{1});
    ASSERT_TRUE(moveMoney(shop(), order, MoneyKind::Payment, Money{900}, PaidHow::Cash).ok());
    ASSERT_TRUE(moveMoney(shop(), order, MoneyKind::Refund, Money{300}, PaidHow::Cash).ok());
    const DayMoney today = moneyOfDay(connection(), now().today(), now());
    EXPECT_EQ(today.of(PaidHow::Cash), Money{600});
    EXPECT_EQ(today.out(PaidHow::Cash), Money{300});
    EXPECT_EQ(today.of(PaidHow::Card), Money{});
    EXPECT_EQ(moneyOfDay(connection(), now().today() - Days{1}, now()).of(PaidHow::Card), Money{700});
}

TEST_F(TillActions, WhatCannotBeIsRefusedWithItsField) {
    const auto refused = [&](LocalDate day, std::int64_t floatAtStart, std::int64_t counted,
                             const char* field) {
        expectRefused<Counted>(
            [&] { return countTill(shop(), day, Money{floatAtStart}, Money{counted}, now()); }, field);
    };
    refused(now().today() + Days{1}, 0, 0, "day");
    refused(localDate(1999, 12, 31), 0, 0, "day");
    refused(now().today(), -1, 0, "float");
    refused(now().today(), 0, -1, "counted");
    refused(now().today(), 0, 100'000'000, "counted");
    EXPECT_TRUE(counts().empty());
}

} // namespace
} // namespace holdfast::db
