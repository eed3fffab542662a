// SPDX-License-Identifier: GPL-3.0-or-later
// The film shelf in small windows: what answers a question is in view, and nothing scrolls inside a scroller.
#include "app/widgets/button.h"
#include "tests/app/film_shelf_fixture.h"

#include <QAbstractScrollArea>
#include <QScrollBar>
#include <QTest>

namespace holdfast::app::test {

namespace {

// What a place has of windows of 1366 × 740, 1024 × 600 and 800 × 1280.
constexpr QSize kSizes[] = {{1270, 630}, {928, 490}, {704, 1170}};

class FilmShelfFits : public FilmShelf {
protected:
    void resize(QSize size) {
        place->setMinimumSize(1, 1); // a window of its own would keep what it needs as it is now
        place->resize(size);
        QTest::qWait(0);
        EXPECT_LE(place->minimumSizeHint().width(), size.width());
        EXPECT_LE(place->minimumSizeHint().height(), size.height());
    }
    static bool isInView(const QWidget* widget) {
        return widget->isVisible() && widget->visibleRegion().boundingRect() == widget->rect();
    }
    static bool scrolls(const QAbstractScrollArea* area) {
        return area->verticalScrollBar()->maximum() > 0 &&
               area->verticalScrollBarPolicy() != Qt::ScrollBarAlwaysOff;
    }
    void expectOneScrollerAtATime(const std::string& when) {
        for (const auto* area : place->findChildren<QAbstractScrollArea*>()) {
            if (!area->isVisible())
                continue;
            EXPECT_FALSE(area->horizontalScrollBar()->isVisible()) << when;
            for (const QWidget* around = area->parentWidget(); around; around = around->parentWidget()) {
                const auto* outer = qobject_cast<const QAbstractScrollArea*>(around);
                EXPECT_FALSE(outer && scrolls(area) && scrolls(outer))
                    << when << ", " << area->objectName().toStdString();
            }
        }
    }
};

} // namespace

TEST_F(FilmShelfFits, WhatIfIsAnsweredInViewAndTheLedgerHasThePanel) {
    const UsualShop usual = stockUsualShop();
    for (int order = 0; order < 12; ++order)
        takeOrder({aGarment(usual)});
    for (int count = 0; count < 15; ++count)
        valueOf(db::correctLength(file(), usual.roll, Millimetres{4900 - count * 10}, "measured again"));
    open();
    for (const QSize size : kSizes) {
        resize(size);
        const std::string when = std::to_string(size.width()) + " × " + std::to_string(size.height());
        expectOneScrollerAtATime(when + ", work");
        key(Qt::Key_W);
        key(Qt::Key_Space);
        key(Qt::Key_Down);
        key(Qt::Key_Space);
        QTest::qWait(0);
        EXPECT_TRUE(text("spokenFor").contains(QStringLiteral("promise"), Qt::CaseInsensitive));
        EXPECT_TRUE(isInView(part<QLabel>("spokenFor"))) << when;
        expectOneScrollerAtATime(when + ", what if");
        key(Qt::Key_Escape);
        key(Qt::Key_L);
        QTest::qWait(0);
        const auto* ledger = part<QListView>("rollLedger");
        EXPECT_TRUE(isInView(ledger->viewport())) << when;
        EXPECT_GE(ledger->viewport()->height(), 3 * ledger->sizeHintForRow(0)) << when;
        expectOneScrollerAtATime(when + ", ledger");
        key(Qt::Key_L);
        for (const char* act : {"recordReading", "testStrip", "useUpRoll", "printLabel"})
            EXPECT_TRUE(isInView(part<Button>(act))) << act << " at " << when;
        key(Qt::Key_G);
        expectOneScrollerAtATime(when + ", air");
        key(Qt::Key_Escape);
    }
}

} // namespace holdfast::app::test
