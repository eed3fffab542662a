// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/places/blank_rail/wash_tub.h"

#include "app/desk/formats.h"
#include "app/places/blank_rail/rail_words.h"
#include "app/theme/tokens.h"
#include "app/theme/type.h"

#include <QPainter>

namespace holdfast::app {

namespace {

constexpr int kRoomForWater = 56; // and two lines of words
// The full line is a fifth below the brim: a washer is never filled to it.
constexpr qreal kFullShare = 0.8;

int tubHeight() {
    return kRoomForWater + 2 * lineHeight(Type::Number);
}

} // namespace

WashTub::WashTub(QWidget* parent)
    : QWidget(parent) {
    setFixedHeight(tubHeight());
}

void WashTub::show(Grams weight, Grams full, std::int64_t units, const QColor& water) {
    m_weight = weight;
    m_full = full;
    m_units = units;
    m_water = water;
    setAccessibleName(tr("In the wash: %1 of %2").arg(kilograms(weight), kilograms(full)));
    update();
}

void WashTub::paintEvent(QPaintEvent*) {
    QPainter painter(this);
    painter.setRenderHint(QPainter::Antialiasing);
    const Tokens& dyes = tokens();
    const QRectF tub(12, 4, width() - 24, height() - 8);
    QPainterPath inside;
    inside.moveTo(tub.topLeft());
    inside.lineTo(tub.left(), tub.bottom() - 14);
    inside.quadTo(tub.left(), tub.bottom(), tub.left() + 14, tub.bottom());
    inside.lineTo(tub.right() - 14, tub.bottom());
    inside.quadTo(tub.right(), tub.bottom(), tub.right(), tub.bottom() - 14);
    inside.lineTo(tub.topRight());
    painter.fillPath(inside, dyes.sunk);

    const double share =
        static_cast<double>(m_weight.value) / static_cast<double>(std::max<std::int64_t>(1, m_full.value));
    const bool isOver = m_weight > m_full;
    const qreal level = tub.bottom() - std::min(share * kFullShare, 0.98) * tub.height();
    if (m_weight.value > 0) {
        QPainterPath water;
        water.moveTo(tub.left(), level + 4);
        const qreal wave = tub.width() / 3;
        for (int each = 0; each < 3; ++each)
            water.cubicTo(tub.left() + wave * (each + 0.33), level - 6, tub.left() + wave * (each + 0.66),
                          level + 12, tub.left() + wave * (each + 1), level + 3);
        water.lineTo(tub.bottomRight());
        water.lineTo(tub.bottomLeft());
        water.closeSubpath();
        painter.setClipPath(inside);
        painter.fillPath(water, blended(m_water, dyes.sunk, 0.55));
        painter.setClipping(false);
    }
    painter.setPen(QPen(dyes.edge, 3, Qt::SolidLine, Qt::RoundCap, Qt::RoundJoin));
    painter.drawPath(inside);

    const qreal fullAt = tub.bottom() - kFullShare * tub.height();
    painter.setPen(QPen(isOver ? dyes.madder : dyes.ink, 2));
    painter.drawLine(QPointF(tub.right() - 40, fullAt), QPointF(tub.right(), fullAt));
    paintLine(painter,
              QRectF(tub.left(), fullAt - lineHeight(Type::SmallStrong) / 2.0, tub.width() - 46,
                     lineHeight(Type::SmallStrong)),
              tr("full, %1").arg(kilograms(m_full)), Type::SmallStrong, isOver ? dyes.madder : dyes.ink,
              Qt::AlignRight);

    const qreal baseline = tub.bottom() - 16;
    const qreal behind =
        paintRun(painter, {tub.left() + 18, baseline}, kilograms(m_weight), Type::Number, dyes.ink);
    paintRun(painter, {behind + 12, baseline}, blankCount(m_units), Type::SupportStrong, dyes.ink);
}

} // namespace holdfast::app
