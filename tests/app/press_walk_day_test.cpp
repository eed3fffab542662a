// SPDX-License-Identifier: GPL-3.0-or-later
// Press walk and the day around it: what stands aside, what will be late, an empty shop, a full one.
#include "app/desk/formats.h"
#include "app/places/press_walk/aside_list.h"
#include "app/places/press_walk/day_strip.h"
#include "app/places/press_walk/rack_list.h"
#include "app/places/press_walk/walk_model.h"
#include "app/places/press_walk/walk_notice.h"
#include "db/actions/film_actions.h"
#include "db/actions/press_actions.h"
#include "tests/app/press_walk_fixture.h"

#include <QAbstractItemModelTester>
#include <QApplication>
#include <QElapsedTimer>
#include <QListView>

namespace holdfast::app::test {

namespace {

class PressWalkDay : public PressWalkFixture {
protected:
    // Promised for this evening: with its rest it cannot be ready.
    GarmentId hurriedGarment() {
        OrderDraft hurried = anOrder({aGarment(usual)});
        hurried.promised = LocalTime{now().today()} + Hours{18};
        const GarmentId garment = garmentsOf(valueOf(db::takeOrder(file(), hurried, now())).id).front();
        cut(garment, usual.roll);
        return garment;
    }
};

} // namespace

TEST_F(PressWalkDay, SpoiledGarmentIsToBeCutAgainOnAnotherBlank) {
    const GarmentId garment = readyToPress(1).front();
    open();
    walkTo(garment, "press");
    key(Qt::Key_X);
    ASSERT_EQ(askedSlip, SlipName::Spoil);
    EXPECT_EQ(askedMatter.garment, garment);
    valueOf(db::markSpoiled(file(), garment, "scorched"));
    auto& aside = part<AsideList>("asideList");
    ASSERT_EQ(aside.aside().rowCount(), 1);
    EXPECT_EQ(aside.aside().entry(0).what, "To cut");
    EXPECT_TRUE(desk().shop()->facts.garments.at(garment).lot) << "another blank is kept";
    EXPECT_EQ(panel().word, QStringLiteral("Nothing to press"));
}

TEST_F(PressWalkDay, FOnAGarmentThatWaitsForItsDecalsLeadsToTheBenchWithItsRoll) {
    const GarmentId garment = garmentsOf(takeOrder({aGarment(usual)}).id).front();
    open();
    EXPECT_EQ(part<AsideList>("asideList").aside().freeingWordsAt(0), QStringLiteral("Cut from R-01"));
    key(Qt::Key_F);
    EXPECT_EQ(askedPlace, PlaceName::CuttingBench);
    EXPECT_EQ(askedMatter.roll, usual.roll);
    EXPECT_EQ(askedMatter.film, usual.film);
    EXPECT_EQ(askedMatter.decal, desk().shop()->facts.garments.at(garment).decals.front().id);
    EXPECT_EQ(stageOf(garment), Stage::ToCut);
}

TEST_F(PressWalkDay, FOnAnUnwashedGarmentLeadsToTheWash) {
    const GarmentId garment = garmentsOf(takeOrder({aGarment(usual, "L")}).id).front();
    cut(garment, usual.roll);
    open();
    key(Qt::Key_F);
    EXPECT_EQ(askedPlace, PlaceName::BlankRail);
    EXPECT_EQ(askedMatter.garment, garment);
}

TEST_F(PressWalkDay, ArrowsChooseTheCardThatFActsOn) {
    takeOrder({aGarment(usual, "L")});
    const GarmentId second = garmentsOf(takeOrder({aGarment(usual)}).id).front();
    open();
    key(Qt::Key_Right);
    auto& aside = part<AsideList>("asideList");
    EXPECT_TRUE(aside.hasFocus());
    key(Qt::Key_Down);
    ASSERT_TRUE(aside.current());
    EXPECT_EQ(aside.current()->garment, second);
    key(Qt::Key_F);
    EXPECT_EQ(askedPlace, PlaceName::CuttingBench);
    EXPECT_EQ(askedMatter.garment, second) << "the first card is left alone";
}

TEST_F(PressWalkDay, WAsksForTheWaiverAndAWaivedGarmentJoinsTheWalk) {
    const GarmentId garment = garmentsOf(takeOrder({aGarment(usual, "L")}).id).front();
    cut(garment, usual.roll);
    open();
    key(Qt::Key_W);
    ASSERT_EQ(askedSlip, SlipName::Waive);
    EXPECT_EQ(askedMatter.rule, Rule::BlankUnwashed);
    EXPECT_EQ(askedMatter.garment, garment);
    valueOf(db::waive(file(), garment, *askedMatter.rule, "the customer was told"));
    EXPECT_EQ(part<AsideList>("asideList").aside().rowCount(), 0);
    key(Qt::Key_Space);
    EXPECT_EQ(stageOf(garment), Stage::OnPress);
}

TEST_F(PressWalkDay, WOnAGarmentThatOnlyWaitsSaysSo) {
    takeOrder({aGarment(usual)});
    open();
    key(Qt::Key_W);
    EXPECT_FALSE(askedSlip);
    EXPECT_FALSE(panel().note.isEmpty());
}

TEST_F(PressWalkDay, WDoesNotLetThroughWhatHasNoBlank) {
    takeOrder({aGarment(usual, "XL")});
    open();
    EXPECT_FALSE(part<AsideList>("asideList").aside().mayBeWaived(0));
    key(Qt::Key_W);
    EXPECT_FALSE(askedSlip);
    EXPECT_TRUE(panel().note.contains(QStringLiteral("cannot be let through"))) << panel().note.toStdString();
}

TEST_F(PressWalkDay, TurningToAGarmentPutsTheKeyboardOnIt) {
    const auto garments = readyToPress(2);
    const GarmentId aside = garmentsOf(takeOrder({aGarment(usual, "L")}).id).front();
    open();
    place->hide();
    SlipTarget matter;
    matter.garment = garments[1];
    place->turnTo(matter);
    auto& list = part<QListView>("walkList");
    EXPECT_EQ(static_cast<const WalkModel&>(*list.model()).garmentAt(list.currentIndex()), garments[1]);
    matter.garment = aside;
    place->turnTo(matter);
    ASSERT_TRUE(part<AsideList>("asideList").current());
    EXPECT_EQ(part<AsideList>("asideList").current()->garment, aside);
}

TEST_F(PressWalkDay, MouseOnTheFreeingActOfACardDoesIt) {
    const GarmentId garment = garmentsOf(takeOrder({aGarment(usual)}).id).front();
    open();
    auto& aside = part<AsideList>("asideList");
    const QRect card = aside.visualRect(aside.aside().index(0));
    QTest::mouseClick(aside.viewport(), Qt::LeftButton, {}, {card.center().x(), card.bottom() - 36});
    EXPECT_EQ(askedPlace, PlaceName::CuttingBench);
    EXPECT_EQ(askedMatter.garment, garment);
}

TEST_F(PressWalkDay, SShowsTheDayAsAStripWithWhatWillBeLate) {
    const GarmentId garment = hurriedGarment();
    open();
    auto& strip = part<DayStrip>("dayStrip");
    EXPECT_FALSE(strip.isVisible());
    key(Qt::Key_S);
    EXPECT_TRUE(strip.isVisible());
    const PlannedGarment& planned = *desk().shop()->plan.find(garment);
    EXPECT_TRUE(strip.saying().startsWith(
        QStringLiteral("1-a will be ready %1 late: at ").arg(timeSpan(planned.late))))
        << strip.saying().toStdString();
    EXPECT_TRUE(strip.saying().contains(QStringLiteral("and its promise needs it by ")));
    EXPECT_EQ(part<WalkNotice>("lateNotice").accessibleName(),
              QStringLiteral("1-a will be ready %1 late").arg(timeSpan(planned.late)));
    key(Qt::Key_S);
    EXPECT_FALSE(strip.isVisible());
}

TEST_F(PressWalkDay, WhatIsPromisedTodayAndHeldIsSaidWithWhatFreesItAndTLeadsThere) {
    takeOrder({aGarment(usual, "L")}); // 1-a: unwashed, promised another day
    OrderDraft today = anOrder({aGarment(usual, "L"), aGarment(usual, "L")});
    today.promised = LocalTime{now().today()} + Hours{18};
    const auto held = garmentsOf(valueOf(db::takeOrder(file(), today, now())).id);
    open();
    auto& notice = part<WalkNotice>("promisedAside");
    EXPECT_TRUE(notice.isVisible());
    EXPECT_EQ(notice.accessibleName(), QStringLiteral("2 is promised today and held."));
    EXPECT_EQ(notice.accessibleDescription(), QStringLiteral("Needed first: put in the wash."));
    EXPECT_EQ(part<DayStrip>("dayStrip").saying(), QStringLiteral("2 is promised today and held."));

    // From card to card of what is promised today; F then does what frees it.
    auto& aside = part<AsideList>("asideList");
    EXPECT_TRUE(aside.hasFocus()) << "nothing is ready to press, so that Next takes no key";
    part<Button>("pauseWalk").setFocus();
    key(Qt::Key_T);
    EXPECT_TRUE(aside.hasFocus());
    EXPECT_EQ(aside.current()->garment, held[0]);
    key(Qt::Key_T);
    EXPECT_EQ(aside.current()->garment, held[1]);
    key(Qt::Key_T);
    EXPECT_EQ(aside.current()->garment, held[0]);
    key(Qt::Key_F);
    EXPECT_EQ(askedPlace, PlaceName::BlankRail);
    EXPECT_EQ(askedMatter.garment, held[0]);
}

TEST_F(PressWalkDay, WhatWasPromisedBeforeSaysForWhenAndWhoElse) {
    const auto promisedIn = [&](Days days) {
        OrderDraft order = anOrder({aGarment(usual, "L")});
        order.promised = LocalTime{now().today() + days} + Hours{18};
        return valueOf(db::takeOrder(file(), order, now())).id;
    };
    promisedIn(Days{1});
    promisedIn(Days{2});
    promisedIn(Days{9});
    open();
    auto& notice = part<WalkNotice>("promisedAside");
    EXPECT_FALSE(notice.isVisible()) << "nothing is promised today";
    key(Qt::Key_T);
    EXPECT_EQ(panel().note, QStringLiteral("Nothing that is promised today is aside."));
    place.reset();
    time().setWall(kMorning + 48h);
    reopen();
    open();
    EXPECT_EQ(part<WalkNotice>("promisedAside").accessibleName(),
              QStringLiteral("1 was promised for Thu 26 Nov and is held. Also aside: 2."));
}

TEST_F(PressWalkDay, RowOfALateGarmentSaysByHowMuch) {
    const GarmentId garment = hurriedGarment();
    open();
    const auto& model = *part<QListView>("walkList").model();
    const QString late = timeSpan(desk().shop()->plan.find(garment)->late);
    QStringList rows;
    for (int row = 0; row < model.rowCount(); ++row)
        rows << model.index(row, 0).data(Qt::AccessibleTextRole).toString();
    EXPECT_TRUE(rows.join(QLatin1Char('\n')).contains(QStringLiteral("late %1").arg(late)))
        << rows.join(QLatin1Char('\n')).toStdString();
}

TEST_F(PressWalkDay, AfterASlipTheRestIsPlannedFromNowAndItsLatenessGrows) {
    const auto garments = readyToPress(1);
    const GarmentId hurried = hurriedGarment();
    open();
    part<QListView>("walkList")
        .setCurrentIndex(
            static_cast<const WalkModel&>(*part<QListView>("walkList").model()).indexOf(garments[0]));
    emit part<QListView>("walkList").activated(part<QListView>("walkList").currentIndex());
    ASSERT_EQ(stageOf(garments[0]), Stage::OnPress);
    const PlannedGarment before = *desk().shop()->plan.find(hurried);
    time().pass(Seconds{600}); // its first step by hand takes ten minutes
    key(Qt::Key_Space);
    const PlannedGarment after = *desk().shop()->plan.find(hurried);
    EXPECT_GT(after.begins - before.begins, Seconds{500});
    EXPECT_GT(after.late - before.late, Seconds{500});
    EXPECT_TRUE(part<WalkNotice>("lateNotice")
                    .accessibleName()
                    .contains(QStringLiteral("will be ready %1 late").arg(timeSpan(after.late))));
    for (const PlannedSpan& span : desk().shop()->plan.spans)
        EXPECT_GE(span.begins, now().instant);
}

TEST_F(PressWalkDay, DoubleClickTakesAGarmentOutOfTurnAndTheRestIsPlannedBehindIt) {
    const auto garments = readyToPress(3);
    open();
    auto& list = part<QListView>("walkList");
    const auto& model = static_cast<const WalkModel&>(*list.model());
    const QRect row = list.visualRect(model.indexOf(garments[2]));
    QTest::mouseClick(list.viewport(), Qt::LeftButton, {}, row.center());
    QTest::mouseDClick(list.viewport(), Qt::LeftButton, {}, row.center());
    EXPECT_EQ(stageOf(garments[2]), Stage::OnPress);
    const DayPlan& plan = desk().shop()->plan;
    for (const GarmentId other : {garments[0], garments[1]})
        EXPECT_GT(plan.find(other)->begins, plan.find(garments[2])->begins);
}

TEST_F(PressWalkDay, EmptyShopSaysWhatWillStandHereAndLeadsToTheTable) {
    open();
    auto& empty = part<QWidget>("walkEmpty");
    EXPECT_TRUE(empty.isVisible());
    QTest::keyClick(place->focusWidget(), Qt::Key_Return);
    EXPECT_EQ(askedPlace, PlaceName::FairTable);
}

TEST_F(PressWalkDay, ListsKeepTheRulesOfModelsAndReadAsSentences) {
    readyToPress(2);
    takeOrder({aGarment(usual, "L")});
    open();
    auto& list = part<QListView>("walkList");
    const QAbstractItemModelTester walkTester(list.model(),
                                              QAbstractItemModelTester::FailureReportingMode::Fatal);
    const QAbstractItemModelTester asideTester(part<AsideList>("asideList").model(),
                                               QAbstractItemModelTester::FailureReportingMode::Fatal);
    const QAbstractItemModelTester rackTester(part<RackList>("coolingRack").model(),
                                              QAbstractItemModelTester::FailureReportingMode::Fatal);
    QStringList rows;
    for (int row = 0; row < list.model()->rowCount(); ++row)
        rows << list.model()->index(row, 0).data().toString();
    ASSERT_EQ(rows.size(), 4) << rows.join(u'\n').toStdString();
    EXPECT_TRUE(rows[0].startsWith(QStringLiteral("Heat up to 150 °C")));
    EXPECT_TRUE(rows[1].startsWith(QStringLiteral("Run 1 at 150 °C, 2 garments")));
    EXPECT_TRUE(rows[2].endsWith(QStringLiteral("Tee, M, Moss, Heron, chest, planned")))
        << rows[2].toStdString();

    // A whole walk by keys keeps them so.
    for (int step = 0; step < 60; ++step) {
        time().pass(20s);
        key(Qt::Key_Space);
    }
    EXPECT_EQ(list.model()->rowCount(), 3) << "heating up is behind once the run is begun";
}

TEST_F(PressWalkDay, ManyGarmentsOpenAtOnce) {
    receiveBlanks(usual.style, "S", usual.moss, 200);
    wash(desk()
             .shop()
             ->facts.lots.begin()[static_cast<std::ptrdiff_t>(desk().shop()->facts.lots.size()) - 1]
             .id,
         200);
    receiveRoll(usual.film, usual.place, 100000_mm);
    std::vector<GarmentDraft> drafts(120, aGarment(usual, "S"));
    const auto garments = garmentsOf(takeOrder(drafts).id);
    std::vector<DecalId> decals;
    for (const GarmentId garment : garments)
        for (const Decal& decal : desk().shop()->facts.garments.at(garment).decals)
            decals.push_back(decal.id);
    const RollId roll = desk().shop()->facts.rolls.begin()[1].id;
    valueOf(db::cutDecals(file(), roll, decals, 36000_mm, desk().now()));
    desk().shop();
    QElapsedTimer watch;
    watch.start();
    open();
    place->repaint();
    RecordProperty("milliseconds", static_cast<int>(watch.elapsed()));
    std::printf("a day of 120 garments opened in %lld ms\n", static_cast<long long>(watch.elapsed()));
    EXPECT_EQ(part<QListView>("walkList").model()->rowCount(), 122);
}

} // namespace holdfast::app::test
