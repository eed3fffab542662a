// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
// A finger pushes whatever scrolls: a place, a list, a form. It is there for every window and every widget,
// those of later too, and reads the mouse events that Qt makes of a touch.
//
// The press waits until it is known what the finger does. Where it is lifted without having moved, press and
// release follow each other, and it is a click like any other. Where it moves, the nearest part that can
// scroll that way does, and no row or button below is pressed. On text a finger that moves along the line
// marks it. What can be dragged itself says so as Draggable.

#include <QObject>
#include <QPoint>
#include <QPointer>
#include <QTimer>

#include <memory>
#include <vector>

class QAbstractScrollArea;
class QMouseEvent;
class QScroller;
class QWidget;
class QWindow;

namespace holdfast::app {

// What a hand can take hold of and drag: there a finger does not scroll.
class Draggable {
public:
    virtual ~Draggable() = default;
    virtual bool isGrippedAt(const QPoint& onScreen) const = 0;
};

class FingerScroll : public QObject {
    Q_OBJECT

public:
    ~FingerScroll() override;
    static void install();
    bool eventFilter(QObject* watched, QEvent* event) override;

private:
    // What the finger does.
    enum class State {
        Idle,      // nothing that concerns us
        Waiting,   // it is down, and has not moved yet
        Pressing,  // it has not moved, and the button below it is down
        Scrolling, // it pushes
        Spent,     // it moved where nothing scrolls: nothing comes of it
    };

    FingerScroll();
    bool press(QWindow* window, const QMouseEvent& event);
    bool waitOn(const QMouseEvent& event);
    bool move(const QMouseEvent& event);
    bool release(const QMouseEvent& event);
    void collectAreas(QWidget* touched);
    QAbstractScrollArea* areaThatMoves(const QPoint& by) const;
    void push(const QMouseEvent& event);
    void deliver();
    void endTouch();

    State m_state = State::Idle;
    bool m_isDelivering = false;
    bool m_isText = false;
    bool m_hasStopped = false; // what went on scrolling by itself: without a move, that is all it did
    QPoint m_from;             // on the screen
    QPointer<QWindow> m_window;
    QPointer<QWidget> m_touched;
    QPointer<QWidget> m_pushed;                          // the viewport that scrolls
    std::vector<QPointer<QAbstractScrollArea>> m_areas;  // the nearest first
    std::vector<std::unique_ptr<QMouseEvent>> m_waiting; // the press, and the double click that it is
    QTimer m_restsStill;
};

} // namespace holdfast::app
