// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/widgets/fact_block.h"

#include <QPainter>

#include <algorithm>
#include <cmath>

namespace holdfast::app {

FactBlock::FactBlock(const QString& label, QWidget* parent)
    : QWidget(parent)
    , m_label(label) {
    setSizePolicy(QSizePolicy::Preferred, QSizePolicy::Fixed);
    say();
}

void FactBlock::set(const QString& value, const QString& note, Role ink) {
    m_value = value;
    m_note = note;
    m_ink = ink;
    say();
}

void FactBlock::setLabel(const QString& label) {
    m_label = label;
    say();
}

void FactBlock::setValueType(Type type) {
    m_valueType = type;
    say();
}

QStringList FactBlock::notes() const {
    return m_note.split(QLatin1Char('\n'), Qt::SkipEmptyParts);
}

void FactBlock::say() {
    setAccessibleName(m_label + QStringLiteral(": ") + m_value);
    setAccessibleDescription(m_note);
    updateGeometry();
    update();
}

QSize FactBlock::sizeHint() const {
    qreal wide = std::max(widthOf(m_label, Type::Small), widthOf(m_value, m_valueType));
    int high = lineHeight(Type::Small) + lineHeight(m_valueType);
    for (const QString& line : notes()) {
        wide = std::max(wide, widthOf(line, Type::Small));
        high += lineHeight(Type::Small);
    }
    return {static_cast<int>(std::ceil(wide)), high};
}

void FactBlock::paintEvent(QPaintEvent*) {
    QPainter painter(this);
    const Tokens& dyes = tokens();
    QRectF line(0, 0, width(), lineHeight(Type::Small));
    paintLine(painter, line, m_label, Type::Small, dyes.ink2);
    line = QRectF(0, line.bottom(), width(), lineHeight(m_valueType));
    paintLine(painter, line, m_value, m_valueType, dyes.*m_ink);
    for (const QString& note : notes()) {
        line = QRectF(0, line.bottom(), width(), lineHeight(Type::Small));
        paintLine(painter, line, note, Type::Small, dyes.ink2);
    }
}

} // namespace holdfast::app
