// SPDX-License-Identifier: GPL-3.0-or-later
// The road of one garment through the shop, by keyboard alone: taken at the fair table, washed, dried, cut,
// walked through the press, rested, handed over; in the real window over a real file, which the sqlite3
// program then reads.

#include "app/shell/foot_line.h"
#include "app/shell/main_window.h"
#include "app/shell/workshop.h"
#include "core/shop/walk.h"
#include "tests/app/shop_fixture.h"

#include <QApplication>
#include <QProcess>
#include <QTest>

namespace holdfast::app {
namespace {

using namespace std::chrono_literals;
using test::ShopFixture;
using test::typeText;

constexpr int kMostSteps = 60;

class Road : public ShopFixture {
protected:
    void TearDown() override { m_window.reset(); }

    void openWindow() {
        m_window = std::make_unique<MainWindow>(time().clock());
        m_window->open(test::valueOf(db::Shop::open(path(), time().clock().now)));
        test::showWindow(*m_window);
    }

    // The night: the program is closed and opened again.
    void sleep(std::chrono::hours hours) {
        m_window.reset();
        time().pass(hours);
        openWindow();
    }

    void key(Qt::Key key, Qt::KeyboardModifiers modifiers = Qt::NoModifier) {
        QWidget* target = QApplication::focusWidget();
        ASSERT_NE(target, nullptr) << "nothing has the keyboard";
        QTest::keyClick(target, key, modifiers);
        QCoreApplication::processEvents();
    }
    void letters(const char* typed) {
        for (const char* letter = typed; *letter != '\0'; ++letter) {
            QTest::keyClick(QApplication::focusWidget(), *letter);
            QCoreApplication::processEvents(); // what came with the choice is shown
        }
    }

    ShopDesk& open() { return *m_window->desk(); }
    const ReckonedShop& shop() { return *open().shop(); }
    const Garment& garment() { return *shop().facts.garments.begin(); }
    Stage stage() { return shop().of(garment().id).stage; }
    std::string refusal() {
        const FootLine& foot = *m_window->workshop()->foot();
        return foot.isFailure() ? foot.words().toStdString() : std::string{};
    }

    void takeOrder() {
        key(Qt::Key_1, Qt::ControlModifier);
        letters("1s3c1d2");  // tee, L, Moss, a heron
        key(Qt::Key_Return); // leads to who it is for
        typeText(QString::fromUtf8("Zoë Haldén"));
        key(Qt::Key_Return);
        ASSERT_EQ(shop().facts.orders.size(), 1u) << refusal();
        ASSERT_EQ(stage(), Stage::ToWash);
    }

    void wash() {
        key(Qt::Key_2, Qt::ControlModifier);
        key(Qt::Key_F); // what frees the first that stands aside: the wash, in its place
        ASSERT_EQ(m_window->workshop()->current(), PlaceName::BlankRail);
        key(Qt::Key_W, Qt::ControlModifier);
        ASSERT_EQ(stage(), Stage::Drying) << refusal();
        sleep(22h);
        key(Qt::Key_4, Qt::ControlModifier);
        key(Qt::Key_Y); // the load is dry
        ASSERT_EQ(stage(), Stage::ToCut) << refusal();
    }

    void cutFromTheWalk() {
        key(Qt::Key_2, Qt::ControlModifier);
        key(Qt::Key_F);
        ASSERT_EQ(m_window->workshop()->current(), PlaceName::CuttingBench);
        key(Qt::Key_C);
        ASSERT_EQ(stage(), Stage::ToPress) << refusal();
        key(Qt::Key_Left, Qt::AltModifier);
        ASSERT_EQ(m_window->workshop()->current(), PlaceName::PressWalk);
    }

    void press() {
        for (int step = 0; step < kMostSteps && stage() != Stage::Resting; ++step) {
            const Assessment& seen = shop().of(garment().id);
            if (seen.progress.underway)
                time().pass(seen.route.steps[*seen.progress.underway].total());
            key(Qt::Key_Space);
            ASSERT_EQ(refusal(), "");
        }
        ASSERT_EQ(stage(), Stage::Resting);
    }

