// SPDX-License-Identifier: GPL-3.0-or-later
// Money at the fair table: what is paid now, how, and that nothing is booked unasked.

#include "app/desk/formats.h"
#include "app/places/fair_table/draft_note.h"
#include "db/actions/shop_actions.h"
#include "tests/app/fair_table_fixture.h"

#include <QFontMetrics>
#include <QLabel>
#include <QPushButton>

namespace holdfast::app::test {

namespace {

class FairTableMoney : public FairTable {
protected:
    // The table with all but the money of an order on it.
    void openWithAnOrder(int depositPercent = 0) {
        stockUsualShop();
        ShopSettings settings = desk().shop()->facts.settings;
        settings.depositPercent = depositPercent;
        valueOf(db::changeSettings(file(), settings));
        open();
        orderForOdile();
    }
    void orderForOdile() {
        chooseHeronOnMossTee();
        typeInto("customerName", QStringLiteral("Odile"));
        key(Qt::Key_Escape); // the customers that are known …
        if (child<Field>("customerName").editor()->hasFocus())
            key(Qt::Key_Escape); // … and the field
    }

    QString amount() { return child<Field>("paidNow").text(); }
    QString asked() { return child<QLabel>("orderError").text(); }
    bool isShown(const char* name) { return child<QWidget>(name).isVisibleTo(m_place.get()); }
    void click(const char* name) {
        QTest::mouseClick(&child<QPushButton>(name), Qt::LeftButton);
        QCoreApplication::processEvents();
    }
    std::vector<db::MoneyMove> moneyOfTheLast() {
        return valueOf(file().read(
            [&](db::Connection& connection) { return db::moneyOf(connection, orders().front().id); }));
    }
    void expectPaid(Money paid, PaidHow how) {
        const auto moves = moneyOfTheLast();
        ASSERT_EQ(moves.size(), 1u);
        EXPECT_EQ(moves[0].amount, paid);
        EXPECT_EQ(moves[0].how, how);
    }
};

} // namespace

TEST_F(FairTableMoney, TheKeyLeadsToTheAmountAndLettersThereSayHowItWasPaid) {
    openWithAnOrder();
    keys("e10k");
    EXPECT_EQ(amount(), QStringLiteral("10"));
    EXPECT_EQ(draft().garment().size, "M"); // no letter or digit went elsewhere
    key(Qt::Key_Return);
    ASSERT_EQ(orders().size(), 1u);
    expectPaid(Money{1000}, PaidHow::Card);
    EXPECT_TRUE(child<QWidget>("taken").accessibleName().contains(QStringLiteral("£10.00 paid by card")));

    orderForOdile();
    keys("e7.50c");
    key(Qt::Key_Return);
    ASSERT_EQ(orders().size(), 2u);
    expectPaid(Money{750}, PaidHow::Cash);
}

TEST_F(FairTableMoney, HowItWasPaidIsAskedOfEachCustomer) {
    openWithAnOrder();
    keys("e10");
    key(Qt::Key_Return);
    EXPECT_TRUE(orders().empty());
    EXPECT_EQ(asked(), QStringLiteral("Cash or card?"));
    EXPECT_EQ(QApplication::focusWidget(), child<Field>("paidNow").editor());
    keys("c");
    EXPECT_TRUE(asked().isEmpty());
    key(Qt::Key_Return);
    ASSERT_EQ(orders().size(), 1u);
    expectPaid(Money{1000}, PaidHow::Cash);

    orderForOdile();
    keys("e5");
    EXPECT_FALSE(draft().paidHow.has_value()); // the last one's cash is not this one's
    key(Qt::Key_Return);
    EXPECT_EQ(orders().size(), 1u);
    leave();
    reopen();
    open();
    EXPECT_EQ(draft().paidNow, "5");
    EXPECT_FALSE(draft().paidHow.has_value());
}

TEST_F(FairTableMoney, OtherLettersDoNothingInTheAmountAndNoneBeforeOneIsTyped) {
    openWithAnOrder();
    keys("ecktxlgo+"); // nothing is typed yet: no letter says how, none jumps
    EXPECT_EQ(QApplication::focusWidget(), child<Field>("paidNow").editor());
    EXPECT_FALSE(draft().paidHow.has_value());
    EXPECT_TRUE(orders().empty());
    typeInto("paidNow", QString());
    keys("12gxqs");
    EXPECT_EQ(amount(), QStringLiteral("12"));
    EXPECT_FALSE(draft().paidHow.has_value());
    keys("kc"); // the last one counts
    EXPECT_EQ(draft().paidHow, PaidHow::Cash);
    typeInto("paidNow", QString());
    EXPECT_FALSE(draft().paidHow.has_value()); // nothing is paid in no way
}

TEST_F(FairTableMoney, NothingIsPaidUnaskedWhereTheShopAsksForADeposit) {
    openWithAnOrder(25);
    EXPECT_TRUE(isShown("depositAsked"));
    EXPECT_EQ(amount(), QString());
    key(Qt::Key_Return);
    ASSERT_EQ(orders().size(), 1u);
    EXPECT_TRUE(moneyOfTheLast().empty());
}

TEST_F(FairTableMoney, TheDepositAskedForIsOneKeyAndTheWholeBillAnother) {
    openWithAnOrder(25);
    const Currency& currency = desk().currency();
    const Money due = table().sums().depositAsked;
    EXPECT_TRUE(child<QPushButton>("depositAsked").text().contains(money(due, currency)));
    keys("r");
    EXPECT_EQ(table().sums().deposit, due);
    EXPECT_EQ(QApplication::focusWidget(), child<Field>("paidNow").editor());
    typeInto("paidNow", QString());
    key(Qt::Key_Escape);
    keys("b");
    EXPECT_EQ(table().sums().deposit, table().sums().total);
    keys("k");
    key(Qt::Key_Return);
    ASSERT_EQ(orders().size(), 1u);
    EXPECT_EQ(orders()[0].paid, orders()[0].total);
}

TEST_F(FairTableMoney, AllOfItCanBeDoneByPointer) {
    openWithAnOrder(25);
    EXPECT_FALSE(isShown("paidInCash"));
    click("depositAsked");
    EXPECT_TRUE(isShown("paidInCash"));
    click("paidByCard");
    EXPECT_FALSE(isShown("paidInCash"));
    EXPECT_EQ(child<QPushButton>("paidHow").text(), QStringLiteral("by card"));
    click("paidHow"); // asks again
    click("paidInCash");
    click("takeOrder");
    ASSERT_EQ(orders().size(), 1u);
    expectPaid(orders()[0].paid, PaidHow::Cash);
    EXPECT_GT(orders()[0].paid, Money{});
}

TEST_F(FairTableMoney, AmountsThatCannotBeAreRefusedInWords) {
    openWithAnOrder();
    for (const char16_t* bad : {u"-5", u"1000000", u"99999999999999999999999", u"½", u"1.2.3"}) {
        typeInto("paidNow", QString::fromUtf16(bad));
        EXPECT_FALSE(asked().isEmpty()) << QString::fromUtf16(bad).toStdString();
        key(Qt::Key_Return);
        EXPECT_TRUE(orders().empty());
        EXPECT_EQ(QApplication::focusWidget(), child<Field>("paidNow").editor());
    }
    typeInto("paidNow", QString());
    EXPECT_TRUE(asked().isEmpty());
    typeInto("paidNow", QStringLiteral("7,50"));
    keys("c");
    key(Qt::Key_Return);
    ASSERT_EQ(orders().size(), 1u);
    EXPECT_EQ(orders()[0].paid, Money{750});
}

TEST_F(FairTableMoney, AQuotationTakesNoMoneyAndNoBlank) {
    openWithAnOrder(25);
    EXPECT_TRUE(child<QPushButton>("quotation").text().contains(QStringLiteral("no money")));
    keys("e10c");
    key(Qt::Key_Escape);
    keys("k"); // money was put down: it is said, not dropped
    EXPECT_TRUE(orders().empty());
    EXPECT_TRUE(asked().startsWith(QStringLiteral("A quotation takes no money")));
    EXPECT_EQ(QApplication::focusWidget(), child<Field>("paidNow").editor());
    typeInto("paidNow", QString());
    EXPECT_TRUE(asked().isEmpty());
    key(Qt::Key_Escape);
    keys("k");
    ASSERT_EQ(orders().size(), 1u);
    EXPECT_EQ(orders()[0].state, OrderState::Quoted);
    EXPECT_TRUE(moneyOfTheLast().empty());
    const QString told = child<QWidget>("taken").accessibleName();
    EXPECT_TRUE(told.contains(QStringLiteral("Quotation %1 saved").arg(orders()[0].number)));
    EXPECT_TRUE(told.contains(QStringLiteral("nothing paid yet")));
    EXPECT_FALSE(desk().shop()->facts.garmentsOf(orders()[0].id).front()->lot.has_value());
}

TEST_F(FairTableMoney, TheAmountHasANameForThoseWhoHearIt) {
    openWithAnOrder(25);
    EXPECT_EQ(child<Field>("paidNow").editor()->accessibleName(), QStringLiteral("Paid now £"));
    keys("e123456.78");
    EXPECT_EQ(child<Field>("paidNow").editor()->accessibleName(), QStringLiteral("Paid now £"));
}

TEST_F(FairTableMoney, ALargeAmountIsSeenWhole) {
    openWithAnOrder();
    keys("q");
    for (int more = 0; more < 15; ++more)
        key(Qt::Key_PageUp);
    keys("b");
    QLineEdit& editor = *child<Field>("paidNow").editor();
    ASSERT_GE(table().sums().total, Money{100'000});
    const int textWide = QFontMetrics(editor.font()).horizontalAdvance(editor.text());
    EXPECT_LE(textWide + 4, editor.width());
}

TEST_F(FairTableMoney, ANoteOfTheVersionBeforeIsReadWithoutItsPresetDeposit) {
    stockUsualShop();
    open();
    chooseHeronOnMossTee();
    QByteArray note = noteOf(draft());
    note.replace("\"version\":4", "\"version\":1");
    note.replace("\"paidNow\":\"\"", "\"deposit\":\"share\",\"depositTyped\":\"\",\"paidHow\":\"card\"");
    const auto read = draftFromNote(note, desk().shop()->facts);
    ASSERT_TRUE(read.ok());
    EXPECT_EQ(*read, draft());
}

} // namespace holdfast::app::test
