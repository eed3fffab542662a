// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/theme/drawings.h"

#include "app/theme/contrast.h"
#include "app/theme/icons.h"
#include "app/theme/stitch.h"
#include "app/theme/tokens.h"
#include "app/theme/type.h"

#include <QDir>
#include <QFile>
#include <QHash>
#include <QImage>
#include <QPainter>
#include <QPainterPath>
#include <QPixmapCache>
#include <QRegularExpression>
#include <QSvgRenderer>
#include <QXmlStreamReader>

#include <algorithm>
#include <cmath>

namespace holdfast::app {

namespace {

// The colours the drawings are kept in, replaced when they are dyed.
constexpr const char* kDrawnCloth = "#E3D8C3";
constexpr const char* kDrawnShade = "#cdc1ac";
constexpr const char* kDrawnLine = "#655b4f";
constexpr const char* kDrawnInk = "#2A2019";

constexpr double kArtworkSheet = 100.0;
constexpr double kLargestRoll = 31.0;
constexpr double kLine = 1.2; // light, about film that the evening would drown

// Cloth or film that an evening's dark line would drown in.
bool needsLightLine(const QColor& shade) {
    return light() == Light::Evening && luminance(shade) < 0.075;
}

QByteArray bytesOf(const QString& path) {
    QFile file(path);
    return file.open(QIODevice::ReadOnly) ? file.readAll() : QByteArray();
}

QByteArray garmentSource(const QString& outline) {
    static QHash<QString, QByteArray> sources;
    auto found = sources.find(outline);
    if (found == sources.end()) {
        QByteArray bytes = bytesOf(QStringLiteral(":/garments/%1.svg").arg(outline));
        if (bytes.isEmpty()) {
            bytes = bytesOf(QStringLiteral(":/garments/tee.svg"));
        }
        found = sources.insert(outline, bytes);
    }
    return found.value();
}

// Elements that bear data-side="front" are taken out.
QByteArray withoutTheFront(const QByteArray& source) {
    static const QRegularExpression frontOnly(QStringLiteral("<[^>]*data-side=\"front\"[^>]*/>"));
    return QString::fromUtf8(source).remove(frontOnly).toUtf8();
}

QStringList namesIn(const QString& folder) {
    QStringList names = QDir(folder).entryList({QStringLiteral("*.svg")}, QDir::Files, QDir::Name);
    for (QString& name : names) {
        name.chop(4);
    }
    return names;
}

QRectF fitted(const QRectF& box, double width, double height) {
    const double scale = std::min(box.width() / width, box.height() / height);
    const QSizeF size(width * scale, height * scale);
    return {QPointF(box.center().x() - size.width() / 2, box.center().y() - size.height() / 2), size};
}

QRectF snapped(const QRectF& box, qreal ratio) {
    const auto round = [ratio](qreal at) { return std::round(at * ratio) / ratio; };
    return {round(box.left()), round(box.top()), std::max(round(box.width()), 1 / ratio),
            std::max(round(box.height()), 1 / ratio)};
}

// The artwork's ink as an alpha mask of its whole sheet: white shapes in it are holes in the film.
QImage inkMask(const QString& artwork, int pixels) {
    QByteArray source = bytesOf(QStringLiteral(":/decals/%1.svg").arg(artwork));
    if (source.isEmpty()) {
        return {};
    }
    source.replace(kDrawnInk, "#000000");
    QImage mask(pixels, pixels, QImage::Format_ARGB32_Premultiplied);
    mask.fill(Qt::transparent);
    QPainter painter(&mask);
    painter.setRenderHint(QPainter::Antialiasing);
    QSvgRenderer(source).render(&painter, QRectF(0, 0, pixels, pixels));
    painter.end();
    for (int y = 0; y < pixels; ++y) {
        auto* line = reinterpret_cast<QRgb*>(mask.scanLine(y));
        for (int x = 0; x < pixels; ++x) {
            // Premultiplied, so what is left after the white is taken away is the black's own cover.
            line[x] = qRgba(0, 0, 0, qAlpha(line[x]) - qRed(line[x]));
        }
    }
    return mask;
}

// Where the ink of an artwork is, in units of its 100 x 100 sheet: the drawing says it itself, as left, top,
// width and height. Empty for unknown artwork.
QRectF inkBounds(const QString& artwork) {
    static QHash<QString, QRectF> known;
    const auto found = known.constFind(artwork);
    if (found != known.constEnd()) {
        return found.value();
    }
    QRectF bounds;
    QXmlStreamReader drawing(bytesOf(QStringLiteral(":/decals/%1.svg").arg(artwork)));
    if (drawing.readNextStartElement()) {
        const auto sides = drawing.attributes().value(QLatin1String("data-ink")).split(u' ');
        if (sides.size() == 4) {
            bounds =
                QRectF(sides[0].toDouble(), sides[1].toDouble(), sides[2].toDouble(), sides[3].toDouble());
        }
    }
    known.insert(artwork, bounds);
    return bounds;
}

enum class Sight { Front, Back };

void paintDyed(QPainter& painter, const QRectF& box, const QString& outline, const QColor& cloth,
               Sight sight) {
    const qreal ratio = painter.device()->devicePixelRatioF();
    const QRectF sheet = snapped(garmentSheet(box), ratio);
    const QSize pixels = (sheet.size() * ratio).toSize();
    const bool isLightLined = needsLightLine(cloth);
    const QString key = QStringLiteral("holdfast garment %1 %2 %3x%4 %5 %6")
                            .arg(outline)
                            .arg(cloth.rgb(), 0, 16)
                            .arg(pixels.width())
                            .arg(pixels.height())
                            .arg(isLightLined ? 1 : 0)
                            .arg(sight == Sight::Back ? 1 : 0);
    QPixmap drawn;
    if (!QPixmapCache::find(key, &drawn)) {
        const QColor dark = tokens(Light::Day).ink;
        const QColor pale = tokens(Light::Evening).ink;
        QByteArray source =
            sight == Sight::Back ? withoutTheFront(garmentSource(outline)) : garmentSource(outline);
        source.replace(
            kDrawnLine,
            (isLightLined ? blended(cloth, pale, 0.5) : blended(cloth, dark, 0.68)).name().toLatin1());
        source.replace(
            kDrawnShade,
            (isLightLined ? blended(cloth, pale, 0.1) : blended(cloth, dark, 0.11)).name().toLatin1());
        source.replace(kDrawnCloth, cloth.name().toLatin1());
        drawn = QPixmap(pixels);
        drawn.fill(Qt::transparent);
        QPainter inner(&drawn);
        inner.setRenderHint(QPainter::Antialiasing);
        QSvgRenderer(source).render(&inner, QRectF(QPointF(0, 0), QSizeF(pixels)));
        inner.end();
        QPixmapCache::insert(key, drawn);
    }
    drawn.setDevicePixelRatio(ratio);
    painter.drawPixmap(sheet.topLeft(), drawn);
}

QImage tinted(QImage mask, const QColor& colour) {
    QPainter painter(&mask);
    painter.setCompositionMode(QPainter::CompositionMode_SourceIn);
    painter.fillRect(mask.rect(), colour);
    return mask;
}

// The shape over the same in the line's colour, moved to all sides: a line about it.
QImage onLine(const QImage& shape, const QImage& line, double width) {
    QImage both(shape.size(), QImage::Format_ARGB32_Premultiplied);
    both.fill(Qt::transparent);
    QPainter painter(&both);
    painter.setRenderHint(QPainter::SmoothPixmapTransform);
    constexpr int kSides = 12;
    for (int side = 0; side < kSides; ++side) {
        const double angle = 2 * M_PI * side / kSides;
        painter.drawImage(QPointF(width * std::cos(angle), width * std::sin(angle)), line);
    }
    painter.drawImage(0, 0, shape);
    return both;
}

} // namespace

QStringList garmentOutlines() {
    return {QStringLiteral("tee"),  QStringLiteral("long-sleeve"), QStringLiteral("hoodie"),
            QStringLiteral("tote"), QStringLiteral("bodysuit"),    QStringLiteral("bib"),
            QStringLiteral("cap"),  QStringLiteral("apron")};
}

QStringList artworks() {
    static const QStringList names = [] {
        fontOf(Type::Body); // opens the resources
        return namesIn(QStringLiteral(":/decals"));
    }();
    return names;
}

QColor outlineOf(const QColor& shade) {
    return needsLightLine(shade) ? blended(shade, tokens(Light::Evening).ink, 0.42)
                                 : blended(shade, tokens(Light::Day).ink, 0.34);
}

QRectF garmentSheet(const QRectF& box) {
    return fitted(box, kGarmentSheetWidth, kGarmentSheetHeight);
}

void paintGarment(QPainter& painter, const QRectF& box, const QString& outline, const QColor& cloth) {
    paintDyed(painter, box, outline, cloth, Sight::Front);
}

void paintGarmentBack(QPainter& painter, const QRectF& box, const QString& outline, const QColor& cloth) {
    paintDyed(painter, box, outline, cloth, Sight::Back);
}

void paintDecal(QPainter& painter, const QRectF& box, const QString& artwork, const QColor& film) {
    const QRectF ink = inkBounds(artwork);
    if (ink.isEmpty()) {
        paintOutline(painter, box, 4, outlineOf(film), 1.4, true);
        return;
    }
    const qreal ratio = painter.device()->devicePixelRatioF();
    const QRectF target = fitted(box, ink.width(), ink.height());
    // The whole sheet at the scale that makes its ink fill the target.
    const double scale = target.width() / ink.width();
    const int pixels = std::clamp(static_cast<int>(std::lround(kArtworkSheet * scale * ratio)), 1, 4000);
    const bool hasLine = needsLightLine(film);
    const QString key = QStringLiteral("holdfast decal %1 %2 %3 %4")
                            .arg(artwork)
                            .arg(film.rgba(), 0, 16)
                            .arg(pixels)
                            .arg(hasLine);
    QPixmap cut;
    if (!QPixmapCache::find(key, &cut)) {
        const QImage mask = inkMask(artwork, pixels);
        const QImage shape = tinted(mask, film);
        cut =
            QPixmap::fromImage(hasLine ? onLine(shape, tinted(mask, outlineOf(film)), kLine * ratio) : shape);
        QPixmapCache::insert(key, cut);
    }
    cut.setDevicePixelRatio(ratio);
    painter.drawPixmap(QPointF(target.left() - ink.left() * scale, target.top() - ink.top() * scale), cut);
}

double artworkAspect(const QString& artwork) {
    const QRectF ink = inkBounds(artwork);
    return ink.isEmpty() ? 1.0 : ink.width() / ink.height();
}

QStringList letteringFaces() {
    return {QStringLiteral("serif"), QStringLiteral("sans")};
}

QFont letteringFont(const QString& face) {
    QFont made = fontOf(face == QLatin1String("serif") ? Type::CardTitle : Type::Value);
    made.setWeight(QFont::Bold);
    made.setPixelSize(200);
    return made;
}

void paintLettering(QPainter& painter, const QRectF& box, const QPainterPath& path, const QColor& film) {
    const QRectF ink = path.boundingRect();
    if (ink.isEmpty()) {
        paintOutline(painter, box, 4, outlineOf(film), 1.4, true);
        return;
    }
    const QRectF target = fitted(box, ink.width(), ink.height());
    const double scale = target.width() / ink.width();
    QTransform placed;
    placed.translate(target.left(), target.top());
    placed.scale(scale, scale);
    placed.translate(-ink.left(), -ink.top());
    painter.save();
    painter.setRenderHint(QPainter::Antialiasing);
    const QPainterPath letters = placed.map(path);
    if (needsLightLine(film))
        painter.strokePath(letters,
                           QPen(outlineOf(film), 2 * kLine, Qt::SolidLine, Qt::RoundCap, Qt::RoundJoin));
    painter.fillPath(letters, film);
    painter.restore();
}

double rollRadius(double metres) {
    return std::min(kLargestRoll, std::sqrt(68.0 + 53.0 * std::max(0.0, metres)));
}

void paintRoll(QPainter& painter, QPointF centre, double metres, const QColor& film) {
    const double radius = rollRadius(metres);
    const double core = 3.6;
    const QColor line = outlineOf(film);
    painter.save();
    painter.setRenderHint(QPainter::Antialiasing);
    painter.setPen(QPen(line, 1.4));
    painter.setBrush(film);
    painter.drawEllipse(centre, radius - 0.7, radius - 0.7);
    painter.setBrush(Qt::NoBrush);
    painter.setPen(QPen(line, 0.9));
    for (double ring = core + 3.4; ring < radius - 2.2; ring += 3.2) {
        painter.drawEllipse(centre, ring, ring);
    }
    painter.setPen(QPen(line, 1.4));
    painter.setBrush(tokens().card);
    painter.drawEllipse(centre, core, core);
    painter.restore();
}

void paintSwatch(QPainter& painter, const QRectF& box, const QColor& shade, qreal radius) {
    paintBox(painter, box, radius, shade, outlineOf(shade), 1.2);
}

void paintMark(QPainter& painter, const QRectF& box, const QColor& ink) {
    paintIcon(painter, box, QStringLiteral("mark"), ink);
}

} // namespace holdfast::app
