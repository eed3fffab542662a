// SPDX-License-Identifier: GPL-3.0-or-later
// Choosing printers in the Back room and printing from it, by keys, in the real window on the real print
// service.

#include "app/places/back_room/back_room_place.h"
#include "app/places/back_room/room_lines.h"
#include "app/shell/foot_line.h"
#include "app/shell/main_window.h"
#include "app/shell/workshop.h"
#include "app/widgets/choice.h"
#include "app/widgets/label.h"
#include "tests/printing/printing_fixture.h"

#include <QApplication>
#include <QTest>

namespace holdfast::app::test {
namespace {

class PrintersInWindow : public PrintingFixture {
protected:
    void SetUp() override {
        PrintingFixture::SetUp();
        close();
        m_window = std::make_unique<MainWindow>(time().clock());
        m_window->open(valueOf(db::Shop::open(path(), time().clock().now)));
        showWindow(*m_window);
        workshop().turnTo(PlaceName::BackRoom);
        room().turnToSection(RoomSection::Printers);
    }
    void TearDown() override {
        m_window.reset();
        PrintingFixture::TearDown();
    }
    Workshop& workshop() { return *m_window->workshop(); }
    BackRoomPlace& room() { return *qobject_cast<BackRoomPlace*>(workshop().place()); }
    RoomLines& lines() { return *m_window->findChild<RoomLines*>(QStringLiteral("roomLines")); }
    QString foot() { return workshop().foot()->words(); }

    // Enter on the line: two headings, each followed by the usual printer and the six.
    void enterOnLine(int line) {
        lines().setFocus();
        QTest::keyClick(&lines(), Qt::Key_Home);
        for (int at = 0; at < line; ++at)
            QTest::keyClick(&lines(), Qt::Key_Down);
        QTest::keyClick(&lines(), Qt::Key_Return);
    }
    std::unique_ptr<MainWindow> m_window;
};

TEST_F(PrintersInWindow, AChoiceIsKeptForThisMachineAndTheTestLabelComesOutThere) {
    // The service is asked beside the window.
    ASSERT_TRUE(QTest::qWaitFor(
        [&] {
            lines().setFocus();
            QTest::keyClick(&lines(), Qt::Key_End);
            return lines().isVisible() &&
                   lines().accessibleDescription().contains(QStringLiteral("Ticket80x200"));
        },
        10'000));
    const int entries = static_cast<int>(m_window->desk()->file().recent(100).size());
    enterOnLine(2); // after the usual printer of the labels: the first by name
    EXPECT_EQ(foot().toStdString(), "Labels go to the printer Label70x40 from now on.");
    EXPECT_EQ(keptPrinters().labels, QStringLiteral("Label70x40"));
    EXPECT_EQ(keptPrinters().sheets, QString());
    EXPECT_EQ(static_cast<int>(m_window->desk()->file().recent(100).size()), entries)
        << "no fact of the shop";

    // Letters look for a line while the lines have the keyboard; the list of sections has the acts.
    m_window->findChild<Choice*>(QStringLiteral("sections"))->takeFocus();
    QTest::keyClick(QApplication::focusWidget(), Qt::Key_L);
    ASSERT_TRUE(QTest::qWaitFor([&] { return foot().startsWith(QStringLiteral("Test label sent")); }, 20'000))
        << foot().toStdString();
    const Arrived arrived = arrivedAt(QStringLiteral("Label70x40"));
    ASSERT_TRUE(arrived.isThere());
    // The frame of the test label is 66 × 36 mm.
    EXPECT_NEAR(arrived.ink.width(), 66, 0.3);
    EXPECT_NEAR(arrived.ink.height(), 36, 0.3);
}

} // namespace
} // namespace holdfast::app::test
