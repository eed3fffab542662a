// SPDX-License-Identifier: GPL-3.0-or-later
// Slips about orders and garments, and the shop's settings.
#include "tests/app/slips_fixture.h"

#include "app/slips/option_list.h"
#include "app/slips/pick_list.h"
#include "app/widgets/choice.h"
#include "app/widgets/field.h"
#include "app/widgets/long_field.h"
#include "app/widgets/switch.h"
#include "db/actions/claim_actions.h"
#include "db/actions/fair_actions.h"
#include "db/actions/film_actions.h"
#include "db/actions/press_actions.h"
#include "db/actions/shop_actions.h"
#include "db/tables/facts.h"
#include "db/tables/order_book.h"

#include <QApplication>
#include <QKeyEvent>
#include <QLabel>
#include <QLineEdit>

#include <algorithm>

namespace holdfast::app::test {
namespace {

class OrderSlips : public SlipsFixture {
protected:
    const ShopFacts& facts() { return desk().shop()->facts; }

    db::OrderTaken takeUnconfirmed(std::vector<GarmentDraft> garments) {
        auto draft = anOrder(std::move(garments));
        draft.isConfirmed = false;
        return valueOf(db::takeOrder(file(), draft, now()));
    }

    GarmentDraft withName(const UsualShop& usual, const std::string& name) {
        auto garment = aGarment(usual);
        auto lettering = garment.decals[0];
        lettering.content = Wording{name, Face::BookSerif};
        lettering.below = 200_mm;
        lettering.height = 60_mm;
        lettering.layer = 2;
        garment.decals.push_back(lettering);
        return garment;
    }

    // A garment that was handed over, and what was told of it.
    SlipTarget somethingCameBack(const UsualShop& usual, const std::string& words) {
        const auto order = takeOrder({aGarment(usual), aGarment(usual)}, words);
        const auto garments = garmentsOf(order.id);
        for (const GarmentId garment : garments) {
            cut(garment, usual.roll);
            ShopFixture::press(garment);
        }
        valueOf(db::handOver(file(), order.id, now()));
        SlipTarget matter = about(order.id);
        matter.claim = valueOf(
            db::recordClaim(file(), {garments[0], {}, now().today(), Fault::Scorched, {}, words}, now()));
        return matter;
    }

