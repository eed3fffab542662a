#include "app/places/order_book/history_lines.h"

#include "app/desk/formats.h"
#include "app/theme/icons.h"
#include "app/theme/stitch.h"
#include "app/theme/type.h"

#include <QFontMetrics>
#include <QResizeEvent>

#include <algorithm>
#include <cmath>

namespace holdfast::app {

namespace {

constexpr int kLine = 36;
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
        return day(date).section(u' ', 0, 0) + u' ' + clock(local);
    return day(date).section(u' ', 1);
}

} // namespace

HistoryLines::HistoryLines(QWidget* parent)
    : PaintedLines(QStringLiteral("historyLines"), tr("What happened, newest first"), parent) {}

void HistoryLines::show(const OrderView& view) {
    m_lines.clear();
    qreal widest = 0;
    for (const db::HistoryEntry& entry : view.history) {
        m_lines.push_back({entry.id, whenWords(view.shop->now, entry.at), words(entry.title),
                           entry.isUndone(), !entry.isUndone(), kLine});
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
        line.height = std::max(kLine, text + 16);
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
                     Qt::AlignVCenter | Qt::AlignLeft | Qt::TextWordWrap, line.title);

    const QString undo = line.isUndone ? tr("taken back") : tr("Undo");
    const Type type = line.isUndone ? Type::Small : Type::SmallStrong;
    const QColor ink = line.isUndone ? dyes.ink3 : dyes.indigo;
    const QRectF right(0, box.top(), width() - 16, box.height());
    paintLine(painter, right, undo, type, ink, Qt::AlignRight);
    paintIcon(painter, QRectF(right.right() - widthOf(undo, type) - 22, box.center().y() - 8, 16, 16),
              QStringLiteral("undo"), ink);
}

bool HistoryLines::isOnButton(int, const QRectF& box, const QPointF& where) const {
    return where.x() > box.right() - kUndoRoom;
}

void HistoryLines::doWhatItOffers(int line) {
    if (at(line).canUndo)
        emit undoAsked(at(line).entry);
}

QString HistoryLines::spokenLine(int line) const {
    return at(line).when + u' ' + at(line).title + (at(line).isUndone ? u' ' + tr("taken back") : QString());
}

} // namespace holdfast::app
