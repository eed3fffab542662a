// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/slips/quiet_wait.h"

#include <QApplication>
#include <QKeyEvent>

namespace holdfast::app {

QuietWait::QuietWait(QWidget* stop)
    : m_stop(stop) {
    qApp->installEventFilter(this);
}

QuietWait::~QuietWait() {
    qApp->removeEventFilter(this);
}

bool QuietWait::eventFilter(QObject* watched, QEvent* event) {
    // What comes to a window goes on to the widget it is meant for, and is judged there.
    const bool isElsewhere = watched->isWidgetType() && watched != m_stop;
    switch (event->type()) {
    case QEvent::KeyPress:
        if (static_cast<QKeyEvent*>(event)->key() == Qt::Key_Escape)
            emit stopAsked();
        return isElsewhere;
    case QEvent::MouseButtonPress:
    case QEvent::MouseButtonDblClick:
    case QEvent::Wheel:
    case QEvent::TouchBegin:
        return isElsewhere;
    case QEvent::Shortcut:
    case QEvent::Close:
        return true;
    default:
        return false;
    }
}

} // namespace holdfast::app
