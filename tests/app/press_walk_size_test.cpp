// SPDX-License-Identifier: GPL-3.0-or-later
// Press walk in windows of many sizes: what is read from two metres is never cut, everything else can be
// reached.
#include "app/places/press_walk/aside_list.h"
#include "app/places/press_walk/count_layout.h"
#include "app/places/press_walk/rack_list.h"
#include "app/theme/type.h"
#include "app/widgets/sewn_tabs.h"
#include "app/widgets/vertical_scroll.h"
#include "tests/app/finger.h"
#include "tests/app/press_walk_fixture.h"

#include <QListView>
#include <QScrollBar>

namespace holdfast::app::test {

namespace {

// Places, as windows leave them room: 1024 × 600, 1280 × 720, 1366 × 768 and at 150 %, 800 × 1280, 2560 ×
// 1440.
constexpr QSize kSmallLaptop{928, 456};
constexpr QSize kHandLaptop{1184, 630};
constexpr QSize kUsual{1270, 690};
constexpr QSize kLarger{815, 376};
constexpr QSize kUpright{704, 1190};
constexpr QSize kWall{2464, 1350};
constexpr QSize kSizes[] = {kSmallLaptop, kHandLaptop, kUsual, kLarger, kUpright, kWall};

class PressWalkSize : public PressWalkFixture {
protected:
    void openAt(QSize size) {
        if (!place)
            open();
        place->resize(size);
        QApplication::processEvents();
        QApplication::sendPostedEvents(nullptr, QEvent::LayoutRequest);
        QApplication::processEvents();
    }
    // Whole in the place, not behind an edge of it.
    bool isWhole(const QWidget& part) {
        const QRect box(part.mapTo(place.get(), QPoint()), part.size());
        return part.isVisible() && place->rect().contains(box);
    }
    // No line of the panel reaches into its stitches, its count or another line.
    void expectPanelClear(const QSize& size) {
        const auto& panel = part<CountPanel>("countPanel");
        const double foot = panel.shown().count && !panel.shown().asksOutcome
                                ? panel.stitchesTop()
                                : panel.height() / panel.scale();
        double above = 0;
        for (const PanelLine& line : panel.lines()) {
            EXPECT_LE(line.box.bottom(), foot) << line.text.toStdString() << " at " << size.width();
            EXPECT_GE(line.box.top(), above) << line.text.toStdString() << " at " << size.width();
            EXPECT_LE(widthOf(line.text, line.type), line.box.width() + 1) << line.text.toStdString();
            above = line.box.bottom();
        }
        EXPECT_FALSE(panel.lines().empty());
    }
};

} // namespace

TEST_F(PressWalkSize, PanelNextAndKeysAreWholeAtEverySize) {
    readyToPress(3);
    open();
    key(Qt::Key_Space);
    for (const QSize& size : kSizes) {
        openAt(size);
        for (const char* name :
             {"countPanel", "nextStep", "backAStep", "holdGarment", "pauseWalk", "showDayStrip"})
            EXPECT_TRUE(isWhole(part<QWidget>(name)))
                << name << " at " << size.width() << " × " << size.height();
        EXPECT_EQ(part<VerticalScroll>("walkScroll").verticalScrollBar()->maximum(), 0)
            << size.width() << " × " << size.height();
        const bool hasTabs = part<SewnTabs>("walkTabs").isVisible();
        EXPECT_TRUE(isWhole(part<QWidget>("walkList")));
        EXPECT_NE(hasTabs, part<QWidget>("asideEmpty").isVisible()) << size.width();
    }
}

// A larger scale leaves the window few points: what cools gives way to the walk, and scrolls.
TEST_F(PressWalkSize, TheWalkKeepsTwoGarmentsInViewAtALargerScale) {
    const FilmId kelp = addFilm("Kelp", [](Film& film) { film.recipe->peel = Peel::Cool; });
    const RollId roll = receiveRoll(kelp, usual.place);
    GarmentDraft draft = aGarment(usual);
    for (DecalDraft& decal : draft.decals)
        decal.film = kelp;
    const auto garments = garmentsOf(takeOrder(std::vector<GarmentDraft>(5, draft)).id);
    for (const GarmentId garment : garments)
        cut(garment, roll);
    open();
    auto& rack = part<RackList>("coolingRack");
    for (int guard = 0; guard < 80 && rack.model()->rowCount() < 2; ++guard) {
        for (const GarmentId garment : garments)
            if (const RouteStep* step = openStepOf(garment); step && step->platen.count() > 0)
                time().pass(step->counted());
        key(Qt::Key_Space);
    }
    openAt({815, 404}); // 1366 × 768 at 150 %
    const auto& list = part<QListView>("walkList");
    ASSERT_EQ(rack.model()->rowCount(), 2);
    EXPECT_GE(rack.viewport()->height(), rack.sizeHintForRow(0) + rack.sizeHintForRow(1));
    const int head = std::max(list.sizeHintForRow(0), list.sizeHintForRow(1)); // of the heat run, which stays
    const int garment = list.sizeHintForRow(list.model()->rowCount() - 1);
    EXPECT_GE(list.viewport()->height(), head + 2 * garment);
}

TEST_F(PressWalkSize, WhatAFingerMeetsIsLargeEnough) {
    readyToPress(2);
    takeOrder({aGarment(usual, "L")});
    open();
    key(Qt::Key_Space);
    for (const QSize& size : kSizes) {
        openAt(size);
        for (QAbstractButton* button : place->findChildren<QAbstractButton*>())
            if (button->isVisible()) {
                EXPECT_GE(button->height(), 44)
                    << button->objectName().toStdString() << " at " << size.width();
            }
    }
}

// What is painted and not a widget of its own: rows, the acts on a card, the tabs.
TEST_F(PressWalkSize, WhatIsPaintedIsLargeEnoughForAFinger) {
    readyToPress(3);
    takeOrder({aGarment(usual, "L")});
    open();
    key(Qt::Key_Space);
    for (const QSize& size : kSizes) {
        openAt(size);
        for (const char* name : {"walkList", "asideList", "coolingRack"}) {
            const auto& list = part<QListView>(name);
            for (int row = 0; row < list.model()->rowCount(); ++row)
                if (list.model()->flags(list.model()->index(row, 0)).testFlag(Qt::ItemIsEnabled)) {
                    EXPECT_GE(list.sizeHintForRow(row), 44) << name << " at " << size.width();
                }
        }
        if (const auto& tabs = part<SewnTabs>("walkTabs"); tabs.isVisible()) {
            EXPECT_GE(tabs.height(), 44) << size.width();
        }
    }
    openAt(kUsual);
    auto& aside = part<AsideList>("asideList");
    const QRect card = aside.visualRect(aside.currentIndex());
    // The acts are where a click does something: as high as a finger's target, one below the other.
    int acting = 0;
    for (int y = card.top(); y <= card.bottom(); ++y) {
        QMouseEvent over(QEvent::MouseMove, QPointF(card.center().x(), y),
                         aside.viewport()->mapToGlobal(QPointF(card.center().x(), y)), Qt::NoButton,
                         Qt::NoButton, Qt::NoModifier);
        QApplication::sendEvent(aside.viewport(), &over);
        acting += aside.viewport()->cursor().shape() == Qt::PointingHandCursor;
    }
    EXPECT_GE(acting, 44);
}

TEST_F(PressWalkSize, WhatIsToBeDoneNowIsLargerThanHowLongItIsOver) {
    const GarmentId garment = readyToPress(1).front();
    open();
    walkTo(garment, "press");
    time().pass(24s);
    EXPECT_TRUE(waitsUntil([&] { return panel().word == QStringLiteral("Lift now"); }));
    openAt(kUsual);
    const auto lines = part<CountPanel>("countPanel").lines();
    const auto word = std::ranges::find(lines, PanelLine::Part::Word, &PanelLine::part);
    ASSERT_NE(word, lines.end());
    EXPECT_EQ(word->type, Type::Panel) << "the largest there is, in one line";
    EXPECT_EQ(word->text, QStringLiteral("Lift now"));
}

TEST_F(PressWalkSize, TabsTurnToWhatStandsAsideAndItsKeysActThere) {
    readyToPress(1);
    const GarmentId aside = garmentsOf(takeOrder({aGarment(usual)}).id).front();
    openAt(kSmallLaptop);
    ASSERT_TRUE(part<SewnTabs>("walkTabs").isVisible());
    EXPECT_FALSE(part<QWidget>("asideList").isVisible());
    key(Qt::Key_Right);
    EXPECT_TRUE(part<AsideList>("asideList").hasFocus());
    EXPECT_FALSE(part<QWidget>("walkList").isVisible());
    key(Qt::Key_F);
    EXPECT_EQ(askedPlace, PlaceName::CuttingBench);
    EXPECT_EQ(askedMatter.garment, aside);
    key(Qt::Key_Left);
    key(Qt::Key_Left);
    EXPECT_TRUE(part<QWidget>("walkList").hasFocus());
}

// With hundreds of garments, too: a tab out of sight is not looked for.
TEST_F(PressWalkSize, BothTabsAreSeenInALargeShop) {
    readyToPress(1);
    openAt(kSmallLaptop);
    auto& tabs = part<SewnTabs>("walkTabs");
    tabs.setTabs({{QStringLiteral("The walk"), QStringLiteral("120 of 399")},
                  {QStringLiteral("Aside"), QStringLiteral("135, 120 promised")}});
    EXPECT_LE(tabs.sizeHint().width(), tabs.width());
}

TEST_F(PressWalkSize, WhatIsReadFromTwoMetresGrowsWithTheWindow) {
    readyToPress(1);
    openAt(kUsual);
    const int panel = part<CountPanel>("countPanel").height();
    const int next = part<Button>("nextStep").height();
    EXPECT_EQ(next, kNextTarget) << "as it is drawn";
    openAt(kWall);
    EXPECT_GT(part<CountPanel>("countPanel").height(), panel * 3 / 2);
    EXPECT_GT(part<Button>("nextStep").height(), next * 3 / 2);
}

TEST_F(PressWalkSize, WordsOfThePanelKeepClearOfCountAndStitches) {
    const GarmentId garment = readyToPress(1).front();
    open();
    for (const char* state : {"press", "over", "paused", "too long"}) {
        if (state == std::string_view{"press"})
            walkTo(garment, "press");
        else if (state == std::string_view{"over"})
            time().pass(13s);
        else if (state == std::string_view{"paused"})
            key(Qt::Key_P);
        else
            time().pass(9319s);
        QTest::qWait(150);
        for (const QSize& size : kSizes) {
            openAt(size);
            SCOPED_TRACE(state);
            expectPanelClear(size);
        }
    }
    EXPECT_EQ(digits(), QStringLiteral("+2:35:20"));
}

// Any words in any room: nothing is cut, and a reason is the last thing that gives way.
TEST_F(PressWalkSize, NoteIsAlwaysWholeAndLinesNeverMeet) {
    const QString note = QStringLiteral("Paused. What lies under heat can still be lifted.");
    for (int wide = 110; wide <= 900; wide += 26)
        for (int high = 60; high <= 140; high += 13) {
            const QRectF room(24, 42, wide, high);
            QString shown;
            double above = room.top();
            for (const PanelLine& line :
                 panelLines({QStringLiteral("Step 3 of 11"), QStringLiteral("Pillow under the zip"),
                             QStringLiteral("cover sheet, 150 °C for 5 s, the front up"), note},
                            room)) {
                EXPECT_GE(line.box.top(), above);
                above = line.box.bottom();
                if (line.part == PanelLine::Part::Note)
                    shown += (shown.isEmpty() ? QString() : QStringLiteral(" ")) + line.text;
            }
            EXPECT_EQ(shown, note) << wide << " × " << high;
        }
}

TEST_F(PressWalkSize, RackSaysACountOfHoursClearOfItsWords) {
    const GarmentId garment = readyToPress(1).front();
    open();
    walkTo(garment, "cool");
    time().pass(9319s);
    auto& rack = part<RackList>("coolingRack");
    EXPECT_TRUE(waitsUntil([&] { return rack.rack().row(0).digits == QStringLiteral("+2:34:39"); }))
        << rack.rack().row(0).digits.toStdString();
    for (const QSize& size : kSizes) {
        openAt(size);
        // The count and the words below it are on lines of their own: each has its whole width.
        const int room = rack.viewport()->width() - 58 - 12;
        EXPECT_LE(widthOf(QStringLiteral("1-a"), Type::BodyStrong) + 8 +
                      widthOf(rack.rack().row(0).digits, Type::Number),
                  room)
            << size.width();
    }
}

TEST_F(PressWalkSize, ListsScrollByWheelAndFinger) {
    readyToPress(6);
    for (int order = 0; order < 9; ++order)
        takeOrder({aGarment(usual, "XL")});
    openAt(kUsual);
    auto& aside = part<AsideList>("asideList");
    ASSERT_GT(aside.verticalScrollBar()->maximum(), 0);
    QWheelEvent wheel(QPointF(20, 20), aside.viewport()->mapToGlobal(QPointF(20, 20)), {}, {0, -240},
                      Qt::NoButton, Qt::NoModifier, Qt::NoScrollPhase, false);
    QApplication::sendEvent(aside.viewport(), &wheel);
    EXPECT_GT(aside.verticalScrollBar()->value(), 0);
    const int wheeled = aside.verticalScrollBar()->value();
    const auto chosen = aside.currentIndex();
    dragFinger(aside.viewport(), {60, 120}, {0, -80});
    EXPECT_GT(aside.verticalScrollBar()->value(), wheeled);
    EXPECT_EQ(aside.currentIndex(), chosen) << "a drag presses no card";
    EXPECT_FALSE(askedPlace) << "nor what is on it";
}

// Smaller than any window it is meant for: then the whole of it scrolls, and nothing is lost.
TEST_F(PressWalkSize, BelowThatTheWholePlaceScrolls) {
    readyToPress(2);
    openAt({587, 294}); // 1366 × 768 at 200 %
    auto* bar = part<VerticalScroll>("walkScroll").verticalScrollBar();
    ASSERT_GT(bar->maximum(), 0);
    bar->setValue(bar->maximum());
    QApplication::processEvents();
    EXPECT_TRUE(isWhole(part<QWidget>("showDayStrip")));
    EXPECT_EQ(part<VerticalScroll>("walkScroll").horizontalScrollBar()->maximum(), 0);
}

} // namespace holdfast::app::test
