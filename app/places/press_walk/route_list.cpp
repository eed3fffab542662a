// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/places/press_walk/route_list.h"

#include "app/desk/formats.h"
#include "app/places/press_walk/text_lines.h"
#include "app/theme/focus_ring.h"
#include "app/theme/icons.h"
#include "app/theme/measures.h"
#include "app/theme/stitch.h"
#include "app/theme/tokens.h"
#include "app/theme/type.h"

#include <QPainter>
#include <QScrollBar>
#include <QStyledItemDelegate>

namespace holdfast::app {

namespace {

constexpr int kRow = 24;
constexpr int kCurrentRow = 32;
constexpr int kDetailLine = 18;
constexpr qreal kTitleAt = 38;
constexpr qreal kRouteRight = 10;

Type titleType(bool isCurrent) {
    return isCurrent ? Type::BodyStrong : Type::Body;
}

} // namespace

class RouteDelegate : public QStyledItemDelegate {
public:
    explicit RouteDelegate(const RouteList& list)
        : m_list(list) {}

    // Lines that the detail takes below the title; none where both fit on one line.
    QStringList detailBelow(int row, int width) const {
        const RouteStep& step = stepAt(row);
        const bool isCurrent = isCurrentRow(row);
        const qreal room = width - kTitleAt - kRouteRight;
        const qreal beside = room - widthOf(words(step.title), titleType(isCurrent)) - 12;
        const QString detail = words(step.detail);
        const Type type = isCurrent ? Type::SupportStrong : Type::Small;
        return widthOf(detail, type) <= beside ? QStringList{} : brokenLines(detail, type, room);
    }

    QSize sizeHint(const QStyleOptionViewItem&, const QModelIndex& index) const override {
        const int width = m_list.viewport()->width();
        const int lines = static_cast<int>(detailBelow(index.row(), width).size());
        return {width, (isCurrentRow(index.row()) ? kCurrentRow : kRow) + lines * kDetailLine};
    }

    void paint(QPainter* painter, const QStyleOptionViewItem& option,
               const QModelIndex& index) const override {
        const Tokens& dyes = tokens();
        const int row = index.row();
        const RouteStep& step = stepAt(row);
        const QRectF box(option.rect);
        const bool isCurrent = isCurrentRow(row);
        const bool isDone = static_cast<std::size_t>(row) < m_list.m_at;
        if (isCurrent)
            paintBox(*painter, box.adjusted(0, 0, 0, 0), kChipRadius, dyes.indigo, {});
        const QColor ink = isCurrent ? dyes.onIndigo : isDone ? dyes.ink2 : dyes.ink;
        const QStringList below = detailBelow(row, static_cast<int>(box.width()));
        const QRectF line(box.left(), box.top(), box.width(), isCurrent ? kCurrentRow : kRow);

        if (isDone)
            paintIcon(*painter, QRectF(line.left() + 9, line.center().y() - 8, 16, 16),
                      QStringLiteral("tick"), dyes.green);
        else
            paintLine(*painter, QRectF(line.left(), line.top(), 28, line.height()), QString::number(row + 1),
                      isCurrent ? Type::BodyStrong : Type::SupportStrong, ink, Qt::AlignRight);
        paintLine(*painter, line.adjusted(kTitleAt, 0, -kRouteRight, 0), words(step.title),
                  isCurrent || !isDone ? Type::BodyStrong : Type::Body, ink);

        const Type detailType = isCurrent ? Type::SupportStrong : Type::Small;
        const QColor detailInk = isCurrent ? dyes.onIndigo : isDone ? dyes.ink2 : dyes.ink;
        if (below.isEmpty()) {
            paintLine(*painter, line.adjusted(kTitleAt, 0, -kRouteRight, 0), words(step.detail), detailType,
                      detailInk, Qt::AlignRight);
            return;
        }
        QRectF next(line.left() + kTitleAt, line.bottom() - (isCurrent ? 4 : 2), line.width(), kDetailLine);
        for (const QString& text : below) {
            paintLine(*painter, next, text, detailType, detailInk);
            next.translate(0, kDetailLine);
        }
    }

private:
    const RouteStep& stepAt(int row) const { return m_list.m_steps[static_cast<std::size_t>(row)]; }
    bool isCurrentRow(int row) const {
        return m_list.m_isUnderway && static_cast<std::size_t>(row) == m_list.m_at;
    }

    const RouteList& m_list;
};

RouteList::RouteList(QWidget* parent)
    : QListView(parent) {
    setObjectName(QStringLiteral("routeList"));
    setAccessibleName(tr("Steps of the garment"));
    setModel(&m_model);
    setItemDelegate(new RouteDelegate(*this));
    itemDelegate()->setParent(this);
    setFrameShape(QFrame::NoFrame);
    setEditTriggers(NoEditTriggers);
    setSelectionMode(NoSelection);
    setFocusPolicy(Qt::TabFocus);
    setVerticalScrollMode(ScrollPerPixel);
    setHorizontalScrollBarPolicy(Qt::ScrollBarAlwaysOff);
    viewport()->setAutoFillBackground(false);
    giveFocusRing(this, this, kChipRadius);
}

void RouteList::show(const Route& route, std::size_t at, bool isUnderway) {
    m_steps = route.steps;
    m_at = at;
    m_isUnderway = isUnderway;
    QStringList spoken;
    for (std::size_t step = 0; step < m_steps.size(); ++step) {
        const QString title =
            tr("%1 %2, %3").arg(step + 1).arg(words(m_steps[step].title), words(m_steps[step].detail));
        spoken << (step < at                  ? tr("%1, done").arg(title)
                   : step == at && isUnderway ? tr("%1, now").arg(title)
                                              : title);
    }
    m_model.setStringList(spoken);
    followStep();
}

void RouteList::clear() {
    m_steps.clear();
    m_model.setStringList({});
}

void RouteList::followStep() {
    if (m_at >= m_steps.size())
        return;
    doItemsLayout();
    // Some of what is done stays in view above; what comes next is worth more.
    const QModelIndex above = m_model.index(static_cast<int>(m_at > 1 ? m_at - 2 : 0));
    scrollTo(m_model.index(static_cast<int>(std::min(m_at + 4, m_steps.size() - 1))), EnsureVisible);
    scrollTo(above, EnsureVisible);
    const QModelIndex current = m_model.index(static_cast<int>(m_at));
    scrollTo(current, EnsureVisible);
    // A row is seen whole at the top or not at all, where the step under way lets it.
    const QRect first = visualRect(indexAt({viewport()->width() / 2, 0}));
    const int beyond = first.top() < 0 ? first.bottom() + 1 : 0;
    if (beyond > 0 && visualRect(current).top() >= beyond)
        verticalScrollBar()->setValue(verticalScrollBar()->value() + beyond);
}

void RouteList::resizeEvent(QResizeEvent* event) {
    QListView::resizeEvent(event);
    scheduleDelayedItemsLayout();
    followStep();
}

void RouteList::paintEvent(QPaintEvent* event) {
    if (m_steps.size() != static_cast<std::size_t>(m_model.rowCount()))
        return;
    QListView::paintEvent(event);
}

} // namespace holdfast::app
