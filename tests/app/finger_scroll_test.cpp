// SPDX-License-Identifier: GPL-3.0-or-later
// What a finger does on a touch screen: it pushes what scrolls, presses what it taps, and drags what can be
// dragged. First with plain widgets, then over every place and every form of the demo in a small window.

#include "app/command_line/tour_matters.h"
#include "app/places/cutting_bench/bench_view.h"
#include "app/places/fair_table/garment_stage.h"
#include "app/shell/main_window.h"
#include "app/shell/places.h"
#include "app/shell/slip_edge.h"
#include "app/shell/workshop.h"
#include "app/theme/finger_scroll.h"
#include "db/demo/demo_shop.h"
#include "tests/app/finger.h"
#include "tests/app/shop_fixture.h"

#include <QAbstractButton>
#include <QBoxLayout>
#include <QLineEdit>
#include <QListWidget>
#include <QMouseEvent>
#include <QPushButton>
#include <QScrollArea>
#include <QScrollBar>
#include <QScroller>
#include <QSignalSpy>

namespace holdfast::app::test {
namespace {

constexpr QPoint kUp{0, -160};
constexpr QPoint kDown{0, 160};

// ── plain widgets ─────────────────────────────────────────────────────────────────────────────────────

class FingerOnWidgets : public testing::Test {
protected:
    void SetUp() override {
        auto* inside = new QWidget;
        auto* column = new QVBoxLayout(inside);
        column->addWidget(field = new QLineEdit(QStringLiteral("Tern over the harbour")));
        list = new QListWidget;
        for (int row = 0; row < 60; ++row)
            list->addItem(QString::number(row));
        list->setVerticalScrollMode(QAbstractItemView::ScrollPerPixel);
        list->setFixedHeight(200);
        column->addWidget(list);
        for (int at = 0; at < 20; ++at) {
            auto* button = new QPushButton(QString::number(at));
            button->setFixedHeight(44);
            column->addWidget(button);
            buttons.push_back(button);
        }
        area.setWidget(inside);
        area.setWidgetResizable(true);
        showWindow(area, {360, 420});
    }
    int offset() const { return area.verticalScrollBar()->value(); }

