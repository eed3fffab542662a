#pragma once
// While one long action writes to the shop on the interface thread: lets the window be painted between its
// steps and hears nothing but Stop. Keys and clicks elsewhere are dropped and timers wait, because an action
// may not begin inside another.

#include <QObject>
#include <QWidget>

namespace holdfast::app {

class QuietWait : public QObject {
    Q_OBJECT

public:
    // `stop` is the one widget that can be pressed; Escape counts as well.
    explicit QuietWait(QWidget* stop);
    ~QuietWait() override;

    // One breath between two steps; false once the person wants to stop.
    bool goesOn();
    void askToStop() { m_shouldStop = true; }

    bool eventFilter(QObject* watched, QEvent* event) override;

private:
    QWidget* m_stop;
    bool m_shouldStop = false;
};

} // namespace holdfast::app
