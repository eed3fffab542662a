// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/shell/keyboard_keeper.h"

#include "app/shell/reading_order.h"
#include "app/widgets/vertical_scroll.h"

#include <QApplication>
#include <QEvent>
#include <QPointer>
#include <QScopedValueRollback>
#include <QScrollArea>
#include <QTimer>
#include <QWidget>

namespace holdfast::app {

namespace {

constexpr int kAroundMiddle = 20;

void bringIntoView(QWidget* focused) {
    for (QWidget* above = focused->parentWidget(); above != nullptr; above = above->parentWidget())
        if (auto* area = qobject_cast<QScrollArea*>(above))
            showIn(*area, *focused);
    // Of what is larger than they are, each may show another part: the outer ones follow the inner one.
    if (!focused->visibleRegion().isEmpty())
        return;
    QRect seen = focused->rect();
    for (QWidget* above = focused->parentWidget(); above != nullptr; above = above->parentWidget())
        if (auto* area = qobject_cast<QScrollArea*>(above)) {
            const QPoint middle = focused->mapTo(area->widget(), seen.center());
            area->ensureVisible(middle.x(), middle.y(), 0, kAroundMiddle);
            seen &= QRect(focused->mapFrom(area->viewport(), QPoint()), area->viewport()->size());
        }
}

} // namespace

KeyboardKeeper::KeyboardKeeper(QWidget* whole, Room room)
    : QObject(whole)
    , m_whole(whole)
    , m_room(std::move(room)) {
    connect(qApp, &QApplication::focusChanged, this, [this](QWidget*, QWidget* now) { follow(now); });
    m_whole->window()->installEventFilter(this);
}

bool KeyboardKeeper::move(bool forward) {
    const QWidget* from = QApplication::focusWidget();
    if (from == nullptr || canHaveKeyboard(from)) {
        const QScopedValueRollback tabbing(m_isTabbing, true);
        return moveFocusWithin(m_whole, forward);
    }
    // Not Tab: what had the keyboard goes away. The first stop of the same part is a home for now.
    QWidget* part = partInUse();
    const bool isMoved = part != nullptr && moveFocusWithin(part, true);
    m_forcedTo = isMoved ? QApplication::focusWidget() : nullptr;
    settleSoon();
    return isMoved;
}

QWidget* KeyboardKeeper::partInUse() const {
    return canHaveKeyboard(m_part) ? m_part.data() : m_room.usualPart();
}

void KeyboardKeeper::settleSoon() {
    if (m_isSettling)
        return;
    m_isSettling = true;
    QTimer::singleShot(0, this, &KeyboardKeeper::settle);
}

void KeyboardKeeper::follow(QWidget* now) {
    if (!canHaveKeyboard(now)) {
        settleSoon();
        return;
    }
    if (!m_whole->isAncestorOf(now))
        return;
    bringIntoView(now);
    // Again once all is laid: where one scrolls within another, the inner one moves what the outer one
    // showed.
    QTimer::singleShot(0, this, [shown = QPointer<QWidget>(now)] {
        QCoreApplication::sendPostedEvents(nullptr, QEvent::LayoutRequest);
        if (shown && shown->hasFocus())
            bringIntoView(shown);
    });
    if (QWidget* part = m_room.partOf(now); part != nullptr)
        m_part = part;
    else if (m_isTabbing)
        m_tabbedTo = now;
    else if (now != m_tabbedTo)
        settleSoon();
}

bool KeyboardKeeper::isLost(const QWidget* focused) const {
    if (!canHaveKeyboard(focused) || focused == m_whole->window() || focused == m_forcedTo)
        return true;
    const bool isOnFrame = m_whole->isAncestorOf(focused) && m_room.partOf(focused) == nullptr;
    return isOnFrame && focused != m_tabbedTo;
}

void KeyboardKeeper::settle() {
    m_isSettling = false;
    const QWidget* focused = QApplication::focusWidget();
    const bool isHere = m_whole->isVisible() && m_whole->window()->isActiveWindow();
    if (isHere && isLost(focused))
        giveBack();
    m_forcedTo = nullptr;
}

// To where the part wants it, or else to its first stop, or to the part itself: its keys work from there.
void KeyboardKeeper::giveBack() {
    QWidget* part = partInUse();
    if (part == nullptr)
        return;
    m_room.giveBack(part);
    const QWidget* now = QApplication::focusWidget();
    const bool isTaken = canHaveKeyboard(now) && m_room.partOf(now) != nullptr;
    if (!isTaken && !moveFocusWithin(part, true))
        part->setFocus(Qt::OtherFocusReason);
}

bool KeyboardKeeper::eventFilter(QObject* watched, QEvent* event) {
    if (event->type() == QEvent::WindowActivate && QApplication::focusWidget() == nullptr)
        settleSoon();
    return QObject::eventFilter(watched, event);
}

} // namespace holdfast::app
