// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/places/film_shelf/roll_drawings.h"

#include "app/theme/drawings.h"
#include "app/theme/measures.h"
#include "app/theme/stitch.h"
#include "app/theme/tokens.h"

#include <QPainter>

#include <algorithm>

namespace holdfast::app {

RollSwatch::RollSwatch() {
    setFixedSize(44, 44);
}

void RollSwatch::setShade(const QColor& shade) {
    m_shade = shade;
    update();
}

void RollSwatch::paintEvent(QPaintEvent*) {
    QPainter painter(this);
    painter.setRenderHint(QPainter::Antialiasing);
    paintSwatch(painter, QRectF(rect()).adjusted(1, 1, -1, -1), m_shade, kButtonRadius);
}

SpokenForBar::SpokenForBar() {
    setFixedHeight(14);
}

void SpokenForBar::set(double share, const QColor& shade) {
    m_share = std::clamp(share, 0.0, 1.0);
    m_shade = shade;
    update();
}

void SpokenForBar::paintEvent(QPaintEvent*) {
    QPainter painter(this);
    painter.setRenderHint(QPainter::Antialiasing);
    const QRectF whole = QRectF(rect()).adjusted(0.5, 0.5, -0.5, -0.5);
    paintBox(painter, whole, 7, tokens().sunk, tokens().thread);
    if (m_share <= 0)
        return;
    QRectF part = whole;
    part.setWidth(std::max(14.0, whole.width() * m_share));
    paintBox(painter, part, 7, m_shade, outlineOf(m_shade));
}

} // namespace holdfast::app