    QScrollArea area;
    QLineEdit* field = nullptr;
    QListWidget* list = nullptr;
    std::vector<QPushButton*> buttons;
};

TEST_F(FingerOnWidgets, TapIsAClick) {
    QSignalSpy clicks(buttons[1], &QPushButton::clicked);
    tap(buttons[1], {20, 20});
    EXPECT_EQ(clicks.count(), 1);
    EXPECT_FALSE(buttons[1]->isDown());
    QSignalSpy rows(list, &QListWidget::clicked);
    tap(list->viewport(), {20, 60});
    EXPECT_EQ(rows.count(), 1);
    EXPECT_GT(list->currentRow(), 0);
    EXPECT_TRUE(list->hasFocus()) << "as by a click with the mouse";
}

TEST_F(FingerOnWidgets, TwoTapsAreADoubleClick) {
    tap(list->viewport(), {20, 100});
    QTest::qWait(QApplication::doubleClickInterval() + 50);
    QSignalSpy rows(list, &QListWidget::doubleClicked);
    tap(list->viewport(), {20, 60});
    tap(list->viewport(), {20, 60});
    EXPECT_EQ(rows.count(), 1);
}

TEST_F(FingerOnWidgets, DragFromAButtonScrollsAndPressesNothing) {
    QSignalSpy clicks(buttons[2], &QPushButton::clicked);
    QSignalSpy presses(buttons[2], &QPushButton::pressed);
    dragFinger(buttons[2], {20, 20}, kUp);
    EXPECT_GT(offset(), 100);
    EXPECT_EQ(clicks.count(), 0);
    EXPECT_EQ(presses.count(), 0);
}

TEST_F(FingerOnWidgets, ButtonGoesDownUnderAFingerThatRestsAndLetsGoWhenItMoves) {
    QSignalSpy clicks(buttons[2], &QPushButton::clicked);
    Finger finger(buttons[2], {20, 20});
    EXPECT_TRUE(QTest::qWaitFor([&] { return buttons[2]->isDown(); }, 2000));
    finger.drag(kUp);
    finger.lift();
    EXPECT_FALSE(buttons[2]->isDown());
    EXPECT_EQ(clicks.count(), 0);
    EXPECT_GT(offset(), 100);
}

TEST_F(FingerOnWidgets, ListMovesWithoutItsRowsAndAtItsEndThePlaceGoesOn) {
    list->setCurrentRow(3);
    QSignalSpy pressed(list, &QListWidget::pressed);
    dragFinger(list->viewport(), {20, 180}, kUp);
    EXPECT_GT(list->verticalScrollBar()->value(), 100);
    EXPECT_EQ(offset(), 0) << "the nearest alone";
    EXPECT_EQ(list->currentRow(), 3);
    EXPECT_EQ(pressed.count(), 0);
    ASSERT_TRUE(QTest::qWaitFor(
        [&] { return QScroller::scroller(list->viewport())->state() == QScroller::Inactive; }));
    list->verticalScrollBar()->setValue(list->verticalScrollBar()->maximum());
    dragFinger(list->viewport(), {20, 180}, kUp);
    EXPECT_GT(offset(), 100);
}

TEST_F(FingerOnWidgets, TouchStopsWhatStillScrollsAndPressesNothing) {
    Finger finger(buttons[2], {20, 20});
    finger.drag({0, -90});
    finger.lift();
    const int lifted = offset();
    ASSERT_TRUE(QTest::qWaitFor([&] { return offset() > lifted; }, 2000)) << "it goes on by itself";
    int clicks = 0;
    for (QPushButton* button : buttons)
        QObject::connect(button, &QPushButton::clicked, &area, [&] { ++clicks; });
    tap(area.viewport(), {40, 300});
    const int stopped = offset();
    QTest::qWait(100);
    EXPECT_EQ(offset(), stopped);
    EXPECT_EQ(clicks, 0);
    // A second push in time takes over where the first still goes on.
    Finger again(area.viewport(), {40, 200});
    again.drag({0, 90});
    again.lift();
    const int back = offset();
    ASSERT_TRUE(QTest::qWaitFor([&] { return offset() < back; }, 2000));
    Finger other(area.viewport(), {40, 300});
    other.drag({0, -90});
    other.rest();
    EXPECT_GT(offset(), back - 90);
    other.lift();
}

TEST_F(FingerOnWidgets, AlongALineOfTextItMarksAcrossItScrolls) {
    field->deselect();
    dragFinger(field, {10, 12}, {90, 2});
    EXPECT_FALSE(field->selectedText().isEmpty());
    EXPECT_EQ(offset(), 0);
    field->deselect();
    dragFinger(field, {10, 12}, kUp);
    EXPECT_TRUE(field->selectedText().isEmpty());
    EXPECT_GT(offset(), 100);
}

// What can be dragged itself goes with the finger; off it, the finger scrolls.
TEST_F(FingerOnWidgets, DecalOnAGarmentGoesWithTheFinger) {
    auto* stage = new GarmentStage;
    stage->setFixedHeight(300);
    auto* column = static_cast<QVBoxLayout*>(area.widget()->layout());
    column->insertWidget(0, stage);
    settleTouch();
    StageDecal decal;
    decal.content = Artwork{"heron"};
    decal.below = Millimetres{200};
    decal.width = Millimetres{160};
    decal.height = Millimetres{120};
    StageScene scene;
    scene.outline = QStringLiteral("tee");
    scene.decals = {decal};
    scene.current = 0;
    stage->setScene(scene);
    QSignalSpy moved(stage, &GarmentStage::moved);
    const QPoint middle = stage->rectOf(0).center().toPoint();
    ASSERT_TRUE(stage->isGrippedAt(stage->mapToGlobal(middle)));
    dragFinger(stage, middle, {0, -40});
    EXPECT_GT(moved.count(), 0);
    EXPECT_EQ(offset(), 0);
    const auto before = moved.count();
    dragFinger(stage, {6, 200}, kUp);
    EXPECT_EQ(moved.count(), before);
    EXPECT_GT(offset(), 100);
}

TEST_F(FingerOnWidgets, MouseThatDragsScrollsNothing) {
    QTest::mousePress(list->viewport(), Qt::LeftButton, {}, {20, 150});
    QTest::mouseMove(list->viewport(), {20, 60});
    QTest::mouseRelease(list->viewport(), Qt::LeftButton, {}, {20, 60});
    EXPECT_EQ(list->verticalScrollBar()->value(), 0);
    EXPECT_GE(list->currentRow(), 0) << "it chooses a row, as ever";
}

// ── the whole window ──────────────────────────────────────────────────────────────────────────────────

// Everything that a press does somewhere, counted.
class Presses : public QObject {
public:
    explicit Presses(QWidget& whole) {
        for (QAbstractButton* button : whole.findChildren<QAbstractButton*>())
            connect(button, &QAbstractButton::pressed, this, [this, button] { note(button); });
        for (QAbstractItemView* view : whole.findChildren<QAbstractItemView*>())
            connect(view, &QAbstractItemView::pressed, this, [this, view] { note(view); });
    }
    std::string words;

private:
    void note(const QObject* what) { words += what->objectName().toStdString() + " "; }
};

class FingerInTheWindow : public ShopFixture {
protected:
    void SetUp() override {
        close();
        const auto path = this->path().parent_path() / "demo.holdfast";
        valueOf(db::makeDemoShop(path, now().today()));
        window = std::make_unique<MainWindow>(time().clock());
        window->open(valueOf(db::Shop::open(path, time().clock().now)));
        showWindow(*window, {1024, 600});
    }
    void TearDown() override { window.reset(); }
    Workshop& workshop() { return *window->workshop(); }
    std::int64_t entries() {
        return window->desk()->file().connection().number("SELECT COUNT(*) FROM journal_entry");
    }

