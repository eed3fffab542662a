// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
// Text smaller than is usual, where Qt's scale factor cannot make it so: it draws windows whole only from 1
// on (Qt 6.4 clips what is in them twice below that).

#include <QtGlobal>

namespace holdfast::app {

// Of the usual size of all letters, at most 1. Before the first font is asked for.
void setTextShare(qreal share);
qreal textShare();

} // namespace holdfast::app
