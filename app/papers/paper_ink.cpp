// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/papers/paper_ink.h"

#include "app/desk/formats.h"
#include "app/papers/code_square.h"
#include "app/theme/drawings.h"
#include "app/theme/text_runs.h"

#include <QFile>
#include <QFontMetricsF>
#include <QPainter>
#include <QRegularExpression>
#include <QSvgRenderer>

namespace holdfast::app {

namespace {

constexpr double kTenths = kTenthsOfMillimetre;

// A thick line has ends of its own: round, so that a hand-drawn picture looks drawn.
QPen inkPen(double thick) {
    return {Qt::black, thick * kTenths, Qt::SolidLine, Qt::RoundCap, Qt::RoundJoin};
}

QRectF inTenths(const QRectF& box) {
    return {box.topLeft() * kTenths, box.size() * kTenths};
}

// The drawing with white cloth and black lines, its seams drawn through.
QByteArray garmentInLines(const QString& outline) {
    QFile file(QStringLiteral(":/garments/%1.svg").arg(outline));
    if (!file.open(QIODevice::ReadOnly)) {
        file.setFileName(QStringLiteral(":/garments/tee.svg"));
        if (!file.open(QIODevice::ReadOnly))
            return {};
    }
    static const QRegularExpression fills(QStringLiteral("fill=\"#[0-9A-Fa-f]{6}\""));
    static const QRegularExpression strokes(QStringLiteral("stroke=\"#[0-9A-Fa-f]{6}\""));
    static const QRegularExpression dashes(QStringLiteral(" stroke-dasharray=\"[^\"]*\""));
    QString drawing = QString::fromUtf8(file.readAll());
    drawing.replace(fills, QStringLiteral("fill=\"#ffffff\""));
    drawing.replace(strokes, QStringLiteral("stroke=\"#000000\""));
    drawing.remove(dashes);
    return drawing.toUtf8();
}

} // namespace

PaperInk::PaperInk(QPainter& painter, Letters letters)
    : m_painter(painter)
    , m_letters(letters) {
    m_painter.setRenderHint(QPainter::Antialiasing);
}

void PaperInk::line(QPointF at, const QString& text, const PaperType& type, Across across) {
    const QFont font = paperFont(type);
    const double wide = across == Across::Left ? 0 : QFontMetricsF(font).horizontalAdvance(text);
    const QPointF begins = at * kTenths - QPointF(across == Across::Middle ? wide / 2 : wide, 0);
    if (m_letters == Letters::AsText) {
        m_painter.setFont(font);
        m_painter.setPen(Qt::black);
        m_painter.drawText(begins, withRunsApart(text));
        return;
    }
    QPainterPath outlines;
    outlines.setFillRule(Qt::WindingFill);
    outlines.addText(begins, font, withRunsApart(text));
    m_painter.fillPath(outlines, Qt::black);
}

double PaperInk::lines(QPointF at, double width, const QString& text, const PaperType& type, Across across) {
    double y = at.y();
    for (const QString& each : brokenInto(width, text, type)) {
        line({at.x(), y + type.millimetres}, each, type, across);
        y += lineStep(type);
    }
    return y;
}

void PaperInk::rule(double left, double right, double y, double thick) {
    m_painter.fillRect(inTenths({left, y - thick / 2, right - left, thick}), Qt::black);
}

void PaperInk::tear(double x, double top, double bottom) {
    constexpr double kDash = 1.6;
    constexpr double kBetween = 1.2;
    constexpr double kThick = 0.3;
    for (double y = top; y < bottom; y += kDash + kBetween)
        m_painter.fillRect(inTenths({x - kThick / 2, y, kThick, std::min(kDash, bottom - y)}), Qt::black);
}

void PaperInk::frame(const QRectF& box, double thick, double radius) {
    m_painter.setPen(inkPen(thick));
    m_painter.setBrush(Qt::NoBrush);
    m_painter.drawRoundedRect(inTenths(box), radius * kTenths, radius * kTenths);
}

void PaperInk::tickBox(QPointF corner, double side, bool isTicked) {
    frame({corner, QSizeF(side, side)}, 0.4, 0.6);
    if (!isTicked)
        return;
    QPainterPath tick;
    tick.moveTo(side * 0.2, side * 0.52);
    tick.lineTo(side * 0.42, side * 0.76);
    tick.lineTo(side * 0.82, side * 0.22);
    stroke(tick, corner, side * 0.12);
}

void PaperInk::fill(const QPainterPath& shape, QPointF at) {
    m_painter.save();
    m_painter.translate(at * kTenths);
    m_painter.scale(kTenths, kTenths);
    m_painter.fillPath(shape, Qt::black);
    m_painter.restore();
}

void PaperInk::stroke(const QPainterPath& shape, QPointF at, double thick) {
    m_painter.save();
    m_painter.translate(at * kTenths);
    m_painter.scale(kTenths, kTenths);
    m_painter.setPen({Qt::black, thick, Qt::SolidLine, Qt::RoundCap, Qt::RoundJoin});
    m_painter.setBrush(Qt::NoBrush);
    m_painter.drawPath(shape);
    m_painter.restore();
}

void PaperInk::code(const QRectF& box, std::string_view text) {
    fill(codeOutline(codeSquareOf(text), box.width()), box.topLeft());
}

QRectF PaperInk::garment(const QRectF& box, const QString& outline) {
    const QRectF sheet = garmentSheet(box);
    QSvgRenderer(garmentInLines(outline)).render(&m_painter, inTenths(sheet));
    return sheet;
}

void PaperInk::begin(const QTransform& where) {
    m_painter.save();
    m_painter.setTransform(QTransform(where.m11(), where.m12(), where.m21(), where.m22(),
                                      where.dx() * kTenths, where.dy() * kTenths),
                           true);
}

void PaperInk::end() {
    m_painter.restore();
}

} // namespace holdfast::app
