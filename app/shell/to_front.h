// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
// Brings a window to the front of the desktop.

#include <QString>

class QWidget;

namespace holdfast::app {

// Wayland lets a window come to the front only with the token of the click or the start that asks for it;
// empty where there is none.
void bringToFront(QWidget& window, const QString& activationToken);

} // namespace holdfast::app
