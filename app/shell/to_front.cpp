// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/shell/to_front.h"

#include <QWidget>

namespace holdfast::app {

void bringToFront(QWidget& window, const QString& activationToken) {
    if (!activationToken.isEmpty())
        qputenv("XDG_ACTIVATION_TOKEN", activationToken.toUtf8()); // Qt takes it from here
    window.setWindowState(window.windowState() & ~Qt::WindowMinimized);
    window.show();
    window.raise();
    window.activateWindow();
}

} // namespace holdfast::app
