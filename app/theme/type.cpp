// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/theme/type.h"

#include "app/theme/text_runs.h"

#include "app/theme/text_share.h"

#include <QFontDatabase>
#include <QFontMetricsF>
#include <QPainter>
#include <QTextLayout>

#include <algorithm>
#include <array>
#include <clocale>
#include <cmath>
#include <cstddef>
#include <optional>
#include <string>

// A resource in a static library must be asked for by name, outside any namespace.
static void openResources() {
    Q_INIT_RESOURCE(resources);
}

namespace holdfast::app {

namespace {

struct FontFace {
    bool isSerif;
    QFont::Weight weight;
    int size;
    int line;
};

FontFace usualFaceOf(Type type) {
    switch (type) {
    case Type::Countdown:
        return {false, QFont::Bold, 184, 148};
    case Type::Panel:
        return {false, QFont::Bold, 50, 54};
    case Type::Next:
        return {false, QFont::Bold, 34, 40};
    case Type::PlaceTitle:
        return {true, QFont::DemiBold, 25, 32};
    case Type::Number:
        return {false, QFont::Bold, 24, 28};
    case Type::CardTitle:
        return {true, QFont::DemiBold, 18, 24};
    case Type::Value:
        return {false, QFont::Bold, 18, 24};
    case Type::List:
        return {false, QFont::Medium, 16, 24};
    case Type::ListStrong:
        return {false, QFont::DemiBold, 16, 24};
    case Type::Body:
        return {false, QFont::Normal, 15, 20};
    case Type::BodyStrong:
        return {false, QFont::DemiBold, 15, 20};
    case Type::Support:
        return {false, QFont::Normal, 14, 20};
    case Type::SupportStrong:
        return {false, QFont::DemiBold, 14, 20};
    case Type::Small:
        return {false, QFont::Normal, 13, 18};
    case Type::SmallStrong:
        return {false, QFont::DemiBold, 13, 18};
    }
    return {false, QFont::Normal, 15, 20};
}

FontFace faceOf(Type type) {
    FontFace face = usualFaceOf(type);
    face.size = qRound(face.size * textShare());
    face.line = qRound(face.line * textShare());
    return face;
}

// The first text that is shaped in a process settles the language of all others: HarfBuzz asks the C locale
// once. In Turkish the serif's i joins otherwise, and one laptop would cut a wording otherwise than the next.
void shapeInNoLanguage() {
    const std::string before = setlocale(LC_CTYPE, nullptr);
    setlocale(LC_CTYPE, "C");
    QTextLayout first(QStringLiteral("i"), QFont(QStringLiteral("Holdfast Serif")));
    first.beginLayout();
    first.createLine();
    first.endLayout();
    setlocale(LC_CTYPE, before.c_str());
}

void loadFonts() {
    static const bool isLoaded = [] {
        openResources();
        for (const char* file :
             {"Sans-Regular", "Sans-Medium", "Sans-SemiBold", "Sans-Bold", "Serif-SemiBold", "Serif-Bold"}) {
            const int id = QFontDatabase::addApplicationFont(
                QStringLiteral(":/fonts/Holdfast%1.ttf").arg(QLatin1String(file)));
            Q_ASSERT_X(id >= 0, "loadFonts", file);
        }
        shapeInNoLanguage();
        return true;
    }();
    Q_UNUSED(isLoaded);
}

} // namespace

namespace {

QFont madeFont(Type type) {
    const FontFace face = faceOf(type);
    QFont made(face.isSerif ? QStringLiteral("Holdfast Serif") : QStringLiteral("Holdfast Sans"));
    made.setWeight(face.weight);
    made.setPixelSize(face.size);
    made.setHintingPreference(QFont::PreferNoHinting);
    return made;
}

} // namespace

QFont fontOf(Type type) {
    loadFonts();
    // Made once each: delegates ask for one with every line they paint. A font keeps what it was drawn with,
    // so that no two threads may share one.
    static thread_local std::array<std::optional<QFont>, static_cast<std::size_t>(Type::SmallStrong) + 1>
        fonts;
    std::optional<QFont>& kept = fonts[static_cast<std::size_t>(type)];
    if (!kept) {
        kept = madeFont(type);
    }
    return *kept;
}

int lineHeight(Type type) {
    return faceOf(type).line;
}

qreal widthOf(const QString& text, Type type) {
    return QFontMetricsF(fontOf(type)).horizontalAdvance(text);
}

QString fitted(const QString& text, Type type, qreal width) {
    return QFontMetricsF(fontOf(type)).elidedText(text, Qt::ElideRight, width);
}

qreal paintRun(QPainter& painter, QPointF baseline, const QString& text, Type type, const QColor& ink) {
    const QFont face = fontOf(type);
    painter.setFont(face);
    painter.setPen(ink);
    painter.drawText(baseline, withRunsApart(text));
    return baseline.x() + QFontMetricsF(face).horizontalAdvance(text);
}

void paintLine(QPainter& painter, const QRectF& box, const QString& text, Type type, const QColor& ink,
               Qt::Alignment across) {
    const QFont face = fontOf(type);
    const QFontMetricsF metrics(face);
    const qreal width = metrics.horizontalAdvance(text);
    qreal x = box.left();
    if (across & Qt::AlignRight) {
        x = box.right() - width;
    } else if (across & Qt::AlignHCenter) {
        x = box.left() + (box.width() - width) / 2;
    }
    // Centred by the height of capitals and digits, which is what the eye reads as the line's middle.
    const qreal baseline = std::round(box.top() + (box.height() + metrics.capHeight()) / 2);
    painter.setFont(face);
    painter.setPen(ink);
    painter.drawText(QPointF(x, baseline), withRunsApart(text));
}

} // namespace holdfast::app
