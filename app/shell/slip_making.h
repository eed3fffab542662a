#pragma once
// The slips of app/slips and those that belong to the shell itself.

#include "app/slips/slip.h"

namespace holdfast::app {

// None where the matter it is about is gone.
Slip* slipFor(SlipName name, ShopDesk& desk, const Matter& matter, QWidget* parent);

} // namespace holdfast::app
