// SPDX-License-Identifier: GPL-3.0-or-later
// The frame about the places: keys, the foot line, slips at the edge, the finder, the first start.

#include "app/desk/machine_settings.h"
#include "app/shell/command_finder.h"
#include "app/shell/finder_model.h"
#include "app/shell/foot_line.h"
#include "app/shell/main_window.h"
#include "app/shell/rail.h"
#include "app/shell/shop_paths.h"
#include "app/shell/shop_start.h"
#include "app/shell/slip_edge.h"
#include "app/shell/workshop.h"
#include "app/slips/form_slip.h"
#include "app/theme/tokens.h"
#include "app/widgets/button.h"
#include "app/widgets/field.h"
#include "app/widgets/label.h"
#include "app/widgets/long_field.h"
#include "db/actions/film_actions.h"
#include "tests/app/shop_fixture.h"

#include <QAbstractItemModelTester>
#include <QApplication>
#include <QFile>
#include <QLineEdit>
#include <QListView>
#include <QScrollArea>
#include <QScrollBar>
#include <QSignalSpy>
#include <QTest>

#include <algorithm>

namespace holdfast::app {
namespace {

using test::ShopFixture;
using test::showWindow;
using test::typeText;
using test::UsualShop;
using namespace std::chrono_literals;
using namespace holdfast::literals;

void hit(Qt::Key key, Qt::KeyboardModifiers modifiers = Qt::NoModifier) {
    QWidget* target = QApplication::focusWidget();
    ASSERT_NE(target, nullptr) << "nothing has the keyboard";
    QTest::keyClick(target, key, modifiers);
}

class Shell : public ShopFixture {
protected:
    void TearDown() override {
        m_window.reset();
        setLight(*qApp, Light::Day);
    }

    // The window over the fixture's file, which it opens itself.
    MainWindow& openWindow() {
        close();
        m_window = std::make_unique<MainWindow>(time().clock());
        m_window->open(test::valueOf(db::Shop::open(path(), time().clock().now)));
        showWindow(*m_window);
        return *m_window;
    }
    void closeWindow() { m_window.reset(); }

    MainWindow& window() { return *m_window; }
    Workshop& workshop() { return *m_window->workshop(); }
    ShopDesk& open() { return *m_window->desk(); }

    template <class Widget = QWidget>
    Widget* find(const char* name) {
        return m_window->findChild<Widget*>(QLatin1String(name));
    }
    QString title() { return find<Label>("placeTitle")->text(); }
    QString foot() { return workshop().foot()->words(); }

