// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/places/figures/figure_rows.h"

#include "app/theme/measures.h"
#include "app/theme/stitch.h"
#include "app/theme/type.h"

#include <QPainter>
#include <QPainterPath>

#include <algorithm>
#include <optional>

namespace holdfast::app {

namespace {

constexpr qreal kHead = 34;
constexpr qreal kRow = 40;
constexpr qreal kRowInTwo = 54;
constexpr qreal kLastLine = 20; // a third line of a row
constexpr qreal kAboveLines = 8;
constexpr qreal kBar = 14;
constexpr qreal kBetween = 24; // columns
constexpr qreal kMostName = 300;
constexpr qreal kLeastName = 120;
constexpr qreal kLeastBars = 96;

// Where a name is broken: after the last comma, or else the last word, that leaves two parts which fit;
// where none does, after the last comma, or else the first word. None where it has but one.
std::optional<qsizetype> breakOf(const QString& name, qreal wide) {
    const auto fits = [&](const QString& part) { return widthOf(part, Type::Body) <= wide; };
    std::optional<qsizetype> fittingComma, fittingWord, lastComma, firstWord;
    for (qsizetype at = name.indexOf(QLatin1Char(' ')); at > 0; at = name.indexOf(QLatin1Char(' '), at + 1)) {
        const bool isComma = name.at(at - 1) == QLatin1Char(',');
        const bool isFitting = fits(name.left(at)) && fits(name.mid(at + 1));
        firstWord = firstWord.value_or(at);
        if (isComma)
            lastComma = at;
        if (isFitting)
            fittingWord = at;
        if (isFitting && isComma)
            fittingComma = at;
    }
    return fittingComma ? fittingComma : fittingWord ? fittingWord : lastComma ? lastComma : firstWord;
}

// A name that is too wide for one line in two. What then is too wide loses its middle, so that a size or a
// day at its end can be read.
QStringList linesOf(const QString& name, qreal wide) {
    const QFontMetricsF metrics(fontOf(Type::Body));
    const auto cut = [&](const QString& part) { return metrics.elidedText(part, Qt::ElideMiddle, wide); };
    if (widthOf(name, Type::Body) <= wide)
        return {name};
    const auto at = breakOf(name, wide);
    return at ? QStringList{cut(name.left(*at)), cut(name.mid(*at + 1))} : QStringList{cut(name)};
}

// The name of what follows: it has the width of the table.
bool isHeading(const FigureRow& row) {
    return !row.bar && std::ranges::all_of(row.cells, [](const QString& cell) { return cell.isEmpty(); });
}

// A remark that goes on below the numbers: they stand above it.
bool goesBelowNumbers(const FigureRow& row, qreal namesWide) {
    return widthOf(row.remark, Type::Small) > namesWide;
}

qreal heightOf(const FigureRow& row, qreal namesWide) {
    if (isHeading(row))
        return kRow;
    const qsizetype lines = linesOf(row.name, namesWide).size() + (row.remark.isEmpty() ? 0 : 1);
    return lines == 1 ? kRow : lines == 2 ? kRowInTwo : kRowInTwo + kLastLine;
}

} // namespace

FigureRows::FigureRows(QWidget* parent)
    : QWidget(parent) {
    setObjectName(QStringLiteral("figureRows"));
    setSizePolicy(QSizePolicy::Expanding, QSizePolicy::Fixed);
}

void FigureRows::show(const FigureSheet& sheet) {
    m_sheet = sheet;
    QStringList spoken;
    for (int part = 0; part < partCount(); ++part)
        spoken.append(partName(part));
    setAccessibleName(m_sheet.question);
    setAccessibleDescription(spoken.join(QLatin1Char('\n')));
    setHeightToRows();
    update();
}

int FigureRows::partCount() const {
    return m_sheet.rows.isEmpty() ? 0 : 1 + static_cast<int>(m_sheet.rows.size());
}

QString FigureRows::partName(int part) const {
    if (part == 0)
        return m_sheet.nameHead + QStringLiteral(", ") + m_sheet.heads.join(QStringLiteral(", "));
    const FigureRow& row = m_sheet.rows[part - 1];
    return QStringList{row.name, row.cells.join(QStringLiteral(", ")), row.remark}.join(QStringLiteral(", "));
}

QRect FigureRows::partBox(int part) const {
    if (part == 0)
        return QRectF(0, 0, width(), kHead).toAlignedRect();
    const qreal names = columns().names;
    const int row = part - 1;
    return QRectF(0, rowTop(row, names), width(), heightOf(m_sheet.rows[row], names)).toAlignedRect();
}

// Names have what numbers and bars leave them, so that a row's height comes with the width.
void FigureRows::setHeightToRows() {
    const int height =
        m_sheet.rows.isEmpty()
            ? 0
            : static_cast<int>(rowTop(static_cast<int>(m_sheet.rows.size()), columns().names)) + 1;
    setFixedHeight(height);
}

void FigureRows::resizeEvent(QResizeEvent* event) {
    QWidget::resizeEvent(event);
    if (event->size().width() != event->oldSize().width())
        setHeightToRows();
}

QSize FigureRows::sizeHint() const {
    return {480, height()};
}

bool FigureRows::hasBars() const {
    return std::ranges::any_of(m_sheet.rows, [](const FigureRow& row) { return row.bar.has_value(); });
}

qreal FigureRows::rowTop(int row, qreal namesWide) const {
    qreal top = kHead;
    for (int before = 0; before < row; ++before)
        top += heightOf(m_sheet.rows[before], namesWide);
    return top;
}

FigureRows::Columns FigureRows::columns() const {
    Columns at;
    at.names = widthOf(m_sheet.nameHead, Type::SmallStrong);
    for (const FigureRow& row : m_sheet.rows)
        if (!isHeading(row))
            at.names = std::max({at.names, widthOf(row.name, Type::Body), widthOf(row.remark, Type::Small)});
    qreal right = width() - kCardPadding;
    for (qsizetype head = m_sheet.heads.size(); head-- > 0;) {
        qreal wide = widthOf(m_sheet.heads[head], Type::SmallStrong);
        for (const FigureRow& row : m_sheet.rows)
            wide = std::max(wide, widthOf(row.cells[head], Type::Body));
        at.ends.insert(at.ends.begin(), right);
        right -= wide + kBetween;
    }
    // Where the numbers leave no room for bars, the numbers say it all.
    const bool showsBars = hasBars() && right - kCardPadding - kLeastName >= kBetween + kLeastBars;
    const qreal forBars = showsBars ? kBetween + kLeastBars : 0;
    at.names = std::min({at.names, kMostName, std::max(kLeastName, right - kCardPadding - forBars)});
    // What the longest line of a broken name does not need goes to the bars.
    qreal longest = 0;
    for (const FigureRow& row : m_sheet.rows) {
        if (isHeading(row))
            continue;
        longest = std::max(longest, widthOf(row.remark, Type::Small));
        for (const QString& line : linesOf(row.name, at.names))
            longest = std::max(longest, widthOf(line, Type::Body));
    }
    at.names = std::min(at.names, std::max(longest, widthOf(m_sheet.nameHead, Type::SmallStrong)));
    at.bars = kCardPadding + at.names + kBetween;
    at.barsWide = showsBars ? std::max(kLeastBars, right - at.bars) : 0;
    return at;
}

void FigureRows::paintEvent(QPaintEvent*) {
    if (m_sheet.rows.isEmpty())
        return;
    QPainter painter(this);
    painter.setRenderHint(QPainter::Antialiasing);
    const Columns at = columns();
    paintHead(painter, at);
    for (int row = 0; row < m_sheet.rows.size(); ++row) {
        const qreal top = rowTop(row, at.names);
        paintRow(painter, m_sheet.rows[row], top, at);
        painter.fillRect(QRectF(0, top + heightOf(m_sheet.rows[row], at.names) - 1, width(), 1),
                         tokens().thread);
    }
}

void FigureRows::paintHead(QPainter& painter, const Columns& at) const {
    const QRectF head(0, 0, width(), kHead);
    painter.fillRect(head, tokens().sunk);
    paintLine(painter, head.adjusted(kCardPadding, 0, 0, 0), m_sheet.nameHead, Type::SmallStrong,
              tokens().ink2);
    for (qsizetype column = 0; column < m_sheet.heads.size(); ++column)
        paintLine(painter, QRectF(0, 0, at.ends[static_cast<std::size_t>(column)], kHead),
                  m_sheet.heads[column], Type::SmallStrong, tokens().ink2, Qt::AlignRight);
}

void FigureRows::paintRow(QPainter& painter, const FigureRow& row, qreal top, const Columns& at) const {
    const qreal tall = heightOf(row, at.names);
    const qreal whole = width() - 2 * kCardPadding;
    if (isHeading(row)) {
        paintLine(painter, QRectF(kCardPadding, top, whole, tall), row.name, Type::BodyStrong, tokens().ink);
        return;
    }
    const QStringList lines = linesOf(row.name, at.names);
    const qreal line = lineHeight(Type::Body);
    const bool isInOne = lines.size() == 1 && row.remark.isEmpty();
    QRectF place(kCardPadding, isInOne ? top : top + kAboveLines, at.names, isInOne ? kRow : line);
    for (const QString& words : lines) {
        paintLine(painter, place, words, Type::Body, tokens().ink);
        place.translate(0, line);
    }
    const bool isBelow = goesBelowNumbers(row, at.names);
    if (!row.remark.isEmpty())
        paintLine(painter,
                  QRectF(place.topLeft(), QSizeF(isBelow ? whole : at.names, lineHeight(Type::Small))),
                  row.remark, Type::Small, tokens().ink2);
    const QRectF numbers =
        isBelow ? QRectF(0, top + kAboveLines, 0, place.top() - top - kAboveLines) : QRectF(0, top, 0, tall);
    for (qsizetype column = 0; column < row.cells.size(); ++column)
        paintLine(painter,
                  QRectF(0, numbers.top(), at.ends[static_cast<std::size_t>(column)], numbers.height()),
                  row.cells[column], Type::Body, tokens().ink, Qt::AlignRight);
    if (row.bar && at.barsWide > 0)
        paintBar(painter, *row.bar, QRectF(at.bars, top, at.barsWide, tall));
}

void FigureRows::paintBar(QPainter& painter, const FigureBar& bar, const QRectF& room) const {
    if (m_sheet.most <= 0)
        return;
    const auto at = [&](double length) { return room.left() + room.width() * length / m_sheet.most; };
    const qreal middle = room.center().y();
    const QRectF whole(room.left(), middle - kBar / 2, at(bar.length) - room.left(), kBar);
    const QRectF plain(whole.left(), whole.top(), at(bar.length - bar.hatched) - whole.left(), kBar);
    painter.fillRect(plain, tokens().indigo);
    if (bar.hatched > 0) {
        const QRectF rest(plain.right(), plain.top(), whole.right() - plain.right(), kBar);
        QPainterPath area;
        area.addRect(rest);
        paintHatch(painter, area, tokens().weldHatch);
        paintOutline(painter, rest, 0, tokens().weld);
    }
    if (bar.length <= 0)
        painter.fillRect(QRectF(room.left(), whole.top(), 2, kBar), tokens().edge);
    if (!bar.low || !bar.high)
        return;
    painter.setPen(QPen(tokens().ink, 1.5));
    const qreal low = at(*bar.low), high = at(*bar.high), line = whole.bottom() + 4;
    painter.drawLine(QPointF(low, line), QPointF(high, line));
    for (const qreal end : {low, high})
        painter.drawLine(QPointF(end, line - 3), QPointF(end, line + 3));
}

} // namespace holdfast::app
