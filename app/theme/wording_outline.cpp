// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/theme/wording_outline.h"

#include "app/theme/drawings.h"

#include <QGlyphRun>
#include <QHash>
#include <QMutex>
#include <QPainter>
#include <QRawFont>
#include <QTextBoundaryFinder>
#include <QTextLayout>
#include <QTransform>

#include <array>
#include <charconv>
#include <optional>
#include <string_view>

namespace holdfast::app {

namespace {

constexpr qsizetype kRemembered = 400; // outlines
constexpr int kDigits = 2;             // after the point: letters are some 200 units tall

QString faceName(Face face) {
    return face == Face::BookSerif ? QStringLiteral("serif") : QStringLiteral("sans");
}

// Whether what was laid out has a shape for all of it. Glyph 0 is what a font puts where it has none.
bool hasShape(const QString& letter, Face face) {
    QTextLayout layout(letter, letteringFont(faceName(face)));
    layout.beginLayout();
    layout.createLine().setNumColumns(static_cast<int>(letter.size()));
    layout.endLayout();
    bool hasInk = false;
    for (const QGlyphRun& run : layout.glyphRuns())
        for (const quint32 glyph : run.glyphIndexes()) {
            if (glyph == 0)
                return false;
            hasInk = hasInk || !run.rawFont().pathForGlyph(glyph).isEmpty();
        }
    return hasInk;
}

bool needsInk(const QString& letter) {
    for (const char32_t point : letter.toUcs4())
        if (!QChar::isSpace(point) && QChar::category(point) != QChar::Other_Format &&
            QChar::category(point) != QChar::Other_Control)
            return true;
    return false;
}

void write(std::string& text, char command, std::initializer_list<QPointF> points) {
    text += command;
    for (const QPointF& point : points)
        for (const double coordinate : {point.x(), point.y()}) {
            std::array<char, 32> digits{};
            const auto end = std::to_chars(digits.data(), digits.data() + digits.size(), coordinate,
                                           std::chars_format::fixed, kDigits);
            if (text.back() != command)
                text += ' ';
            text.append(digits.data(), end.ptr);
        }
}

std::string pathData(const QPainterPath& path) {
    std::string text;
    for (int at = 0; at < path.elementCount(); ++at) {
        const QPainterPath::Element element = path.elementAt(at);
        if (element.isMoveTo())
            write(text, 'M', {element});
        else if (element.isLineTo())
            write(text, 'L', {element});
        else if (element.isCurveTo() && at + 2 < path.elementCount()) {
            write(text, 'C', {element, path.elementAt(at + 1), path.elementAt(at + 2)});
            at += 2;
        }
    }
    return text;
}

// Reads what pathData wrote; none where it is anything else.
class KeptPath {
public:
    explicit KeptPath(std::string_view text)
        : m_text(text) {}

    std::optional<QPainterPath> read() {
        QPainterPath path;
        while (!m_text.empty()) {
            const char command = m_text.front();
            m_text.remove_prefix(1);
            std::array<QPointF, 3> points;
            const std::size_t count = command == 'C' ? 3 : command == 'M' || command == 'L' ? 1 : 0;
            for (std::size_t at = 0; at < count; ++at)
                if (!readPoint(points[at]))
                    return std::nullopt;
            if (command == 'M')
                path.moveTo(points[0]);
            else if (command == 'L')
                path.lineTo(points[0]);
            else if (command == 'C')
                path.cubicTo(points[0], points[1], points[2]);
            else
                return std::nullopt;
        }
        return path;
    }

private:
    bool readPoint(QPointF& point) { return readNumber(point.rx()) && readNumber(point.ry()); }

    bool readNumber(double& number) {
        if (!m_text.empty() && m_text.front() == ' ')
            m_text.remove_prefix(1);
        const auto read = std::from_chars(m_text.data(), m_text.data() + m_text.size(), number);
        m_text.remove_prefix(static_cast<std::size_t>(read.ptr - m_text.data()));
        return read.ec == std::errc{};
    }

    std::string_view m_text;
};

// "山 (U+5C71)"; a letter with marks of its own has several numbers.
QString withItsNumber(const QString& letter) {
    QStringList numbers;
    for (const char32_t each : letter.toUcs4())
        numbers += QStringLiteral("U+%1").arg(static_cast<uint>(each), 4, 16, QLatin1Char('0')).toUpper();
    return QStringLiteral("%1 (%2)").arg(letter, numbers.join(QLatin1Char(' ')));
}

// With this machine's letters. The last ones asked for are remembered: they are painted again and again.
QPainterPath drawnHere(const QString& text, Face face) {
    static QMutex alone; // files are written in the background
    static QHash<QPair<QString, int>, QPainterPath> drawn;
    const QMutexLocker lock(&alone);
    const QPair<QString, int> key(text, static_cast<int>(face));
    if (const auto found = drawn.constFind(key); found != drawn.constEnd())
        return found.value();
    if (drawn.size() >= kRemembered)
        drawn.clear();
    const bool isWhole = lettersWithoutShape(text, face).isEmpty();
    return drawn.insert(key, isWhole ? letteringOutline(text, faceName(face)) : QPainterPath()).value();
}

} // namespace

QString lettersWithoutShape(const QString& text, Face face) {
    QStringList without;
    QTextBoundaryFinder finder(QTextBoundaryFinder::Grapheme, text);
    for (qsizetype from = 0, to = finder.toNextBoundary(); to > from;
         from = to, to = finder.toNextBoundary()) {
        const QString letter = text.mid(from, to - from);
        if (needsInk(letter) && !hasShape(letter, face))
            without += withItsNumber(letter);
    }
    without.removeDuplicates();
    return without.join(QLatin1String(", "));
}

QPainterPath wordingOutline(const Wording& wording) {
    if (!wording.outline.empty())
        if (const auto kept = KeptPath{wording.outline}.read())
            return *kept;
    return drawnHere(QString::fromStdString(wording.text), wording.face);
}

std::string outlineToKeep(const Wording& wording) {
    return pathData(wordingOutline(wording));
}

void paintWording(QPainter& painter, const QRectF& box, const Wording& wording, const QColor& film) {
    paintLettering(painter, box, wordingOutline(wording), film);
}

double wordingAspect(const Wording& wording) {
    const QRectF ink = wordingOutline(wording).boundingRect();
    return ink.height() > 0 ? ink.width() / ink.height() : 1.0;
}

} // namespace holdfast::app
