// SPDX-License-Identifier: GPL-3.0-or-later
// What is half done in a place is undone before what is in the journal, and the foot line says so.

#include "app/places/fair_table/fair_table_place.h"
#include "app/shell/foot_line.h"
#include "app/shell/main_window.h"
#include "app/shell/workshop.h"
#include "app/widgets/button.h"
#include "db/actions/film_actions.h"
#include "tests/app/shop_fixture.h"

#include <QApplication>
#include <QTest>

namespace holdfast::app::test {

namespace {

class OwnStepsOfAPlace : public ShopFixture {
protected:
    // The fair table with a roll put away as the last act of the journal.
    void openWithAnAct() {
        const UsualShop usual = stockUsualShop();
        m_roll = usual.roll;
        close();
        m_window = std::make_unique<MainWindow>(time().clock());
        m_window->open(valueOf(db::Shop::open(path(), time().clock().now)));
        showWindow(*m_window);
        workshop().turnTo(PlaceName::FairTable);
        valueOf(db::putRollAway(m_window->desk()->file(), m_roll, true));
    }
    void TearDown() override { m_window.reset(); }

    Workshop& workshop() { return *m_window->workshop(); }
    Button& button(const char* name) { return *m_window->findChild<Button*>(QLatin1String(name)); }
    void hit(Qt::Key key, Qt::KeyboardModifiers modifiers = Qt::NoModifier) {
        QTest::keyClick(QApplication::focusWidget(), key, modifiers);
        QCoreApplication::processEvents();
    }
    bool isPutAway() { return m_window->desk()->shop()->facts.rolls.at(m_roll).state == RollState::PutAway; }
    bool isOrderBegun() {
        return !static_cast<FairTablePlace*>(workshop().place())->model().draft().isUntouched();
    }

    RollId m_roll;
    std::unique_ptr<MainWindow> m_window;
};

} // namespace

TEST_F(OwnStepsOfAPlace, ControlZAndTheFootUndoTheHalfTypedOrderFirstAndSayIt) {
    openWithAnAct();
    EXPECT_EQ(button("footUndo").text(), QStringLiteral("Undo"));
    hit(Qt::Key_1);
    ASSERT_TRUE(isOrderBegun());
    EXPECT_EQ(button("footUndo").text(), QStringLiteral("Undo: last step"));
    EXPECT_EQ(button("footUndo").toolTip(), QStringLiteral("Undoes: last step"));
    hit(Qt::Key_Z, Qt::ControlModifier);
    EXPECT_FALSE(isOrderBegun());
    EXPECT_TRUE(isPutAway());
    EXPECT_EQ(button("footRedo").text(), QStringLiteral("Redo: next step"));
    // Nothing of the order is left to undo: the foot names the act of the journal, and the key undoes it.
    EXPECT_TRUE(button("footUndo").toolTip().contains(QStringLiteral("put away")))
        << button("footUndo").toolTip().toStdString();
    hit(Qt::Key_Z, Qt::ControlModifier | Qt::ShiftModifier);
    EXPECT_TRUE(isOrderBegun());
    button("footUndo").click();
    EXPECT_FALSE(isOrderBegun());
    EXPECT_TRUE(isPutAway());
    button("footUndo").click();
    EXPECT_FALSE(isPutAway());
}

TEST_F(OwnStepsOfAPlace, InAnotherPlaceTheFootIsAboutTheJournal) {
    openWithAnAct();
    hit(Qt::Key_1);
    workshop().turnTo(PlaceName::OrderBook);
    EXPECT_FALSE(button("footUndo").text().contains(QStringLiteral("last step")))
        << button("footUndo").text().toStdString();
    hit(Qt::Key_Z, Qt::ControlModifier);
    EXPECT_FALSE(isPutAway());
    workshop().turnTo(PlaceName::FairTable);
    EXPECT_TRUE(isOrderBegun());
    EXPECT_EQ(button("footUndo").text(), QStringLiteral("Undo: last step"));
}

// The rail has no step of its own: the key means the place that is shown.
TEST_F(OwnStepsOfAPlace, TheKeyMeansTheOrderWhereverTheKeyboardIs) {
    openWithAnAct();
    hit(Qt::Key_1);
    m_window->setFocus();
    QTest::keyClick(m_window.get(), Qt::Key_Z, Qt::ControlModifier);
    EXPECT_FALSE(isOrderBegun());
    EXPECT_TRUE(isPutAway());
}

} // namespace holdfast::app::test
