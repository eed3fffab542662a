// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/papers/paper_type.h"

#include "app/theme/type.h"

#include <QFontMetricsF>
#include <QTextBoundaryFinder>

#include <algorithm>
#include <cmath>

namespace holdfast::app {

namespace {

constexpr double kLineStep = 1.28;
constexpr double kShrinkStep = 0.1; // mm

// Of one font, which is costly to find again for each word. mm.
class Measure {
public:
    explicit Measure(const PaperType& type)
        : m_metrics(paperFont(type)) {}
    double operator()(const QString& text) const {
        return m_metrics.horizontalAdvance(text) / kTenthsOfMillimetre;
    }

private:
    QFontMetricsF m_metrics;
};

// As many letters of the word as fit, one at least.
qsizetype lettersThatFit(double width, const QString& word, const Measure& widthOfText) {
    QTextBoundaryFinder letters(QTextBoundaryFinder::Grapheme, word);
    qsizetype fits = letters.toNextBoundary();
    for (qsizetype next = letters.toNextBoundary(); next > 0 && widthOfText(word.left(next)) <= width;
         next = letters.toNextBoundary())
        fits = next;
    return fits > 0 ? fits : word.size();
}

bool isUnit(const QString& word) {
    static const QStringList units{QStringLiteral("°C"), QStringLiteral("°F"), QStringLiteral("mm"),
                                   QStringLiteral("m"),  QStringLiteral("s"),  QStringLiteral("min"),
                                   QStringLiteral("h"),  QStringLiteral("%")};
    QString bare = word;
    while (!bare.isEmpty() && (bare.back() == u',' || bare.back() == u';' || bare.back() == u'.'))
        bare.chop(1);
    return units.contains(bare);
}

// A number and its unit are one word.
QStringList wordsOfLine(const QString& text) {
    QStringList parts;
    for (const QString& word : text.split(u' ', Qt::SkipEmptyParts)) {
        if (!parts.isEmpty() && parts.back().back().isDigit() && isUnit(word))
            parts.back() += u' ' + word;
        else
            parts << word;
    }
    return parts;
}

} // namespace

QFont paperFont(const PaperType& type) {
    QFont font = fontOf(type.isSerif ? Type::CardTitle : Type::Body);
    font.setWeight(type.weight);
    font.setPixelSize(std::max(1, static_cast<int>(std::lround(type.millimetres * kTenthsOfMillimetre))));
    font.setStyleStrategy(QFont::PreferNoShaping);
    font.setHintingPreference(QFont::PreferNoHinting);
    return font;
}

double paperWidth(const QString& text, const PaperType& type) {
    return Measure(type)(text);
}

double lineStep(const PaperType& type) {
    return type.millimetres * kLineStep;
}

PaperType shrunkTo(double width, const QString& text, const PaperType& type, double floor) {
    PaperType shrunk = type;
    while (shrunk.millimetres > floor && paperWidth(text, shrunk) > width)
        shrunk.millimetres = std::max(floor, shrunk.millimetres - kShrinkStep);
    return shrunk;
}

QStringList brokenInto(double width, const QString& text, const PaperType& type) {
    const Measure widthOfText(type);
    QStringList lines;
    QString line;
    for (QString word : wordsOfLine(text)) {
        const QString longer = line.isEmpty() ? word : line + u' ' + word;
        if (widthOfText(longer) <= width) {
            line = longer;
            continue;
        }
        if (!line.isEmpty())
            lines << line;
        while (widthOfText(word) > width && word.size() > 1) {
            const qsizetype fits = lettersThatFit(width, word, widthOfText);
            lines << word.left(fits);
            word.remove(0, fits);
        }
        line = word;
    }
    if (!line.isEmpty())
        lines << line;
    return lines;
}

QString cutTo(double width, const QString& text, const PaperType& type) {
    return QFontMetricsF(paperFont(type)).elidedText(text, Qt::ElideRight, width * kTenthsOfMillimetre);
}

QString cutToLines(double width, const QString& text, const PaperType& type, qsizetype most) {
    QStringList lines = brokenInto(width, text, type);
    if (lines.size() <= most)
        return text;
    const QString rest = lines.mid(most - 1).join(u' ');
    lines.resize(most - 1);
    return (lines << cutTo(width, rest, type)).join(u' ');
}

} // namespace holdfast::app