    // The offsets of all that scrolls, as one line.
    std::string offsets(QWidget& part) {
        std::string all;
        for (const QScrollBar* bar : part.findChildren<QScrollBar*>())
            all += std::to_string(bar->value()) + " ";
        return all;
    }
    static bool scrolls(const QAbstractScrollArea& area) {
        return area.isVisible() && area.verticalScrollBarPolicy() != Qt::ScrollBarAlwaysOff &&
               area.verticalScrollBar()->maximum() > 0;
    }
    // Where a finger meets this part of what scrolls, and nothing smaller that scrolls or is dragged itself.
    std::optional<QPoint> freePoint(const QAbstractScrollArea& area, QWidget& whole) {
        const QWidget& viewport = *area.viewport();
        for (int y = viewport.height() * 3 / 4; y > 8; y -= 12)
            for (int x = viewport.width() / 2; x < viewport.width(); x += 40) {
                const QPoint at = viewport.mapTo(&whole, QPoint(x, y));
                if (!whole.rect().contains(at))
                    continue;
                QWidget* met = whole.childAt(at);
                bool isFree = met != nullptr && viewport.isAncestorOf(met);
                isFree = isFree || met == &viewport;
                for (QWidget* each = met; isFree && each != nullptr && each != &viewport;
                     each = each->parentWidget()) {
                    const auto* inner = qobject_cast<QAbstractScrollArea*>(each);
                    const auto* held = dynamic_cast<Draggable*>(each);
                    isFree = (inner == nullptr || !scrolls(*inner)) &&
                             (held == nullptr || !held->isGrippedAt(whole.mapToGlobal(at)));
                }
                if (const auto* held = dynamic_cast<const Draggable*>(&area);
                    held != nullptr && held->isGrippedAt(whole.mapToGlobal(at)))
                    isFree = false;
                if (isFree)
                    return at;
            }
        return std::nullopt;
    }

