#pragma once
// Tab that goes round within one part of the window.

class QWidget;

namespace holdfast::app {

// Puts the keyboard on the next (or the one before) widget inside `part` that takes Tab, after the last on
// the first again. False where there is none.
bool moveFocusWithin(QWidget* part, bool forward);

} // namespace holdfast::app
