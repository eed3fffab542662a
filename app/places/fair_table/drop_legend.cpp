// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/places/fair_table/drop_legend.h"

#include "app/theme/icons.h"
#include "app/theme/measures.h"
#include "app/theme/stitch.h"
#include "app/theme/tokens.h"
#include "app/theme/type.h"

#include <QPainter>

namespace holdfast::app {

namespace {

qreal signWide(const QString& words) {
    return kSmallIcon + kSpace4 + widthOf(words, Type::Small);
}

void paintSign(QPainter& painter, QPointF at, const QString& drop, const QColor& ink, const QString& words) {
    const qreal high = lineHeight(Type::Small);
    const QRectF icon(at + QPointF(0, (high - kSmallIcon) / 2.0), QSizeF(kSmallIcon, kSmallIcon));
    paintIcon(painter, icon, drop, ink);
    paintLine(painter, QRectF(icon.right() + kSpace4, at.y(), signWide(words), high), words, Type::Small,
              tokens().ink2);
}

} // namespace

DropLegend::DropLegend(QWidget* parent)
    : QWidget(parent)
    , m_washed(tr("washed, can press today"))
    , m_unwashed(tr("needs a wash first")) {
    setObjectName(QStringLiteral("dropLegend"));
    setFixedHeight(lineHeight(Type::Small)); // until its width is known
    setAccessibleName(m_washed + QStringLiteral("; ") + m_unwashed);
}

bool DropLegend::isInOneLine() const {
    return signWide(m_washed) + kSpace20 + signWide(m_unwashed) <= width();
}

void DropLegend::paintEvent(QPaintEvent*) {
    QPainter painter(this);
    const QPointF second =
        isInOneLine() ? QPointF(signWide(m_washed) + kSpace20, 0) : QPointF(0, lineHeight(Type::Small));
    paintSign(painter, QPointF(0, 0), QStringLiteral("washed"), tokens().green, m_washed);
    paintSign(painter, second, QStringLiteral("unwashed"), tokens().ink2, m_unwashed);
}

void DropLegend::resizeEvent(QResizeEvent* event) {
    QWidget::resizeEvent(event);
    setFixedHeight((isInOneLine() ? 1 : 2) * lineHeight(Type::Small));
}

} // namespace holdfast::app
