// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
// The ring around whatever has the keyboard: 3 px indigo, 2 px away. It is Qt's focus frame, a transparent
// child of the window (or of the scroll area's viewport) that lies above the focused widget and follows it,
// so that a widget's own rectangle is what layouts see. Leave kFocusRoom (5 px) free around what can be
// focused.

#include "app/theme/measures.h"

#include <QFocusFrame>

namespace holdfast::app {

// Gives `focusable` a ring; around `framed` (itself when null), whose corners have `radius`. Plain line
// edits, combo boxes, spin boxes and check boxes get theirs from the style.
void giveFocusRing(QWidget* focusable, QWidget* framed = nullptr, int radius = kButtonRadius);

// No ring for `focusable`: item views, and widgets that paint their own with paintFocusRing.
void giveNoFocusRing(QWidget* focusable);

class FocusRing : public QFocusFrame {
    Q_OBJECT

public:
    // Starts following the application's focus. Called by setLight(); once is enough.
    static void install();

protected:
    void paintEvent(QPaintEvent* event) override;

private:
    FocusRing();

    int m_radius = kButtonRadius;
};

} // namespace holdfast::app
