// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/orders/till.h"

#include <gtest/gtest.h>

namespace holdfast {
namespace {

const Currency kPounds{};

TEST(Till, CashIsWhatCameInLessWhatWasPaidBack) {
    DayMoney money;
    money.add(PaidHow::Cash, MoneyKind::Deposit, Money{1000});
    money.add(PaidHow::Cash, MoneyKind::Payment, Money{2650});
    money.add(PaidHow::Cash, MoneyKind::Refund, Money{-500});
    money.add(PaidHow::Card, MoneyKind::Payment, Money{9900});
    EXPECT_EQ(money.in(PaidHow::Cash), Money{3650});
    EXPECT_EQ(money.out(PaidHow::Cash), Money{500});
    EXPECT_EQ(money.of(PaidHow::Cash), Money{3150});
    EXPECT_EQ(money.of(PaidHow::Card), Money{9900});
    EXPECT_EQ(money.of(PaidHow::Transfer), Money{});
}

// The imprest count of a cash drawer: float + takings − paid out is what should be there (bookkeeping, common
// practice, no source).
TEST(Till, DifferenceIsNamed) {
    TillCount count;
    count.floatAtStart = Money{5000};
    count.cash = Money{3150};
    count.counted = Money{8400};
    EXPECT_EQ(count.expected(), Money{8150});
    EXPECT_EQ(tillDifferenceWords(count.difference(), kPounds).english(), "£2.50 too much");
    count.counted = Money{8050};
    EXPECT_EQ(tillDifferenceWords(count.difference(), kPounds).english(), "£1.00 is missing");
    count.counted = Money{8150};
    EXPECT_EQ(tillDifferenceWords(count.difference(), kPounds).english(), "as it should be");
}

} // namespace
} // namespace holdfast
