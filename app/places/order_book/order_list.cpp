// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/places/order_book/order_list.h"

#include "app/places/order_book/order_delegate.h"
#include "app/theme/focus_ring.h"

#include <QKeyEvent>

namespace holdfast::app {

OrderList::OrderList(OrderModel& model, QWidget* parent)
    : QListView(parent) {
    setObjectName(QStringLiteral("orderList"));
    setAccessibleName(tr("Orders"));
    setModel(&model);
    setItemDelegate(new OrderDelegate(model, this));
    setUniformItemSizes(true);
    setFrameShape(QFrame::NoFrame);
    setVerticalScrollMode(QAbstractItemView::ScrollPerPixel);
    setHorizontalScrollBarPolicy(Qt::ScrollBarAlwaysOff);
    setTabKeyNavigation(false);
    giveNoFocusRing(this);
}

// Letters are for the list as long as it has the keyboard; no act of the order takes them.
bool OrderList::event(QEvent* event) {
    if (event->type() == QEvent::ShortcutOverride && isTyped(*static_cast<QKeyEvent*>(event))) {
        event->accept();
        return true;
    }
    return QListView::event(event);
}

void OrderList::keyPressEvent(QKeyEvent* event) {
    if (event->key() == Qt::Key_Return || event->key() == Qt::Key_Enter)
        emit entered();
    else if (isTyped(*event))
        keyboardSearch(event->text());
    else
        QListView::keyPressEvent(event);
}

void OrderList::keyboardSearch(const QString& typed) {
    const int row = m_typeAhead.rowAfter(typed, *model(), currentIndex().row(), kNumberAndName);
    if (row >= 0)
        setCurrentIndex(model()->index(row, 0));
}

} // namespace holdfast::app
