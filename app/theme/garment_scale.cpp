// Where a garment can be printed on and how wide it is: for pictures at true scale.

#include "app/theme/drawings.h"

#include <QRegularExpression>

#include <algorithm>
#include <array>
#include <optional>

namespace holdfast::app {

namespace {

struct Across {
    const char* outline;
    QRectF body;        // printable, its top at the neck seam or hem that distances are measured from
    double units;       // the width measured, in sheet units
    double millimetres; // the same, of size M
    double sizeStep;    // from one letter size to the next
    double atBirth;     // of the smallest child's size
    double perYear;     // what a year adds
};

// tee and its kin: flat width under the arms; tote, bib and apron: widest; cap: across the front.
const std::array<Across, 8>& widths() {
    static const std::array<Across, 8> all = {{
        {"tee", QRectF(62, 55, 116, 172), 128, 520, 40, 240, 15},
        {"long-sleeve", QRectF(62, 55, 116, 172), 128, 520, 40, 240, 15},
        {"hoodie", QRectF(60, 72, 120, 96), 126, 560, 40, 270, 16},
        {"tote", QRectF(48, 112, 144, 124), 158, 380, 0, 300, 8},
        {"bib", QRectF(58, 106, 124, 120), 152, 230, 20, 200, 20},
        {"bodysuit", QRectF(68, 67, 104, 104), 118, 240, 20, 190, 30},
        {"cap", QRectF(76, 66, 88, 78), 144, 180, 6, 140, 4},
        {"apron", QRectF(52, 48, 136, 112), 160, 600, 40, 340, 18},
    }};
    return all;
}

const Across& acrossOf(const QString& outline) {
    const auto found = std::find_if(widths().begin(), widths().end(), [&](const Across& across) {
        return outline == QLatin1String(across.outline);
    });
    return found == widths().end() ? widths().front() : *found;
}

// Steps away from M, of a letter size.
std::optional<int> letterSteps(const QString& size) {
    static const QRegularExpression small(QStringLiteral("^(?:(\\d)X|(X*))S$"));
    static const QRegularExpression large(QStringLiteral("^(?:(\\d)X|(X*))L$"));
    const auto exes = [](const QRegularExpressionMatch& match) {
        return match.captured(1).isEmpty() ? static_cast<int>(match.captured(2).size())
                                           : match.captured(1).toInt();
    };
    if (size == QLatin1String("M")) {
        return 0;
    }
    if (const auto match = small.match(size); match.hasMatch()) {
        return -1 - exes(match);
    }
    if (const auto match = large.match(size); match.hasMatch()) {
        return 1 + exes(match);
    }
    return std::nullopt;
}

// Years of a child's size: the last number in it, months as parts of a year. "6-12 months", "3-4 y", "18 m".
std::optional<double> years(const QString& size) {
    static const QRegularExpression pattern(QStringLiteral("(\\d+)\\s*(M|MO|MONTHS?|Y|YR|YRS|YEARS?)$"));
    const auto match = pattern.match(size);
    if (!match.hasMatch()) {
        return std::nullopt;
    }
    const double count = match.captured(1).toDouble();
    return match.captured(2).startsWith(u'M') ? count / 12 : count;
}

} // namespace

QRectF garmentBody(const QString& outline) {
    return acrossOf(outline).body;
}

double millimetresPerUnit(const QString& outline, const QString& size) {
    const Across& across = acrossOf(outline);
    const QString plain = size.trimmed().toUpper();
    double width = across.millimetres;
    if (const auto age = years(plain)) {
        width = across.atBirth + across.perYear * std::min(*age, 16.0);
    } else if (const auto steps = letterSteps(plain)) {
        width += across.sizeStep * *steps;
    }
    return width / across.units;
}

} // namespace holdfast::app