    void handOver() {
        key(Qt::Key_6, Qt::ControlModifier);
        key(Qt::Key_Down);   // out of the search into the list
        key(Qt::Key_Return); // into the order
        key(Qt::Key_H);
        key(Qt::Key_Return);
        ASSERT_TRUE(shop().facts.orders.empty()) << "an order handed over is no longer open; " << refusal();
    }

    // One value as another program sees it.
    QString read(const char* sql) {
        QProcess sqlite;
        sqlite.start(QStringLiteral("sqlite3"),
                     {QStringLiteral("-readonly"), QString::fromStdString(path()), QString::fromUtf8(sql)});
        if (!sqlite.waitForFinished(20'000))
            return QStringLiteral("sqlite3 did not answer");
        return QString::fromUtf8(sqlite.readAllStandardOutput() + sqlite.readAllStandardError()).trimmed();
    }

    std::unique_ptr<MainWindow> m_window;
};

TEST_F(Road, OneGarmentFromTheFairTableToItsCustomer) {
    stockUsualShop();
    close();
    openWindow();
    ASSERT_NO_FATAL_FAILURE(takeOrder());
    const auto steps = shop().of(garment().id).route.steps.size();
    ASSERT_NO_FATAL_FAILURE(wash());
    ASSERT_NO_FATAL_FAILURE(cutFromTheWalk());
    ASSERT_NO_FATAL_FAILURE(press());
    sleep(25h);
    ASSERT_EQ(stage(), Stage::Ready);
    ASSERT_NO_FATAL_FAILURE(handOver());
    m_window.reset();

    EXPECT_EQ(read("PRAGMA integrity_check").toStdString(), "ok");
    EXPECT_EQ(read("PRAGMA foreign_key_check").toStdString(), "");
    EXPECT_EQ(read("SELECT state FROM shop_order").toStdString(), "handed-over");
    EXPECT_EQ(read("SELECT name FROM customer").toStdString(), "Zoë Haldén");
    EXPECT_EQ(read("SELECT COUNT(*) FROM press_step WHERE finished_at IS NOT NULL").toStdString(),
              std::to_string(steps));
    EXPECT_EQ(read("SELECT COUNT(*) FROM press_step WHERE finished_at IS NULL").toStdString(), "0");
    // One blank was taken from the washed part of its lot, and film was charged to the roll.
    EXPECT_EQ(read("SELECT SUM(units) FROM lot_move JOIN blank_lot ON blank_lot.id = lot_id WHERE size = 'L'")
                  .toStdString(),
              "3");
    EXPECT_EQ(read("SELECT COUNT(*) FROM roll_move WHERE kind = 'cut' AND mm < 0").toStdString(), "1");
    EXPECT_EQ(read("SELECT COUNT(*) FROM decal WHERE cut_at IS NULL").toStdString(), "0");
}

// The same road is left half way by closing the window, and gone on with where it was.
TEST_F(Road, ClosedInTheMiddleOfAStepItGoesOnWhereItWas) {
    stockUsualShop();
    close();
    openWindow();
    ASSERT_NO_FATAL_FAILURE(takeOrder());
    ASSERT_NO_FATAL_FAILURE(wash());
    ASSERT_NO_FATAL_FAILURE(cutFromTheWalk());
    key(Qt::Key_Space); // taken up
    key(Qt::Key_Space);
    const auto before = shop().of(garment().id).progress;
    ASSERT_TRUE(before.underway.has_value());
    m_window.reset();
    openWindow();
    EXPECT_EQ(m_window->workshop()->current(), PlaceName::PressWalk);
    EXPECT_EQ(shop().of(garment().id).progress.underway, before.underway);
    ASSERT_NO_FATAL_FAILURE(press());
}

} // namespace
} // namespace holdfast::app
