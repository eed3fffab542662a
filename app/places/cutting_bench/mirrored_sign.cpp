#include "app/places/cutting_bench/mirrored_sign.h"

#include "app/theme/measures.h"
#include "app/theme/stitch.h"

#include <QPainter>

#include <cmath>

namespace holdfast::app {

MirroredSign::MirroredSign(QWidget* parent)
    : QWidget(parent) {
    setObjectName(QStringLiteral("mirroredChip"));
    setSizePolicy(QSizePolicy::Expanding, QSizePolicy::Fixed);
    setAccessibleName(words(true));
}

void MirroredSign::setMirrored(bool isMirrored) {
    m_isMirrored = isMirrored;
    setAccessibleName(words(true));
    updateGeometry();
    update();
}

QString MirroredSign::words(bool inFull) const {
    if (m_isMirrored)
        return inFull ? tr("Mirrored, text reads backwards") : tr("Mirrored");
    return inFull ? tr("Not mirrored, text reads forwards") : tr("Not mirrored");
}

QString MirroredSign::words() const {
    return words(width() >= widthFor(true));
}

QString MirroredSign::iconName() const {
    return m_isMirrored ? QStringLiteral("mirror") : QStringLiteral("caution");
}

int MirroredSign::widthFor(bool inFull) const {
    return static_cast<int>(std::ceil(chipSize(iconName(), words(inFull)).width()));
}

QSize MirroredSign::sizeHint() const {
    return {widthFor(true), kChipHeight};
}

QSize MirroredSign::minimumSizeHint() const {
    return {widthFor(false), kChipHeight};
}

void MirroredSign::paintEvent(QPaintEvent*) {
    QPainter painter(this);
    const QString shown = words();
    paintChip(painter, QPointF(width() - chipSize(iconName(), shown).width(), 0), iconName(), shown,
              m_isMirrored ? Tone::Ready : Tone::Caution);
}

} // namespace holdfast::app
