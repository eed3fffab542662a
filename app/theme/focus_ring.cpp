// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/theme/focus_ring.h"

#include "app/theme/stitch.h"

#include <QAbstractItemView>
#include <QAbstractSpinBox>
#include <QApplication>
#include <QCheckBox>
#include <QComboBox>
#include <QLineEdit>
#include <QPainter>
#include <QPlainTextEdit>
#include <QPointer>
#include <QPushButton>
#include <QTextEdit>
#include <QVariant>

namespace holdfast::app {

namespace {

// What the ring knows about a widget, kept on the widget itself.
constexpr const char* kFramedProperty = "holdfastRingFramed";
constexpr const char* kRadiusProperty = "holdfastRingRadius";
constexpr int kNoRing = -1;

struct Framing {
    QWidget* framed = nullptr;
    int radius = kNoRing;
};

Framing framingOf(QWidget* focusable) {
    if (focusable == nullptr) {
        return {};
    }
    const QVariant radius = focusable->property(kRadiusProperty);
    if (radius.isValid()) {
        const QVariant framed = focusable->property(kFramedProperty);
        QWidget* widget = framed.isValid() ? framed.value<QPointer<QWidget>>().data() : nullptr;
        return {widget != nullptr ? widget : focusable, radius.toInt()};
    }
    if (qobject_cast<QAbstractItemView*>(focusable) != nullptr) {
        return {};
    }
    const bool isPlainControl =
        qobject_cast<QComboBox*>(focusable) != nullptr ||
        qobject_cast<QAbstractSpinBox*>(focusable) != nullptr ||
        qobject_cast<QCheckBox*>(focusable) != nullptr || qobject_cast<QPushButton*>(focusable) != nullptr ||
        qobject_cast<QPlainTextEdit*>(focusable) != nullptr || qobject_cast<QTextEdit*>(focusable) != nullptr;
    if (isPlainControl) {
        return {focusable, kButtonRadius};
    }
    if (auto* line = qobject_cast<QLineEdit*>(focusable)) {
        // A line inside a spin box or an editable combo box is framed by its owner; a bare one in a cell by
        // nothing.
        auto* owner = line->parentWidget();
        if (qobject_cast<QComboBox*>(owner) != nullptr || qobject_cast<QAbstractSpinBox*>(owner) != nullptr) {
            return {owner, kButtonRadius};
        }
        return line->hasFrame() ? Framing{line, kButtonRadius} : Framing{};
    }
    return {};
}

} // namespace

void giveFocusRing(QWidget* focusable, QWidget* framed, int radius) {
    focusable->setProperty(kRadiusProperty, radius);
    if (framed != nullptr) {
        focusable->setProperty(kFramedProperty, QVariant::fromValue(QPointer<QWidget>(framed)));
    }
}

void giveNoFocusRing(QWidget* focusable) {
    focusable->setProperty(kRadiusProperty, kNoRing);
}

void FocusRing::install() {
    static QPointer<FocusRing> ring;
    QObject::connect(qApp, &QApplication::focusChanged, qApp, [](QWidget*, QWidget* now) {
        const Framing framing = framingOf(now);
        const bool hasRing = framing.framed != nullptr && framing.radius >= 0;
        if (ring.isNull() && hasRing) {
            ring = new FocusRing;
        }
        if (ring.isNull()) {
            return;
        }
        ring->m_radius = framing.radius;
        ring->setWidget(hasRing ? framing.framed : nullptr);
    });
}

FocusRing::FocusRing() {
    setObjectName(QStringLiteral("focusRing"));
}

void FocusRing::paintEvent(QPaintEvent*) {
    QPainter painter(this);
    paintFocusRing(painter, QRectF(rect()).adjusted(kFocusRoom, kFocusRoom, -kFocusRoom, -kFocusRoom),
                   m_radius);
}

} // namespace holdfast::app
