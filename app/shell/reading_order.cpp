// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/shell/reading_order.h"

#include <QAbstractScrollArea>
#include <QApplication>
#include <QGridLayout>
#include <QScrollArea>
#include <QStackedLayout>
#include <QWidget>

#include <algorithm>

namespace holdfast::app {

namespace {

bool takesTab(const QWidget& widget) {
    return widget.isEnabled() && (widget.focusPolicy() & Qt::TabFocus) != 0 && widget.focusProxy() == nullptr;
}

// Rows from the top, each read from the left. What begins above the foot of the row's highest widget belongs
// to that row, so that a tall column at the left is read whole before what is right of it.
void sortAsRead(QVector<QWidget*>& widgets) {
    const auto top = [](const QWidget* widget) { return widget->geometry().top(); };
    const auto fromLeft = [](const QWidget* widget) {
        return std::pair{widget->geometry().left(), widget->geometry().top()};
    };
    std::ranges::stable_sort(widgets, {}, top);
    for (auto row = widgets.begin(); row != widgets.end();) {
        const int foot = (*row)->geometry().bottom();
        const auto next = std::find_if(
            row, widgets.end(), [&](const QWidget* each) { return each->geometry().center().y() > foot; });
        std::ranges::stable_sort(row, next, {}, fromLeft);
        row = next;
    }
}

class Reader {
public:
    QVector<QWidget*> read(QWidget* part) {
        addChildren(part);
        return m_stops;
    }

private:
    void add(QWidget* widget) {
        if (widget->isHidden() || widget->isWindow())
            return;
        if (takesTab(*widget))
            m_stops.append(widget);
        addChildren(widget);
    }

    void addChildren(QWidget* widget) {
        if (auto* scroll = qobject_cast<QScrollArea*>(widget); scroll != nullptr) {
            if (scroll->widget() != nullptr)
                add(scroll->widget());
            return;
        }
        if (widget->layout() != nullptr)
            addLayout(widget->layout());
        addByPlace(widget);
    }

    void addLayout(QLayout* layout) {
        if (const auto* stacked = qobject_cast<QStackedLayout*>(layout); stacked != nullptr) {
            if (stacked->currentWidget() != nullptr)
                addItem(stacked->currentWidget());
            return;
        }
        for (const int at : orderIn(*layout)) {
            QLayoutItem* item = layout->itemAt(at);
            if (item->widget() != nullptr)
                addItem(item->widget());
            else if (item->layout() != nullptr)
                addLayout(item->layout());
        }
    }

    void addItem(QWidget* widget) {
        m_placed.append(widget);
        add(widget);
    }

    static QVector<int> orderIn(const QLayout& layout) {
        QVector<int> order(layout.count());
        for (int at = 0; at < layout.count(); ++at)
            order[at] = at;
        const auto* grid = qobject_cast<const QGridLayout*>(&layout);
        if (grid == nullptr)
            return order;
        const auto cell = [grid](int at) {
            int row = 0;
            int column = 0;
            int rows = 0;
            int columns = 0;
            grid->getItemPosition(at, &row, &column, &rows, &columns);
            return std::pair{row, column};
        };
        std::ranges::stable_sort(order, {}, cell);
        return order;
    }

    // Those that no layout of their parent has placed.
    void addByPlace(QWidget* parent) {
        QVector<QWidget*> loose;
        for (QObject* child : parent->children())
            if (auto* widget = qobject_cast<QWidget*>(child);
                widget != nullptr && !widget->isHidden() && !m_placed.contains(widget))
                loose.append(widget);
        sortAsRead(loose);
        for (QWidget* widget : loose)
            add(widget);
    }

    QVector<QWidget*> m_stops;
    QVector<const QWidget*> m_placed; // by a layout, found so far
};

} // namespace

QVector<QWidget*> tabStops(QWidget* part) {
    return Reader().read(part);
}

bool moveFocusWithin(QWidget* part, bool forward) {
    const QVector<QWidget*> stops = tabStops(part);
    if (stops.isEmpty())
        return false;
    QWidget* from = QApplication::focusWidget();
    // Within a stop that has parts of its own (an editor in a cell) its place is that of the stop.
    while (from != nullptr && from != part && !stops.contains(from))
        from = from->parentWidget();
    const auto count = stops.size();
    const auto at = from == nullptr ? -1 : stops.indexOf(from);
    const auto next = at < 0 ? (forward ? 0 : count - 1) : (at + (forward ? 1 : count - 1)) % count;
    stops[next]->setFocus(forward ? Qt::TabFocusReason : Qt::BacktabFocusReason);
    return true;
}

bool canHaveKeyboard(const QWidget* widget) {
    return widget != nullptr && widget->isVisible() && widget->isEnabled();
}

} // namespace holdfast::app
