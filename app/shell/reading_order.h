// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
// Where Tab goes: through what takes it in the order in which the eye reads it. The order comes from the
// layouts each time, so that parts built later need not be put into a chain by hand.

#include <QVector>

class QWidget;

namespace holdfast::app {

// What takes Tab within `part`, visible and enabled, in reading order: the items of a layout in their order,
// a grid row by row, and widgets that no layout places by where they are.
QVector<QWidget*> tabStops(QWidget* part);

// Puts the keyboard on the next stop (or the one before) within `part`, after the last on the first again.
// Where the keyboard is nowhere in it, on its first (or last). False where there is none.
bool moveFocusWithin(QWidget* part, bool forward);

// Whether the person can type into it now.
bool canHaveKeyboard(const QWidget* widget);

} // namespace holdfast::app
