// SPDX-License-Identifier: GPL-3.0-or-later
// An order that was taken is opened on the fair table again, changed by keys, and saved.

#include "app/places/fair_table/draft_note.h"
#include "app/places/fair_table/opened_order.h"
#include "app/widgets/button.h"
#include "db/tables/facts.h"
#include "tests/app/fair_table_fixture.h"

#include <QLabel>

namespace holdfast::app::test {

namespace {

class ChangeAtTable : public FairTable {
protected:
    void openOrder(OrderId order, bool isAgain = false) {
        SlipTarget about;
        about.order = order;
        about.isAgain = isAgain;
        place().turnTo(about);
    }
    QString textOf(const char* name) { return child<Button>(name).text(); }
    QString labelOf(const char* name) { return child<QLabel>(name).text(); }
    std::string lastTitle() { return file().recent(1).front().title.english(); }
    std::size_t entries() { return file().recent(1000).size(); }
    Order orderNow(OrderId order) {
        return valueOf(file().read([&](db::Connection& connection) {
                   return db::loadFactsOf(connection, std::span(&order, 1));
               }))
            .orders.at(order);
    }
    void enter() {
        place().setFocus();
        key(Qt::Key_Return);
    }
};

TEST_F(ChangeAtTable, ItIsShownAsItWasTakenAndLeftAsItWas) {
    const UsualShop usual = stockUsualShop();
    const auto taken = takeOrder({aGarment(usual), aGarment(usual, "L")});
    open();
    const std::size_t before = entries();
    openOrder(taken.id);
    EXPECT_EQ(labelOf("orderTitle"), QStringLiteral("Order %1").arg(taken.number));
    EXPECT_EQ(draft().garments.size(), 2u);
    EXPECT_EQ(draft().customerName, "Odile Farrant");
    EXPECT_EQ(table().sums().total, orderNow(taken.id).total);
    EXPECT_TRUE(table().sums().isAsPromised);
    EXPECT_FALSE(table().isChanged());
    EXPECT_EQ(textOf("takeOrder"), QStringLiteral("Leave as it is"));
    enter();
    EXPECT_TRUE(draft().isUntouched());
    EXPECT_EQ(entries(), before);
    EXPECT_EQ(labelOf("orderTitle"), QStringLiteral("New order"));
}

TEST_F(ChangeAtTable, AnotherSizeByKeysIsOneEntryAndOneUndo) {
    const UsualShop usual = stockUsualShop();
    const auto taken = takeOrder({aGarment(usual)});
    open();
    openOrder(taken.id);
    keys("s3");
    EXPECT_TRUE(table().isChanged());
    EXPECT_EQ(textOf("takeOrder"), QStringLiteral("Save changes"));
    enter();
    EXPECT_EQ(lastTitle(), "Order 1 changed: 1-a is Tee, L, Moss (was Tee, M, Moss)");
    EXPECT_EQ(table().sums().total, Money{}) << "an empty table again";
    ASSERT_TRUE(table().taken());
    EXPECT_TRUE(table().taken()->isChange);
    EXPECT_EQ(orderNow(taken.id).number, taken.number);
    valueOf(file().undo(file().recent(1).front().id));
    EXPECT_EQ(desk().shop()->facts.garmentsOf(taken.id).at(0)->size, "M");
    EXPECT_TRUE(draft().isUntouched()) << "the order is in the book, not on the table";
}

TEST_F(ChangeAtTable, AMisspeltNameIsCorrectedAndThePriceAgreedStands) {
    const UsualShop usual = stockUsualShop();
    GarmentDraft garment = aGarment(usual);
    garment.decals[0].content = Wording{"Juno", Face::BookSerif, "M0 0H1V1Z"};
    garment.price = {1900};
    const auto taken = takeOrder({garment});
    open();
    openOrder(taken.id);
    EXPECT_EQ(table().sums().total.minor, 1900);
    keys("n");
    typeText(QStringLiteral("Junoo"));
    key(Qt::Key_Escape);
    enter();
    EXPECT_NE(lastTitle().find("Name “Junoo” (was Name “Juno”)"), std::string::npos) << lastTitle();
    const Garment& now = *desk().shop()->facts.garmentsOf(taken.id).at(0);
    const auto& wording = std::get<Wording>(now.decals[0].content);
    EXPECT_NE(wording.outline, "M0 0H1V1Z") << "other letters have another outline";
    EXPECT_FALSE(wording.outline.empty());
}

TEST_F(ChangeAtTable, WhatNobodyTouchedKeepsItsOutline) {
    const UsualShop usual = stockUsualShop();
    GarmentDraft garment = aGarment(usual);
    garment.decals[0].content = Wording{"Juno", Face::BookSerif, "M0 0H1V1Z"};
    const auto taken = takeOrder({garment, aGarment(usual)});
    open();
    openOrder(taken.id);
    table().edit(Step::Choice, [](TableDraft& draft) { draft.garmentAt = 1; });
    keys("s3");
    enter();
    EXPECT_EQ(lastTitle(), "Order 1 changed: 1-b is Tee, L, Moss (was Tee, M, Moss)");
    EXPECT_EQ(std::get<Wording>(desk().shop()->facts.garmentsOf(taken.id).at(0)->decals[0].content).outline,
              "M0 0H1V1Z");
}

// As orders are that were taken before outlines were kept.
TEST_F(ChangeAtTable, AWordingWithoutAnOutlineGetsNoneBecauseSomethingElseChanged) {
    const UsualShop usual = stockUsualShop();
    GarmentDraft garment = aGarment(usual);
    garment.decals[0].content = Wording{"Juno"};
    const auto taken = takeOrder({garment, garment});
    open();
    openOrder(taken.id);
    keys("s3");
    enter();
    EXPECT_EQ(lastTitle(), "Order 1 changed: 1-a is Tee, L, Moss (was Tee, M, Moss)");
}

TEST_F(ChangeAtTable, AGarmentIsAddedAndOneIsCancelled) {
    const UsualShop usual = stockUsualShop();
    const auto taken = takeOrder({aGarment(usual), aGarment(usual)});
    const Money before = orderNow(taken.id).total;
    open();
    openOrder(taken.id);
    keys("l");
    key(Qt::Key_Up); // from its decal to the garment
    QTRY_VERIFY(!draft().decalAt);
    key(Qt::Key_Delete);
    ASSERT_EQ(draft().garments.size(), 1u);
    place().setFocus();
    keys("+1s2c1d2");
    enter();
    EXPECT_EQ(lastTitle(), "Order 1 changed: 1-a cancelled (Tee, M, Moss), Tee, M, Moss added");
    EXPECT_EQ(desk().shop()->facts.labelOf(*desk().shop()->facts.garmentsOf(taken.id).at(1)), "1-c");
    EXPECT_NE(orderNow(taken.id).total, Money{});
    EXPECT_NE(before, Money{});
}

TEST_F(ChangeAtTable, CopiesOfATakenGarmentAreNewGarments) {
    const UsualShop usual = stockUsualShop();
    const auto taken = takeOrder({aGarment(usual)});
    const Money one = orderNow(taken.id).total;
    open();
    openOrder(taken.id);
    table().edit(Step::Copies, [](TableDraft& draft) { draft.garment().copies = 3; });
    enter();
    EXPECT_EQ(lastTitle(), "Order 1 changed: 2 × Tee, M, Moss added");
    EXPECT_EQ(orderNow(taken.id).total, one * 3);
}

TEST_F(ChangeAtTable, WhatIsHalfTypedIsSetAsideAndComesBack) {
    const UsualShop usual = stockUsualShop();
    const auto taken = takeOrder({aGarment(usual)});
    open();
    keys("1s2");
    const TableDraft typed = draft();
    openOrder(taken.id);
    ASSERT_TRUE(table().opened());
    place().undoOwn();
    EXPECT_EQ(draft(), typed) << "one step back and it is there";
    openOrder(taken.id);
    keys("s3");
    enter();
    EXPECT_EQ(draft().garment().style, typed.garment().style);
    EXPECT_EQ(draft().garment().size, "M");
    EXPECT_FALSE(table().opened());
    EXPECT_TRUE(labelOf("keptWords").contains(QStringLiteral("Here is what you were typing")));
}

TEST_F(ChangeAtTable, AHalfTypedChangeSurvivesARestart) {
    const UsualShop usual = stockUsualShop();
    GarmentDraft garment = aGarment(usual);
    garment.decals[0].content = Wording{"Juno", Face::BookSerif, "M0 0H1V1Z"};
    const auto taken = takeOrder({garment, aGarment(usual)});
    open();
    keys("1");
    openOrder(taken.id);
    table().edit(Step::Choice, [](TableDraft& draft) { draft.garmentAt = 1; });
    keys("s3");
    leave();
    reopen();
    open();
    ASSERT_TRUE(table().opened());
    EXPECT_EQ(table().opened()->order.id, taken.id);
    EXPECT_TRUE(table().opened()->aside) << "what waits for it, too";
    enter();
    EXPECT_EQ(lastTitle(), "Order 1 changed: 1-b is Tee, L, Moss (was Tee, M, Moss)");
    EXPECT_TRUE(draft().garment().style.isSet()) << "and it comes back";
}

TEST_F(ChangeAtTable, WhatWasDoneMeanwhileIsTakenIn) {
    const UsualShop usual = stockUsualShop();
    const auto taken = takeOrder({aGarment(usual), aGarment(usual)});
    open();
    openOrder(taken.id);
    keys("s3");
    const auto garments = garmentsOf(taken.id);
    valueOf(db::changeBlank(file(), garments[1], usual.style, "XL", usual.moss));
    ASSERT_EQ(draft().garments.size(), 2u);
    EXPECT_EQ(draft().garments[0].size, "L");
    EXPECT_EQ(draft().garments[1].size, "XL");
    enter();
    EXPECT_NE(lastTitle().find("1-a is Tee, L, Moss (was Tee, M, Moss)"), std::string::npos) << lastTitle();
    EXPECT_EQ(lastTitle().find("1-b"), std::string::npos) << "that was done by somebody else";
}

TEST_F(ChangeAtTable, WhatIsPressedStaysUnlessItIsMadeAgain) {
    const UsualShop usual = stockUsualShop();
    const auto taken = takeOrder({aGarment(usual)});
    const GarmentId garment = garmentsOf(taken.id).at(0);
    cut(garment, usual.roll);
    press(garment);
    open();
    openOrder(taken.id);
    EXPECT_TRUE(
        isSaid(QStringLiteral("1-a has been at the press. It can only be changed by making it again.")));
    keys("s3");
    EXPECT_EQ(draft().garment().size, "M");
    EXPECT_FALSE(table().isChanged());
    place().setFocus();
    keys("y");
    EXPECT_TRUE(draft().garment().isMadeAgain);
    EXPECT_TRUE(isSaid(QStringLiteral("its blank and its film are lost")));
    keys("s3");
    enter();
    EXPECT_EQ(lastTitle(), "Order 1 changed: 1-a is made again, 1-a is Tee, L, Moss (was Tee, M, Moss)");
}

TEST_F(ChangeAtTable, WhatWasCutInVainIsSaidBeforeItIsSaved) {
    const UsualShop usual = stockUsualShop();
    const auto taken = takeOrder({aGarment(usual)});
    cut(garmentsOf(taken.id).at(0), usual.roll);
    open();
    openOrder(taken.id);
    EXPECT_FALSE(isSaid(QStringLiteral("cut in vain")));
    table().edit(Step::Width, [](TableDraft& draft) {
        draft.decalAt = 0;
        widenDecal(draft, 150_mm);
    });
    EXPECT_TRUE(isSaid(QStringLiteral("1-a: cut in vain: Heron, ")));
    table().edit(Step::Choice, [](TableDraft& draft) { moveDecal(draft, 120_mm, 0_mm); });
}

TEST_F(ChangeAtTable, TheSameAgainIsANewOrder) {
    const UsualShop usual = stockUsualShop();
    const auto taken = takeOrder({aGarment(usual), aGarment(usual), aGarment(usual, "L")});
    open();
    openOrder(taken.id, true);
    EXPECT_FALSE(table().opened());
    ASSERT_EQ(draft().garments.size(), 2u);
    EXPECT_EQ(draft().garments[0].copies, 2) << "what is alike is one line";
    EXPECT_EQ(draft().customerName, "Odile Farrant");
    enter();
    EXPECT_EQ(orders().size(), 2u);
    EXPECT_EQ(orders().front().garments, 3);
}

TEST_F(ChangeAtTable, TheDayStaysWhereItCanBeKeptAndElseMovesInWords) {
    const UsualShop usual = stockUsualShop();
    OrderDraft early = anOrder({aGarment(usual)});
    early.promised = now().local() + Hours{2};
    const auto soon = valueOf(db::takeOrder(file(), early, now()));
    early.promised = now().local() + Hours{24 * 40};
    const auto late = valueOf(db::takeOrder(file(), early, now()));
    open();
    openOrder(late.id);
    keys("s3");
    EXPECT_TRUE(table().sums().isAsPromised);
    EXPECT_EQ(table().sums().promise->readyAt, early.promised);
    openOrder(soon.id);
    EXPECT_TRUE(table().sums().isAsPromised) << "nothing is changed";
    keys("s3");
    EXPECT_FALSE(table().sums().isAsPromised);
    EXPECT_TRUE(isSaid(QStringLiteral("The promise moves.")));
}

TEST_F(ChangeAtTable, AQuotationThatIsChangedAsksForNoMoney) {
    const UsualShop usual = stockUsualShop();
    OrderDraft quoted = anOrder({aGarment(usual)});
    quoted.isQuotation = true;
    quoted.isConfirmed = false;
    const auto taken = valueOf(db::takeOrder(file(), quoted, now()));
    open();
    openOrder(taken.id);
    EXPECT_EQ(table().sums().depositAsked, Money{});
    EXPECT_FALSE(child<Button>("payAll").isVisible());
    keys("s3");
    enter();
    EXPECT_EQ(lastTitle(), "Order 1 changed: 1-a is Tee, L, Moss (was Tee, M, Moss)");
    EXPECT_EQ(orderNow(taken.id).state, OrderState::Quoted);
}

TEST_F(ChangeAtTable, ANoteIsTypedByItsKeyAndIsOnTheBillOnlyWhereThereIsOne) {
    stockUsualShop();
    open();
    chooseHeronOnMossTee();
    key(Qt::Key_Escape);
    place().setFocus();
    EXPECT_FALSE(child<Field>("orderNote").isVisible());
    keys("i");
    ASSERT_TRUE(child<Field>("orderNote").isVisible());
    EXPECT_FALSE(child<Button>("addNote").isVisible());
    keys("a gift, wrap it");
    EXPECT_EQ(draft().note, "a gift, wrap it");
    key(Qt::Key_Escape);
    EXPECT_TRUE(child<Field>("orderNote").isVisible());
    takeItFor("Odile Farrant");
    ASSERT_EQ(orders().size(), 1u);
    EXPECT_EQ(orderNow(orders().front().id).note, "a gift, wrap it");
    place().setFocus();
    keys("1i");
    key(Qt::Key_Escape);
    place().setFocus();
    EXPECT_FALSE(child<Field>("orderNote").isVisible()) << "nothing was typed";
    EXPECT_TRUE(child<Button>("addNote").isVisible());
}

TEST_F(ChangeAtTable, TooMuchPaidIsSaidAndMoreCanBePaidAtOnce) {
    const UsualShop usual = stockUsualShop();
    OrderDraft paid = anOrder({aGarment(usual), aGarment(usual)});
    paid.deposit = paid.total();
    const auto taken = valueOf(db::takeOrder(file(), paid, now()));
    open();
    openOrder(taken.id);
    table().edit(Step::Choice, [](TableDraft& draft) { removeGarment(draft, 1); });
    EXPECT_TRUE(isSaid(QStringLiteral("too much is paid then.")));
    place().undoOwn();
    table().edit(Step::Copies, [](TableDraft& draft) { draft.garment().copies = 2; });
    const Money owed = table().sums().owed;
    EXPECT_GT(owed, Money{});
    typeInto("paidNow", QStringLiteral("1"));
    table().edit(Step::Deposit, [](TableDraft& draft) { draft.paidHow = PaidHow::Cash; });
    key(Qt::Key_Escape);
    enter();
    EXPECT_NE(lastTitle().find("£1.00 paid, cash"), std::string::npos) << lastTitle();
}

} // namespace

} // namespace holdfast::app::test
