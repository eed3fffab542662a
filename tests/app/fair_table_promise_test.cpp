// SPDX-License-Identifier: GPL-3.0-or-later
// The day at the fair table: green only where nothing stands in its way, and not told while a hold makes it
// untrue.

#include "app/theme/tokens.h"
#include "db/actions/shop_actions.h"
#include "tests/app/fair_table_fixture.h"

#include <QPushButton>

namespace holdfast::app::test {

namespace {

class FairTablePromise : public FairTable {
protected:
    QString told(const char* block) { return child<QWidget>(block).accessibleName(); }
    // The colour a block stands on.
    QColor ground(const char* block) {
        QWidget& widget = child<QWidget>(block);
        return widget.grab().toImage().pixelColor(widget.width() / 2, 4);
    }
    void take() {
        typeInto("customerName", QStringLiteral("Odile"));
        key(Qt::Key_Return);
    }
};

} // namespace

TEST_F(FairTablePromise, WhatNothingHoldsIsGreenAndHasItsDay) {
    stockUsualShop();
    open();
    chooseHeronOnMossTee();
    EXPECT_TRUE(told("promise").startsWith(QStringLiteral("Ready ")));
    EXPECT_EQ(ground("promise"), tokens().greenTint);
    take();
    EXPECT_TRUE(told("taken").contains(QStringLiteral(", Ready ")));
    EXPECT_EQ(ground("taken"), tokens().greenTint);
}

TEST_F(FairTablePromise, AFilmThatCannotStretchWithTheClothIsGivenNoDay) {
    stockUsualShop();
    addStyle("Bodysuit", [](BlankStyle& style) { style.label->stretch = Stretch::High; });
    open();
    keys("2s2c1d2");
    const QString reason = QStringLiteral("Stretches more than the film: choose another film first.");
    EXPECT_TRUE(isSaid(QStringLiteral("Stretches more than the film.")));
    EXPECT_EQ(told("promise"), QStringLiteral("No day yet, ") + reason);
    EXPECT_EQ(ground("promise"), tokens().madderTint);
    take();
    ASSERT_EQ(orders().size(), 1u);
    EXPECT_TRUE(told("taken").contains(QStringLiteral("No day yet, ") + reason));
    EXPECT_TRUE(told("taken").contains(QStringLiteral("taken, held")));
    EXPECT_FALSE(told("taken").contains(QStringLiteral("Ready")));
    EXPECT_EQ(ground("taken"), tokens().madderTint);
}

TEST_F(FairTablePromise, OneGarmentThatIsHeldLeavesTheWholeOrderWithoutADay) {
    stockUsualShop();
    addStyle("Smock", [](BlankStyle& style) { style.label.reset(); });
    open();
    keys("2s2c1d2");
    key(Qt::Key_Plus);
    keys("1s2c1d2");
    EXPECT_TRUE(told("promise").startsWith(QStringLiteral("No day yet, ")));
}

TEST_F(FairTablePromise, ADayThatWaitsForADeliveryIsToldAndIsNotGreen) {
    stockUsualShop();
    open();
    chooseHeronOnMossTee();
    keys("q");
    for (int more = 0; more < 13; ++more)
        key(Qt::Key_Up);
    EXPECT_TRUE(isSaid(QStringLiteral("Only 6 of 14 Tee, M, Moss on the rail.")));
    EXPECT_TRUE(isSaid(QStringLiteral("Buy 8:")));
    EXPECT_TRUE(told("promise").startsWith(QStringLiteral("Ready ")));
    EXPECT_TRUE(told("promise").contains(QStringLiteral("if everything arrives in time")));
    EXPECT_EQ(ground("promise"), tokens().weldTint);
    take();
    EXPECT_TRUE(told("taken").contains(QStringLiteral("if everything arrives in time")));
    EXPECT_EQ(ground("taken"), tokens().weldTint);
}

TEST_F(FairTablePromise, AnUnpaidDepositThatWorkWaitsForLeavesNoDay) {
    stockUsualShop();
    ShopSettings settings = desk().shop()->facts.settings;
    settings.depositPercent = 25;
    settings.depositHolds = true;
    valueOf(db::changeSettings(file(), settings));
    open();
    chooseHeronOnMossTee();
    EXPECT_TRUE(told("promise").contains(QStringLiteral("Work waits for the deposit of £")));
    key(Qt::Key_Escape);
    keys("rc");
    EXPECT_TRUE(told("promise").startsWith(QStringLiteral("Ready ")));
    EXPECT_EQ(ground("promise"), tokens().greenTint);
}

TEST_F(FairTablePromise, NoDayAndItsReasonAreSaidOnceEach) {
    open();
    EXPECT_TRUE(told("promise").contains(QStringLiteral("once a style is chosen")));
    leave();
    stockUsualShop();
    open();
    keys("1");
    EXPECT_FALSE(told("promise").contains(QStringLiteral("once a style is chosen")));
}

} // namespace holdfast::app::test
