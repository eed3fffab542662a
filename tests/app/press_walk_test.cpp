// Press walk by its keys: real widgets, a clock that is moved by hand.
#include "app/places/press_walk/aside_list.h"
#include "app/places/press_walk/count_panel.h"
#include "app/places/press_walk/day_strip.h"
#include "app/places/press_walk/press_walk_place.h"
#include "app/places/press_walk/rack_list.h"
#include "app/places/press_walk/walk_model.h"
#include "app/widgets/button.h"
#include "db/actions/film_actions.h"
#include "db/actions/press_actions.h"
#include "tests/app/shop_fixture.h"

#include <QAbstractItemModelTester>
#include <QApplication>
#include <QElapsedTimer>
#include <QListView>
#include <QTest>

namespace holdfast::app::test {

namespace {

constexpr int kTicks = 2000; // real milliseconds in which the place must have noticed the time

class PressWalkKeys : public ShopFixture {
protected:
    PressWalkKeys() { usual = stockUsualShop(); }
    ~PressWalkKeys() override { place.reset(); }

    // One order of garments that are ready to press.
    std::vector<GarmentId> readyToPress(int count) {
        std::vector<GarmentDraft> drafts(static_cast<std::size_t>(count), aGarment(usual));
        const auto garments = garmentsOf(takeOrder(drafts).id);
        for (const GarmentId garment : garments)
            cut(garment, usual.roll);
        return garments;
    }

    void open() {
        place = std::make_unique<PressWalkPlace>(desk());
        connectAsked();
        showWindow(*place, {1270, 708});
        place->opened();
    }

    void connectAsked() {
        QObject::connect(&desk(), &ShopDesk::slipAsked, place.get(),
                         [this](SlipName slip, const Matter& matter) {
                             askedSlip = slip;
                             askedMatter = matter;
                         });
        QObject::connect(&desk(), &ShopDesk::placeAsked, place.get(),
                         [this](PlaceName name, const Matter& matter) {
                             askedPlace = name;
                             askedMatter = matter;
                         });
        QObject::connect(&desk(), &ShopDesk::failed, place.get(),
                         [this](const QString& reason) { failures << reason; });
        QObject::connect(&desk(), &ShopDesk::said, place.get(), [this](const QString& text) { said = text; });
    }

    template <class Widget>
    Widget& part(const char* name) {
        auto* found = place->findChild<Widget*>(QString::fromLatin1(name));
        if (!found)
            stopBecause(std::string{"no widget is called "} + name);
        return *found;
    }

    void key(Qt::Key key) {
        QWidget* focus = place->focusWidget() ? place->focusWidget() : place.get();
        QTest::keyClick(focus, key);
    }

    QString digits() { return part<CountPanel>("countPanel").digits(); }
    const PanelWords& panel() { return part<CountPanel>("countPanel").shown(); }
    QString nextText() { return part<Button>("nextStep").text(); }
    const RouteStep* openStepOf(GarmentId garment) {
        const Assessment& assessment = desk().shop()->of(garment);
        return assessment.progress.underway ? &assessment.route.steps[*assessment.progress.underway]
                                            : nullptr;
    }
    std::string openKey(GarmentId garment) {
        const RouteStep* step = openStepOf(garment);
        return step ? step->key : std::string{};
    }
    bool waitsUntil(const std::function<bool()>& holds) { return QTest::qWaitFor(holds, kTicks); }

    // By Space, each count waited for, until the garment's open step begins so.
    void walkTo(GarmentId garment, std::string_view stem) {
        for (int guard = 0; guard < 40 && !openKey(garment).starts_with(stem); ++guard) {
            if (const RouteStep* step = openStepOf(garment); step && step->isTimed())
                time().pass(step->counted());
            key(Qt::Key_Space);
        }
        ASSERT_TRUE(openKey(garment).starts_with(stem)) << "open: " << openKey(garment);
    }

