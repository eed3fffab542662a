// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
// A finger on a touch screen of the tests: it taps, and it drags as fast as a hand does.

#include <QApplication>
#include <QPointingDevice>
#include <QTest>
#include <QWidget>

namespace holdfast::app::test {

inline QPointingDevice* touchScreen() {
    static QPointingDevice* screen = QTest::createTouchDevice();
    return screen;
}

inline void settleTouch() {
    QApplication::processEvents();
    QApplication::sendPostedEvents();
}

// A finger that is down. It keeps to the window: what it is on moves away under it.
class Finger {
public:
    Finger(QWidget* on, const QPoint& at)
        : m_window(on->window())
        , m_at(on->mapTo(m_window, at)) {
        QTest::touchEvent(m_window, touchScreen()).press(0, m_at, m_window);
        settleTouch();
    }
    void move(const QPoint& by) {
        m_at += by;
        QTest::touchEvent(m_window, touchScreen()).move(0, m_at, m_window);
        settleTouch();
    }
    // In small steps, as a hand does, with the time that it takes.
    void drag(const QPoint& by) {
        constexpr int kParts = 8;
        QPoint gone;
        for (int part = 1; part <= kParts; ++part) {
            QTest::qWait(8);
            const QPoint whole = by * part / kParts;
            move(whole - gone);
            gone = whole;
        }
    }
    void rest() {
        for (int part = 0; part < 4; ++part) {
            QTest::qWait(8);
            move({0, 0});
        }
    }
    void lift() {
        QTest::touchEvent(m_window, touchScreen()).release(0, m_at, m_window);
        settleTouch();
    }

private:
    QWidget* m_window;
    QPoint m_at;
};

inline void tap(QWidget* on, const QPoint& at) {
    Finger(on, at).lift();
}

// It rests before it is lifted, so that nothing goes on by itself after it.
inline void dragFinger(QWidget* on, const QPoint& from, const QPoint& by) {
    Finger finger(on, from);
    finger.drag(by);
    finger.rest();
    finger.lift();
}

} // namespace holdfast::app::test
