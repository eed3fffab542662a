// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/widgets/switch.h"

#include "app/theme/focus_ring.h"
#include "app/theme/measures.h"
#include "app/theme/stitch.h"
#include "app/theme/tokens.h"
#include "app/theme/type.h"

#include <QKeyEvent>
#include <QPainter>

#include <algorithm>
#include <cmath>

namespace holdfast::app {

namespace {

constexpr int kPillWidth = 44;
constexpr int kPillHeight = 26;
constexpr int kKnob = 20;
constexpr int kLeastWords = 220; // of a longer text that much is seen at least

} // namespace

Switch::Switch(const QString& accessibleName, QWidget* parent)
    : QCheckBox(parent) {
    setAccessibleName(accessibleName);
    setCursor(Qt::PointingHandCursor);
    setAttribute(Qt::WA_Hover);
    setSizePolicy(QSizePolicy::Fixed, QSizePolicy::Fixed);
    giveFocusRing(this, nullptr, kPillHeight / 2);
}

QSize Switch::sizeHint() const {
    const int words =
        text().isEmpty() ? 0 : static_cast<int>(std::ceil(widthOf(text(), Type::Body))) + kSpace12;
    return {words + kPillWidth, kPillHeight};
}

// A name may be longer than any window.
QSize Switch::minimumSizeHint() const {
    return {std::min(sizeHint().width(), kPillWidth + kLeastWords), kPillHeight};
}

bool Switch::hitButton(const QPoint& at) const {
    return rect().contains(at);
}

void Switch::paintEvent(QPaintEvent*) {
    QPainter painter(this);
    const Tokens& dyes = tokens();
    const QRectF pill(width() - kPillWidth, (height() - kPillHeight) / 2.0, kPillWidth, kPillHeight);
    if (!text().isEmpty()) {
        const QRectF room(0, 0, pill.left() - kSpace12, height());
        paintLine(painter, room, fitted(text(), Type::Body, room.width()), Type::Body,
                  isEnabled() ? dyes.ink : dyes.ink3);
    }
    const qreal in = (kPillHeight - kKnob) / 2.0;
    const QRectF knob(isChecked() ? pill.right() - in - kKnob : pill.left() + in, pill.top() + in, kKnob,
                      kKnob);
    if (!isEnabled()) {
        paintBox(painter, pill, kPillHeight / 2.0, dyes.sunk, dyes.edge, 1.2, true);
        paintBox(painter, knob, kKnob / 2.0, dyes.ink3, {});
    } else if (isChecked()) {
        paintBox(painter, pill, kPillHeight / 2.0, underMouse() ? dyes.indigoDeep : dyes.indigo, {});
        paintBox(painter, knob, kKnob / 2.0, dyes.onIndigo, {});
    } else {
        paintBox(painter, pill, kPillHeight / 2.0, underMouse() ? dyes.sunk : dyes.card, dyes.edge, 1.4);
        paintBox(painter, knob.adjusted(2, 2, -2, -2), kKnob / 2.0, dyes.edge, {});
    }
}

void Switch::keyPressEvent(QKeyEvent* event) {
    if (event->key() == Qt::Key_Return || event->key() == Qt::Key_Enter) {
        click();
        return;
    }
    QCheckBox::keyPressEvent(event);
}

} // namespace holdfast::app
