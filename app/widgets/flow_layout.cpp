// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/widgets/flow_layout.h"

#include <QWidget>

#include <algorithm>

namespace holdfast::app {

namespace {

bool givesWay(const QLayoutItem& item) {
    return item.widget() != nullptr && item.widget()->sizePolicy().horizontalPolicy() == QSizePolicy::Maximum;
}

} // namespace

FlowLayout::FlowLayout(QWidget* parent, int spacing)
    : QLayout(parent) {
    setContentsMargins(0, 0, 0, 0);
    setSpacing(spacing);
}

FlowLayout::~FlowLayout() {
    while (QLayoutItem* item = takeAt(0))
        delete item;
}

void FlowLayout::addItem(QLayoutItem* item) {
    m_items.push_back(item);
    invalidate();
}

QLayoutItem* FlowLayout::itemAt(int at) const {
    return at >= 0 && at < count() ? m_items[static_cast<std::size_t>(at)] : nullptr;
}

QLayoutItem* FlowLayout::takeAt(int at) {
    if (at < 0 || at >= count())
        return nullptr;
    QLayoutItem* item = m_items[static_cast<std::size_t>(at)];
    m_items.erase(m_items.begin() + at);
    invalidate();
    return item;
}

std::vector<QRect> FlowLayout::placesIn(int width) const {
    std::vector<QRect> places;
    places.reserve(m_items.size());
    int left = 0;
    int top = 0;
    int lineHeight = 0;
    std::size_t lineBegin = 0;
    // In the middle of what is higher in the same line.
    const auto endLine = [&] {
        for (std::size_t at = lineBegin; at < places.size(); ++at)
            places[at].translate(0, (lineHeight - places[at].height()) / 2);
        lineBegin = places.size();
    };
    const bool isShort = sizeHint().shrunkBy(contentsMargins()).width() > width;
    for (const QLayoutItem* item : m_items) {
        if (item->isEmpty()) { // hidden
            places.emplace_back(left, top, 0, 0);
            continue;
        }
        const QSize size = isShort && givesWay(*item) ? item->minimumSize() : item->sizeHint();
        if (left > 0 && left + size.width() > width) {
            endLine();
            left = 0;
            top += lineHeight + spacing();
            lineHeight = 0;
        }
        places.emplace_back(QPoint(left, top), size);
        left += size.width() + spacing();
        lineHeight = std::max(lineHeight, size.height());
    }
    endLine();
    return places;
}

QSize FlowLayout::sizeHint() const {
    QSize whole(0, 0);
    for (const QLayoutItem* item : m_items) {
        if (item->isEmpty())
            continue;
        const QSize size = item->sizeHint();
        whole.rwidth() += size.width() + (whole.width() > 0 ? spacing() : 0);
        whole.setHeight(std::max(whole.height(), size.height()));
    }
    return whole.grownBy(contentsMargins());
}

int FlowLayout::shortestLine() const {
    int wide = sizeHint().width();
    for (const QLayoutItem* item : m_items)
        if (!item->isEmpty() && givesWay(*item))
            wide -= item->sizeHint().width() - item->minimumSize().width();
    return wide;
}

QSize FlowLayout::minimumSize() const {
    QSize widest(0, 0);
    for (const QLayoutItem* item : m_items)
        widest = widest.expandedTo(item->isEmpty() ? QSize(0, 0) : item->sizeHint());
    return widest.grownBy(contentsMargins());
}

int FlowLayout::heightForWidth(int width) const {
    const QMargins around = contentsMargins();
    int lowest = 0;
    for (const QRect& place : placesIn(width - around.left() - around.right()))
        lowest = std::max(lowest, place.bottom() + 1);
    return lowest + around.top() + around.bottom();
}

void FlowLayout::setGeometry(const QRect& box) {
    QLayout::setGeometry(box);
    // In the middle of what is higher: next to a field, which is.
    const int down = std::max(0, box.height() - heightForWidth(box.width())) / 2;
    const QRect inside = box.marginsRemoved(contentsMargins());
    const std::vector<QRect> places = placesIn(inside.width());
    for (std::size_t at = 0; at < m_items.size(); ++at)
        m_items[at]->setGeometry(places[at].translated(inside.topLeft() + QPoint(0, down)));
}

} // namespace holdfast::app
