// SPDX-License-Identifier: GPL-3.0-or-later
// What the program says of itself, and how a person gets there.

#include "app/places/back_room/back_room_place.h"
#include "app/shell/command_finder.h"
#include "app/shell/finder_model.h"
#include "app/shell/made_with.h"
#include "app/shell/slip_edge.h"
#include "app/shell/workshop.h"
#include "app/slips/form_slip.h"
#include "app/widgets/button.h"
#include "tests/app/shop_fixture.h"

#include <QApplication>
#include <QLabel>
#include <QScrollBar>
#include <QTest>

#include <sqlite3.h>

namespace holdfast::app::test {

namespace {

class About : public ShopFixture {
protected:
    About() {
        QApplication::setApplicationVersion(QStringLiteral("7.8.9"));
        showWindow(workshop, {1366, 768});
    }
    ~About() override { QApplication::setApplicationVersion({}); }

    QString shown() {
        QStringList words;
        for (const auto* label : workshop.slipEdge()->findChildren<QLabel*>())
            if (label->isVisible())
                words.append(QString(label->text()).remove(QChar(0x200b)));
        return words.join(u'\n');
    }
    void press(Qt::Key key, Qt::KeyboardModifiers modifiers = Qt::NoModifier) {
        QTest::keyClick(QApplication::focusWidget(), key, modifiers);
    }

    Workshop workshop{desk()};
};

TEST_F(About, FinderLeadsToVersionLicenceAndLibraries) {
    press(Qt::Key_K, Qt::ControlModifier);
    typeText(QStringLiteral("version"));
    press(Qt::Key_Return);
    ASSERT_TRUE(workshop.slipEdge()->isOpen());
    EXPECT_EQ(workshop.slipEdge()->slip()->title(), QStringLiteral("About Holdfast"));
    const QString words = shown();
    EXPECT_TRUE(words.contains(QStringLiteral("Version 7.8.9"))) << words.toStdString();
    EXPECT_TRUE(words.contains(QStringLiteral("GNU General Public License, version 3 or later")));
    EXPECT_TRUE(words.contains(QStringLiteral("no warranty")));
    EXPECT_TRUE(words.contains(QStringLiteral("SQLite ") + QString::fromLatin1(sqlite3_libversion())));
    for (const MadeWith& part : librariesUsed()) {
        EXPECT_TRUE(words.contains(part.name)) << part.name.toStdString();
        EXPECT_FALSE(part.version.isEmpty()) << part.name.toStdString();
        EXPECT_TRUE(words.contains(part.licence)) << part.name.toStdString();
    }
}

TEST_F(About, LicencesAreReadByTheKeyboardAndLeadBack) {
    workshop.act(ShellAct::About);
    press(Qt::Key_Return, Qt::ControlModifier);
    ASSERT_EQ(workshop.slipEdge()->slip()->title(), QStringLiteral("Licences"));
    const QString words = shown();
    EXPECT_TRUE(words.contains(QStringLiteral("15. Disclaimer of Warranty.")));
    EXPECT_TRUE(words.contains(QStringLiteral("SIL OPEN FONT LICENSE Version 1.1")));
    const auto* page = workshop.slipEdge()->slip()->findChild<Form*>();
    ASSERT_TRUE(QTest::qWaitFor([&] { return page->verticalScrollBar()->maximum() > 0; }));
    press(Qt::Key_PageDown);
    EXPECT_GT(page->verticalScrollBar()->value(), 0);
    press(Qt::Key_Return, Qt::ControlModifier);
    EXPECT_EQ(workshop.slipEdge()->slip()->title(), QStringLiteral("About Holdfast"));
    press(Qt::Key_Escape);
    EXPECT_FALSE(workshop.slipEdge()->isOpen());
}

} // namespace
} // namespace holdfast::app::test
