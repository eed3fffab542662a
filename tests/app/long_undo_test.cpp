// SPDX-License-Identifier: GPL-3.0-or-later
// A long action is taken back beside the window: it goes on, tells how far it is and stops when asked.
#include "app/shell/foot_line.h"
#include "app/shell/main_window.h"
#include "app/shell/workshop.h"
#include "app/widgets/button.h"
#include "db/actions/film_actions.h"
#include "tests/app/shop_fixture.h"

#include <QElapsedTimer>
#include <QTest>
#include <QTimer>

#include <iostream>

namespace holdfast::app::test {

namespace {

constexpr int kReadings = 60'000;
constexpr int kPatience = 60'000; // real milliseconds, for a busy machine without optimisation

class LongUndo : public ShopFixture {
protected:
    LongUndo() {
        place = addPlace("Film drawer");
        ClimateSeries series;
        for (int reading = 0; reading < kReadings; ++reading)
            series.push_back({now().instant - 24h - std::chrono::minutes{5} * reading, 19_C, 44_rh});
        std::ranges::reverse(series);
        valueOf(db::importReadings(file(), place, series, {}));
        close();
        window = std::make_unique<MainWindow>(time().clock());
        window->open(valueOf(db::Shop::open(path(), time().clock().now)));
        showWindow(*window);
        if (!QTest::qWaitFor([this] { return !window->desk()->awaitsClimate(); }, kPatience))
            stopBecause("the readings were not read");
    }
    ~LongUndo() override { window.reset(); }

    std::size_t readings() { return window->desk()->shop()->climate.at(place)->size(); }
    FootLine& foot() { return *window->workshop()->foot(); }
    void takeBack() { QTest::keyClick(QApplication::focusWidget(), Qt::Key_Z, Qt::ControlModifier); }
    bool isOver() { return !foot().words().startsWith(QStringLiteral("Undoing")); }

    PlaceId place;
    std::unique_ptr<MainWindow> window;
};

} // namespace

TEST_F(LongUndo, TheWindowGoesOnMeanwhile) {
    ASSERT_EQ(readings(), static_cast<std::size_t>(kReadings) + 1);
    qint64 longest = 0;
    QElapsedTimer sinceLast;
    QTimer breath;
    QObject::connect(&breath, &QTimer::timeout, [&] { longest = std::max(longest, sinceLast.restart()); });
    sinceLast.start();
    breath.start(5);
    takeBack();
    EXPECT_FALSE(isOver()) << qPrintable(foot().words());
    ASSERT_TRUE(QTest::qWaitFor([&] { return isOver(); }, kPatience));
    std::cout << "60,000 readings undone; the window was silent for at most " << longest << " ms\n";
    EXPECT_EQ(readings(), 1U);
    EXPECT_EQ(window->desk()->file().recent(1).at(0).title, "Undone: 60,000 readings of Film drawer read in");
    EXPECT_TRUE(foot().words().startsWith(QStringLiteral("Undone: "))) << qPrintable(foot().words());
    // And what comes afterwards is written as ever.
    EXPECT_TRUE(db::addPlace(window->desk()->file(), "Cellar").ok());
}

TEST_F(LongUndo, StoppedItLeavesAllAsItWas) {
    takeBack();
    ASSERT_FALSE(isOver());
    window->findChild<Button*>(QStringLiteral("footStop"))->click();
    ASSERT_TRUE(QTest::qWaitFor([&] { return isOver(); }, kPatience));
    EXPECT_EQ(readings(), static_cast<std::size_t>(kReadings) + 1);
    EXPECT_EQ(foot().words(), QStringLiteral("Stopped. Nothing was changed."));
    EXPECT_FALSE(window->desk()->file().lastUndoable()->isUndone());
}

TEST_F(LongUndo, ASecondOneIsToldToWait) {
    takeBack();
    takeBack();
    EXPECT_FALSE(isOver());
    ASSERT_TRUE(QTest::qWaitFor([&] { return isOver(); }, kPatience));
    EXPECT_TRUE(QTest::qWaitFor([&] { return readings() == 1U; }, kPatience));
}

} // namespace holdfast::app::test
