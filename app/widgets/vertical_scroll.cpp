// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/widgets/vertical_scroll.h"

#include "app/theme/measures.h"

#include <QAbstractItemView>
#include <QApplication>
#include <QBoxLayout>
#include <QPointer>
#include <QScrollBar>
#include <QTimer>

namespace holdfast::app {

namespace {

constexpr int kAbout = kSpace12; // seen around what got the keyboard

// Empty: nothing more than is seen already.
QRect partToShow(QWidget& focused, const QScrollArea& area) {
    const int room = area.viewport()->height();
    if (focused.height() <= room / 2)
        return focused.rect();
    // Of a list the current row, unless the list was scrolled away from it.
    if (auto* list = qobject_cast<QAbstractItemView*>(&focused); list != nullptr) {
        const QRect row = list->visualRect(list->currentIndex());
        if (row.intersects(list->viewport()->rect()))
            return row.translated(list->viewport()->pos());
    }
    const bool isList = qobject_cast<QAbstractItemView*>(&focused) != nullptr;
    const QRect cursor = isList ? QRect() : focused.inputMethodQuery(Qt::ImCursorRectangle).toRect();
    if (cursor.isValid() && cursor.height() <= room / 2)
        return cursor;
    const QRect seen(focused.mapFrom(area.viewport(), QPoint()), area.viewport()->size());
    return (seen & focused.rect()).height() >= room / 2 ? QRect() : QRect(0, 0, focused.width(), room / 2);
}

} // namespace

// Not ensureWidgetVisible: of a line of text that shows the cursor only, not the field.
void showIn(QScrollArea& area, QWidget& focused) {
    const QRect part = partToShow(focused, area);
    const QPoint middle = focused.mapTo(area.widget(), part.center());
    if (!part.isEmpty())
        area.ensureVisible(middle.x(), middle.y(), 0, part.height() / 2 + kAbout);
}

VerticalScroll::VerticalScroll(QWidget* parent)
    : QScrollArea(parent) {
    setFrameShape(QFrame::NoFrame);
    setHorizontalScrollBarPolicy(Qt::ScrollBarAlwaysOff);
    setWidgetResizable(true);
    setFocusPolicy(Qt::NoFocus);
    auto* inner = new QWidget;
    m_column = new QVBoxLayout(inner);
    m_column->setContentsMargins(0, 0, 0, 0);
    m_column->setSpacing(0);
    setWidget(inner);
    // The ground under it shows through.
    inner->setAutoFillBackground(false);
    viewport()->setAutoFillBackground(false);
    verticalScrollBar()->setSingleStep(kSpace20);
    connect(qApp, &QApplication::focusChanged, this, [this](QWidget*, QWidget* now) {
        if (now == nullptr || !widget()->isAncestorOf(now))
            return;
        showIn(*this, *now);
        // Again once it is laid out: it may have come just now, as a new row does.
        QTimer::singleShot(0, this, [this, shown = QPointer<QWidget>(now)] {
            QCoreApplication::sendPostedEvents(nullptr, QEvent::LayoutRequest);
            if (shown && shown->hasFocus() && widget()->isAncestorOf(shown))
                showIn(*this, *shown);
        });
    });
}

QSize VerticalScroll::minimumSizeHint() const {
    // As wide as its column, so that nothing is cut at the side; as low as one target.
    return {widget()->minimumSizeHint().width() + verticalScrollBar()->sizeHint().width(), kTarget};
}

} // namespace holdfast::app
