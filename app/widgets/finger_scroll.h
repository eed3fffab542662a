#pragma once
// Lets a finger push what scrolls. Wheel and keys scroll it anyway.

class QAbstractScrollArea;

namespace holdfast::app {

void letFingerScroll(QAbstractScrollArea* area);

} // namespace holdfast::app
