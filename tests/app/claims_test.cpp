// SPDX-License-Identifier: GPL-3.0-or-later
// What comes back: told by a slip of the order book, listed with the order, answered, taken back.

#include "app/places/order_book/claim_lines.h"
#include "app/places/order_book/order_book_place.h"
#include "app/widgets/button.h"
#include "app/widgets/choice.h"
#include "app/widgets/field.h"
#include "db/actions/claim_actions.h"
#include "db/tables/claims.h"
#include "tests/app/slips_fixture.h"

#include <QListView>
#include <QTest>

namespace holdfast::app::test {
namespace {

class Claims : public SlipsFixture {
protected:
    struct HandedOver {
        OrderId id;
        std::vector<GarmentId> garments;
    };

    // Twenty days ago.
    HandedOver handedOver(int garments = 2) {
        const auto usual = stockUsualShop();
        const auto order =
            takeOrder(std::vector<GarmentDraft>(static_cast<std::size_t>(garments), aGarment(usual)));
        HandedOver handed{order.id, garmentsOf(order.id)};
        for (const GarmentId garment : handed.garments) {
            cut(garment, usual.roll);
            ShopFixture::press(garment);
        }
        valueOf(db::handOver(file(), order.id, now()));
        time().pass(std::chrono::days{20});
        return handed;
    }
    std::vector<Claim> claimsOf(OrderId order) {
        return valueOf(
            file().read([&](db::Connection& connection) { return db::claimsOf(connection, order); }));
    }
    static SlipTarget about(OrderId order) {
        SlipTarget matter;
        matter.order = order;
        return matter;
    }
};

TEST_F(Claims, WhatCameBackIsToldInOneSlip) {
    const auto order = handedOver();
    SlipTarget matter = about(order.id);
    matter.garment = order.garments[1];
    ASSERT_TRUE(open(SlipName::CameBack, matter));
    choose(QStringLiteral("fault"), 2);
    type(QStringLiteral("washes"), QStringLiteral("4"));
    type(QStringLiteral("note"), QStringLiteral("left wing"));
    submit();
    ASSERT_TRUE(isFinished()) << slip().refusal().toStdString();
    const auto claims = claimsOf(order.id);
    ASSERT_EQ(claims.size(), 1U);
    EXPECT_EQ(claims[0].garment, order.garments[1]);
    EXPECT_TRUE(claims[0].decal) << "its one decal, until another part is chosen";
    EXPECT_EQ(claims[0].fault, Fault::Cracked);
    EXPECT_EQ(claims[0].washes, 4);
    EXPECT_EQ(claims[0].toldOn, now().today());
}

TEST_F(Claims, BadInputIsSaidAtItsFieldAndNothingIsWritten) {
    const auto order = handedOver();
    ASSERT_TRUE(open(SlipName::CameBack, about(order.id)));
    const auto before = entries();
    submit();
    EXPECT_FALSE(errorAt("fault").isEmpty());
    choose(QStringLiteral("fault"), 0);
    type(QStringLiteral("washes"), QStringLiteral("many"));
    submit();
    EXPECT_FALSE(errorAt("washes").isEmpty());
    type(QStringLiteral("washes"), QString());
    type(QStringLiteral("on"), QStringLiteral("2026-11-01"));
    submit();
    EXPECT_TRUE(errorAt("on").contains(QStringLiteral("handed over"))) << errorAt("on").toStdString();
    EXPECT_FALSE(isFinished());
    EXPECT_EQ(entries(), before);
}

TEST_F(Claims, NoSlipIsMadeBeforeAnythingIsHandedOver) {
    const auto usual = stockUsualShop();
    EXPECT_FALSE(open(SlipName::CameBack, about(takeOrder({aGarment(usual)}).id)));
}

TEST_F(Claims, TheOrderBookListsThemAndAsksWhatWasDone) {
    const auto order = handedOver();
    const auto claim = valueOf(db::recordClaim(
        file(), {order.garments[0], {}, now().today(), Fault::EdgeLifts, {}, "one corner"}, now()));
    OrderBookPlace place(desk());
    place.headerTools()->setParent(&place);
    showWindow(place, {1270, 708});
    place.opened();
    place.turnTo(about(order.id));

    std::vector<std::pair<SlipName, SlipTarget>> slipsAsked;
    QObject::connect(&desk(), &ShopDesk::slipAsked,
                     [&](SlipName slip, const SlipTarget& matter) { slipsAsked.emplace_back(slip, matter); });
    auto* lines = place.findChild<ClaimLines*>();
    ASSERT_TRUE(lines->isVisibleTo(&place));
    lines->setFocus();
    QTest::keyClick(lines, Qt::Key_Return);
    ASSERT_EQ(slipsAsked.size(), 1U);
    EXPECT_EQ(slipsAsked[0].first, SlipName::AnswerClaim);
    EXPECT_EQ(slipsAsked[0].second.claim, claim);
    QTest::keyClick(&place, Qt::Key_B);
    ASSERT_EQ(slipsAsked.size(), 2U);
    EXPECT_EQ(slipsAsked[1].first, SlipName::CameBack);

    ASSERT_TRUE(file().undo(file().recent(1).front().id).ok());
    EXPECT_FALSE(lines->isVisibleTo(&place)) << "nothing came back any more";
}

TEST_F(Claims, OrdersWhoseClaimWaitsAreShownAloneByAKey) {
    const auto order = handedOver();
    const auto claim = valueOf(
        db::recordClaim(file(), {order.garments[0], {}, now().today(), Fault::EdgeLifts, {}, ""}, now()));
    valueOf(db::recordClaim(file(), {order.garments[1], {}, now().today(), Fault::EdgeLifts, {}, ""}, now()));
    OrderBookPlace place(desk());
    place.headerTools()->setParent(&place);
    showWindow(place, {1270, 708});
    place.opened();
    auto* list = place.findChild<QListView*>(QStringLiteral("orderList"));
    auto* filter = place.findChild<Choice*>(QStringLiteral("orderFilter"));
    EXPECT_EQ(list->model()->rowCount(), 0) << "it is handed over";
    QTest::keyClick(&place, Qt::Key_B, Qt::ControlModifier);
    ASSERT_EQ(list->model()->rowCount(), 1) << "once, however many of its garments came back";
    EXPECT_TRUE(filter->items()[filter->chosenAt()].text.startsWith(QStringLiteral("Came back 1")));
    valueOf(db::answerClaim(file(), claim, ClaimAnswer::Advised, now()));
    EXPECT_EQ(list->model()->rowCount(), 1) << "the other still waits";
    const auto other = valueOf(file().read(db::openClaims)).front().claim;
    valueOf(db::answerClaim(file(), other, ClaimAnswer::Advised, now()));
    EXPECT_EQ(list->model()->rowCount(), 0);
    QTest::keyClick(&place, Qt::Key_B, Qt::ControlModifier);
    EXPECT_EQ(filter->chosenAt(), 0) << "the open ones again";
}

TEST_F(Claims, WhatWasDoneIsSaidInOneSlip) {
    const auto order = handedOver(1);
    SlipTarget matter = about(order.id);
    matter.claim = valueOf(
        db::recordClaim(file(), {order.garments[0], {}, now().today(), Fault::EdgeLifts, {}, ""}, now()));
    ASSERT_TRUE(open(SlipName::AnswerClaim, matter));
    submit();
    EXPECT_FALSE(errorAt("answer").isEmpty());
    choose(QStringLiteral("answer"), 0);
    submit();
    ASSERT_TRUE(isFinished()) << slip().refusal().toStdString();
    EXPECT_EQ(claimsOf(order.id).at(0).answer, ClaimAnswer::PressedAgain);
}

} // namespace
} // namespace holdfast::app::test
