// SPDX-License-Identifier: GPL-3.0-or-later
// The keys of Press walk. They work from anywhere in the place, whatever has the keyboard.
#include "app/places/press_walk/press_walk_place.h"

#include "app/places/press_walk/aside_list.h"
#include "app/places/press_walk/day_strip.h"
#include "app/widgets/button.h"
#include "app/widgets/empty_state.h"

#include <QKeyEvent>
#include <QListView>
#include <QStackedWidget>

namespace holdfast::app {

QVector<PlaceKey> PressWalkPlace::moreKeys() const {
    return {{tr("1 to 9"),
             tr("Take the garment of that number from the rack; hold the key while it is still cooling")},
            {tr("← →"), tr("To the walk, to Next, to what is aside")},
            {tr("Enter"), tr("In the walk: pick up the chosen garment; aside: do what it needs")},
            {tr("a number"), tr("In the walk: find the garment")},
            {tr("F"), tr("Do what the chosen garment aside needs")},
            {tr("W"), tr("Let the chosen garment aside through, with a reason")},
            {tr("T"), tr("To what is promised today and is aside")},
            {tr("C"), tr("Count again, where the clock was set back")},
            {tr("G"), tr("Go on with a garment that was under heat too long")},
            {tr("X"), tr("Mark the garment in hand as spoiled")},
            {tr("R"), tr("Put a garment that is held back on the walk")}};
}

bool PressWalkPlace::eventFilter(QObject* watched, QEvent* event) {
    if (event->type() != QEvent::KeyPress && event->type() != QEvent::KeyRelease)
        return Place::eventFilter(watched, event);
    auto* focus = qobject_cast<QWidget*>(watched);
    if (!focus || (focus != this && !isAncestorOf(focus)) || m_pages->currentWidget() == m_emptyPage)
        return Place::eventFilter(watched, event);
    const auto& key = static_cast<const QKeyEvent&>(*event);
    const bool isTaken = event->type() == QEvent::KeyPress ? takeKeyPress(key, focus) : takeKeyRelease(key);
    return isTaken || Place::eventFilter(watched, event);
}

bool PressWalkPlace::takeKeyPress(const QKeyEvent& event, QWidget* focus) {
    if ((event.modifiers() & ~Qt::KeypadModifier) != Qt::NoModifier)
        return false;
    const int key = event.key();
    // What is typed into the walk finds a garment by its number.
    const bool isSought = focus == m_list && key > Qt::Key_Space && key < Qt::Key_Escape;
    if (isSought)
        return false;
    if (key == Qt::Key_Space) {
        // A key that is held repeats: only its first press counts. On a busy machine a repeat may come as a
        // release and a press of the same moment, which no finger can do.
        if (event.isAutoRepeat() || (m_spaceReleased != 0 && event.timestamp() == m_spaceReleased))
            return true;
        if (mustBeHeld() && !isStopped()) {
            hold([this] { nextNow(); }, {});
            noteWhileCounting(tr("Still counting. Hold Space for a second to end it now."));
        } else {
            next();
        }
        return true;
    }
    if (key >= Qt::Key_1 && key <= Qt::Key_9) {
        if (!event.isAutoRepeat())
            turnToRackRow(key - Qt::Key_1);
        return true;
    }
    if (key == Qt::Key_Escape && m_isHoldOffered) {
        m_goOn->click();
        return true;
    }
    return takeArrow(key, focus) || (!event.isAutoRepeat() && takeLetter(key));
}

bool PressWalkPlace::takeKeyRelease(const QKeyEvent& event) {
    const bool isHeldKey =
        event.key() == Qt::Key_Space || (event.key() >= Qt::Key_1 && event.key() <= Qt::Key_9);
    if (!isHeldKey)
        return false;
    if (event.key() == Qt::Key_Space)
        m_spaceReleased = event.timestamp();
    if (!event.isAutoRepeat()) {
        release();
        m_heldIsDone = false;
    }
    return true;
}

bool PressWalkPlace::takeLetter(int key) {
    switch (key) {
    case Qt::Key_B:
        backAStep();
        return true;
    case Qt::Key_H:
        offerHold();
        return true;
    case Qt::Key_P:
        setPaused(!m_isPaused);
        return true;
    case Qt::Key_X:
        askSpoil();
        return true;
    case Qt::Key_G:
        pressedOn();
        return true;
    case Qt::Key_R:
        if (isTooLong())
            putBack();
        else if (m_isHoldOffered)
            backOnTheWalk();
        return true;
    case Qt::Key_C:
        countAgain();
        return true;
    case Qt::Key_T:
        turnToPromised();
        return true;
    case Qt::Key_D:
        printDaySheet();
        return true;
    case Qt::Key_F:
        freeCurrent();
        return true;
    case Qt::Key_W:
        waiveCurrent();
        return true;
    case Qt::Key_S:
        toggleStrip();
        return true;
    default:
        return false;
    }
}

// Between the columns: left to the walk, right to what is aside, and back to Next between them.
bool PressWalkPlace::takeArrow(int key, QWidget* focus) {
    const bool isInWalk = focus == m_list;
    const bool isInAside = focus == m_aside || focus == m_rack;
    QWidget* target = nullptr;
    switch (key) {
    case Qt::Key_Left:
        if (isInWalk)
            return true;
        target = isInAside ? static_cast<QWidget*>(m_next) : static_cast<QWidget*>(m_list);
        break;
    case Qt::Key_Right:
        if (isInAside)
            return true;
        target = isInWalk ? static_cast<QWidget*>(m_next) : static_cast<QWidget*>(m_aside);
        break;
    case Qt::Key_Up:
    case Qt::Key_Down:
        if (focus != m_next)
            return false;
        target = m_list;
        break;
    default:
        return false;
    }
    if (target == m_list || target == m_aside)
        showSide(target == m_list ? Side::Walk : Side::Aside);
    target->setFocus();
    if (target == m_list && !m_model.garmentAt(m_list->currentIndex()))
        if (const auto shown = shownGarment())
            m_list->setCurrentIndex(m_model.indexOf(*shown));
    return true;
}

void PressWalkPlace::hold(std::function<void()> act, const QString& words) {
    m_heldAct = std::move(act);
    m_heldIsDone = false;
    m_held.start();
    if (!words.isEmpty())
        note(words);
}

void PressWalkPlace::release() {
    m_held.stop();
    m_heldAct = {};
}

} // namespace holdfast::app