    std::unique_ptr<MainWindow> m_window;
};

// ── places ────────────────────────────────────────────────────────────────────────────────────────────

TEST_F(Shell, ControlAndANumberTurnToEachPlace) {
    openWindow();
    for (const BuiltPlace& place : builtPlaces()) {
        QTest::keyClick(m_window.get(), static_cast<Qt::Key>(Qt::Key_0 + place.key), Qt::ControlModifier);
        EXPECT_EQ(workshop().current(), place.name) << place.title;
        EXPECT_EQ(title(), place.words());
        EXPECT_TRUE(workshop().place()->isVisible());
    }
    EXPECT_EQ(title().toStdString(), "Back room");
}

TEST_F(Shell, PlaceIsMadeWhenItIsFirstOpened) {
    openWindow();
    EXPECT_EQ(m_window->findChildren<Place*>().size(), 1);
    workshop().turnTo(PlaceName::FilmShelf);
    EXPECT_EQ(m_window->findChildren<Place*>().size(), 2);
    workshop().turnTo(PlaceName::FairTable);
    workshop().turnTo(PlaceName::FilmShelf);
    EXPECT_EQ(m_window->findChildren<Place*>().size(), 2);
}

TEST_F(Shell, LastPlaceAndLightComeBackAfterClosing) {
    openWindow();
    workshop().turnTo(PlaceName::BlankRail);
    QTest::keyClick(m_window.get(), Qt::Key_F6);
    EXPECT_EQ(light(), Light::Evening);
    QTest::qWait(0); // the note of the place is written once the place is seen
    closeWindow();
    setLight(*qApp, Light::Day);
    openWindow();
    EXPECT_EQ(workshop().current(), PlaceName::BlankRail);
    EXPECT_EQ(light(), Light::Evening);
    QTest::keyClick(m_window.get(), Qt::Key_E, Qt::ControlModifier);
    EXPECT_EQ(light(), Light::Day);
}

TEST_F(Shell, RailCountsWhatWaitsForThePressAndRollsOutsideTheirLimits) {
    const UsualShop usual = stockUsualShop();
    const auto taken = takeOrder({aGarment(usual), aGarment(usual)});
    for (const GarmentId garment : garmentsOf(taken.id))
        cut(garment, usual.roll);
    time().pass(1h);
    test::valueOf(db::recordReading(file(), usual.place, {now().instant, 19_C, 72_rh}));
    openWindow();
    const auto* walk = find("rail-press-walk");
    QTRY_COMPARE(walk->accessibleDescription(), QStringLiteral("2 garments to press"));
    EXPECT_EQ(find("rail-film-shelf")->accessibleDescription().toStdString(),
              "1 roll past or outside its limits");
    EXPECT_NE(find("rail-air")->accessibleName().indexOf(QStringLiteral("72 %")), -1);
}

// ── size and keys ─────────────────────────────────────────────────────────────────────────────────────

// Small laptops, a tablet on its end, and 1366 × 768 at 150 and 160 %.
TEST_F(Shell, EveryPlaceCanBeSeenWholeOnSmallScreens) {
    stockUsualShop();
    openWindow();
    auto* room = find<QScrollArea>("placeRoom");
    for (const QSize size :
         {QSize(1366, 728), QSize(1024, 560), QSize(800, 1240), QSize(911, 486), QSize(854, 450)}) {
        window().resize(size);
        for (const BuiltPlace& built : builtPlaces()) {
            workshop().turnTo(built.name);
            QTest::qWait(0);
            EXPECT_EQ(window().size(), size) << built.title;
            // Nothing is squeezed below what it needs, and what does not fit can be scrolled to.
            const QSize least = workshop().place()->minimumSizeHint();
            EXPECT_GE(workshop().place()->width(), least.width()) << built.title;
            EXPECT_GE(workshop().place()->height(), least.height()) << built.title;
            const QRect seen = room->viewport()->rect();
            EXPECT_GE(seen.height() + room->verticalScrollBar()->maximum(), workshop().place()->height())
                << built.title;
            EXPECT_GE(seen.width() + room->horizontalScrollBar()->maximum(), workshop().place()->width())
                << built.title;
            for (const auto* button : window().findChildren<RailButton*>())
                EXPECT_GE(button->height(), 30) << built.title;
        }
    }
}

TEST_F(Shell, RailsWordsStayOnALowWindow) {
    openWindow();
    window().resize(854, 450);
    int foot = 0;
    for (const BuiltPlace& built : builtPlaces()) {
        auto* button = find(("rail-" + std::string(built.code)).c_str());
        EXPECT_GE(button->y(), foot) << built.title;
        foot = button->geometry().bottom();
    }
    EXPECT_LE(foot, find("rail")->height());
}

TEST_F(Shell, F1ListsTheKeysOfThePlaceAndThoseOfAll) {
    stockUsualShop();
    openWindow();
    workshop().turnTo(PlaceName::FilmShelf);
    QTest::keyClick(m_window.get(), Qt::Key_F1);
    ASSERT_TRUE(workshop().slipEdge()->isOpen());
    QStringList said;
    for (const auto* label : workshop().slipEdge()->findChildren<Label*>())
        said << label->text();
    EXPECT_TRUE(said.contains(QStringLiteral("Film shelf")));
    EXPECT_TRUE(said.contains(QStringLiteral("Everywhere")));
    EXPECT_TRUE(said.contains(QStringLiteral("Record reading")) ||
                said.filter(QStringLiteral("eading")).size() > 0)
        << said.join(QStringLiteral(" | ")).toStdString();
    hit(Qt::Key_Escape);
    EXPECT_FALSE(workshop().slipEdge()->isOpen());
}

TEST_F(Shell, SizeOfTextIsThisMachinesAndWaitsForAnOpenForm) {
    openWindow();
    QSignalSpy asked(&workshop(), &Workshop::textSizeAsked);
    emit open().slipAsked(SlipName::AddPress, {});
    workshop().act(ShellAct::LargerText);
    EXPECT_EQ(asked.count(), 0);
    workshop().slipEdge()->close();
    workshop().act(ShellAct::LargerText);
    ASSERT_EQ(asked.count(), 1);
    EXPECT_EQ(asked.front().front().toInt(), 110);
    EXPECT_EQ(nextTextSize(160, 1), 160);
    EXPECT_EQ(nextTextSize(80, -1), 80);
    EXPECT_EQ(nextTextSize(100, 2), 125);
}

TEST_F(Shell, KeyboardComesBackWhenWhatHadItGoes) {
    openWindow();
    workshop().turnTo(PlaceName::OrderBook);
    auto* gone = new QLineEdit(workshop().place());
    gone->show();
    gone->setFocus();
    ASSERT_EQ(QApplication::focusWidget(), gone);
    delete gone;
    QTRY_VERIFY(QApplication::focusWidget() != nullptr);
    EXPECT_TRUE(workshop().place()->isAncestorOf(QApplication::focusWidget()));

    auto* hidden = new QLineEdit(workshop().place());
    hidden->show();
    hidden->setFocus();
    hidden->hide();
    QTest::qWait(0);
    ASSERT_NE(QApplication::focusWidget(), nullptr);
    EXPECT_TRUE(workshop().place()->isAncestorOf(QApplication::focusWidget()));
}

// ── foot line and undo ────────────────────────────────────────────────────────────────────────────────

TEST_F(Shell, FootLineSaysTheLastActAndControlZUndoesIt) {
    const UsualShop usual = stockUsualShop();
    openWindow();
    workshop().turnTo(PlaceName::FilmShelf);
    test::valueOf(db::putRollAway(open().file(), usual.roll, true));
    const QString done = foot();
    EXPECT_FALSE(done.isEmpty());
    EXPECT_EQ(done.toStdString(), open().file().recent(1).front().title);
    EXPECT_EQ(open().shop()->facts.rolls.at(usual.roll).state, RollState::PutAway);
    QTest::keyClick(m_window.get(), Qt::Key_Z, Qt::ControlModifier);
    EXPECT_EQ(open().shop()->facts.rolls.at(usual.roll).state, RollState::OnShelf);
    EXPECT_TRUE(foot().startsWith(QStringLiteral("Undone: "))) << foot().toStdString();
}

TEST_F(Shell, ControlZUndoesWhileALineWithNothingOfItsOwnHasTheKeyboard) {
    const UsualShop usual = stockUsualShop();
    openWindow();
    workshop().turnTo(PlaceName::OrderBook);
    test::valueOf(db::putRollAway(open().file(), usual.roll, true));
    auto* line = find<Field>("orderSearch")->editor();
    line->setFocus();
    hit(Qt::Key_Z, Qt::ControlModifier);
    EXPECT_EQ(open().shop()->facts.rolls.at(usual.roll).state, RollState::OnShelf);
    // What was typed is the line's own to undo first.
    test::valueOf(db::putRollAway(open().file(), usual.roll, true));
    line->setFocus();
    typeText(QStringLiteral("dusk"));
    hit(Qt::Key_Z, Qt::ControlModifier);
    EXPECT_EQ(open().shop()->facts.rolls.at(usual.roll).state, RollState::PutAway);
}

TEST_F(Shell, ControlShiftZDoesAgainWhatWasUndoneAndTheFootOffersIt) {
    const UsualShop usual = stockUsualShop();
    openWindow();
    test::valueOf(db::putRollAway(open().file(), usual.roll, true));
    const auto state = [&] { return open().shop()->facts.rolls.at(usual.roll).state; };
    auto* redo = find<Button>("footRedo");
    EXPECT_FALSE(redo->isVisible());
    hit(Qt::Key_Z, Qt::ControlModifier);
    ASSERT_EQ(state(), RollState::OnShelf);
    EXPECT_TRUE(redo->isVisible());
    EXPECT_EQ(redo->text().toStdString(), "Redo");
    hit(Qt::Key_Z, Qt::ControlModifier | Qt::ShiftModifier);
    EXPECT_EQ(state(), RollState::PutAway);
    EXPECT_TRUE(foot().startsWith(QStringLiteral("Redone: "))) << foot().toStdString();
    EXPECT_FALSE(redo->isVisible());
    hit(Qt::Key_Z, Qt::ControlModifier);
    redo->click();
    EXPECT_EQ(state(), RollState::PutAway);
    // Nothing is left to redo, and the key says so.
    hit(Qt::Key_Z, Qt::ControlModifier | Qt::ShiftModifier);
    EXPECT_TRUE(foot().startsWith(QStringLiteral("There is nothing to redo."))) << foot().toStdString();
    EXPECT_EQ(state(), RollState::PutAway);
}

TEST_F(Shell, NothingToUndoIsSaidInWords) {
    openWindow();
    QTest::keyClick(m_window.get(), Qt::Key_Z, Qt::ControlModifier);
    EXPECT_EQ(foot().toStdString(), "There is nothing to undo.");
}

TEST_F(Shell, RefusalStandsUntilTheNextAct) {
    const UsualShop usual = stockUsualShop();
    openWindow();
    QTest::qWait(0);
    EXPECT_FALSE(open().done(db::correctLength(open().file(), usual.roll, 999'999'999_mm, "measured")));
    EXPECT_TRUE(workshop().foot()->isFailure());
    EXPECT_FALSE(foot().isEmpty());
    workshop().turnTo(PlaceName::OrderBook);
    EXPECT_TRUE(workshop().foot()->isFailure());
    test::valueOf(db::putRollAway(open().file(), usual.roll, true));
    EXPECT_FALSE(workshop().foot()->isFailure());
}

// ── slips ─────────────────────────────────────────────────────────────────────────────────────────────

TEST_F(Shell, SlipTakesTheKeyboardAndEscapeGivesItBack) {
    stockUsualShop();
    openWindow();
    workshop().turnTo(PlaceName::OrderBook);
    auto* search = find<Field>("orderSearch")->editor();
    search->setFocus();
    emit open().slipAsked(SlipName::AddPress, {});
    ASSERT_TRUE(workshop().slipEdge()->isOpen());
    EXPECT_TRUE(workshop().slipEdge()->hasKeyboard());
    EXPECT_EQ(workshop().slipEdge()->geometry().right(), workshop().rect().right());
    hit(Qt::Key_Escape);
    EXPECT_FALSE(workshop().slipEdge()->isOpen());
    EXPECT_EQ(QApplication::focusWidget(), search);
}

TEST_F(Shell, TabGoesRoundWithinASlip) {
    stockUsualShop();
    openWindow();
    emit open().slipAsked(SlipName::RecordReading, {});
    ASSERT_TRUE(workshop().slipEdge()->isOpen());
    const QWidget* first = QApplication::focusWidget();
    int stops = 0;
    do {
        hit(Qt::Key_Tab);
        ASSERT_TRUE(workshop().slipEdge()->hasKeyboard());
    } while (QApplication::focusWidget() != first && ++stops < 60);
    EXPECT_EQ(QApplication::focusWidget(), first);
    EXPECT_GT(stops, 0);
}

TEST_F(Shell, KeysOfThePlaceBelowAreNotMeantWhileASlipIsTypedIn) {
    stockUsualShop();
    openWindow();
    workshop().turnTo(PlaceName::OrderBook);
    emit open().slipAsked(SlipName::AddPress, {});
    ASSERT_TRUE(workshop().slipEdge()->isOpen());
    const QWidget* typed = QApplication::focusWidget();
    hit(Qt::Key_F, Qt::ControlModifier); // the order book's own search
    EXPECT_EQ(QApplication::focusWidget(), typed);
    EXPECT_TRUE(workshop().slipEdge()->isOpen());
}

TEST_F(Shell, TurningToAnotherPlaceLeavesTheSlip) {
    openWindow();
    emit open().slipAsked(SlipName::AddPress, {});
    ASSERT_TRUE(workshop().slipEdge()->isOpen());
    hit(Qt::Key_6, Qt::ControlModifier);
    EXPECT_FALSE(workshop().slipEdge()->isOpen());
    EXPECT_EQ(workshop().current(), PlaceName::OrderBook);
}

// ── finder ────────────────────────────────────────────────────────────────────────────────────────────

TEST_F(Shell, FinderGoesToAnOrderByItsNumber) {
    const UsualShop usual = stockUsualShop();
    const auto taken = takeOrder({aGarment(usual)}, "Imre Vasko");
    openWindow();
    QTest::keyClick(m_window.get(), Qt::Key_K, Qt::ControlModifier);
    ASSERT_TRUE(workshop().finder()->isOpen());
    typeText(QString::number(taken.number));
    hit(Qt::Key_Return);
    EXPECT_FALSE(workshop().finder()->isOpen());
    EXPECT_EQ(workshop().current(), PlaceName::OrderBook);
}

TEST_F(Shell, FinderFindsCustomerDecalRollLotPlaceAndAction) {
    const UsualShop usual = stockUsualShop();
    takeOrder({aGarment(usual)}, "Imre Vasko");
    const auto first = [&](const char* typed) {
        const auto found = findEntries(desk(), QString::fromUtf8(typed));
        return found.empty()
                   ? std::string{"nothing"}
                   : (finderKindWords(found.front().kind) + QStringLiteral(": ") + found.front().title)
                         .toStdString();
    };
    const std::string order =
        "Order: " + std::to_string(desk().shop()->facts.orders.begin()->number) + "  Imre Vasko";
    EXPECT_EQ(first("vas"), order);
    EXPECT_EQ(first("heron"), order);
    EXPECT_EQ(first("07700"), order);
    EXPECT_EQ(first("R-0"), "Roll: " + desk().shop()->facts.rolls.begin()->label() + "  Marram Soft, Dusk");
    EXPECT_EQ(first("tee moss l"), "Lot: Tee, L, Moss");
    EXPECT_EQ(first("blank r"), "Go to: Blank rail");
    EXPECT_EQ(first("evening"), "Action: Evening light");
    EXPECT_EQ(first("add a film"), "Action: Add a film");
    EXPECT_EQ(first("sett"), "Action: Settings");
    EXPECT_EQ(first("back up"), "Action: Back up the shop");
    // Words that people type, whatever it is called here.
    EXPECT_EQ(first("refund"), "Action: Take or give back money");
    EXPECT_EQ(first("backup"), "Action: Back up the shop");
    EXPECT_EQ(first("discount"), "Action: Change prices");
    EXPECT_EQ(first("help"), "Action: Show the keys");
    EXPECT_EQ(first("keys"), "Action: Show the keys");
    EXPECT_EQ(first("cash"), "Action: Take or give back money");
    EXPECT_EQ(first("complaint"), "Action: Note what came back");
    EXPECT_EQ(first("zoom"), "Action: Larger text");
    EXPECT_EQ(first("zzzz"), "nothing");
    EXPECT_EQ(first("\"zz' OR 1=1 --"), "nothing");
}

TEST_F(Shell, FinderWithNothingTypedOffersWhatWaitsThenNewestOrdersThenActs) {
    const UsualShop usual = stockUsualShop();
    const auto taken = takeOrder({aGarment(usual)}, "Imre Vasko");
    const auto all = findEntries(desk(), {});
    ASSERT_GT(all.size(), 3u);
    EXPECT_EQ(all.front().kind, FinderKind::Place);
    EXPECT_EQ(all.front().second.toStdString(), "1 decal to cut");
    const auto order = std::ranges::find(all, FinderKind::Order, &FinderEntry::kind);
    ASSERT_NE(order, all.end());
    EXPECT_TRUE(order->title.startsWith(QString::number(taken.number)));
    EXPECT_EQ(all.back().kind, FinderKind::Action);
}

TEST_F(Shell, FinderDoesAnActionAndEscapeLeavesEverythingAsItWas) {
    openWindow();
    QTest::keyClick(m_window.get(), Qt::Key_K, Qt::ControlModifier);
    typeText(QStringLiteral("evening"));
    hit(Qt::Key_Return);
    EXPECT_EQ(light(), Light::Evening);
    QWidget* before = QApplication::focusWidget();
    QTest::keyClick(m_window.get(), Qt::Key_K, Qt::ControlModifier);
    typeText(QStringLiteral("blank rail"));
    hit(Qt::Key_Escape);
    EXPECT_FALSE(workshop().finder()->isOpen());
    EXPECT_EQ(QApplication::focusWidget(), before);
    EXPECT_EQ(workshop().current(), PlaceName::FairTable);
}

TEST_F(Shell, FinderArrowsChooseAndOpenASlip) {
    openWindow();
    QTest::keyClick(m_window.get(), Qt::Key_K, Qt::ControlModifier);
    typeText(QStringLiteral("add a"));
    auto* list = find<QListView>("finderList");
    ASSERT_GE(list->model()->rowCount(), 3);
    EXPECT_EQ(list->currentIndex().row(), 0);
    hit(Qt::Key_Down);
    hit(Qt::Key_Down);
    hit(Qt::Key_Up);
    EXPECT_EQ(list->currentIndex().row(), 1);
    hit(Qt::Key_Return);
    EXPECT_TRUE(workshop().slipEdge()->isOpen());
}

TEST(FinderList, ModelKeepsItsWord) {
    FinderModel model;
    const QAbstractItemModelTester tester(&model, QAbstractItemModelTester::FailureReportingMode::Fatal);
    model.setEntries({FinderEntry{.kind = FinderKind::Order,
                                  .title = QStringLiteral("418  Odile Farrant"),
                                  .second = QStringLiteral("3 garments"),
                                  .iconName = {},
                                  .shade = {},
                                  .keys = {},
                                  .target = ShellAct::Undo}});
    EXPECT_EQ(model.data(model.index(0), Qt::AccessibleTextRole).toString().toStdString(),
              "Order, 418  Odile Farrant, 3 garments");
    model.setEntries({});
    EXPECT_EQ(model.rowCount(), 0);
}

// ── backup and check ──────────────────────────────────────────────────────────────────────────────────

TEST_F(Shell, BackupIsMadeFromTheFinderAndRefusesANameThatIsTaken) {
    stockUsualShop();
    openWindow();
    workshop().doErrand(Errand::BackUp);
    auto* target = find<LongField>("path");
    ASSERT_NE(target, nullptr);
    target->setText(QString::fromStdString(path()));
    hit(Qt::Key_Return);
    ASSERT_TRUE(workshop().slipEdge()->isOpen());
    EXPECT_FALSE(qobject_cast<FormSlip*>(workshop().slipEdge()->slip())->form().errorAt("path").isEmpty());
    const std::filesystem::path copy = path().parent_path() / "copy.holdfast";
    target->setText(QString::fromStdString(copy));
    hit(Qt::Key_Return, Qt::ControlModifier);
    QTRY_VERIFY(foot().startsWith(QStringLiteral("Backed up to")));
    EXPECT_TRUE(db::Shop::openReadOnly(copy, time().clock().now).ok());
}

TEST_F(Shell, AFormWhoseWorkFailsStaysWithItsReason) {
    stockUsualShop();
    openWindow();
    workshop().doErrand(Errand::BackUp);
    auto* target = find<LongField>("path");
    const QString typed = QStringLiteral("/proc/copy.holdfast"); // a folder in which nobody writes a file
    target->setText(typed);
    hit(Qt::Key_Return, Qt::ControlModifier);
    auto* slip = qobject_cast<FormSlip*>(workshop().slipEdge()->slip());
    ASSERT_NE(slip, nullptr);
    QTRY_VERIFY(!slip->refusal().isEmpty());
    EXPECT_TRUE(workshop().slipEdge()->isOpen());
    EXPECT_EQ(target->text(), typed);
    const std::filesystem::path copy = path().parent_path() / "copy.holdfast";
    target->setText(QString::fromStdString(copy));
    hit(Qt::Key_Return, Qt::ControlModifier);
    QTRY_VERIFY(!workshop().slipEdge()->isOpen());
    EXPECT_TRUE(db::Shop::openReadOnly(copy, time().clock().now).ok());
}

TEST_F(Shell, CheckSaysThatTheFileIsWhole) {
    stockUsualShop();
    openWindow();
    workshop().doErrand(Errand::CheckFile);
    QTRY_VERIFY(foot().contains(QStringLiteral("whole")));
    EXPECT_FALSE(workshop().foot()->isFailure());
}

TEST_F(Shell, ClosingDuringLongWorkIsSafe) {
    stockUsualShop();
    openWindow();
    workshop().doErrand(Errand::CheckFile);
    closeWindow();
    EXPECT_TRUE(db::Shop::open(path(), time().clock().now).ok());
}

// ── first start ───────────────────────────────────────────────────────────────────────────────────────

class FirstStart : public Shell {
protected:
    void SetUp() override {
        // The test mode of the paths keeps a person's own shop out of this.
        std::filesystem::remove_all(defaultShopPath().parent_path());
        close();
        m_window = std::make_unique<MainWindow>(time().clock());
        m_window->showStart();
        showWindow(*m_window);
    }
    void TearDown() override {
        Shell::TearDown();
        std::filesystem::remove_all(defaultShopPath().parent_path());
    }
};

TEST_F(FirstStart, NameAndEnterStartAShop) {
    typeText(QString::fromUtf8("Salzwiesen-Nähstube"));
    hit(Qt::Key_Return);
    ASSERT_NE(window().desk(), nullptr);
    EXPECT_EQ(open().shop()->facts.settings.shopName, "Salzwiesen-Nähstube");
    EXPECT_EQ(open().file().path(), defaultShopPath());
    EXPECT_EQ(window().start(), nullptr);
    EXPECT_EQ(workshop().current(), PlaceName::FairTable);
}

TEST_F(FirstStart, CurrencyIsAskedWithItsSignAndItsDecimals) {
    typeText(QStringLiteral("Kaya"));
    hit(Qt::Key_Tab);
    QTest::keyClick(QApplication::focusWidget(), Qt::Key_A, Qt::ControlModifier);
    typeText(QStringLiteral("jp"));
    hit(Qt::Key_Return);
    EXPECT_EQ(window().desk(), nullptr);
    EXPECT_TRUE(find<Field>("startCurrency")->error().contains(QStringLiteral("currency")));
    EXPECT_FALSE(std::filesystem::exists(defaultShopPath()));
    typeText(QStringLiteral("y"));
    hit(Qt::Key_Return);
    ASSERT_NE(window().desk(), nullptr);
    const Currency& currency = open().shop()->facts.settings.currency;
    EXPECT_EQ(currency.code, "JPY");
    EXPECT_EQ(currency.exponent, 0);
    EXPECT_NE(currency.sign, "£");
}

TEST_F(FirstStart, EmptyNameIsRefusedAndLeavesNoFile) {
    hit(Qt::Key_Return);
    EXPECT_EQ(window().desk(), nullptr);
    EXPECT_FALSE(find<Field>("startName")->error().isEmpty());
    EXPECT_FALSE(std::filesystem::exists(defaultShopPath()));
}

TEST_F(FirstStart, FileIsOpenedByItsPath) {
    auto* line = find<Field>("startFile");
    line->setFocus();
    typeText(QString::fromStdString(path()));
    hit(Qt::Key_Return);
    ASSERT_NE(window().desk(), nullptr);
    EXPECT_EQ(open().file().path(), path());
}

TEST_F(FirstStart, WhatIsNoShopIsRefusedInWordsAndStaysAsItWas) {
    const QString other = QString::fromStdString(path().parent_path() / "letter.txt");
    QFile file(other);
    ASSERT_TRUE(file.open(QIODevice::WriteOnly));
    file.write("Dear maker");
    file.close();
    auto* line = find<Field>("startFile");
    line->setFocus();
    typeText(other);
    hit(Qt::Key_Return);
    EXPECT_EQ(window().desk(), nullptr);
    EXPECT_FALSE(line->error().isEmpty());
    ASSERT_TRUE(file.open(QIODevice::ReadOnly));
    EXPECT_EQ(file.readAll().toStdString(), "Dear maker");
}

TEST_F(Shell, AnotherShopMayBeLookedForAndTheOpenOneComesBack) {
    openWindow();
    workshop().doErrand(Errand::OpenAnother);
    QTRY_VERIFY(window().start() != nullptr);
    EXPECT_FALSE(workshop().isVisible());
    hit(Qt::Key_Escape);
    QTRY_VERIFY(window().start() == nullptr);
    EXPECT_TRUE(workshop().isVisible());
}

} // namespace
} // namespace holdfast::app
