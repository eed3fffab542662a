// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/theme/focus_ring.h"

#include "app/theme/stitch.h"

#include <QAbstractItemView>
#include <QAbstractScrollArea>
#include <QAbstractSpinBox>
#include <QApplication>
#include <QCheckBox>
#include <QComboBox>
#include <QEvent>
#include <QLineEdit>
#include <QPainter>
#include <QPlainTextEdit>
#include <QPushButton>
#include <QTextEdit>
#include <QVariant>

namespace holdfast::app {

namespace {

// What the ring is told about a widget, kept on the widget itself.
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

// The widget the ring is a child of: the nearest scrolling viewport, so that it scrolls and clips along, or
// the window.
QWidget* groundOf(QWidget* framed) {
    QWidget* at = framed->parentWidget();
    while (at != nullptr && !at->isWindow()) {
        auto* area = qobject_cast<QAbstractScrollArea*>(at->parentWidget());
        if (area != nullptr && area->viewport() == at) {
            return at;
        }
        at = at->parentWidget();
    }
    return at;
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
        QWidget* ground =
            framing.framed != nullptr && framing.radius >= 0 ? groundOf(framing.framed) : nullptr;
        if (ground == nullptr) {
            if (!ring.isNull()) {
                ring->follow(nullptr, 0);
            }
            return;
        }
        if (ring.isNull()) {
            ring = new FocusRing(ground);
        } else if (ring->parentWidget() != ground) {
            ring->setParent(ground);
        }
        ring->follow(framing.framed, framing.radius);
    });
}

FocusRing::FocusRing(QWidget* parent)
    : QWidget(parent) {
    setAttribute(Qt::WA_TransparentForMouseEvents);
    setAttribute(Qt::WA_NoSystemBackground);
    setFocusPolicy(Qt::NoFocus);
    setObjectName(QStringLiteral("focusRing"));
}

void FocusRing::follow(QWidget* framed, int radius) {
    for (QWidget* at = m_framed; at != nullptr; at = at->parentWidget()) {
        at->removeEventFilter(this);
    }
    m_framed = framed;
    m_radius = radius;
    // Whatever lies between the framed widget and the ground moves the ring when it moves.
    for (QWidget* at = framed; at != nullptr && at != parentWidget(); at = at->parentWidget()) {
        at->installEventFilter(this);
    }
    place();
}

void FocusRing::place() {
    if (m_framed.isNull() || parentWidget() == nullptr || !m_framed->isVisibleTo(parentWidget()) ||
        !parentWidget()->isAncestorOf(m_framed)) {
        hide();
        return;
    }
    const QRect framed(m_framed->mapTo(parentWidget(), QPoint(0, 0)), m_framed->size());
    setGeometry(framed.adjusted(-kFocusRoom, -kFocusRoom, kFocusRoom, kFocusRoom));
    raise();
    show();
    update();
}

bool FocusRing::eventFilter(QObject* watched, QEvent* event) {
    switch (event->type()) {
    case QEvent::Move:
    case QEvent::Resize:
    case QEvent::Show:
    case QEvent::Hide:
    case QEvent::ZOrderChange:
    case QEvent::ParentChange:
        place();
        break;
    default:
        break;
    }
    return QWidget::eventFilter(watched, event);
}

void FocusRing::paintEvent(QPaintEvent*) {
    QPainter painter(this);
    paintFocusRing(painter, QRectF(rect()).adjusted(kFocusRoom, kFocusRoom, -kFocusRoom, -kFocusRoom),
                   m_radius);
}

} // namespace holdfast::app
