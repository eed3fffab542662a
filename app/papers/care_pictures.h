// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
// Our own plain pictures next to the lines of the care card. They are drawings of things, not care symbols:
// those are trademarks and are nowhere in this program.

#include "core/care/care_card.h"

#include <QPainterPath>

namespace holdfast::app {

// In lines, on a sheet of 8 × 8 mm.
QPainterPath carePicture(CareMatter matter);
QPainterPath clockPicture();

} // namespace holdfast::app
