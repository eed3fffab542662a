// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/places/fair_table/stage_scale.h"

#include "app/theme/drawings.h"

#include <QHash>
#include <QImage>
#include <QPainter>

#include <algorithm>
#include <cmath>

namespace holdfast::app {

namespace {

// Where a drawing's ink is on its sheet, in sheet units.
QRectF inkOf(const QString& outline) {
    static QHash<QString, QRectF> known;
    if (const auto found = known.constFind(outline); found != known.constEnd())
        return found.value();
    QImage proof(static_cast<int>(kGarmentSheetWidth), static_cast<int>(kGarmentSheetHeight),
                 QImage::Format_ARGB32_Premultiplied);
    proof.fill(Qt::transparent);
    QPainter painter(&proof);
    paintGarment(painter, QRectF(proof.rect()), outline, QColor(Qt::gray));
    painter.end();
    int left = proof.width();
    int top = proof.height();
    int right = 0;
    int bottom = 0;
    for (int y = 0; y < proof.height(); ++y)
        for (int x = 0; x < proof.width(); ++x)
            if (qAlpha(proof.pixel(x, y)) > 0) {
                left = std::min(left, x);
                right = std::max(right, x + 1);
                top = std::min(top, y);
                bottom = std::max(bottom, y + 1);
            }
    const QRectF ink =
        left < right ? QRectF(QPointF(left, top), QPointF(right, bottom)) : QRectF(proof.rect());
    known.insert(outline, ink);
    return ink;
}

} // namespace

StageScale::StageScale(const QRectF& box, const QString& outline, const QString& size, Side side) {
    const QRectF ink = inkOf(outline);
    const double perUnit = std::max(0.1, std::min(box.width() / ink.width(), box.height() / ink.height()));
    const QSizeF inked(ink.width() * perUnit, ink.height() * perUnit);
    m_garment =
        QRectF(QPointF(box.center().x() - inked.width() / 2, box.center().y() - inked.height() / 2), inked);
    m_sheet = QRectF(m_garment.left() - ink.left() * perUnit, m_garment.top() - ink.top() * perUnit,
                     kGarmentSheetWidth * perUnit, kGarmentSheetHeight * perUnit);
    const QRectF body = garmentBody(outline);
    m_seam = QPointF(m_sheet.left() + body.center().x() * perUnit, m_sheet.top() + body.top() * perUnit);
    m_scale = perUnit / millimetresPerUnit(outline, size);
    m_towardsLeft = side == Side::Back ? -1 : 1;
}

QRectF StageScale::rectOf(Millimetres below, Millimetres aside, Millimetres width, Millimetres height) const {
    const auto pixels = [this](Millimetres length) { return static_cast<double>(length.value) * m_scale; };
    const double middle = m_seam.x() + m_towardsLeft * pixels(aside);
    return {middle - pixels(width) / 2, m_seam.y() + pixels(below), pixels(width), pixels(height)};
}

Millimetres StageScale::belowAt(double y) const {
    return {std::llround((y - m_seam.y()) / m_scale)};
}

Millimetres StageScale::asideAt(double x) const {
    return {std::llround((x - m_seam.x()) * m_towardsLeft / m_scale)};
}

Millimetres StageScale::lengthOf(double pixels) const {
    return {std::llround(pixels / m_scale)};
}

} // namespace holdfast::app
