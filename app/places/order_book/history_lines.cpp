#include "app/places/order_book/history_lines.h"

#include "app/desk/formats.h"
#include "app/theme/focus_ring.h"
#include "app/theme/icons.h"
#include "app/theme/stitch.h"
#include "app/theme/type.h"

#include <QFontMetrics>
#include <QKeyEvent>
#include <QMouseEvent>
#include <QPainter>

namespace holdfast::app {

namespace {

constexpr int kLine = 36;
constexpr qreal kThreadAt = 24;
constexpr qreal kWhenAt = 42;
constexpr int kWordsAt = 132;
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
    : QWidget(parent) {
    setObjectName(QStringLiteral("historyLines"));
    setFocusPolicy(Qt::StrongFocus);
    setSizePolicy(QSizePolicy::Expanding, QSizePolicy::Fixed);
    giveNoFocusRing(this);
    setAccessibleName(tr("What happened, newest first"));
}

void HistoryLines::show(const OrderView& view) {
    m_lines.clear();
    for (const db::HistoryEntry& entry : view.history)
        m_lines.push_back({entry.id, whenWords(view.shop->now, entry.at), words(entry.title),
                           entry.isUndone(), !entry.isUndone(), kLine});
    m_current = std::clamp(m_current, 0, std::max(0, static_cast<int>(m_lines.size()) - 1));
    layLines();
    say();
}

// A long title takes as many lines as it needs: a history is never cut.
void HistoryLines::layLines() {
    const QFontMetrics metrics(fontOf(Type::Support));
    const int room = std::max(80, width() - kWordsAt - kUndoRoom);
    for (Line& line : m_lines) {
        const int text = metrics.boundingRect(0, 0, room, 1000, Qt::TextWordWrap, line.title).height();
        line.height = std::max(kLine, text + 16);
    }
    updateGeometry();
    update();
}

QSize HistoryLines::sizeHint() const {
    int height = 8;
    for (const Line& line : m_lines)
        height += line.height;
    return {360, height};
}

void HistoryLines::resizeEvent(QResizeEvent* event) {
    QWidget::resizeEvent(event);
    if (event->oldSize().width() != event->size().width())
        layLines();
}

void HistoryLines::paintEvent(QPaintEvent*) {
    QPainter painter(this);
    painter.setRenderHint(QPainter::Antialiasing);
    const Tokens& dyes = tokens();
    int top = 0;
    for (std::size_t at = 0; at < m_lines.size(); ++at) {
        const Line& line = m_lines[at];
        const QRectF box(0, top, width(), line.height);
        const bool isCurrent = hasFocus() && static_cast<int>(at) == m_current;
        if (isCurrent)
            painter.fillRect(box, dyes.woad);
        const QPointF knot(kThreadAt, box.center().y());
        if (at > 0)
            paintThread(painter, {kThreadAt, box.top()}, knot, dyes.indigo, 2);
        if (at + 1 < m_lines.size())
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

        paintLine(painter, QRectF(kWhenAt, box.top(), kWordsAt - kWhenAt - 6, box.height()), line.when,
                  Type::Small, dyes.ink2);
        QFont font = fontOf(Type::Support);
        font.setStrikeOut(line.isUndone);
        painter.setFont(font);
        painter.setPen(line.isUndone ? dyes.ink3 : dyes.ink);
        painter.drawText(QRectF(kWordsAt, box.top(), width() - kWordsAt - kUndoRoom, box.height()),
                         Qt::AlignVCenter | Qt::AlignLeft | Qt::TextWordWrap, line.title);

        const QString undo = line.isUndone ? tr("taken back") : tr("Undo");
        const Type type = line.isUndone ? Type::Small : Type::SmallStrong;
        const QColor ink = line.isUndone ? dyes.ink3 : dyes.indigo;
        const QRectF right(0, box.top(), width() - 16, box.height());
        paintLine(painter, right, undo, type, ink, Qt::AlignRight);
        paintIcon(painter, QRectF(right.right() - widthOf(undo, type) - 22, box.center().y() - 8, 16, 16),
                  QStringLiteral("undo"), ink);
        top += line.height;
    }
}

int HistoryLines::lineAt(QPoint at) const {
    int top = 0;
    for (std::size_t line = 0; line < m_lines.size(); ++line) {
        top += m_lines[line].height;
        if (at.y() < top)
            return static_cast<int>(line);
    }
    return -1;
}

void HistoryLines::mousePressEvent(QMouseEvent* event) {
    const int line = lineAt(event->pos());
    if (line < 0)
        return;
    m_current = line;
    say();
    update();
    if (event->pos().x() > width() - kUndoRoom)
        undoCurrent();
}

void HistoryLines::keyPressEvent(QKeyEvent* event) {
    const int last = static_cast<int>(m_lines.size()) - 1;
    switch (event->key()) {
    case Qt::Key_Up:
    case Qt::Key_Down:
        m_current = std::clamp(m_current + (event->key() == Qt::Key_Up ? -1 : 1), 0, std::max(0, last));
        say();
        update();
        return;
    case Qt::Key_Return:
    case Qt::Key_Enter:
        undoCurrent();
        return;
    default:
        QWidget::keyPressEvent(event);
    }
}

void HistoryLines::focusInEvent(QFocusEvent* event) {
    QWidget::focusInEvent(event);
    update();
}

void HistoryLines::undoCurrent() {
    if (!m_lines.empty() && m_lines[static_cast<std::size_t>(m_current)].canUndo)
        emit undoAsked(m_lines[static_cast<std::size_t>(m_current)].entry);
}

void HistoryLines::say() {
    if (m_lines.empty())
        return;
    const Line& line = m_lines[static_cast<std::size_t>(m_current)];
    setAccessibleDescription(line.when + u' ' + line.title +
                             (line.isUndone ? u' ' + tr("taken back") : QString()));
}

} // namespace holdfast::app
