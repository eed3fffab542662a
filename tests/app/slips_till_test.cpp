// SPDX-License-Identifier: GPL-3.0-or-later
// The till counted by keys: what moved, what should be there, and the difference before it is saved.
#include "app/widgets/field.h"
#include "app/widgets/label.h"
#include "db/actions/order_actions.h"
#include "db/tables/till.h"
#include "tests/app/slips_fixture.h"

namespace holdfast::app::test {
namespace {

class TillSlips : public SlipsFixture {
protected:
    void pay(Money amount, PaidHow how, MoneyKind kind = MoneyKind::Payment) {
        valueOf(db::moveMoney(file(), m_order, kind, amount, how));
    }
    QString textOf(const QString& name) { return find<Label>(name)->text(); }
    std::vector<TillCount> counts() {
        return valueOf(file().read([](db::Connection& connection) {
            db::UnreadFacts unread;
            return db::readTillCounts(connection, unread);
        }));
    }

    UsualShop m_usual = stockUsualShop();
    OrderId m_order = takeOrder({aGarment(m_usual)}).id;
};

TEST_F(TillSlips, TheDifferenceIsSaidBeforeItIsSaved) {
    pay(Money{1000}, PaidHow::Cash, MoneyKind::Deposit);
    pay(Money{300}, PaidHow::Cash, MoneyKind::Refund);
    pay(Money{900}, PaidHow::Card);
    ASSERT_TRUE(open(SlipName::CountTill));
    EXPECT_EQ(textOf(QStringLiteral("dayMoney")),
              QStringLiteral("In cash: deposits £10.00, paid back £3.00. By card: payments £9.00. By "
                             "transfer: nothing."));
    type(QStringLiteral("float"), QStringLiteral("50"));
    EXPECT_EQ(textOf(QStringLiteral("tillDifference")), QStringLiteral("There should be £57.00."));
    type(QStringLiteral("counted"), QStringLiteral("59.50"));
    EXPECT_EQ(textOf(QStringLiteral("tillDifference")),
              QStringLiteral("There should be £57.00. Counted: £2.50 too much."));
    const auto before = entries();
    submit();
    ASSERT_TRUE(isFinished());
    EXPECT_EQ(entries(), before + 1);
    ASSERT_EQ(counts().size(), 1U);
    EXPECT_EQ(counts().front().difference(), Money{250});
}

TEST_F(TillSlips, CountedAgainItBeginsWithTheSameFloat) {
    pay(Money{1000}, PaidHow::Cash);
    ASSERT_TRUE(open(SlipName::CountTill));
    type(QStringLiteral("float"), QStringLiteral("20"));
    type(QStringLiteral("counted"), QStringLiteral("29"));
    submit();
    ASSERT_TRUE(isFinished());
    ASSERT_TRUE(open(SlipName::CountTill));
    EXPECT_EQ(find<Field>(QStringLiteral("float"))->text(), QStringLiteral("20.00"));
    EXPECT_TRUE(textOf(QStringLiteral("dayMoney"))
                    .contains(QStringLiteral("Counted before at 10:00: £1.00 is missing.")))
        << textOf(QStringLiteral("dayMoney")).toStdString();
    type(QStringLiteral("counted"), QStringLiteral("30"));
    submit();
    ASSERT_TRUE(isFinished());
    ASSERT_EQ(counts().size(), 1U);
    EXPECT_EQ(counts().front().difference(), Money{});
}

TEST_F(TillSlips, WhatIsWrongIsSaidAtItsField) {
    ASSERT_TRUE(open(SlipName::CountTill));
    const auto before = entries();
    type(QStringLiteral("day"), QStringLiteral("26/11/2026"));
    type(QStringLiteral("counted"), QStringLiteral("1"));
    submit();
    EXPECT_FALSE(isFinished());
    EXPECT_FALSE(errorAt("day").isEmpty());
    type(QStringLiteral("day"), QStringLiteral("today"));
    type(QStringLiteral("counted"), QStringLiteral("a lot"));
    submit();
    EXPECT_FALSE(errorAt("counted").isEmpty());
    EXPECT_EQ(entries(), before);
}

} // namespace
} // namespace holdfast::app::test
