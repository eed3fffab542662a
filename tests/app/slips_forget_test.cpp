// SPDX-License-Identifier: GPL-3.0-or-later
// The form that forgets a customer.
#include "app/slips/form.h"
#include "db/backups/backups.h"
#include "tests/app/slips_fixture.h"

#include <QAbstractButton>
#include <QLabel>
#include <QTest>

#include <algorithm>

namespace holdfast::app::test {
namespace {

class ForgetSlip : public SlipsFixture {
protected:
    static SlipTarget about(OrderId order) {
        SlipTarget matter;
        matter.order = order;
        return matter;
    }
};

TEST_F(ForgetSlip, ACustomerIsForgottenOnlyWhenThatIsSaid) {
    const auto usual = stockUsualShop();
    const auto order = takeOrder({aGarment(usual)}).id;
    ASSERT_TRUE(db::cancelOrder(desk().file(), order, "moved away").ok());
    open(SlipName::Customer, about(order));
    QTest::mouseClick(find<QAbstractButton>(QStringLiteral("forgetCustomer")), Qt::LeftButton);
    ASSERT_EQ(asked, std::vector<SlipName>{SlipName::ForgetCustomer});
    EXPECT_EQ(askedFor.order, order);

    open(SlipName::ForgetCustomer, askedFor);
    const auto before = entries();
    submit();
    EXPECT_EQ(errorAt("forGood"), QStringLiteral("Switch this on: the name cannot be brought back."));
    EXPECT_EQ(entries(), before);
    turn(QStringLiteral("forGood"));
    QString done;
    QObject::connect(&desk(), &ShopDesk::besideAsked, &slip(), [&](const QString&, const DeedBeside& deed) {
        done = QString::fromStdString(valueOf(deed(desk().file(), [](double) { return true; }).told));
    });
    submit();
    EXPECT_EQ(done, QStringLiteral("The customer is forgotten."));
    EXPECT_TRUE(isFinished());
    EXPECT_EQ(entries(), before + 1);
    EXPECT_EQ(desk().file().connection().number("SELECT COUNT(*) FROM customer WHERE name = '(forgotten)'"),
              1);
    EXPECT_EQ(desk().file().recent(1).front().title, "Forgot the customer of 1 order");
}

TEST_F(ForgetSlip, BackupsThatHaveTheNameAreListedBeforeTheCustomerIsForgotten) {
    const auto usual = stockUsualShop();
    const auto order = takeOrder({aGarment(usual)}).id;
    ASSERT_TRUE(db::cancelOrder(desk().file(), order, "moved away").ok());
    const auto listed = [&] { return find<QLabel>(QStringLiteral("backupsNaming"))->text(); };
    open(SlipName::ForgetCustomer, about(order));
    QTRY_COMPARE(listed(), QStringLiteral("No backup has the name."));
    const auto first = valueOf(db::makeBackup(desk().file(), db::BackupReason::OfTheDay, now().local()));
    const auto second = valueOf(
        db::makeBackup(desk().file(), db::BackupReason::BeforeNews, now().local() + std::chrono::days{1}));
    // Somebody opened it to work in it.
    valueOf(db::Shop::open(first.backup.path, [this] { return now().instant; })).reset();
    time().pass(std::chrono::days{1});
    open(SlipName::ForgetCustomer, about(order));
    QTRY_VERIFY(listed().contains(u'\n'));
    const auto nameOf = [](const db::BackupMade& made) {
        return breakable(QString::fromStdString(made.backup.path.filename().string()));
    };
    EXPECT_EQ(listed().toStdString(),
              (nameOf(second) + QStringLiteral(": made today 10:00, goes by itself after 9 Dec 2026\n") +
               nameOf(first) + QStringLiteral(": made Wed 25 Nov 10:00, does not go by itself"))
                  .toStdString());
}

TEST_F(ForgetSlip, ACustomerWithAnOpenOrderIsNotForgotten) {
    const auto usual = stockUsualShop();
    const auto taken = takeOrder({aGarment(usual)});
    open(SlipName::ForgetCustomer, about(taken.id));
    const auto notes = slip().findChildren<QLabel*>();
    EXPECT_TRUE(std::ranges::any_of(notes, [&](const QLabel* note) {
        return note->text() ==
               QStringLiteral("Order %1 is still open. Hand it over or cancel it first.").arg(taken.number);
    }));
    const auto before = entries();
    submit();
    EXPECT_FALSE(isFinished());
    EXPECT_EQ(entries(), before);
}

} // namespace
} // namespace holdfast::app::test
