// SPDX-License-Identifier: GPL-3.0-or-later
// Press walk by its keys: steps, counts, the rack, out of turn.
#include "app/places/press_walk/rack_list.h"
#include "app/places/press_walk/walk_model.h"
#include "db/actions/press_actions.h"
#include "tests/app/press_walk_fixture.h"

#include <QApplication>
#include <QListView>

namespace holdfast::app::test {

namespace {

class PressWalkKeys : public PressWalkFixture {};

} // namespace

TEST_F(PressWalkKeys, SpaceWalksAGarmentThroughAllItsSteps) {
    const GarmentId garment = readyToPress(1).front();
    open();
    EXPECT_EQ(nextText(), QStringLiteral("Next: pick up 1-a"));
    key(Qt::Key_Space);
    const Route route = desk().shop()->of(garment).route;
    for (const RouteStep& step : route.steps) {
        ASSERT_EQ(openKey(garment), step.key);
        if (!step.isTimed()) {
            EXPECT_EQ(panel().word, words(step.title));
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

// On a busy machine the system tells a repeat as a release and a press, both of the same moment.
TEST_F(PressWalkKeys, RepeatThatComesAsAReleaseAndAPressIsNoSecondPress) {
    const GarmentId garment = readyToPress(1).front();
    open();
    const auto send = [&](QEvent::Type type, quint64 at) {
        QKeyEvent event(type, Qt::Key_Space, Qt::NoModifier, QStringLiteral(" "));
        event.setTimestamp(at);
        QApplication::sendEvent(place->focusWidget(), &event);
    };
    send(QEvent::KeyPress, 1000); // takes it up
    const std::string first = openKey(garment);
    ASSERT_FALSE(first.empty());
    send(QEvent::KeyRelease, 1660);
    send(QEvent::KeyPress, 1660);
    EXPECT_EQ(openKey(garment), first);
    send(QEvent::KeyRelease, 2000);
    send(QEvent::KeyPress, 2400); // a finger
    EXPECT_NE(openKey(garment), first);
}

TEST_F(PressWalkKeys, NoteGoesWithWhatItWasAbout) {
    const GarmentId garment = readyToPress(1).front();
    open();
    walkTo(garment, "preheat");
    key(Qt::Key_Space);
    EXPECT_FALSE(panel().note.isEmpty()) << "still counting";
    valueOf(db::backAStep(file(), garment));
    EXPECT_TRUE(panel().note.isEmpty()) << panel().note.toStdString();
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
    EXPECT_EQ(nextText(), QStringLiteral("Next: pick up 1-a"));
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
}

TEST_F(PressWalkKeys, WarmPeelIsWhatNextOffersTheMomentItIsDueAndTheOneInHandWaits) {
    const auto garments = readyToPress(2);
    open();
    key(Qt::Key_Space);
    const GarmentId first = stageOf(garments[0]) == Stage::OnPress ? garments[0] : garments[1];
    const GarmentId second = first == garments[0] ? garments[1] : garments[0];
    walkTo(first, "cool");
    ASSERT_EQ(openKey(second), "read-tag-1");
    const QString number = QStringLiteral("1-") + QChar(first == garments[0] ? u'a' : u'b');
    time().pass(39s);
    EXPECT_EQ(nextText(), QStringLiteral("Next: lint roll"));
    time().pass(1s);
    EXPECT_TRUE(waitsUntil([&] { return nextText() == QStringLiteral("Next: peel warm, ") + number; }))
        << nextText().toStdString();
    EXPECT_EQ(panel().word, QStringLiteral("Peel warm"));
    EXPECT_EQ(panel().mood, PanelWords::Mood::Now);
    key(Qt::Key_Space);
    EXPECT_EQ(openKey(first), "peel-1");
    EXPECT_EQ(openKey(second), "read-tag-1") << "nothing was noted of the one in hand";
    EXPECT_TRUE(failures.isEmpty()) << failures.join(u' ').toStdString();
}

TEST_F(PressWalkKeys, WarmPeelComesBeforeACoolOneThatIsHoursLate) {
    const FilmId coolFilm = addFilm("Chalk", [](Film& film) {
        film.recipe->peel = Peel::Cool;
        film.recipe->coolBeforePeel = Seconds{5};
    });
    const RollId coolRoll = receiveRoll(coolFilm, usual.place);
    GarmentDraft draft = aGarment(usual);
    draft.decals[0].film = coolFilm;
    const GarmentId cool = garmentsOf(takeOrder({draft}).id).front();
    cut(cool, coolRoll);
    const GarmentId warm = readyToPress(1).front();
    open();
    auto& list = part<QListView>("walkList");
    const auto& model = static_cast<const WalkModel&>(*list.model());
    emit list.activated(model.indexOf(cool));
    walkTo(cool, "press");
    time().pass(12s);
    key(Qt::Key_Space); // on the rack, and the other in hand
    ASSERT_EQ(stageOf(cool), Stage::Cooling);
    ASSERT_EQ(stageOf(warm), Stage::OnPress);
    time().pass(2h + 29min);
    EXPECT_TRUE(waitsUntil([&] { return panel().note.contains(QStringLiteral("peel cool now")); }))
        << panel().note.toStdString();
    EXPECT_EQ(nextText(), QStringLiteral("Next: lint roll")) << "a cool peel keeps";
    walkTo(warm, "press");
    time().pass(12s);
    key(Qt::Key_Space);
    // The press is free, so the cool one was brought back; its peel is by hand.
    ASSERT_EQ(openKey(cool), "peel-1");
    ASSERT_EQ(openKey(warm), "cool-1");
    key(Qt::Key_B);
    ASSERT_EQ(openKey(cool), "cool-1") << "back on the rack";
    time().pass(40s);
    EXPECT_TRUE(waitsUntil([&] { return nextText().startsWith(QStringLiteral("Next: peel warm")); }))
        << nextText().toStdString();
    key(Qt::Key_Space);
    EXPECT_EQ(openKey(warm), "peel-1");
    EXPECT_EQ(openKey(cool), "cool-1");
    EXPECT_TRUE(panel().note.isEmpty())
        << "nothing leads away from a warm peel: " << panel().note.toStdString();
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

TEST_F(PressWalkKeys, PausedWalkIgnoresSpace) {
    const GarmentId garment = readyToPress(1).front();
    open();
    walkTo(garment, "lint-roll");
    key(Qt::Key_P);
    EXPECT_FALSE(part<Button>("nextStep").isEnabled());
    EXPECT_TRUE(part<Button>("pauseWalk").hasFocus());
    key(Qt::Key_Space);
    EXPECT_EQ(openKey(garment), "lint-roll-1");
    key(Qt::Key_P);
    EXPECT_TRUE(part<Button>("nextStep").hasFocus());
}

TEST_F(PressWalkKeys, WhatLiesUnderHeatIsLiftedInAPausedWalkAndNothingElseIsTakenUp) {
    const auto garments = readyToPress(2);
    open();
    key(Qt::Key_Space);
    const GarmentId first = stageOf(garments[0]) == Stage::OnPress ? garments[0] : garments[1];
    const GarmentId second = first == garments[0] ? garments[1] : garments[0];
    walkTo(first, "press");
    key(Qt::Key_P);
    time().pass(12s);
    EXPECT_TRUE(waitsUntil([&] { return panel().word == QStringLiteral("Lift now"); }));
    EXPECT_TRUE(panel().note.contains(QStringLiteral("can still be lifted"))) << panel().note.toStdString();
    key(Qt::Key_Space);
    EXPECT_EQ(openKey(first), "cool-1");
    EXPECT_EQ(stageOf(second), Stage::ToPress) << "it is paused";
    time().pass(40s);
    key(Qt::Key_Space);
    EXPECT_EQ(openKey(first), "cool-1");
    key(Qt::Key_P);
    EXPECT_TRUE(waitsUntil([&] { return panel().word == QStringLiteral("Peel warm"); }));
    key(Qt::Key_Space);
    EXPECT_EQ(openKey(first), "peel-1");
}

TEST_F(PressWalkKeys, LettersAndDigitsTypedIntoTheWalkFindAGarmentAndDoNothing) {
    const auto garments = readyToPress(3);
    open();
    key(Qt::Key_Space);
    const GarmentId inHand =
        *std::ranges::find_if(garments, [&](GarmentId it) { return !openKey(it).empty(); });
    const auto entries = [&] { return file().recent(1000).size(); };
    auto& list = part<QListView>("walkList");
    list.setFocus();
    const std::size_t before = entries();
    for (int letter = Qt::Key_A; letter <= Qt::Key_Z; ++letter)
        QTest::keyClick(&list, static_cast<Qt::Key>(letter));
    for (int digit = Qt::Key_0; digit <= Qt::Key_9; ++digit)
        QTest::keyClick(&list, static_cast<Qt::Key>(digit));
    EXPECT_EQ(entries(), before);
    EXPECT_FALSE(askedSlip || askedPlace);
    EXPECT_EQ(openKey(inHand), "read-tag-1");
    QTest::qWait(QApplication::keyboardInputInterval() + 50);
    QTest::keyClicks(&list, QStringLiteral("1-c"));
    const auto& model = static_cast<const WalkModel&>(*list.model());
    EXPECT_EQ(model.garmentAt(list.currentIndex()), garments[2]);
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

} // namespace holdfast::app::test
