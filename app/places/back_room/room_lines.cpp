// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/places/back_room/room_lines.h"

#include "app/theme/measures.h"
#include "app/theme/stitch.h"
#include "app/theme/text_runs.h"
#include "app/theme/type.h"

#include <QFontMetrics>
#include <QKeyEvent>
#include <QMouseEvent>
#include <QResizeEvent>

#include <algorithm>
#include <cmath>

namespace holdfast::app {

namespace {

constexpr int kLinePad = 8;
constexpr int kAboveHeading = 14;
constexpr int kWidestName = 224;
constexpr int kNarrowestName = 96;
constexpr int kShade = 18;
constexpr int kLeastWords = 120;
constexpr int kTallest = 4000;
constexpr int kOfferHeight = 32;

int wrappedHeight(const QString& text, Type type, qreal width) {
    if (text.isEmpty())
        return 0;
    const QRect room(0, 0, static_cast<int>(width), kTallest);
    return QFontMetrics(fontOf(type)).boundingRect(room, Qt::TextWordWrap, text).height();
}

// "6 °C" is not to be broken between the lines.
QString unitsKeptWithNumbers(QString text) {
    for (const QString& unit : {QStringLiteral("°C"), QStringLiteral("mm"), QStringLiteral("%")})
        text.replace(QLatin1Char(' ') + unit, QChar(QChar::Nbsp) + unit);
    return text;
}

Type nameType(const RoomLine& line) {
    return line.isHeading ? Type::Value : Type::BodyStrong;
}

} // namespace

RoomLines::RoomLines(QWidget* parent)
    : PaintedLines(QStringLiteral("roomLines"), tr("What is in this section"), parent) {}

void RoomLines::show(const QVector<RoomLine>& lines) {
    m_lines = lines;
    m_nameWide = kNarrowestName;
    for (RoomLine& line : m_lines) {
        line.text = unitsKeptWithNumbers(line.text);
        line.detail = unitsKeptWithNumbers(line.detail);
        if (!line.isHeading)
            m_nameWide = std::max(m_nameWide, std::ceil(widthOf(line.name, Type::BodyStrong)) +
                                                  (line.shade.isValid() ? kShade + kSpace12 : 0));
    }
    m_nameWide = std::min<qreal>(m_nameWide, kWidestName);
    m_isAtOther = false;
    lay();
}

RoomLines::Columns RoomLines::columns(const RoomLine& line, qreal top) const {
    Columns at;
    qreal right = width() - kCardPadding;
    const auto offer = [&](const QString& words) {
        if (words.isEmpty())
            return QRectF();
        const qreal wide = std::ceil(widthOf(words, Type::SupportStrong)) + 2 * kSpace8;
        const qreal high = std::max(kOfferHeight, lineHeight(Type::SupportStrong));
        right -= wide;
        const QRectF box(right, top + (lineHeight(Type::Body) - high) / 2.0, wide, high);
        right -= kSpace4;
        return box;
    };
    at.offer = offer(line.offer);
    at.otherOffer = offer(line.otherOffer);
    at.chipRight = right - (line.offer.isEmpty() ? 0 : kSpace8);
    if (!line.state.isEmpty())
        right = at.chipRight - std::ceil(chipSize(line.stateIcon, line.state).width());
    const qreal wordsEnd = right < width() - kCardPadding ? right - kSpace12 : right;
    at.name = kCardPadding + (line.shade.isValid() ? kShade + kSpace12 : 0);
    at.nameWide = line.isHeading ? wordsEnd - at.name : kCardPadding + m_nameWide - at.name;
    at.text = kCardPadding + m_nameWide + kSpace16;
    at.textWide = std::max<qreal>(kLeastWords, wordsEnd - at.text);
    return at;
}

qreal RoomLines::topOf(int index, const QRectF& box) const {
    return box.top() + kLinePad + (m_lines[index].isHeading && index > 0 ? kAboveHeading : 0);
}

int RoomLines::heightFor(const RoomLine& line, bool isFirst) const {
    const Columns at = columns(line, 0);
    const int name = wrappedHeight(line.name, nameType(line), at.nameWide);
    const int text = line.isHeading ? 0
                                    : wrappedHeight(line.text, Type::Body, at.textWide) +
                                          wrappedHeight(line.detail, Type::Support, at.textWide);
    const int chip =
        line.state.isEmpty() ? 0 : static_cast<int>(chipSize(line.stateIcon, line.state).height());
    return std::max({name, text, chip, lineHeight(Type::Body)}) + 2 * kLinePad +
           (line.isHeading && !isFirst ? kAboveHeading : 0);
}

void RoomLines::lay() {
    m_heights.clear();
    for (const RoomLine& line : m_lines)
        m_heights.push_back(heightFor(line, m_heights.empty()));
    linesChanged();
}

void RoomLines::resizeEvent(QResizeEvent* event) {
    PaintedLines::resizeEvent(event);
    if (event->oldSize().width() != event->size().width())
        lay();
}

void RoomLines::moveTo(int line) {
    m_isAtOther = m_isAtOther && line == currentLine();
    PaintedLines::moveTo(line);
}

void RoomLines::keyPressEvent(QKeyEvent* event) {
    const bool isLeft = event->key() == Qt::Key_Left;
    if (!isLeft && event->key() != Qt::Key_Right) {
        PaintedLines::keyPressEvent(event);
        return;
    }
    m_isAtOther = isLeft && currentLine() >= 0 && !m_lines[currentLine()].otherOffer.isEmpty();
    PaintedLines::moveTo(currentLine());
}

void RoomLines::mousePressEvent(QMouseEvent* event) {
    for (int line = 0; line < lineCount(); ++line) {
        const QRectF box = boxOf(line);
        if (!box.contains(event->position()))
            continue;
        m_isAtOther = columns(m_lines[line], topOf(line, box)).otherOffer.contains(event->position());
        PaintedLines::moveTo(line);
        if (isOnButton(line, box, event->position()))
            doWhatItOffers(line);
        return;
    }
}

void RoomLines::paintOne(QPainter& painter, int index, const QRectF& box, bool isCurrent) {
    const Tokens& dyes = tokens();
    const RoomLine& line = m_lines[index];
    const qreal top = topOf(index, box);
    const Columns at = columns(line, top);
    if (isCurrent)
        painter.fillRect(box, dyes.woad);
    paintWords(painter, line, at, top, box.bottom() - kLinePad - top);
    paintOffer(painter, at.offer, line.offer, isCurrent && !m_isAtOther);
    paintOffer(painter, at.otherOffer, line.otherOffer, isCurrent && m_isAtOther);
    if (!line.state.isEmpty()) {
        const QSizeF chip = chipSize(line.stateIcon, line.state);
        paintChip(painter, QPointF(at.chipRight - chip.width(), top - 3), line.stateIcon, line.state,
                  line.tone);
    }
    // A line of no name goes on about the one above it.
    const bool isBeforeHeading = index + 1 < m_lines.size() && m_lines[index + 1].isHeading;
    const bool goesOn = index + 1 < m_lines.size() && m_lines[index + 1].name.isEmpty();
    if (index + 1 < m_lines.size() && !isBeforeHeading && !goesOn)
        painter.fillRect(QRectF(kCardPadding, box.bottom() - 1, width() - 2 * kCardPadding, 1), dyes.thread);
}

void RoomLines::paintWords(QPainter& painter, const RoomLine& line, const Columns& at, qreal top,
                           qreal high) const {
    const Tokens& dyes = tokens();
    if (line.shade.isValid()) {
        painter.setPen(QPen(dyes.edge, 1));
        painter.setBrush(line.shade);
        painter.drawEllipse(QRectF(kCardPadding + 0.5, top + 1.5, kShade - 1, kShade - 1));
    }
    const auto put = [&](const QRectF& box, const QString& text, Type type, const QColor& ink) {
        painter.setFont(fontOf(type));
        painter.setPen(ink);
        painter.drawText(box, Qt::AlignLeft | Qt::AlignTop | Qt::TextWordWrap, withRunsApart(text));
    };
    put({at.name, top, at.nameWide, high}, line.name, nameType(line), dyes.ink);
    if (line.isHeading)
        return;
    put({at.text, top, at.textWide, high}, line.text, Type::Body, dyes.ink2);
    const qreal below = wrappedHeight(line.text, Type::Body, at.textWide);
    put({at.text, top + below, at.textWide, high - below}, line.detail, Type::Support, dyes.ink2);
}

// Outlined where Enter does it.
void RoomLines::paintOffer(QPainter& painter, const QRectF& box, const QString& words, bool isChosen) const {
    if (box.isEmpty())
        return;
    if (isChosen)
        paintBox(painter, box, kButtonRadius, tokens().card, tokens().indigo, 1.2);
    paintLine(painter, box, words, Type::SupportStrong, tokens().indigo, Qt::AlignHCenter);
}

QString RoomLines::spokenLine(int index) const {
    const RoomLine& line = m_lines[index];
    QStringList spoken{line.name};
    for (const QString& part : {line.text, line.detail, line.state})
        if (!part.isEmpty())
            spoken.append(part);
    const QString& offer = m_isAtOther ? line.otherOffer : line.offer;
    if (!offer.isEmpty())
        spoken.append(tr("Enter: %1").arg(offer));
    return spoken.join(QStringLiteral(", "));
}

// A heading that offers nothing is no place to stop at.
QString RoomLines::nameOf(int index) const {
    const RoomLine& line = m_lines[index];
    return line.isHeading && !line.hasDeed() ? QString() : line.name;
}

bool RoomLines::isOnButton(int index, const QRectF& box, const QPointF& at) const {
    const Columns columnsThere = columns(m_lines[index], topOf(index, box));
    return columnsThere.offer.contains(at) || columnsThere.otherOffer.contains(at);
}

void RoomLines::doWhatItOffers(int index) {
    const RoomLine& line = m_lines[index];
    const RoomDeed& deed = m_isAtOther ? line.otherDeed : line.deed;
    if (!std::holds_alternative<std::monostate>(deed))
        emit deedAsked(RoomDeed(deed)); // a copy: the lines may be others before it is done
}

} // namespace holdfast::app
