// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/places/film_shelf/shelf_view.h"

#include "app/places/film_shelf/shelf_delegate.h"
#include "app/theme/focus_ring.h"
#include "app/theme/tokens.h"
#include "app/theme/type.h"

#include <QKeyEvent>
#include <QPainter>

#include <algorithm>
#include <array>

namespace holdfast::app {

namespace {

constexpr int kScaleHeight = 36;
constexpr qreal kBeyondAxis = 66; // room for the words of the longest tail's end
constexpr int kFewestDays = 60;
constexpr int kMostDays = 200; // the tails of longer-lived rolls run off the axis
constexpr qreal kMarkRoom = 64;
constexpr qreal kTodayRoom = 46;

} // namespace

ShelfAxis::ShelfAxis(qreal width, int longestDays) {
    nameRight = nameLeft + std::clamp(width * 0.18, 150.0, 260.0);
    todayAt = nameRight + 43;
    right = std::max(todayAt + 60, width - kBeyondAxis);
    days = std::clamp(longestDays, kFewestDays, kMostDays);
}

qreal ShelfAxis::at(int daysFromToday) const {
    return todayAt + (right - todayAt) * std::min(daysFromToday, days) / days;
}

std::vector<ShelfAxis::Mark> ShelfAxis::marks(LocalDate today) const {
    const qreal monthWidth = (right - todayAt) / days * 30.4;
    int step = 12;
    for (const int months : {1, 2, 3, 6})
        if (monthWidth * months >= kMarkRoom) {
            step = months;
            break;
        }
    std::vector<Mark> marks;
    const std::chrono::year_month_day now{today};
    for (auto month = now.year() / now.month();;) {
        month += std::chrono::months{1};
        const LocalDate first{month / std::chrono::day{1}};
        const auto away = static_cast<int>((first - today).count());
        if (away > days)
            return marks;
        const bool isOnStep = (static_cast<unsigned>(month.month()) - 1) % static_cast<unsigned>(step) == 0;
        if (isOnStep && at(away) >= todayAt + kTodayRoom)
            marks.push_back({at(away), dayInShort(first, today)});
    }
}

// Today and the months, above the boards.
class ShelfScale : public QWidget {
public:
    explicit ShelfScale(ShelfView* view)
        : QWidget(view)
        , m_view(view) {
        setAttribute(Qt::WA_TransparentForMouseEvents);
    }

protected:
    void paintEvent(QPaintEvent*) override {
        QPainter painter(this);
        const Tokens& dyes = tokens();
        painter.fillRect(rect(), dyes.card);
        const ShelfAxis axis = m_view->axis();
        const auto mark = [&](qreal at, const QString& text, Type type, const QColor& ink) {
            paintLine(painter, QRectF(at - 60, 0, 120, height()), text, type, ink, Qt::AlignHCenter);
        };
        mark(axis.todayAt, ShelfView::tr("Today"), Type::SupportStrong, dyes.ink);
        for (const ShelfAxis::Mark& each : axis.marks(m_view->shelf().today()))
            mark(each.at, each.words, Type::Small, dyes.ink2);
    }

private:
    ShelfView* m_view;
};

ShelfView::ShelfView(const ShelfModel& model, QWidget* parent)
    : QListView(parent)
    , m_shelf(model)
    , m_scale(new ShelfScale(this)) {
    setObjectName(QStringLiteral("shelf"));
    setAccessibleName(tr("Rolls, first to use up first"));
    setModel(const_cast<ShelfModel*>(&model));
    setItemDelegate(new ShelfDelegate(*this));
    setUniformItemSizes(true);
    setFrameShape(QFrame::NoFrame);
    setEditTriggers(NoEditTriggers);
    setVerticalScrollMode(ScrollPerPixel);
    setHorizontalScrollBarPolicy(Qt::ScrollBarAlwaysOff);
    setTabKeyNavigation(false);
    setViewportMargins(0, kScaleHeight, 0, 0);
    giveNoFocusRing(this);
    connect(&m_shelf, &QAbstractItemModel::modelReset, m_scale, [this] { m_scale->update(); });
}

ShelfAxis ShelfView::axis() const {
    return {static_cast<qreal>(viewport()->width()), m_shelf.longestDays()};
}

void ShelfView::paintEvent(QPaintEvent* event) {
    {
        QPainter painter(viewport());
        const Tokens& dyes = tokens();
        painter.fillRect(event->rect(), dyes.card);
        const ShelfAxis here = axis();
        painter.setPen(QPen(dyes.thread, 1.2, Qt::DotLine));
        for (const ShelfAxis::Mark& mark : here.marks(m_shelf.today()))
            painter.drawLine(QPointF(mark.at, 0), QPointF(mark.at, viewport()->height()));
        painter.fillRect(QRectF(here.todayAt - 1, 0, 2, viewport()->height()), dyes.ink);
    }
    QListView::paintEvent(event);
}

void ShelfView::resizeEvent(QResizeEvent* event) {
    QListView::resizeEvent(event);
    m_scale->setGeometry(0, 0, viewport()->width(), kScaleHeight);
}

void ShelfView::keyboardSearch(const QString& typed) {
    if (const int row = m_typeAhead.rowAfter(typed, *model(), currentIndex().row(), kNameRole); row >= 0)
        setCurrentIndex(model()->index(row, 0));
}

void ShelfView::keyPressEvent(QKeyEvent* event) {
    if (event->key() == Qt::Key_Right && event->modifiers() == Qt::NoModifier) {
        emit turnedRight();
        return;
    }
    QListView::keyPressEvent(event);
}

} // namespace holdfast::app