    UsualShop usual;
    std::unique_ptr<PressWalkPlace> place;
    std::optional<SlipName> askedSlip;
    std::optional<PlaceName> askedPlace;
    Matter askedMatter;
    QStringList failures;
    QString said;
};

} // namespace

TEST_F(PressWalkKeys, SpaceWalksAGarmentThroughAllItsSteps) {
    const GarmentId garment = readyToPress(1).front();
    open();
    EXPECT_EQ(nextText(), QStringLiteral("Next: take up 1-a"));
    key(Qt::Key_Space);
    const Route route = desk().shop()->of(garment).route;
    for (const RouteStep& step : route.steps) {
        ASSERT_EQ(openKey(garment), step.key);
        if (!step.isTimed()) {
            EXPECT_EQ(panel().word, QString::fromStdString(step.title));
            EXPECT_TRUE(digits().isEmpty());
        } else {
            time().pass(step.counted() - 1s);
            EXPECT_TRUE(waitsUntil([&] { return digits() == QStringLiteral("1"); })) << step.key;
            key(Qt::Key_Space);
            ASSERT_EQ(openKey(garment), step.key) << "its count is not over yet";
            time().pass(1s);
            EXPECT_TRUE(waitsUntil([&] { return panel().mood == PanelWords::Mood::Now; })) << step.key;
        }
        key(Qt::Key_Space);
    }
    EXPECT_EQ(stageOf(garment), Stage::Resting);
    EXPECT_EQ(panel().word, QStringLiteral("All pressed"));
    EXPECT_TRUE(failures.isEmpty()) << failures.join(u' ').toStdString();
}

TEST_F(PressWalkKeys, PanelSaysTheSecondsAndThenLiftNowWithSecondsOver) {
    const GarmentId garment = readyToPress(1).front();
    open();
    walkTo(garment, "press");
    EXPECT_EQ(digits(), QStringLiteral("12"));
    EXPECT_EQ(panel().mood, PanelWords::Mood::Counting);
    EXPECT_EQ(panel().detail, QStringLiteral("150 °C · medium"));
    EXPECT_EQ(nextText(), QStringLiteral("Next: lift, let it cool"));
    time().pass(15s);
    EXPECT_TRUE(waitsUntil([&] { return digits() == QStringLiteral("+3"); }));
    EXPECT_EQ(panel().word, QStringLiteral("Lift now"));
    EXPECT_EQ(openKey(garment), "press-1") << "it waits for the maker";
}

TEST_F(PressWalkKeys, SpaceThatRepeatsWhileHeatCountsDoesNothing) {
    const GarmentId garment = readyToPress(1).front();
    open();
    walkTo(garment, "preheat");
    QWidget* focus = place->focusWidget();
    for (int repeat = 0; repeat < 50; ++repeat) {
        QKeyEvent pressed(QEvent::KeyPress, Qt::Key_Space, Qt::NoModifier, QStringLiteral(" "), true);
        QKeyEvent released(QEvent::KeyRelease, Qt::Key_Space, Qt::NoModifier, QStringLiteral(" "), true);
        QApplication::sendEvent(focus, &pressed);
        QApplication::sendEvent(focus, &released);
    }
    key(Qt::Key_Space);
    EXPECT_EQ(openKey(garment), "preheat-1");
    EXPECT_TRUE(panel().note.contains(QStringLiteral("Hold Space"))) << panel().note.toStdString();
}

TEST_F(PressWalkKeys, SpaceHeldForASecondLiftsEarlyAndOnce) {
    const GarmentId garment = readyToPress(1).front();
    open();
    walkTo(garment, "preheat");
    QWidget* focus = place->focusWidget();
    QTest::keyPress(focus, Qt::Key_Space);
    EXPECT_EQ(openKey(garment), "preheat-1");
    EXPECT_TRUE(waitsUntil([&] { return openKey(garment) == "place-1"; }));
    QKeyEvent repeated(QEvent::KeyPress, Qt::Key_Space, Qt::NoModifier, QStringLiteral(" "), true);
    QApplication::sendEvent(focus, &repeated);
    QTest::keyRelease(focus, Qt::Key_Space);
    EXPECT_EQ(openKey(garment), "place-1") << "one hold is one step";
}

TEST_F(PressWalkKeys, MouseOnNextObeysTheSameRule) {
    const GarmentId garment = readyToPress(1).front();
    open();
    walkTo(garment, "preheat");
    auto& next = part<Button>("nextStep");
    QTest::mouseClick(&next, Qt::LeftButton);
    EXPECT_EQ(openKey(garment), "preheat-1");
    QTest::mousePress(&next, Qt::LeftButton);
    EXPECT_TRUE(waitsUntil([&] { return openKey(garment) == "place-1"; }));
    QTest::mouseRelease(&next, Qt::LeftButton);
    EXPECT_EQ(openKey(garment), "place-1");
}

TEST_F(PressWalkKeys, CountIsRightAfterTheWindowWasHidden) {
    const GarmentId garment = readyToPress(1).front();
    open();
    walkTo(garment, "press");
    place->hide();
    time().pass(8s);
    showWindow(*place, {1270, 708});
    EXPECT_EQ(digits(), QStringLiteral("4"));
    place->hide();
    time().pass(60s);
    showWindow(*place, {1270, 708});
    EXPECT_EQ(digits(), QStringLiteral("+56"));
}

TEST_F(PressWalkKeys, WallClockThatIsSetChangesNoRunningCount) {
    const GarmentId garment = readyToPress(1).front();
    open();
    walkTo(garment, "press");
    time().pass(5s);
    time().setWall(now().instant + Hours{3});
    EXPECT_TRUE(waitsUntil([&] { return digits() == QStringLiteral("7"); }));
    time().setWall(now().instant - Hours{9});
    time().pass(2s);
    EXPECT_TRUE(waitsUntil([&] { return digits() == QStringLiteral("5"); }));
    EXPECT_FALSE(panel().offersRestart);
}

TEST_F(PressWalkKeys, WalkGoesOnWhereItWasAfterTheProgramWasClosed) {
    const GarmentId garment = readyToPress(1).front();
    open();
    walkTo(garment, "press");
    time().pass(3s);
    place.reset();
    reopen();
    time().pass(4s);
    open();
    EXPECT_EQ(openKey(garment), "press-1");
    EXPECT_EQ(digits(), QStringLiteral("5"));
    time().pass(5s);
    EXPECT_TRUE(waitsUntil([&] { return panel().word == QStringLiteral("Lift now"); }));
}

TEST_F(PressWalkKeys, ClockSetBackWhileClosedIsSaidAndCountedAgain) {
    const GarmentId garment = readyToPress(1).front();
    open();
    walkTo(garment, "press");
    place.reset();
    reopen();
    time().setWall(now().instant - Hours{1});
    open();
    EXPECT_TRUE(digits().isEmpty()) << "no count that cannot be known";
    EXPECT_TRUE(panel().offersRestart);
    EXPECT_TRUE(panel().detail.contains(QStringLiteral("the clock was set back")))
        << panel().detail.toStdString();
    EXPECT_TRUE(part<Button>("countAgain").isVisible());
    key(Qt::Key_C);
    EXPECT_EQ(digits(), QStringLiteral("12"));
    EXPECT_FALSE(panel().offersRestart);
}

TEST_F(PressWalkKeys, BGoesBackAStepAndBeforeTheFirstPutsTheGarmentBack) {
    const GarmentId garment = readyToPress(1).front();
    open();
    walkTo(garment, "preheat");
    key(Qt::Key_B);
    EXPECT_EQ(openKey(garment), "lint-roll-1");
    key(Qt::Key_B);
    EXPECT_EQ(openKey(garment), "read-tag-1");
    key(Qt::Key_B);
    EXPECT_EQ(stageOf(garment), Stage::ToPress);
    EXPECT_EQ(nextText(), QStringLiteral("Next: take up 1-a"));
    key(Qt::Key_B);
    EXPECT_TRUE(panel().note.contains(QStringLiteral("Nothing is on the press")));
}

TEST_F(PressWalkKeys, WhileOneCoolsTheNextIsTakenUp) {
    const auto garments = readyToPress(2);
    open();
    key(Qt::Key_Space);
    const GarmentId first = stageOf(garments[0]) == Stage::OnPress ? garments[0] : garments[1];
    const GarmentId second = first == garments[0] ? garments[1] : garments[0];
    walkTo(first, "press");
    time().pass(12s);
    key(Qt::Key_Space);
    EXPECT_EQ(stageOf(first), Stage::Cooling);
    EXPECT_EQ(openKey(second), "read-tag-1") << "one Space: on the rack, and the next in hand";

    auto& rack = part<RackList>("coolingRack");
    ASSERT_EQ(rack.rack().rowCount(), 1);
    EXPECT_EQ(rack.rack().row(0).digits, QStringLiteral("0:40"));
    time().pass(25s);
    EXPECT_TRUE(waitsUntil([&] { return rack.rack().row(0).state == RackRow::State::Soon; }));
    EXPECT_EQ(rack.rack().row(0).words, QStringLiteral("Soon, peel warm"));
    time().pass(15s);
    EXPECT_TRUE(waitsUntil([&] { return rack.rack().row(0).state == RackRow::State::Due; }));
    EXPECT_EQ(rack.rack().row(0).words, QStringLiteral("Peel warm now"));
    EXPECT_TRUE(waitsUntil([&] { return panel().note.contains(QStringLiteral("1 turns to it")); }));
}

TEST_F(PressWalkKeys, NumberKeyTurnsToACooledGarmentAndBackToTheOneInHand) {
    const auto garments = readyToPress(2);
    open();
    key(Qt::Key_Space);
    const GarmentId first = stageOf(garments[0]) == Stage::OnPress ? garments[0] : garments[1];
    const GarmentId second = first == garments[0] ? garments[1] : garments[0];
    walkTo(first, "cool");
    time().pass(10s);
    key(Qt::Key_1);
    EXPECT_EQ(openKey(first), "cool-1") << "it still cools, and the key was not held";
    time().pass(30s);
    key(Qt::Key_1);
    EXPECT_EQ(openKey(first), "peel-1");
    EXPECT_EQ(panel().word, QStringLiteral("Peel warm, one motion"));

    // The other one was put by; its number turns back to it.
    auto& rack = part<RackList>("coolingRack");
    ASSERT_EQ(rack.rack().rowCount(), 1);
    EXPECT_EQ(rack.rack().row(0).garment, second);
    EXPECT_EQ(rack.rack().row(0).state, RackRow::State::PutBy);
    key(Qt::Key_1);
    key(Qt::Key_Space);
    EXPECT_EQ(openKey(second), "lint-roll-1");
    EXPECT_EQ(openKey(first), "peel-1");
    EXPECT_TRUE(failures.isEmpty()) << failures.join(u' ').toStdString();
}

TEST_F(PressWalkKeys, NothingIsTurnedToWhileTheOneInHandIsUnderThePlaten) {
    const auto garments = readyToPress(2);
    open();
    key(Qt::Key_Space);
    const GarmentId first = stageOf(garments[0]) == Stage::OnPress ? garments[0] : garments[1];
    const GarmentId second = first == garments[0] ? garments[1] : garments[0];
    walkTo(first, "cool");
    key(Qt::Key_Space);
    key(Qt::Key_Space);
    ASSERT_EQ(openKey(second), "preheat-1");
    time().pass(40s);
    key(Qt::Key_1);
    EXPECT_EQ(openKey(first), "cool-1");
    EXPECT_TRUE(panel().note.contains(QStringLiteral("under the platen"))) << panel().note.toStdString();
}

TEST_F(PressWalkKeys, ArrowAndEnterTakeAGarmentOutOfTurn) {
    const auto garments = readyToPress(3);
    open();
    auto& list = part<QListView>("walkList");
    const auto& model = static_cast<const WalkModel&>(*list.model());
    key(Qt::Key_Down);
    EXPECT_TRUE(list.hasFocus());
    key(Qt::Key_Down);
    key(Qt::Key_Down);
    const GarmentId wanted = *model.garmentAt(list.currentIndex());
    ASSERT_EQ(list.currentIndex().row(), model.rowCount() - 1);
    key(Qt::Key_Return);
    EXPECT_EQ(stageOf(wanted), Stage::OnPress);
    EXPECT_TRUE(part<Button>("nextStep").hasFocus());

    // A second one is not taken up beside it, and the place says why.
    key(Qt::Key_Left);
    list.setCurrentIndex(model.indexOf(garments[0] == wanted ? garments[1] : garments[0]));
    key(Qt::Key_Return);
    EXPECT_TRUE(panel().note.contains(QStringLiteral("is on the press"))) << panel().note.toStdString();
}

TEST_F(PressWalkKeys, PausedWalkIgnoresSpaceButHeatCountsOn) {
    const GarmentId garment = readyToPress(1).front();
    open();
    walkTo(garment, "press");
    key(Qt::Key_P);
    EXPECT_FALSE(part<Button>("nextStep").isEnabled());
    time().pass(12s);
    EXPECT_TRUE(waitsUntil([&] { return panel().word == QStringLiteral("Lift now"); }));
    key(Qt::Key_Space);
    EXPECT_EQ(openKey(garment), "press-1");
    key(Qt::Key_P);
    key(Qt::Key_Space);
    EXPECT_EQ(openKey(garment), "cool-1");
}

TEST_F(PressWalkKeys, HeldGarmentGoesBackOnTheWalkBeforeItHadHeat) {
    const GarmentId garment = readyToPress(1).front();
    open();
    walkTo(garment, "lint-roll");
    key(Qt::Key_H);
    EXPECT_TRUE(part<Button>("backOnTheWalk").isVisible());
    key(Qt::Key_R);
    EXPECT_EQ(stageOf(garment), Stage::ToPress);
    EXPECT_TRUE(part<Button>("holdGarment").isVisible());

    walkTo(garment, "place");
    key(Qt::Key_H);
    EXPECT_FALSE(part<Button>("backOnTheWalk").isEnabled());
    key(Qt::Key_R);
    EXPECT_EQ(openKey(garment), "place-1");
    EXPECT_TRUE(panel().note.contains(QStringLiteral("It has had heat"))) << panel().note.toStdString();
    key(Qt::Key_Escape);
    EXPECT_TRUE(part<Button>("holdGarment").isVisible());
}

TEST_F(PressWalkKeys, SpoiledGarmentIsToBeCutAgainOnAnotherBlank) {
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

TEST_F(PressWalkKeys, FCutsTheWaitingDecalsFromTheirRollAndSaysWhatItCharged) {
    const GarmentId garment = garmentsOf(takeOrder({aGarment(usual)}).id).front();
    open();
    const Millimetres before = desk().shop()->facts.rolls.at(usual.roll).left;
    EXPECT_EQ(part<AsideList>("asideList").aside().freeingWordsAt(0), QStringLiteral("Cut from R-01"));
    key(Qt::Key_F);
    EXPECT_EQ(stageOf(garment), Stage::ToPress);
    const Millimetres charged = before - desk().shop()->facts.rolls.at(usual.roll).left;
    EXPECT_GT(charged, 0_mm);
    EXPECT_EQ(said, QStringLiteral("1 decal of 1-a cut from R-01, %1 mm charged.").arg(charged.value));
    EXPECT_EQ(nextText(), QStringLiteral("Next: take up 1-a"));
}

TEST_F(PressWalkKeys, FOnAnUnwashedGarmentLeadsToTheWash) {
    const GarmentId garment = garmentsOf(takeOrder({aGarment(usual, "L")}).id).front();
    cut(garment, usual.roll);
    open();
    key(Qt::Key_F);
    EXPECT_EQ(askedPlace, PlaceName::BlankRail);
    EXPECT_EQ(askedMatter.garment, garment);
}

TEST_F(PressWalkKeys, ArrowsChooseTheCardThatFActsOn) {
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
    EXPECT_EQ(stageOf(second), Stage::ToPress);
    EXPECT_FALSE(askedPlace) << "the first card was left alone";
}

TEST_F(PressWalkKeys, WAsksForTheWaiverAndAWaivedGarmentJoinsTheWalk) {
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

TEST_F(PressWalkKeys, WOnAGarmentThatOnlyWaitsSaysSo) {
    takeOrder({aGarment(usual)});
    open();
    key(Qt::Key_W);
    EXPECT_FALSE(askedSlip);
    EXPECT_FALSE(panel().note.isEmpty());
}

TEST_F(PressWalkKeys, WDoesNotLetThroughWhatHasNoBlank) {
    takeOrder({aGarment(usual, "XL")});
    open();
    EXPECT_FALSE(part<AsideList>("asideList").aside().mayBeWaived(0));
    key(Qt::Key_W);
    EXPECT_FALSE(askedSlip);
    EXPECT_TRUE(panel().note.contains(QStringLiteral("cannot be let through"))) << panel().note.toStdString();
}

TEST_F(PressWalkKeys, TurningToAGarmentPutsTheKeyboardOnIt) {
    const auto garments = readyToPress(2);
    const GarmentId aside = garmentsOf(takeOrder({aGarment(usual, "L")}).id).front();
    open();
    place->hide();
    Matter matter;
    matter.garment = garments[1];
    place->turnTo(matter);
    auto& list = part<QListView>("walkList");
    EXPECT_EQ(static_cast<const WalkModel&>(*list.model()).garmentAt(list.currentIndex()), garments[1]);
    matter.garment = aside;
    place->turnTo(matter);
    ASSERT_TRUE(part<AsideList>("asideList").current());
    EXPECT_EQ(part<AsideList>("asideList").current()->garment, aside);
}

TEST_F(PressWalkKeys, MouseOnTheFreeingActOfACardDoesIt) {
    const GarmentId garment = garmentsOf(takeOrder({aGarment(usual)}).id).front();
    open();
    auto& aside = part<AsideList>("asideList");
    const QRect card = aside.visualRect(aside.aside().index(0));
    QTest::mouseClick(aside.viewport(), Qt::LeftButton, {}, {card.center().x(), card.bottom() - 36});
    EXPECT_EQ(stageOf(garment), Stage::ToPress);
}

TEST_F(PressWalkKeys, SShowsTheDayAsAStripWithWhatWillBeLate) {
    OrderDraft hurried = anOrder({aGarment(usual)});
    hurried.promised = LocalTime{now().today()} + Hours{18};
    const GarmentId garment = garmentsOf(valueOf(db::takeOrder(file(), hurried, now())).id).front();
    cut(garment, usual.roll);
    open();
    auto& strip = part<DayStrip>("dayStrip");
    EXPECT_FALSE(strip.isVisible());
    key(Qt::Key_S);
    EXPECT_TRUE(strip.isVisible());
    EXPECT_TRUE(strip.saying().startsWith(QStringLiteral("Late if this plan is kept: 1-a by ")))
        << strip.saying().toStdString();
    EXPECT_TRUE(place->subtitle().contains(QStringLiteral("1 will be late")));
    key(Qt::Key_S);
    EXPECT_FALSE(strip.isVisible());
}

TEST_F(PressWalkKeys, EmptyShopSaysWhatWillStandHereAndLeadsToTheTable) {
    open();
    auto& empty = part<QWidget>("walkEmpty");
    EXPECT_TRUE(empty.isVisible());
    QTest::keyClick(place->focusWidget(), Qt::Key_Return);
    EXPECT_EQ(askedPlace, PlaceName::FairTable);
}

TEST_F(PressWalkKeys, ListsKeepTheRulesOfModelsAndReadAsSentences) {
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
    for (int step = 0; step < 30; ++step) {
        time().pass(60s);
        key(Qt::Key_Space);
    }
    EXPECT_EQ(list.model()->rowCount(), 3) << "heating up is behind once the run is begun";
}

TEST_F(PressWalkKeys, ManyGarmentsOpenAtOnce) {
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
    valueOf(db::cutDecals(file(), roll, decals, 36000_mm));
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
