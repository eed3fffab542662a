// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/widgets/label.h"

#include "app/theme/measures.h"
#include "app/theme/text_runs.h"

#include <QEvent>
#include <QFontMetricsF>
#include <QPainter>

#include <cmath>

namespace holdfast::app {

Label::Label(const QString& text, Type type, Role ink, QWidget* parent)
    : QLabel(withRunsApart(text), parent)
    , m_type(type)
    , m_ink(ink) {
    applyType();
}

void Label::setText(const QString& text) {
    QLabel::setText(withRunsApart(text));
}

void Label::setType(Type type) {
    m_type = type;
    applyType();
}

void Label::setInk(Role ink) {
    m_ink = ink;
    applyType();
}

Label* Label::wrapped() {
    setWordWrap(true);
    return this;
}

void Label::changeEvent(QEvent* event) {
    QLabel::changeEvent(event);
    if (event->type() == QEvent::PaletteChange && !m_isApplying) {
        applyType();
    }
}

void Label::applyType() {
    m_isApplying = true;
    setFont(fontOf(m_type));
    QPalette dyed = palette();
    dyed.setColor(QPalette::WindowText, tokens().*m_ink);
    dyed.setColor(QPalette::Link, tokens().indigo);
    setPalette(dyed);
    m_isApplying = false;
}

ElidingLabel::ElidingLabel(const QString& text, Type type, Role ink, QWidget* parent)
    : QWidget(parent)
    , m_type(type)
    , m_ink(ink) {
    setSizePolicy(QSizePolicy::Preferred, QSizePolicy::Fixed);
    setText(text);
}

void ElidingLabel::setText(const QString& text) {
    m_text = text;
    setAccessibleName(text);
    explain();
    updateGeometry();
    update();
}

void ElidingLabel::explain() {
    setToolTip(widthOf(m_text, m_type) > width() ? m_text : QString());
}

QSize ElidingLabel::sizeHint() const {
    return {static_cast<int>(std::ceil(widthOf(m_text, m_type))), lineHeight(m_type)};
}

QSize ElidingLabel::minimumSizeHint() const {
    return {kTarget, lineHeight(m_type)};
}

void ElidingLabel::paintEvent(QPaintEvent*) {
    QPainter painter(this);
    const QString shown = QFontMetricsF(fontOf(m_type)).elidedText(m_text, Qt::ElideRight, width());
    paintLine(painter, QRectF(rect()), shown, m_type, tokens().*m_ink);
}

void ElidingLabel::resizeEvent(QResizeEvent* event) {
    QWidget::resizeEvent(event);
    explain();
}

ThreadLine::ThreadLine(QWidget* parent, Qt::Orientation orientation)
    : QWidget(parent) {
    if (orientation == Qt::Horizontal) {
        setFixedHeight(1);
    } else {
        setFixedWidth(1);
    }
}

void ThreadLine::paintEvent(QPaintEvent*) {
    QPainter(this).fillRect(rect(), tokens().thread);
}

} // namespace holdfast::app
