// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/widgets/stepper.h"

#include "app/theme/focus_ring.h"
#include "app/theme/icons.h"
#include "app/theme/measures.h"
#include "app/theme/stitch.h"
#include "app/theme/tokens.h"
#include "app/theme/type.h"

#include <QAccessible>
#include <QKeyEvent>
#include <QMouseEvent>
#include <QPainter>
#include <QTimerEvent>

#include <algorithm>

namespace holdfast::app {

namespace {

constexpr int kFirstRepeat = 400; // milliseconds that a key of the stepper is held before it repeats
constexpr int kNextRepeat = 80;

} // namespace

Stepper::Stepper(const QString& accessibleName, QWidget* parent)
    : QWidget(parent)
    , m_name(accessibleName) {
    setFocusPolicy(Qt::StrongFocus);
    setMouseTracking(true);
    setSizePolicy(QSizePolicy::Fixed, QSizePolicy::Fixed);
    giveFocusRing(this);
    say();
}

void Stepper::setValue(int value) {
    m_value = std::clamp(value, m_lowest, m_highest);
    say();
    update();
}

void Stepper::setRange(int lowest, int highest) {
    m_lowest = lowest;
    m_highest = std::max(lowest, highest);
    setValue(m_value);
}

void Stepper::setStep(int step) {
    m_step = std::max(1, step);
}

void Stepper::setSuffix(const QString& suffix) {
    m_suffix = suffix;
    say();
    updateGeometry();
    update();
}

void Stepper::setValueWidth(int width) {
    m_valueWidth = width;
    updateGeometry();
    update();
}

QSize Stepper::sizeHint() const {
    const QString widest = QString::number(m_highest) + m_suffix;
    const int words = static_cast<int>(widthOf(widest, Type::BodyStrong)) + kSpace12;
    return {2 * m_target + std::max(m_valueWidth, m_suffix.isEmpty() ? 0 : words), m_target};
}

void Stepper::setTargetHeight(int height) {
    m_target = height;
    updateGeometry();
}

void Stepper::say() {
    setAccessibleName(QStringLiteral("%1, %2%3").arg(m_name).arg(m_value).arg(m_suffix));
}

QRect Stepper::partRect(Part part) const {
    switch (part) {
    case Part::Less:
        return {0, 0, m_target, m_target};
    case Part::More:
        return {width() - m_target, 0, m_target, m_target};
    case Part::None:
        break;
    }
    return {};
}

Stepper::Part Stepper::partAt(QPoint at) const {
    if (partRect(Part::Less).contains(at)) {
        return Part::Less;
    }
    return partRect(Part::More).contains(at) ? Part::More : Part::None;
}

void Stepper::step(int by) {
    m_isTyping = false;
    tell(m_value + by);
}

void Stepper::tell(int value) {
    const int kept = std::clamp(value, m_lowest, m_highest);
    if (kept == m_value) {
        return;
    }
    setValue(kept);
    QAccessibleValueChangeEvent change(this, kept);
    QAccessible::updateAccessibility(&change);
    emit stepped(kept);
}

void Stepper::paintEvent(QPaintEvent*) {
    QPainter painter(this);
    const Tokens& dyes = tokens();
    for (const Part part : {Part::Less, Part::More}) {
        const bool can = isEnabled() && (part == Part::Less ? m_value > m_lowest : m_value < m_highest);
        const QRectF box(partRect(part));
        QColor ground = dyes.card;
        if (can && m_pressed == part) {
            ground = dyes.woad;
        } else if (can && m_hovered == part) {
            ground = dyes.sunk;
        }
        paintBox(painter, box, kButtonRadius, ground, dyes.edge, 1.2, !can);
        paintIcon(painter, box.adjusted(10, 10, -10, -10),
                  part == Part::Less ? QStringLiteral("minus") : QStringLiteral("plus"),
                  can ? dyes.ink : dyes.ink3);
    }
    const QRectF middle(m_target, 0, width() - 2 * m_target, m_target);
    paintLine(painter, middle, QString::number(m_value) + m_suffix, Type::BodyStrong,
              isEnabled() ? dyes.ink : dyes.ink3, Qt::AlignHCenter);
}

void Stepper::mousePressEvent(QMouseEvent* event) {
    if (event->button() != Qt::LeftButton) {
        return;
    }
    m_pressed = partAt(event->position().toPoint());
    if (m_pressed != Part::None) {
        step(m_pressed == Part::Less ? -m_step : m_step);
        m_repeatTimer = startTimer(kFirstRepeat);
    }
    update();
}

void Stepper::mouseReleaseEvent(QMouseEvent*) {
    if (m_repeatTimer != 0) {
        killTimer(m_repeatTimer);
        m_repeatTimer = 0;
    }
    m_pressed = Part::None;
    update();
}

void Stepper::mouseMoveEvent(QMouseEvent* event) {
    const Part under = partAt(event->position().toPoint());
    if (under != m_hovered) {
        m_hovered = under;
        update();
    }
}

void Stepper::leaveEvent(QEvent* event) {
    QWidget::leaveEvent(event);
    m_hovered = Part::None;
    update();
}

void Stepper::timerEvent(QTimerEvent* event) {
    if (event->timerId() != m_repeatTimer) {
        QWidget::timerEvent(event);
        return;
    }
    killTimer(m_repeatTimer);
    m_repeatTimer = startTimer(kNextRepeat);
    step(m_pressed == Part::Less ? -m_step : m_step);
}

void Stepper::wheelEvent(QWheelEvent* event) {
    // Only where the keyboard is: a list that scrolls under the pointer must not change numbers.
    if (!hasFocus()) {
        event->ignore();
        return;
    }
    step(event->angleDelta().y() > 0 ? m_step : -m_step);
}

void Stepper::keyPressEvent(QKeyEvent* event) {
    const int key = event->key();
    if (event->modifiers() & (Qt::ControlModifier | Qt::AltModifier | Qt::MetaModifier)) {
        event->ignore();
        return;
    }
    switch (key) {
    case Qt::Key_Up:
    case Qt::Key_Right:
    case Qt::Key_Plus:
        step(m_step);
        return;
    case Qt::Key_Down:
    case Qt::Key_Left:
    case Qt::Key_Minus:
        step(-m_step);
        return;
    case Qt::Key_PageUp:
        step(10 * m_step);
        return;
    case Qt::Key_PageDown:
        step(-10 * m_step);
        return;
    case Qt::Key_Home:
        step(m_lowest - m_value);
        return;
    case Qt::Key_End:
        step(m_highest - m_value);
        return;
    case Qt::Key_Backspace:
        m_isTyping = true;
        tell(m_value / 10);
        return;
    default:
        break;
    }
    if (key >= Qt::Key_0 && key <= Qt::Key_9) {
        const int digit = key - Qt::Key_0;
        // The first digit starts a number, the next ones go behind it, as long as the number is allowed.
        const bool goesBehind = m_isTyping && m_value <= (m_highest - digit) / 10;
        tell(goesBehind ? m_value * 10 + digit : digit);
        m_isTyping = true;
        return;
    }
    event->ignore();
}

void Stepper::focusOutEvent(QFocusEvent* event) {
    m_isTyping = false;
    QWidget::focusOutEvent(event);
}

} // namespace holdfast::app