    // Pushes everything that scrolls in this part down, and up again where it is at its end.
    void pushAll(QWidget& part, const std::string& where) {
        for (QAbstractScrollArea* area : part.findChildren<QAbstractScrollArea*>()) {
            if (!scrolls(*area))
                continue;
            const auto at = freePoint(*area, *window);
            if (!at)
                continue;
            QScrollBar* bar = area->verticalScrollBar();
            bar->setValue(0);
            settleTouch();
            const std::string what =
                where + ", " + area->metaObject()->className() + " " + area->objectName().toStdString();
            Presses presses(*window);
            const auto written = entries();
            dragFinger(window.get(), *at, kUp);
            EXPECT_GT(bar->value(), 0) << what << " does not move";
            if (const auto back = freePoint(*area, *window)) {
                const int gone = bar->value();
                dragFinger(window.get(), *back, kDown);
                EXPECT_LT(bar->value(), gone) << what << " does not come back";
            }
            EXPECT_EQ(presses.words, "") << what << ": pressed by a drag";
            EXPECT_EQ(entries(), written) << what;
            ++pushed;
        }
    }

    std::unique_ptr<MainWindow> window;
    int pushed = 0;
};

TEST_F(FingerInTheWindow, EveryPlaceScrolls) {
    for (const BuiltPlace& built : builtPlaces())
        for (const QSize size : {QSize(1024, 600), QSize(620, 380)}) {
            window->resize(size);
            workshop().turnTo(built.name);
            settleTouch();
            pushAll(workshop(), built.code);
            EXPECT_EQ(workshop().current(), built.name);
        }
    EXPECT_GE(pushed, 16);
    std::printf("%d parts of places pushed by a finger\n", pushed);
}

TEST_F(FingerInTheWindow, EveryFormScrolls) {
    window->resize(1024, 480);
    const SlipTarget usual = matterOf(*window->desk()->shop());
    for (int name = 0; name <= static_cast<int>(SlipName::Settings); ++name) {
        const auto slip = static_cast<SlipName>(name);
        workshop().turnTo(PlaceName::OrderBook);
        workshop().showSlip(slip, matterFor(slip, *window->desk(), usual));
        settleTouch();
        if (!workshop().slipEdge()->isOpen())
            continue;
        pushAll(*workshop().slipEdge(), "form " + std::to_string(name));
        EXPECT_TRUE(workshop().slipEdge()->isOpen());
        workshop().slipEdge()->close();
    }
    EXPECT_GE(pushed, 15); // the more room forms have, the fewer scroll
    std::printf("%d parts of forms pushed by a finger\n", pushed);
}

// What lies on the bench and on the garment goes with the finger, in a place that scrolls, too.
TEST_F(FingerInTheWindow, DecalsGoWithTheFinger) {
    window->resize(620, 380);
    workshop().turnTo(PlaceName::CuttingBench);
    settleTouch();
    auto* bench = window->findChild<BenchView*>(QStringLiteral("bench"));
    ASSERT_NE(bench, nullptr);
    ASSERT_TRUE(QTest::qWaitFor([&] { return bench->viewport()->isVisible(); }));
    std::optional<QPoint> onDecal;
    for (int y = 0; y < bench->viewport()->height() && !onDecal; y += 6)
        for (int x = 0; x < bench->viewport()->width() && !onDecal; x += 6)
            if (bench->isGrippedAt(bench->viewport()->mapToGlobal(QPoint(x, y))))
                onDecal = QPoint(x, y);
    ASSERT_TRUE(onDecal);
    const std::string before = offsets(workshop());
    Finger finger(bench->viewport(), *onDecal);
    finger.drag({24, 24});
    EXPECT_TRUE(bench->isDragging());
    finger.lift();
    EXPECT_FALSE(bench->isDragging());
    EXPECT_EQ(offsets(workshop()), before);
}

} // namespace
} // namespace holdfast::app::test
