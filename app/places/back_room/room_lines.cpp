#include "app/places/back_room/room_lines.h"

#include "app/theme/measures.h"
#include "app/theme/stitch.h"
#include "app/theme/type.h"

#include <QFontMetrics>
#include <QResizeEvent>

#include <algorithm>
#include <cmath>

namespace holdfast::app {

namespace {

constexpr int kLinePad = 10;
constexpr int kAboveHeading = 14;
constexpr int kNameWide = 224;
constexpr int kShade = 18;
constexpr int kLeastWords = 120;
constexpr int kTallest = 4000;

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
    : PaintedLines(QStringLiteral("roomLines"), tr("What stands here"), parent) {}

void RoomLines::show(const QVector<RoomLine>& lines) {
    m_lines = lines;
    for (RoomLine& line : m_lines)
        line.text = unitsKeptWithNumbers(line.text);
    lay();
}

qreal RoomLines::endWide(const RoomLine& line) const {
    qreal wide = line.state.isEmpty() ? 0 : chipSize(line.stateIcon, line.state).width();
    if (!line.offer.isEmpty())
        wide += (wide > 0 ? kSpace12 : 0) + widthOf(line.offer, Type::SupportStrong);
    return std::ceil(wide);
}

RoomLines::Columns RoomLines::columns(const RoomLine& line) const {
    Columns at;
    at.endsRight = width() - kCardPadding;
    const qreal end = endWide(line);
    const qreal wordsEnd = at.endsRight - (end > 0 ? end + kSpace16 : 0);
    at.name = kCardPadding + (line.shade.isValid() ? kShade + kSpace12 : 0);
    at.nameWide = line.isHeading ? wordsEnd - at.name : kCardPadding + kNameWide - at.name;
    at.text = kCardPadding + kNameWide + kSpace16;
    at.textWide = std::max<qreal>(kLeastWords, wordsEnd - at.text);
    return at;
}

int RoomLines::heightFor(const RoomLine& line, bool isFirst) const {
    const Columns at = columns(line);
    const int name = wrappedHeight(line.name, nameType(line), at.nameWide);
    const int text = line.isHeading ? 0 : wrappedHeight(line.text, Type::Body, at.textWide);
    const int chip =
        line.state.isEmpty() ? 0 : static_cast<int>(chipSize(line.stateIcon, line.state).height());
    return std::max({name, text, chip}) + 2 * kLinePad + (line.isHeading && !isFirst ? kAboveHeading : 0);
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

void RoomLines::paintOne(QPainter& painter, int index, const QRectF& box, bool isCurrent) {
    const Tokens& dyes = tokens();
    const RoomLine& line = m_lines[index];
    const Columns at = columns(line);
    if (isCurrent)
        painter.fillRect(box, dyes.woad);
    const qreal top = box.top() + kLinePad + (line.isHeading && index > 0 ? kAboveHeading : 0);
    const qreal inside = box.bottom() - kLinePad - top;
    if (line.shade.isValid()) {
        painter.setPen(QPen(dyes.edge, 1));
        painter.setBrush(line.shade);
        painter.drawEllipse(QRectF(kCardPadding + 0.5, top + 1.5, kShade - 1, kShade - 1));
    }
    const auto put = [&](qreal left, qreal wide, const QString& text, Type type, const QColor& ink) {
        painter.setFont(fontOf(type));
        painter.setPen(ink);
        painter.drawText(QRectF(left, top, wide, inside), Qt::AlignLeft | Qt::AlignTop | Qt::TextWordWrap,
                         text);
    };
    put(at.name, at.nameWide, line.name, nameType(line), dyes.ink);
    if (!line.isHeading)
        put(at.text, at.textWide, line.text, Type::Body, dyes.ink2);
    qreal right = at.endsRight;
    if (!line.offer.isEmpty()) {
        const qreal wide = widthOf(line.offer, Type::SupportStrong);
        paintLine(painter, QRectF(right - wide, top, wide, lineHeight(Type::Body)), line.offer,
                  Type::SupportStrong, dyes.indigo);
        right -= wide + kSpace12;
    }
    if (!line.state.isEmpty()) {
        const QSizeF chip = chipSize(line.stateIcon, line.state);
        paintChip(painter, QPointF(right - chip.width(), top - 3), line.stateIcon, line.state, line.tone);
    }
    // A line of no name goes on about the one above it.
    const bool isBeforeHeading = index + 1 < m_lines.size() && m_lines[index + 1].isHeading;
    const bool goesOn = index + 1 < m_lines.size() && m_lines[index + 1].name.isEmpty();
    if (index + 1 < m_lines.size() && !isBeforeHeading && !goesOn)
        painter.fillRect(QRectF(kCardPadding, box.bottom() - 1, width() - 2 * kCardPadding, 1), dyes.thread);
}

QString RoomLines::spokenLine(int index) const {
    const RoomLine& line = m_lines[index];
    QStringList spoken{line.name};
    for (const QString& part : {line.text, line.state})
        if (!part.isEmpty())
            spoken.append(part);
    if (!line.offer.isEmpty())
        spoken.append(tr("Enter: %1").arg(line.offer));
    return spoken.join(QStringLiteral(", "));
}

bool RoomLines::isOnButton(int index, const QRectF& box, const QPointF& at) const {
    const QString& offer = m_lines[index].offer;
    return !offer.isEmpty() &&
           at.x() >= box.right() - kCardPadding - widthOf(offer, Type::SupportStrong) - kSpace8;
}

void RoomLines::doWhatItOffers(int index) {
    if (m_lines[index].hasDeed())
        emit deedAsked(m_lines[index].deed);
}

} // namespace holdfast::app
