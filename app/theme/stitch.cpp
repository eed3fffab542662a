// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/theme/stitch.h"

#include "app/theme/icons.h"
#include "app/theme/measures.h"
#include "app/theme/type.h"

#include <QKeySequence>
#include <QPainter>
#include <QPixmap>

#include <algorithm>
#include <cmath>

namespace holdfast::app {

namespace {

class Kept {
public:
    explicit Kept(QPainter& painter)
        : m_painter(painter) {
        m_painter.save();
        m_painter.setRenderHint(QPainter::Antialiasing);
    }
    ~Kept() { m_painter.restore(); }
    Kept(const Kept&) = delete;
    Kept& operator=(const Kept&) = delete;

private:
    QPainter& m_painter;
};

// A pen whose dashes are given in pixels.
QPen dashedPen(const QColor& colour, qreal width, qreal dash, qreal gap) {
    QPen pen(colour, width, Qt::CustomDashLine, Qt::FlatCap, Qt::RoundJoin);
    pen.setDashPattern({dash / width, gap / width});
    return pen;
}

constexpr int kHatchTile = 10;

} // namespace

void paintThread(QPainter& painter, QPointF from, QPointF to, const QColor& colour, qreal width) {
    const Kept kept(painter);
    painter.setPen(QPen(colour, width, Qt::SolidLine, Qt::FlatCap));
    painter.drawLine(from, to);
}

void paintRunningStitch(QPainter& painter, QPointF from, QPointF to, const QColor& colour, qreal width) {
    const Kept kept(painter);
    painter.setPen(dashedPen(colour, width, 6, 4));
    painter.drawLine(from, to);
}

void paintStitch(QPainter& painter, const QRectF& box, const QColor& colour, bool isDone) {
    const Kept kept(painter);
    if (isDone) {
        painter.setPen(Qt::NoPen);
        painter.setBrush(colour);
        painter.drawRoundedRect(box, box.height() / 2, box.height() / 2);
        return;
    }
    const qreal width = 1.6;
    const QRectF inner = box.adjusted(width / 2, width / 2, -width / 2, -width / 2);
    painter.setPen(dashedPen(colour, width, 4, 3));
    painter.setBrush(Qt::NoBrush);
    painter.drawRoundedRect(inner, inner.height() / 2, inner.height() / 2);
}

void paintSewnLabel(QPainter& painter, const QRectF& label, const QColor& colour, qreal radius) {
    const Kept kept(painter);
    const qreal in = 3.5;
    painter.setPen(dashedPen(colour, 1.2, 4, 2.6));
    painter.setBrush(Qt::NoBrush);
    painter.drawRoundedRect(label.adjusted(in, in, -in, -in), std::max(2.0, radius - 3),
                            std::max(2.0, radius - 3));
}

void paintKnot(QPainter& painter, QPointF centre, Knot knot, qreal diameter) {
    const Kept kept(painter);
    const Tokens& dyes = tokens();
    const QRectF round(centre.x() - diameter / 2, centre.y() - diameter / 2, diameter, diameter);
    switch (knot) {
    case Knot::Done:
        painter.setPen(Qt::NoPen);
        painter.setBrush(dyes.indigo);
        painter.drawEllipse(round);
        paintIcon(painter, round.adjusted(diameter * .15, diameter * .15, -diameter * .15, -diameter * .15),
                  QStringLiteral("tick"), dyes.onIndigo);
        break;
    case Knot::Current:
        painter.setPen(QPen(dyes.indigo, 3));
        painter.setBrush(dyes.card);
        painter.drawEllipse(round.adjusted(1.5, 1.5, -1.5, -1.5));
        painter.setPen(Qt::NoPen);
        painter.setBrush(dyes.indigo);
        painter.drawEllipse(centre, diameter * .22, diameter * .22);
        break;
    case Knot::Planned:
        painter.setPen(dashedPen(dyes.edge, 2, 5, 3));
        painter.setBrush(dyes.card);
        painter.drawEllipse(round.adjusted(1, 1, -1, -1));
        break;
    }
}

QBrush hatch(const QColor& line, qreal ratio) {
    // Drawn large and shrunk once, so that the stripes are smooth at any ratio.
    const int pixels = std::max(4, static_cast<int>(std::lround(kHatchTile * ratio)));
    QPixmap tile(pixels, pixels);
    tile.fill(Qt::transparent);
    QPainter painter(&tile);
    painter.setRenderHint(QPainter::Antialiasing);
    painter.setPen(QPen(line, pixels * 0.34, Qt::SolidLine, Qt::FlatCap));
    for (int shift = -1; shift <= 1; ++shift) {
        painter.drawLine(QPointF(-pixels + shift * pixels, pixels * 2),
                         QPointF(pixels * 2 + shift * pixels, -pixels));
    }
    painter.end();
    QBrush brush(tile);
    brush.setTransform(QTransform::fromScale(static_cast<qreal>(kHatchTile) / pixels,
                                             static_cast<qreal>(kHatchTile) / pixels));
    return brush;
}

void paintHatch(QPainter& painter, const QPainterPath& area, const QColor& line) {
    const Kept kept(painter);
    painter.setBrushOrigin(area.boundingRect().topLeft());
    painter.fillPath(area, hatch(line, painter.device()->devicePixelRatioF()));
}

QString keyCapText(const QKeySequence& keys) {
    QString text = keys.toString(QKeySequence::PortableText);
    text.replace(QStringLiteral("Return"), QStringLiteral("Enter"));
    // "Ctrl++" keeps its plus; every other plus only joins.
    const bool endsInPlus = text == QLatin1String("+") || text.endsWith(QLatin1String("++"));
    if (endsInPlus) {
        text.chop(1);
    }
    text.replace(u'+', u' ');
    text = text.trimmed();
    if (endsInPlus) {
        text = text.isEmpty() ? QStringLiteral("+") : text + QStringLiteral(" +");
    }
    return text;
}

QSizeF keyCapSize(const QString& text) {
    const qreal width = std::ceil(widthOf(text, Type::SmallStrong));
    return {std::max<qreal>(kKeyCap, width + 14), kKeyCap};
}

void paintKeyCap(QPainter& painter, const QRectF& box, const QString& text, const QColor& ink) {
    paintOutline(painter, box, kKeyRadius, ink, 1.4);
    const Type type = box.height() > 36   ? Type::Value
                      : box.height() > 28 ? Type::BodyStrong
                                          : Type::SmallStrong;
    paintLine(painter, box, text, type, ink, Qt::AlignHCenter);
}

void paintFocusRing(QPainter& painter, const QRectF& framed, qreal radius) {
    const Kept kept(painter);
    const qreal out = kFocusGap + kFocusWidth / 2.0;
    painter.setPen(QPen(tokens().indigo, kFocusWidth));
    painter.setBrush(Qt::NoBrush);
    painter.drawRoundedRect(framed.adjusted(-out, -out, out, out), radius + out, radius + out);
}

QSizeF chipSize(const QString& iconName, const QString& words) {
    qreal width = 8 + std::ceil(widthOf(words, Type::SmallStrong)) + 9;
    if (!iconName.isEmpty()) {
        width += kSmallIcon + 6;
    }
    return {width, kChipHeight};
}

void paintChip(QPainter& painter, QPointF topLeft, const QString& iconName, const QString& words, Tone tone) {
    const Kept kept(painter);
    const QRectF box(topLeft, chipSize(iconName, words));
    paintBox(painter, box, kChipRadius, toneGround(tone), {});
    qreal x = box.left() + 8;
    if (!iconName.isEmpty()) {
        paintIcon(painter, QRectF(x, box.center().y() - kSmallIcon / 2.0, kSmallIcon, kSmallIcon), iconName,
                  toneInk(tone));
        x += kSmallIcon + 6;
    }
    paintLine(painter, QRectF(x, box.top(), box.right() - x, box.height()), words, Type::SmallStrong,
              toneInk(tone));
}

void paintOutline(QPainter& painter, const QRectF& box, qreal radius, const QColor& line, qreal width,
                  bool isDashed) {
    paintBox(painter, box, radius, {}, line, width, isDashed);
}

void paintBox(QPainter& painter, const QRectF& box, qreal radius, const QColor& ground, const QColor& line,
              qreal width, bool isDashed) {
    const Kept kept(painter);
    painter.setPen(Qt::NoPen);
    painter.setBrush(Qt::NoBrush);
    QRectF drawn = box;
    qreal corner = radius;
    if (line.isValid()) {
        painter.setPen(isDashed ? dashedPen(line, width, 4, 3) : QPen(line, width));
        drawn.adjust(width / 2, width / 2, -width / 2, -width / 2);
        corner = std::max(0.0, radius - width / 2);
    }
    if (ground.isValid()) {
        painter.setBrush(ground);
    }
    painter.drawRoundedRect(drawn, corner, corner);
}

} // namespace holdfast::app
