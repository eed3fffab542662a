#include "app/slips/quiet_wait.h"

#include <QApplication>
#include <QKeyEvent>

namespace holdfast::app {

namespace {

constexpr int kBreath = 10; // milliseconds

} // namespace

QuietWait::QuietWait(QWidget* stop)
    : m_stop(stop) {
    qApp->installEventFilter(this);
}

QuietWait::~QuietWait() {
    qApp->removeEventFilter(this);
}

bool QuietWait::goesOn() {
    QCoreApplication::processEvents(QEventLoop::AllEvents, kBreath);
    return !m_shouldStop;
}

bool QuietWait::eventFilter(QObject* watched, QEvent* event) {
    // What comes to a window goes on to the widget it is meant for, and is judged there.
    const bool isElsewhere = watched->isWidgetType() && watched != m_stop;
    switch (event->type()) {
    case QEvent::KeyPress:
        if (static_cast<QKeyEvent*>(event)->key() == Qt::Key_Escape)
            m_shouldStop = true;
        return isElsewhere;
    case QEvent::MouseButtonPress:
    case QEvent::MouseButtonDblClick:
    case QEvent::Wheel:
    case QEvent::TouchBegin:
        return isElsewhere;
    case QEvent::Shortcut:
    case QEvent::Close:
        return true;
    case QEvent::Timer:
        // A window's own timer asks it to paint.
        return !watched->isWindowType();
    default:
        return false;
    }
}

} // namespace holdfast::app
