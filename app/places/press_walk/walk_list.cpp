// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/places/press_walk/walk_list.h"

#include "app/places/press_walk/walk_model.h"

#include <QApplication>
#include <QMouseEvent>
#include <QPainter>
#include <QScrollBar>
#include <QStyledItemDelegate>

#include <algorithm>

namespace holdfast::app {

WalkList::WalkList(const WalkModel& model, QWidget* parent)
    : QListView(parent)
    , m_model(model) {
    // What is scrolled is moved as a picture, and the head with it: paint it where it belongs.
    connect(verticalScrollBar(), &QScrollBar::valueChanged, this, [this] { viewport()->update(); });
}

QModelIndex WalkList::headThatStays() const {
    const QModelIndex first = indexAt({viewport()->width() / 2, 0});
    if (!first.isValid())
        return {};
    int row = first.row();
    if (m_model.row(row).kind == WalkRow::Kind::Run && visualRect(first).top() >= 0)
        return {};
    while (row > 0 && m_model.row(row).kind != WalkRow::Kind::Run)
        --row;
    const bool isRun = m_model.row(row).kind == WalkRow::Kind::Run;
    return isRun && m_model.row(first.row()).kind != WalkRow::Kind::Change ? m_model.index(row)
                                                                           : QModelIndex();
}

// Pushed up by the next run as that comes to the top.
QRect WalkList::headBox(const QModelIndex& head) const {
    const int height = sizeHintForIndex(head).height();
    int top = 0;
    for (int row = head.row() + 1; row < m_model.rowCount(); ++row) {
        if (m_model.row(row).kind == WalkRow::Kind::Garment)
            continue;
        top = std::min(0, visualRect(m_model.index(row)).top() - height);
        break;
    }
    return {0, top, viewport()->width(), height};
}

void WalkList::paintEvent(QPaintEvent* event) {
    QListView::paintEvent(event);
    const QModelIndex head = headThatStays();
    if (!head.isValid())
        return;
    QPainter painter(viewport());
    QStyleOptionViewItem option;
    initViewItemOption(&option);
    option.rect = headBox(head);
    itemDelegate()->paint(&painter, option, head);
}

// A click on the head that stays goes to where its run begins, not to the garment below it.
void WalkList::mousePressEvent(QMouseEvent* event) {
    const QModelIndex head = headThatStays();
    if (head.isValid() && headBox(head).contains(event->pos()))
        QListView::scrollTo(head, PositionAtTop);
    else
        QListView::mousePressEvent(event);
}

void WalkList::keyboardSearch(const QString& typed) {
    if (!m_sinceTyped.isValid() || m_sinceTyped.elapsed() > QApplication::keyboardInputInterval())
        m_typed.clear();
    m_sinceTyped.start();
    m_typed += typed.trimmed();
    const QModelIndex found = m_typed.isEmpty() ? QModelIndex() : m_model.indexOfNumber(m_typed);
    if (found.isValid())
        setCurrentIndex(found);
}

void WalkList::scrollTo(const QModelIndex& index, ScrollHint hint) {
    QListView::scrollTo(index, hint);
    const QModelIndex head = headThatStays();
    if (!head.isValid() || index == head)
        return;
    const int hidden = headBox(head).bottom() + 1 - visualRect(index).top();
    if (hidden > 0 && visualRect(index).bottom() >= 0)
        verticalScrollBar()->setValue(verticalScrollBar()->value() - hidden);
}

} // namespace holdfast::app
