// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/widgets/chip.h"

#include "app/theme/stitch.h"

#include <QPainter>

namespace holdfast::app {

Chip::Chip(const QString& iconName, const QString& words, Tone tone, QWidget* parent)
    : QWidget(parent)
    , m_tone(tone) {
    setSizePolicy(QSizePolicy::Fixed, QSizePolicy::Fixed);
    set(iconName, words, tone);
}

void Chip::set(const QString& iconName, const QString& words, Tone tone) {
    m_iconName = iconName;
    m_words = words;
    m_tone = tone;
    setAccessibleName(words);
    updateGeometry();
    update();
}

QSize Chip::sizeHint() const {
    return chipSize(m_iconName, m_words).toSize();
}

void Chip::paintEvent(QPaintEvent*) {
    QPainter painter(this);
    paintChip(painter, QPointF(0, 0), m_iconName, m_words, m_tone);
}

} // namespace holdfast::app
