// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/places/film_shelf/shelf_delegate.h"

#include "app/places/film_shelf/shelf_view.h"
#include "app/theme/drawings.h"
#include "app/theme/icons.h"
#include "app/theme/measures.h"
#include "app/theme/stitch.h"
#include "app/theme/type.h"

#include <QFontMetricsF>
#include <QPainter>
#include <QPainterPath>

#include <algorithm>

namespace holdfast::app {

namespace {

constexpr int kRollRow = 73;
constexpr qreal kBoardUp = 12; // the board's upper edge, from the row's lower one
constexpr qreal kTail = 8;
constexpr qreal kPost = 30;
constexpr qreal kWordsGap = 10;
constexpr qreal kPieceGap = 12;
constexpr qreal kPastTail = 12; // as far as a past roll's tail goes to the left
constexpr qreal kNoLimitTail = 96;
constexpr qreal kLeastRange = 4; // to be seen next to the post

const QString kDot = QStringLiteral("· ");

// One run of words with its type and ink; `gap` is before it.
struct Run {
    QString text;
    Type type = Type::Support;
    QColor ink;
    qreal gap = 0;
};

std::vector<Run> runsOf(const TailWords& said) {
    const Tokens& dyes = tokens();
    std::vector<Run> runs{{said.lead, Type::BodyStrong, dyes.*said.leadInk, 0}};
    if (!said.rest.isEmpty())
        runs.push_back({said.iconName.isEmpty() ? said.rest : kDot + said.rest, Type::Support, dyes.ink2, 5});
    if (!said.range.isEmpty())
        runs.push_back({kDot + said.range, Type::Support, dyes.ink2, 5});
    if (!said.lost.isEmpty())
        runs.push_back({said.lost, Type::SupportStrong, dyes.weld, kPieceGap});
    return runs;
}

qreal widthOf(const std::vector<Run>& runs, bool hasIcon) {
    qreal width = hasIcon ? kIcon + 6 : 0;
    for (const Run& run : runs)
        width += run.gap + widthOf(run.text, run.type);
    return width;
}

void paintRuns(QPainter& painter, qreal x, qreal middle, const QString& iconName, const QColor& iconInk,
               std::span<const Run> runs) {
    if (!iconName.isEmpty()) {
        paintIcon(painter, QRectF(x, middle - kIcon / 2.0, kIcon, kIcon), iconName, iconInk);
        x += kIcon + 6;
    }
    for (const Run& run : runs)
        x = paintRun(painter, {x + run.gap, middle + 5}, run.text, run.type, run.ink);
}

void paintBoard(QPainter& painter, const QRectF& row) {
    const Tokens& dyes = tokens();
    const qreal top = row.bottom() - kBoardUp;
    const QRectF board(row.left() + 6, top, row.width() - 12, 7);
    painter.setPen(Qt::NoPen);
    painter.setBrush(dyes.boardEdge);
    for (const qreal peg : {board.left() + 12, board.right() - 20})
        painter.drawRoundedRect(QRectF(peg, top + 4, 8, 8), 2, 2);
    painter.fillRect(board, dyes.board);
    painter.fillRect(QRectF(board.left(), board.bottom() - 2, board.width(), 2), dyes.boardEdge);
}

// The day with the days left, and its range below: words are left out only of what was lost, which the hatch
// shows.
void paintInTwoLines(QPainter& painter, QPointF corner, qreal room, const TailWords& said,
                     std::span<const Run> runs) {
    const std::size_t above = said.range.isEmpty() ? 1 : 2;
    paintRuns(painter, corner.x(), corner.y() + 18, said.iconName, tokens().*said.leadInk, runs.first(above));
    qreal x = 0;
    for (const Run& run : runs.subspan(above)) {
        const QString text = x == 0 && run.text.startsWith(kDot) ? run.text.mid(kDot.size()) : run.text;
        const qreal width = widthOf(text, run.type);
        if (x > 0 && x + width > room)
            break;
        paintRun(painter, {corner.x() + x, corner.y() + 42}, text, run.type, run.ink);
        x += width + kPieceGap;
    }
}

void paintName(QPainter& painter, const QRectF& row, const ShelfAxis& axis, const ShelfRow& roll) {
    const Tokens& dyes = tokens();
    paintSwatch(painter, QRectF(row.left() + 20, row.top() + 13, 17, 39), roll.shade, 3);
    const qreal left = row.left() + axis.nameLeft;
    const qreal room = axis.nameRight - axis.nameLeft + 6;
    const qreal behind =
        paintRun(painter, {left, row.top() + 29}, roll.label, Type::BodyStrong, dyes.ink) + 5;
    paintRun(painter, {behind, row.top() + 29}, roll.length, Type::Body, dyes.ink);
    const Type type = widthOf(roll.filmName, Type::Support) <= room ? Type::Support : Type::Small;
    const QString name = QFontMetricsF(fontOf(type)).elidedText(roll.filmName, Qt::ElideRight, room);
    paintRun(painter, {left, row.top() + 49}, name, type, dyes.ink2);
}

void paintHatched(QPainter& painter, const QRectF& box, const QColor& line) {
    QPainterPath area;
    area.addRect(box);
    paintHatch(painter, area, line);
    paintOutline(painter, box, 0, line, 1.2, true);
}

void paintPost(QPainter& painter, qreal x, qreal foot, qreal high, const QColor& ink) {
    painter.fillRect(QRectF(x - 1, foot - high, 2, high), ink);
}

// From the end in a fast year to that in a slow one, just above the tail: a running stitch, as of all that is
// still to come.
void paintRange(QPainter& painter, const QRectF& row, const ShelfAxis& axis, const ShelfRow& roll, qreal y) {
    if (!roll.daysLeftAtLeast || !roll.daysLeftAtMost)
        return;
    const qreal from = row.left() + std::min(axis.at(*roll.daysLeftAtLeast), axis.right);
    const qreal to = row.left() + std::min(axis.at(*roll.daysLeftAtMost), axis.right);
    if (to - from >= kLeastRange)
        paintRunningStitch(painter, {from, y}, {to, y}, tokens().ink2, 1.6);
}

// Where words may begin to the right of all that is drawn, and where the tail's end is.
struct TailEnds {
    qreal tail = 0;
    qreal wordsFrom = 0;
};

TailEnds tailEnds(const ShelfAxis& axis, const ShelfRow& roll) {
    const qreal behindRoll = axis.todayAt + rollRadius(roll.metresLeft) + kWordsGap;
    TailEnds ends{axis.todayAt, behindRoll};
    if (!roll.daysLeft)
        ends.tail = axis.todayAt + kNoLimitTail;
    else if (*roll.daysLeft >= 0)
        ends.tail = axis.at(*roll.daysLeft);
    const qreal lost = roll.daysLeft && *roll.daysLeft >= 0 && roll.daysLost > 0
                           ? std::max(axis.at(*roll.daysLeft + roll.daysLost), ends.tail + 20)
                           : ends.tail;
    ends.wordsFrom = std::max(behindRoll, lost + kWordsGap);
    return ends;
}

void paintTail(QPainter& painter, const QRectF& row, const ShelfAxis& axis, const ShelfRow& roll,
               qreal postHeight) {
    const Tokens& dyes = tokens();
    const qreal foot = row.bottom() - kBoardUp;
    const qreal today = row.left() + axis.todayAt;
    const qreal radius = rollRadius(roll.metresLeft);
    const QRectF band(today, foot - kTail, 0, kTail);
    const qreal end = row.left() + tailEnds(axis, roll).tail;
    if (!roll.daysLeft) {
        paintRunningStitch(painter, {today, foot - kTail / 2}, {end, foot - kTail / 2}, outlineOf(roll.shade),
                           3);
    } else if (*roll.daysLeft < 0) {
        const qreal begin = today - (radius + kPastTail);
        paintHatched(painter, QRectF(begin, band.top(), today - begin, kTail), dyes.madder);
        paintPost(painter, begin, foot, postHeight, dyes.madder);
    } else {
        paintBox(painter, QRectF(today, band.top(), end - today, kTail), 0, roll.shade,
                 outlineOf(roll.shade));
        if (roll.daysLost > 0) {
            const qreal lost = std::max(row.left() + axis.at(*roll.daysLeft + roll.daysLost), end + 20);
            paintHatched(painter, QRectF(end, band.top(), lost - end, kTail), dyes.weldHatch);
            if (postHeight >= kPost)
                paintIcon(painter, QRectF(end + 3, band.top() - 19, kSmallIcon, kSmallIcon),
                          QStringLiteral("thermometer"), dyes.weld);
        }
        paintRange(painter, row, axis, roll, band.top() - 3);
        if (*roll.daysLeft > axis.days) // runs on beyond the axis
            paintRunningStitch(painter, {end, foot - kTail / 2}, {end + 24, foot - kTail / 2}, dyes.ink, 2);
        else
            paintPost(painter, end, foot, postHeight, dyes.ink);
    }
    paintRoll(painter, {today, foot - radius}, roll.metresLeft, roll.shade);
}

} // namespace

ShelfDelegate::ShelfDelegate(ShelfView& view)
    : QStyledItemDelegate(&view)
    , m_view(view) {}

QSize ShelfDelegate::sizeHint(const QStyleOptionViewItem&, const QModelIndex&) const {
    return {m_view.viewport()->width(), kRollRow};
}

void ShelfDelegate::paint(QPainter* painter, const QStyleOptionViewItem& option,
                          const QModelIndex& index) const {
    const Tokens& dyes = tokens();
    const ShelfRow& roll = m_view.shelf().row(index.row());
    const ShelfAxis axis = m_view.axis();
    const QRectF row(option.rect);
    painter->save();
    painter->setRenderHint(QPainter::Antialiasing);

    if (m_view.currentIndex() == index) {
        const QRectF frame = row.adjusted(8, 3, -7, -kBoardUp + 1);
        paintBox(*painter, frame, kButtonRadius, dyes.woad, {});
        painter->fillRect(QRectF(row.left() + axis.todayAt - 1, frame.top(), 2, frame.height()), dyes.ink);
        const bool hasFocus = option.state & QStyle::State_HasFocus;
        paintOutline(*painter, frame, kButtonRadius, dyes.indigo, hasFocus ? 3 : 1.4);
    }
    paintBoard(*painter, row);
    paintName(*painter, row, axis, roll);

    const std::vector<Run> runs = runsOf(roll.words);
    const qreal width = widthOf(runs, !roll.words.iconName.isEmpty());
    const TailEnds ends = tailEnds(axis, roll);
    const qreal behindRoll = axis.todayAt + rollRadius(roll.metresLeft) + kWordsGap;
    const qreal rightEdge = row.width() - 18;
    const QColor iconInk = dyes.*roll.words.leadInk;
    if (ends.wordsFrom + width <= rightEdge) {
        paintTail(*painter, row, axis, roll, kPost);
        paintRuns(*painter, row.left() + ends.wordsFrom, row.top() + 32, roll.words.iconName, iconInk, runs);
    } else if (ends.tail - 9 - width >= behindRoll) {
        paintTail(*painter, row, axis, roll, kPost);
        paintRuns(*painter, row.left() + ends.tail - 9 - width, row.top() + 32, roll.words.iconName, iconInk,
                  runs);
    } else if (behindRoll + width <= rightEdge) {
        // Above the tail, whose post is short.
        paintTail(*painter, row, axis, roll, 14);
        paintRuns(*painter, row.left() + rightEdge - width, row.top() + 26, roll.words.iconName, iconInk,
                  runs);
    } else {
        paintTail(*painter, row, axis, roll, 14);
        paintInTwoLines(*painter, {row.left() + behindRoll, row.top()}, rightEdge - behindRoll, roll.words,
                        runs);
    }
    painter->restore();
}

} // namespace holdfast::app
