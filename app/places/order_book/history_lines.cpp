// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/places/order_book/history_lines.h"

#include "app/desk/formats.h"
#include "app/theme/icons.h"
#include "app/theme/stitch.h"
#include "app/theme/text_runs.h"
#include "app/theme/type.h"

#include <QFontMetrics>
#include <QResizeEvent>

#include <algorithm>
#include <cmath>

namespace holdfast::app {

namespace {

constexpr int kLine = 32;
constexpr qreal kThreadAt = 24;
constexpr qreal kWhenAt = 42;
constexpr int kBehindTime = 14;
constexpr int kUndoRoom = 104;

QString whenWords(const Now& now, Instant at) {
    const LocalTime local = now.toLocal(at);
    const LocalDate date = dateOf(local);
    if (date == now.today())
        return clock(local);
    if (date > now.today() - Days{7} && date < now.today())
        return valueWords(Weekday{date}) + u' ' + clock(local);
    return valueWords(DayOfMonth{date});
}

} // namespace

HistoryLines::HistoryLines(QWidget* parent)
    : PaintedLines(QStringLiteral("historyLines"), tr("What happened, newest first"), parent) {}

void HistoryLines::show(const OrderHistory& history, const Now& now) {
    m_lines.clear();
    qreal widest = 0;
    for (const db::HistoryEntry& entry : history.entries) {
        const bool isAct = !entry.undoes.has_value();
        const Offer offer = !isAct                                   ? Offer::Nothing
                            : entry.isUndone()                       ? Offer::PutBack
                            : history.isBuiltUpon.contains(entry.id) ? Offer::Nothing
                                                                     : Offer::Undo;
        m_lines.push_back({entry.undoneBy.value_or(entry.id), whenWords(now, entry.at), words(entry.title),
                           entry.isUndone(), offer, kLine});
        widest = std::max(widest, widthOf(m_lines.back().when, Type::Small));
    }
    m_wordsAt = static_cast<int>(std::ceil(kWhenAt + widest)) + kBehindTime;
    layLines();
}

// A long title takes as many lines as it needs: a history is never cut.
void HistoryLines::layLines() {
    const QFontMetrics metrics(fontOf(Type::Support));
    const int room = std::max(80, width() - m_wordsAt - kUndoRoom);
    for (Line& line : m_lines) {
        const int text = metrics.boundingRect(0, 0, room, 1000, Qt::TextWordWrap, line.title).height();
        line.height = std::max(kLine, text + 12);
    }
    linesChanged();
}

void HistoryLines::resizeEvent(QResizeEvent* event) {
    QWidget::resizeEvent(event);
    if (event->oldSize().width() != event->size().width())
        layLines();
}

void HistoryLines::paintOne(QPainter& painter, int index, const QRectF& box, bool isCurrent) {
    const Tokens& dyes = tokens();
    const Line& line = at(index);
    if (isCurrent)
        painter.fillRect(box, dyes.woad);
    const QPointF knot(kThreadAt, box.center().y());
    if (index > 0)
        paintThread(painter, {kThreadAt, box.top()}, knot, dyes.indigo, 2);
    if (index + 1 < lineCount())
        paintThread(painter, knot, {kThreadAt, box.bottom()}, dyes.indigo, 2);
    if (line.isUndone) {
        painter.setPen(Qt::NoPen);
        painter.setBrush(isCurrent ? dyes.woad : dyes.card);
        painter.drawEllipse(knot, 8, 8);
        paintKnot(painter, knot, Knot::Planned, 13);
    } else {
        painter.setPen(Qt::NoPen);
        painter.setBrush(dyes.indigo);
        painter.drawEllipse(knot, 5.5, 5.5);
    }

    paintLine(painter, QRectF(kWhenAt, box.top(), m_wordsAt - kWhenAt, box.height()), line.when, Type::Small,
              dyes.ink2);
    QFont font = fontOf(Type::Support);
    font.setStrikeOut(line.isUndone);
    painter.setFont(font);
    painter.setPen(line.isUndone ? dyes.ink3 : dyes.ink);
    painter.drawText(QRectF(m_wordsAt, box.top(), width() - m_wordsAt - kUndoRoom, box.height()),
                     Qt::AlignVCenter | Qt::AlignLeft | Qt::TextWordWrap, withRunsApart(line.title));

    if (line.offer == Offer::Nothing)
        return;
    const QString act = offerWords(line.offer);
    const QRectF right(0, box.top(), width() - 16, box.height());
    paintLine(painter, right, act, Type::SmallStrong, dyes.indigo, Qt::AlignRight);
    paintIcon(painter,
              QRectF(right.right() - widthOf(act, Type::SmallStrong) - 22, box.center().y() - 8, 16, 16),
              line.offer == Offer::Undo ? QStringLiteral("undo") : QStringLiteral("redo"), dyes.indigo);
}

QString HistoryLines::offerWords(Offer offer) {
    switch (offer) {
    case Offer::Undo:
        return tr("Undo");
    case Offer::PutBack:
        return tr("Put back");
    case Offer::Nothing:
        break;
    }
    return {};
}

bool HistoryLines::isOnButton(int line, const QRectF& box, const QPointF& where) const {
    return at(line).offer != Offer::Nothing && where.x() > box.right() - kUndoRoom;
}

void HistoryLines::doWhatItOffers(int line) {
    if (at(line).offer == Offer::Undo)
        emit undoAsked(at(line).entry);
    else if (at(line).offer == Offer::PutBack)
        emit putBackAsked(at(line).entry);
}

QString HistoryLines::spokenLine(int line) const {
    return at(line).when + u' ' +
           (at(line).isUndone ? tr("%1, undone").arg(at(line).title) : at(line).title) + u' ' +
           offerWords(at(line).offer);
}

} // namespace holdfast::app
