// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/widgets/stepper.h"

#include "app/theme/focus_ring.h"
#include "app/theme/measures.h"
#include "app/theme/stitch.h"
#include "app/theme/tokens.h"
#include "app/theme/type.h"

#include <QKeyEvent>
#include <QLineEdit>
#include <QPainter>
#include <QSignalBlocker>
#include <QStyleOptionSpinBox>

#include <algorithm>

namespace holdfast::app {

Stepper::Stepper(const QString& accessibleName, QWidget* parent)
    : QSpinBox(parent)
    , m_name(accessibleName) {
    setFocusPolicy(Qt::StrongFocus);
    setSizePolicy(QSizePolicy::Fixed, QSizePolicy::Fixed);
    setButtonSymbols(PlusMinus);
    setAttribute(Qt::WA_InputMethodEnabled, false);
    lineEdit()->hide();
    giveFocusRing(this);
    connect(this, &QSpinBox::valueChanged, this, [this](int value) {
        say();
        emit stepped(value);
    });
    say();
}

void Stepper::setValue(int value) {
    const QSignalBlocker quiet(this);
    QSpinBox::setValue(value);
    say();
}

void Stepper::setRange(int lowest, int highest) {
    const QSignalBlocker quiet(this);
    QSpinBox::setRange(lowest, std::max(lowest, highest));
    say();
}

void Stepper::setSuffix(const QString& suffix) {
    QSpinBox::setSuffix(suffix);
    say();
    updateGeometry();
}

void Stepper::setValueWidth(int width) {
    m_valueWidth = width;
    updateGeometry();
}

void Stepper::setTargetHeight(int height) {
    m_target = height;
    updateGeometry();
}

QSize Stepper::sizeHint() const {
    const QString widest = QString::number(maximum()) + suffix();
    const int words = static_cast<int>(widthOf(widest, Type::BodyStrong)) + kSpace12;
    return {2 * m_target + std::max(m_valueWidth, suffix().isEmpty() ? 0 : words), m_target};
}

void Stepper::say() {
    setAccessibleName(QStringLiteral("%1, %2%3").arg(m_name).arg(value()).arg(suffix()));
}

void Stepper::stepBy(int steps) {
    m_isTyping = false;
    QSpinBox::stepBy(steps);
}

// The line inside would keep letters from the place's shortcuts.
bool Stepper::event(QEvent* event) {
    // NOLINTNEXTLINE(bugprone-parent-virtual-call): passed over on purpose
    return event->type() == QEvent::ShortcutOverride ? QWidget::event(event) : QSpinBox::event(event);
}

void Stepper::paintEvent(QPaintEvent*) {
    QPainter painter(this);
    QStyleOptionSpinBox option;
    initStyleOption(&option);
    style()->drawComplexControl(QStyle::CC_SpinBox, &option, &painter, this);
    const QRect number =
        style()->subControlRect(QStyle::CC_SpinBox, &option, QStyle::SC_SpinBoxEditField, this);
    paintLine(painter, number, QString::number(value()) + suffix(), Type::BodyStrong,
              isEnabled() ? tokens().ink : tokens().ink3, Qt::AlignHCenter);
}

void Stepper::wheelEvent(QWheelEvent* event) {
    // Only where the keyboard is: a list that scrolls under the pointer must not change numbers.
    if (hasFocus())
        QSpinBox::wheelEvent(event);
    else
        event->ignore();
}

void Stepper::keyPressEvent(QKeyEvent* event) {
    const int key = event->key();
    if (event->modifiers() & (Qt::ControlModifier | Qt::AltModifier | Qt::MetaModifier))
        event->ignore();
    else if (key >= Qt::Key_0 && key <= Qt::Key_9)
        type(key - Qt::Key_0);
    else if (!stepOrGo(key))
        event->ignore();
}

bool Stepper::stepOrGo(int key) {
    constexpr int kPage = 10; // steps
    switch (key) {
    case Qt::Key_Up:
    case Qt::Key_Right:
    case Qt::Key_Plus:
        stepBy(1);
        return true;
    case Qt::Key_Down:
    case Qt::Key_Left:
    case Qt::Key_Minus:
        stepBy(-1);
        return true;
    case Qt::Key_PageUp:
        stepBy(kPage);
        return true;
    case Qt::Key_PageDown:
        stepBy(-kPage);
        return true;
    case Qt::Key_Home:
    case Qt::Key_End:
        m_isTyping = false;
        QSpinBox::setValue(key == Qt::Key_Home ? minimum() : maximum());
        return true;
    case Qt::Key_Backspace:
        m_isTyping = true;
        QSpinBox::setValue(value() / 10);
        return true;
    default:
        return false;
    }
}

// The first digit starts a number, the next ones are added to it as long as the number is allowed.
void Stepper::type(int digit) {
    const bool goesOn = m_isTyping && value() <= (maximum() - digit) / 10;
    QSpinBox::setValue(goesOn ? value() * 10 + digit : digit);
    m_isTyping = true;
}

void Stepper::focusOutEvent(QFocusEvent* event) {
    m_isTyping = false;
    QSpinBox::focusOutEvent(event);
}

} // namespace holdfast::app