    SlipTarget about(OrderId order) {
        SlipTarget matter;
        matter.order = order;
        return matter;
    }
    SlipTarget about(GarmentId garment) {
        SlipTarget matter;
        matter.garment = garment;
        return matter;
    }
};

TEST_F(OrderSlips, LayersAreReorderedInOneAction) {
    const auto usual = stockUsualShop();
    const auto garment = garmentsOf(takeOrder({withName(usual, "Juno")}).id).front();
    const auto before = facts().garments.at(garment).decals;
    open(SlipName::Layers, about(garment));
    const auto count = entries();
    press(Qt::Key_Down, Qt::AltModifier);
    press(Qt::Key_Return);
    EXPECT_TRUE(isFinished());
    EXPECT_EQ(entries(), count + 1);
    const auto& after = facts().garments.at(garment).decals; // lowest first
    EXPECT_EQ(after[0].id, before[1].id);
    EXPECT_EQ(after[0].layer, 1);
    EXPECT_EQ(after[1].id, before[0].id);
    EXPECT_EQ(after[1].layer, 2);
    valueOf(file().undo(file().lastUndoable()->id));
    EXPECT_EQ(facts().garments.at(garment).decals[0].id, before[0].id);
}

TEST_F(OrderSlips, EveryDecalOfAnOrderIsAgreedByPhone) {
    const auto usual = stockUsualShop();
    const auto order = takeUnconfirmed({withName(usual, "Juno"), aGarment(usual)});
    open(SlipName::ConfirmWording, about(order.id));
    press(Qt::Key_2);
    press(Qt::Key_Return);
    EXPECT_TRUE(isFinished());
    for (const GarmentId garment : garmentsOf(order.id))
        for (const Decal& decal : facts().garments.at(garment).decals)
            EXPECT_EQ(decal.confirmedBy, "by phone");
}

TEST_F(OrderSlips, WordingIsMendedWhileItIsAgreed) {
    const auto usual = stockUsualShop();
    const auto garment = garmentsOf(takeUnconfirmed({withName(usual, "Juno")}).id).front();
    SlipTarget matter = about(garment);
    matter.decal = facts().garments.at(garment).decals[1].id;
    open(SlipName::ConfirmWording, matter);
    type(QStringLiteral("wording-1"), QStringLiteral("Jöns"));
    type(QStringLiteral("how"), QStringLiteral("through her brother"));
    submit();
    EXPECT_TRUE(isFinished());
    const auto& decals = facts().garments.at(garment).decals;
    EXPECT_EQ(std::get<Wording>(decals[1].content).text, "Jöns");
    EXPECT_EQ(decals[1].confirmedBy, "through her brother");
    EXPECT_FALSE(decals[0].isConfirmed());
}

TEST_F(OrderSlips, WhatIsOwedIsTakenByEnter) {
    const auto usual = stockUsualShop();
    const auto order = takeOrder({aGarment(usual)}).id;
    open(SlipName::TakeMoney, about(order));
    press(Qt::Key_Return);
    EXPECT_TRUE(isFinished());
    EXPECT_EQ(facts().orders.at(order).owed(), Money{});
}

TEST_F(OrderSlips, DepositMissingIsOfferedFirst) {
    const auto usual = stockUsualShop();
    auto settings = facts().settings;
    settings.depositPercent = 20;
    valueOf(db::changeSettings(file(), settings));
    const auto order = takeOrder({aGarment(usual)}).id; // 26.50
    open(SlipName::TakeMoney, about(order));
    choose(QStringLiteral("how"), 1);
    submit();
    EXPECT_EQ(facts().orders.at(order).paid, Money{550}) << "a fifth, rounded up to the price point";
}

TEST_F(OrderSlips, WhatWasPaidIsPaidBack) {
    const auto usual = stockUsualShop();
    const auto order = takeOrder({aGarment(usual)}).id;
    valueOf(db::moveMoney(file(), order, MoneyKind::Payment, Money{1000}, PaidHow::Cash));
    open(SlipName::TakeMoney, about(order));
    choose(QStringLiteral("kind"), 2);
    submit();
    EXPECT_TRUE(isFinished());
    EXPECT_EQ(facts().orders.at(order).paid, Money{});
}

// A refund is first offered by the way that most was paid, with what was paid so.
TEST_F(OrderSlips, ARefundGoesBackTheWayItWasPaid) {
    const auto usual = stockUsualShop();
    const auto order = takeOrder({aGarment(usual)}).id;
    valueOf(db::moveMoney(file(), order, MoneyKind::Deposit, Money{300}, PaidHow::Cash));
    valueOf(db::moveMoney(file(), order, MoneyKind::Payment, Money{1200}, PaidHow::Card));
    valueOf(db::cancelOrder(file(), order, "changed their mind"));
    open(SlipName::TakeMoney, about(order));
    EXPECT_EQ(slip().title().toStdString(), "Money");
    QString wordsSaid;
    for (const QLabel* label : slip().findChildren<QLabel*>())
        wordsSaid += label->text() + u'\n';
    EXPECT_TRUE(wordsSaid.contains(
        QStringLiteral("Total £26.50, paid £3.00 in cash and £12.00 by card, nothing owed.")))
        << wordsSaid.toStdString();
    submit();
    ASSERT_TRUE(isFinished()) << slip().refusal().toStdString();
    const auto moves =
        valueOf(file().read([&](db::Connection& connection) { return db::moneyOf(connection, order); }));
    ASSERT_EQ(moves.size(), 3U);
    EXPECT_EQ(moves.back().kind, MoneyKind::Refund);
    EXPECT_EQ(moves.back().how, PaidHow::Card);
    EXPECT_EQ(moves.back().amount, Money{-1200});
}

TEST_F(OrderSlips, PromiseIsMoved) {
    const auto usual = stockUsualShop();
    const auto order = takeOrder({aGarment(usual)}).id;
    open(SlipName::MovePromise, about(order));
    typeText(QStringLiteral("1.12."));
    type(QStringLiteral("time"), QStringLiteral("16.30"));
    submit();
    EXPECT_TRUE(isFinished());
    EXPECT_EQ(facts().orders.at(order).promised, LocalTime{localDate(2026, 12, 1)} + 16h + 30min);
}

TEST_F(OrderSlips, MovingAPromiseSaysFromWhenItCanBeKept) {
    const auto usual = stockUsualShop();
    const auto order = takeOrder({aGarment(usual)}).id;
    open(SlipName::MovePromise, about(order));
    QStringList notes;
    const auto labels = slip().findChildren<QLabel*>();
    for (const QLabel* label : labels)
        notes << label->text();
    const QString all = notes.join(QLatin1Char('|'));
    EXPECT_TRUE(all.contains(QStringLiteral("Can be kept from "))) << all.toStdString();
    EXPECT_TRUE(all.contains(QStringLiteral("cut today"))) << all.toStdString();

    type(QStringLiteral("day"), QStringLiteral("today"));
    type(QStringLiteral("time"), QStringLiteral("16:00"));
    const auto isTooSoon = [&] {
        const auto now = slip().findChildren<QLabel*>();
        return std::ranges::any_of(now, [](const QLabel* label) {
            return label->text().contains(QStringLiteral("too soon to keep"));
        });
    };
    EXPECT_TRUE(isTooSoon()); // it rests a day
    type(QStringLiteral("day"), QStringLiteral("1.12."));
    EXPECT_FALSE(isTooSoon());
}

TEST_F(OrderSlips, CustomerIsRenamed) {
    const auto usual = stockUsualShop();
    const auto order = takeOrder({aGarment(usual)}).id;
    open(SlipName::Customer, about(order));
    typeText(QStringLiteral("Zoë Åkerlund-Nováková"));
    type(QStringLiteral("customerPhone"), {});
    submit();
    const Customer& customer = facts().customers.at(facts().orders.at(order).customer);
    EXPECT_EQ(customer.name, "Zoë Åkerlund-Nováková");
    EXPECT_EQ(customer.phone, "");
}

TEST_F(OrderSlips, NoteIsWrittenChangedAndTakenOff) {
    const auto usual = stockUsualShop();
    const auto order = takeOrder({aGarment(usual)}).id;
    const auto noteNow = [&] { return facts().orders.at(order).note; };
    open(SlipName::OrderNote, about(order));
    typeText(QStringLiteral("A gift, leave it with the neighbour"));
    submit();
    EXPECT_TRUE(isFinished());
    EXPECT_EQ(noteNow(), "A gift, leave it with the neighbour");

    const auto before = entries();
    open(SlipName::OrderNote, about(order));
    submit();
    EXPECT_TRUE(isFinished());
    EXPECT_EQ(entries(), before) << "nothing was changed, so nothing is in its history";

    open(SlipName::OrderNote, about(order));
    auto* note = slip().findChild<LongField*>(QStringLiteral("note"));
    ASSERT_TRUE(note);
    note->selectAll();
    press(Qt::Key_Delete);
    submit();
    EXPECT_TRUE(isFinished());
    EXPECT_EQ(noteNow(), "");
    EXPECT_EQ(entries(), before + 1);
}

TEST_F(OrderSlips, OneGarmentIsCancelledForAReason) {
    const auto usual = stockUsualShop();
    const auto order = takeOrder({aGarment(usual), aGarment(usual, "L")}).id;
    open(SlipName::CancelOrder, about(order));
    auto* what = slip().findChild<PickList*>(QStringLiteral("what"));
    ASSERT_TRUE(what);
    EXPECT_EQ(what->currentIndex(), 0) << "the whole order, as the key said";
    typeText(QStringLiteral("one too many"));
    what->setFocus();
    press(Qt::Key_End);
    submit();
    EXPECT_TRUE(isFinished());
    EXPECT_EQ(facts().garmentsOf(order).size(), 1u);
    EXPECT_EQ(file().recent(1).front().title.english(), "1-b cancelled: one too many");
}

TEST_F(OrderSlips, AnOrderIsSplitAndJoinedAgain) {
    const auto usual = stockUsualShop();
    const auto order = takeOrder({aGarment(usual), aGarment(usual, "L")}).id;
    open(SlipName::PartOrder, about(order));
    submit();
    EXPECT_FALSE(isFinished()) << "nothing was chosen";
    auto* second = slip().findChild<Switch*>(QStringLiteral("garment-2"));
    ASSERT_TRUE(second);
    second->setFocus();
    press(Qt::Key_Space);
    submit();
    EXPECT_TRUE(isFinished());
    EXPECT_EQ(facts().garmentsOf(order).size(), 1u);
    EXPECT_EQ(file().recent(1).front().title.english(), "1 garment of order 1 is now order 2");

    open(SlipName::PartOrder, about(order));
    submit(); // it has one garment, and the customer one other order
    EXPECT_TRUE(isFinished());
    EXPECT_EQ(facts().garmentsOf(order).size(), 2u);
    EXPECT_EQ(file().recent(1).front().title.english(), "Order 2 is now part of order 1");

    open(SlipName::PartOrder, about(order));
    auto* kind = slip().findChild<Choice*>(QStringLiteral("kind"));
    kind->takeFocus();
    press(Qt::Key_Right);
    submit();
    EXPECT_FALSE(isFinished()) << "no other order is open";
}

TEST_F(OrderSlips, OrderIsCancelledForAReason) {
    const auto usual = stockUsualShop();
    const auto order = takeOrder({aGarment(usual)}).id;
    open(SlipName::CancelOrder, about(order));
    typeText(QStringLiteral("changed her mind"));
    press(Qt::Key_Return);
    EXPECT_TRUE(isFinished());
    EXPECT_FALSE(facts().orders.find(order)) << "no open order any more";
}

TEST_F(OrderSlips, HeldGarmentIsLetThroughForAReason) {
    const auto usual = stockUsualShop();
    const auto garment = garmentsOf(takeOrder({aGarment(usual, "L")}).id).front(); // unwashed
    const Finding* hold = desk().shop()->of(garment).firstHold();
    ASSERT_TRUE(hold);
    const SlipTarget matter = SlipTarget::of(*hold, facts().garments.at(garment));
    open(SlipName::Waive, matter);
    typeText(QStringLiteral("the customer washed it"));
    press(Qt::Key_Return);
    EXPECT_TRUE(isFinished());
    ASSERT_EQ(facts().waivers.size(), 1U);
    EXPECT_EQ(facts().waivers[0].rule, Rule::BlankUnwashed);
    EXPECT_EQ(facts().waivers[0].reason, "the customer washed it");
    EXPECT_FALSE(open(SlipName::Waive, matter)) << "nothing holds it any more";
}

TEST_F(OrderSlips, GarmentIsSpoiledWithItsCause) {
    const auto usual = stockUsualShop();
    const auto garment = garmentsOf(takeOrder({aGarment(usual)}).id).front();
    cut(garment, usual.roll);
    valueOf(db::takeUp(file(), garment, desk().shop()->of(garment).route, desk().now()));
    open(SlipName::Spoil, about(garment));
    press(Qt::Key_2);
    type(QStringLiteral("cause"), QStringLiteral("left too long"));
    submit();
    EXPECT_TRUE(isFinished());
    ASSERT_EQ(facts().spoils.size(), 1U);
    EXPECT_EQ(facts().spoils[0].cause, "scorched: left too long");
    EXPECT_EQ(facts().garments.at(garment).attempt, 2);
}

TEST_F(OrderSlips, SettingsOfEverySectionAreKept) {
    open(SlipName::Settings);
    typeText(QStringLiteral("Schäferstube"));
    type(QStringLiteral("fairName"), QStringLiteral("Saltmarsh Makers’ Market"));
    type(QStringLiteral("collectAt"), QStringLiteral("The Net Loft, 4 Creek Lane"));
    type(QStringLiteral("whenEdgeLifts"), QStringLiteral("Bring it back within a year."));
    type(QStringLiteral("depositPercent"), QStringLiteral("25"));
    turn(QStringLiteral("depositHolds"));
    type(QStringLiteral("minuteRate"), QStringLiteral("0,55"));
    turn(QStringLiteral("open-5"));
    type(QStringLiteral("opens-5"), QStringLiteral("10"));
    type(QStringLiteral("closes-5"), QStringLiteral("13.30"));
    type(QStringLiteral("closedDays"), QStringLiteral("24/12, 2026-12-25"));
    type(QStringLiteral("washerHolds"), QStringLiteral("5.5"));
    type(QStringLiteral("decalGap"), QStringLiteral("6"));
    type(QStringLiteral("restBeforeWash"), QStringLiteral("36"));
    const auto before = facts().settings;
    const auto count = entries();
    submit();
    EXPECT_TRUE(isFinished());
    EXPECT_EQ(entries(), count + 1);
    auto expected = before;
    expected.shopName = "Schäferstube";
    expected.fairName = "Saltmarsh Makers’ Market";
    expected.collectAt = "The Net Loft, 4 Creek Lane";
    expected.whenEdgeLifts = "Bring it back within a year.";
    expected.depositPercent = 25;
    expected.depositHolds = true;
    expected.minuteRate = Money{55};
    expected.week[6] = OpeningHours{10h, 13h + 30min};
    expected.closedDays = {localDate(2026, 12, 24), localDate(2026, 12, 25)};
    expected.washerHolds = 5500_g;
    expected.decalGap = 6_mm;
    expected.restBeforeWash = 36h;
    EXPECT_EQ(facts().settings, expected);
}

TEST_F(OrderSlips, SettingsLeftAsTheyWereWriteNothing) {
    open(SlipName::Settings);
    const auto count = entries();
    submit();
    EXPECT_TRUE(isFinished());
    EXPECT_EQ(entries(), count);
}

TEST_F(OrderSlips, EverySlipFitsTheEdgeWhateverTheNames) {
    const std::string longest = "Überlangärmelstrickjackenträgerinnenvereinsfestausstattung";
    auto usual = stockUsualShop();
    const SlipTarget cameBack = somethingCameBack(usual, longest);
    usual.style = addStyle(longest, [&](BlankStyle& style) {
        style.sizes = {"18–24 months, tall", "M"};
        style.colours = {{{}, longest.substr(0, 40), 0x66754c}, {{}, "Chalk", 0xf1efe6}};
        style.obstacles = {{Obstacle::ThickHem, {}}};
        style.label.reset();
    });
    usual.moss = coloursOf(usual.style)[0].id;
    usual.film = addFilm(longest.substr(0, 40), [&](Film& film) { film.finish = longest; });
    usual.place = addPlace(longest);
    usual.roll = receiveRoll(usual.film, usual.place);
    usual.press = addPress(longest);
    usual.unwashed = receiveBlanks(usual.style, "18–24 months, tall", usual.moss, 3);
    auto draft = anOrder({withName(usual, longest)}, longest);
    draft.garments[0].size = "18–24 months, tall";
    draft.isConfirmed = false;
    const auto order = valueOf(db::takeOrder(file(), draft, now())).id;
    SlipTarget matter = about(garmentsOf(order).front());
    matter.order = order;
    matter.style = usual.style;
    matter.lot = usual.unwashed;
    matter.roll = usual.roll;
    matter.place = usual.place;
    matter.at = now().instant - 1h;
    valueOf(db::recordReading(file(), usual.place, {*matter.at, {19}, {44}}));
    matter.press = usual.press;
    Fair fair;
    fair.name = longest;
    fair.firstDay = fair.lastDay = now().today();
    matter.fair = valueOf(db::addFair(file(), fair));
    const std::optional<DecalId> usualDecal = matter.decal;
    // One that is cut already, in another order: only such a decal can have been cut wrong.
    auto agreed = anOrder({withName(usual, longest)}, longest);
    agreed.garments[0].size = "18–24 months, tall";
    const GarmentId cut = garmentsOf(valueOf(db::takeOrder(file(), agreed, now())).id).front();
    const std::vector<DecalId> decals{desk().shop()->facts.garments.at(cut).decals.front().id};
    valueOf(db::waive(file(), cut, Rule::LabelUnread, longest));
    valueOf(db::cutDecals(file(), usual.roll, decals, Millimetres{300}, desk().now()));
    for (int name = 0; name <= static_cast<int>(SlipName::Settings); ++name) {
        const bool isOfACutDecal = static_cast<SlipName>(name) == SlipName::Miscut;
        matter.garment = isOfACutDecal ? cut : garmentsOf(order).front();
        matter.decal = isOfACutDecal ? std::optional{decals.front()} : usualDecal;
        const bool isOfAClaim = static_cast<SlipName>(name) == SlipName::CameBack ||
                                static_cast<SlipName>(name) == SlipName::AnswerClaim;
        ASSERT_TRUE(open(static_cast<SlipName>(name), isOfAClaim ? cameBack : matter)) << name;
        EXPECT_LE(slip().minimumSizeHint().width(), 339) << slip().title().toStdString();
        const auto* form = slip().findChild<Form*>();
        EXPECT_LE(form->widget()->width(), form->viewport()->width()) << slip().title().toStdString();
    }
}

TEST_F(OrderSlips, EscapeIsLeftToTheWindow) {
    const auto usual = stockUsualShop();
    ASSERT_TRUE(open(SlipName::ReceiveRoll));
    QKeyEvent escape(QEvent::KeyPress, Qt::Key_Escape, Qt::NoModifier);
    QApplication::sendEvent(QApplication::focusWidget(), &escape);
    EXPECT_FALSE(escape.isAccepted());
    EXPECT_EQ(desk().shop()->facts.rolls.size(), 1U) << usual.roll.value;
}

TEST_F(OrderSlips, SlipAboutWhatIsGoneIsNotMade) {
    stockUsualShop();
    SlipTarget gone;
    gone.order = OrderId{7};
    gone.garment = GarmentId{7};
    gone.style = BlankStyleId{7};
    gone.lot = BlankLotId{7};
    gone.roll = RollId{7};
    gone.film = FilmId{7};
    gone.fair = FairId{7};
    gone.press = PressId{7};
    gone.place = PlaceId{7};
    for (const SlipName name : {SlipName::ReadLabel,
                                SlipName::MarkNotPrewashed,
                                SlipName::ChooseWayRound,
                                SlipName::NoteLawChecked,
                                SlipName::CorrectCount,
                                SlipName::ChangeBlank,
                                SlipName::MeasureShrinkage,
                                SlipName::RollMove,
                                SlipName::TestStrip,
                                SlipName::UseUpRoll,
                                SlipName::FilmSheet,
                                SlipName::NextShade,
                                SlipName::ChangeStyle,
                                SlipName::CopyStyle,
                                SlipName::ChangePlace,
                                SlipName::ChangePress,
                                SlipName::Recipe,
                                SlipName::ChangeFilm,
                                SlipName::Layers,
                                SlipName::ConfirmWording,
                                SlipName::TakeMoney,
                                SlipName::MovePromise,
                                SlipName::Customer,
                                SlipName::ForgetCustomer,
                                SlipName::OrderNote,
                                SlipName::PartOrder,
                                SlipName::Invoice,
                                SlipName::CreditNote,
                                SlipName::CancelOrder,
                                SlipName::Waive,
                                SlipName::Spoil,
                                SlipName::ChangeFair})
        EXPECT_FALSE(open(name, gone)) << static_cast<int>(name);
}

} // namespace
} // namespace holdfast::app::test
