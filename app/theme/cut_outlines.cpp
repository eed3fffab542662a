// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/theme/cut_outlines.h"

#include "app/theme/drawings.h"

#include <QFile>
#include <QGlyphRun>
#include <QHash>
#include <QImage>
#include <QMutex>
#include <QPaintDevice>
#include <QPaintEngine>
#include <QPainter>
#include <QPainterPathStroker>
#include <QRawFont>
#include <QSvgRenderer>
#include <QTextLayout>

#include <algorithm>

namespace holdfast::app {

namespace {

constexpr int kSheet = 1000;       // the drawing is traced ten times as large as it is kept
constexpr double kKept = 100;      // units of its sheet
constexpr double kStraying = 0.1;  // of a stroke's curve from the true one, in units of the sheet
constexpr int kLetterProof = 512;  // pixels in which overlapping strokes of a letter are looked for
constexpr double kRounding = 0.03; // between two aspects that differ by rounding alone

// Gathers what a drawing paints into one area: its colour adds, white takes away.
class OutlineEngine : public QPaintEngine {
public:
    OutlineEngine()
        : QPaintEngine(AllFeatures) {}

    QPainterPath area;

    bool begin(QPaintDevice*) override { return true; }
    bool end() override { return true; }
    Type type() const override { return User; }

    void updateState(const QPaintEngineState& now) override {
        m_brush = now.brush();
        m_pen = now.pen();
        m_transform = now.transform();
    }

    void drawPath(const QPainterPath& path) override {
        if (m_brush.style() != Qt::NoBrush)
            put(path, m_brush.color());
        if (m_pen.style() != Qt::NoPen) {
            QPainterPathStroker stroker(m_pen);
            stroker.setCurveThreshold(kStraying);
            put(stroker.createStroke(path), m_pen.color());
        }
    }

    void drawPolygon(const QPointF* points, int count, PolygonDrawMode mode) override {
        QPainterPath path;
        path.addPolygon(QPolygonF(QList<QPointF>(points, points + count)));
        if (mode != PolylineMode)
            path.closeSubpath();
        drawPath(path);
    }

    void drawPixmap(const QRectF&, const QPixmap&, const QRectF&) override {}

private:
    void put(QPainterPath path, const QColor& colour) {
        path.setFillRule(Qt::WindingFill);
        const QPainterPath placed = m_transform.map(path).simplified();
        area = colour.lightnessF() > 0.9F ? area.subtracted(placed) : area.united(placed);
    }

    QBrush m_brush;
    QPen m_pen;
    QTransform m_transform;
};

class OutlineDevice : public QPaintDevice {
public:
    QPaintEngine* paintEngine() const override { return &m_engine; }
    const QPainterPath& area() const { return m_engine.area; }

protected:
    int metric(PaintDeviceMetric metric) const override {
        switch (metric) {
        case PdmWidth:
        case PdmHeight:
            return kSheet;
        case PdmDevicePixelRatioScaled:
            return static_cast<int>(devicePixelRatioFScale());
        case PdmDevicePixelRatio:
            return 1;
        case PdmDepth:
            return 32;
        default:
            return 96; // dots an inch, and what is of no matter here
        }
    }

private:
    mutable OutlineEngine m_engine;
};

QPainterPath traced(const QString& artwork) {
    if (!artworks().contains(artwork))
        return {};
    QFile file(QStringLiteral(":/decals/%1.svg").arg(artwork));
    if (!file.open(QIODevice::ReadOnly))
        return {};
    QSvgRenderer drawing(file.readAll());
    OutlineDevice device;
    QPainter painter(&device);
    drawing.render(&painter, QRectF(0, 0, kSheet, kSheet));
    painter.end();
    return QTransform::fromScale(kKept / kSheet, kKept / kSheet).map(device.area());
}

// Whether strokes of the letter lie over one another: there, and nowhere else, it matters by which rule it is
// filled.
bool overlapsItself(QPainterPath path) {
    const QRectF ink = path.boundingRect();
    const double scale = kLetterProof / std::max({1.0, ink.width(), ink.height()});
    const auto proof = [&](Qt::FillRule rule) {
        QImage image(kLetterProof, kLetterProof, QImage::Format_Alpha8);
        image.fill(Qt::transparent);
        QPainter painter(&image);
        painter.setRenderHint(QPainter::Antialiasing);
        painter.scale(scale, scale);
        painter.translate(-ink.topLeft());
        path.setFillRule(rule);
        painter.fillPath(path, Qt::black);
        return image;
    };
    return proof(Qt::WindingFill) != proof(Qt::OddEvenFill);
}

// A letter whose strokes overlap is cut as one. Growing them together takes time and turns curves into short
// straight lines: it is done where it must be, and once.
QPainterPath glyphOutline(const QRawFont& font, quint32 glyph) {
    static QMutex alone; // files are written in the background
    static QHash<QPair<QString, quint32>, QPainterPath> known;
    const QPair<QString, quint32> key(font.familyName() + font.styleName(), glyph);
    const QMutexLocker lock(&alone);
    auto found = known.constFind(key);
    if (found == known.constEnd()) {
        QPainterPath path = font.pathForGlyph(glyph);
        path.setFillRule(Qt::WindingFill);
        if (overlapsItself(path))
            path = path.simplified();
        path.setFillRule(Qt::OddEvenFill);
        found = known.insert(key, path);
    }
    return found.value();
}

} // namespace

QPainterPath artworkOutline(const QString& artwork) {
    static QMutex alone;
    static QHash<QString, QPainterPath> known;
    const QMutexLocker lock(&alone);
    auto found = known.constFind(artwork);
    if (found == known.constEnd())
        found = known.insert(artwork, traced(artwork));
    return found.value();
}

QPainterPath letteringOutline(const QString& text, const QString& face) {
    QTextLayout layout(text, letteringFont(face));
    layout.beginLayout();
    layout.createLine().setNumColumns(static_cast<int>(text.size()));
    layout.endLayout();
    QPainterPath letters;
    for (const QGlyphRun& run : layout.glyphRuns()) {
        const QList<quint32> glyphs = run.glyphIndexes();
        const QList<QPointF> positions = run.positions();
        for (qsizetype at = 0; at < glyphs.size(); ++at)
            letters.addPath(glyphOutline(run.rawFont(), glyphs[at]).translated(positions[at]));
    }
    return letters;
}

QPainterPath laidInto(const QPainterPath& outline, double width, double height) {
    const QRectF ink = outline.boundingRect();
    if (ink.width() <= 0 || ink.height() <= 0)
        return {};
    double across = width / ink.width();
    double down = height / ink.height();
    const double least = std::min(across, down);
    if (std::max(across, down) > least * (1 + kRounding)) {
        across = least;
        down = least;
    }
    QTransform placed;
    placed.translate((width - ink.width() * across) / 2, (height - ink.height() * down) / 2);
    placed.scale(across, down);
    placed.translate(-ink.left(), -ink.top());
    return placed.map(outline);
}

} // namespace holdfast::app
