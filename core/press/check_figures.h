// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
// What the readings of a press check say of its platen.

#include "core/facts/press.h"

namespace holdfast {

struct CheckFigures {
    double meanOffset = 0;       // °C, mean reading less the set temperature
    double largestDeparture = 0; // °C, of one spot from the set temperature, signed
    double spread = 0;           // °C, hottest less coolest
    double dialIn = 0;           // °C to add to the dial so that the mean meets the recipe
};

// REQUIRES: at least one reading.
CheckFigures figuresOf(const PressCheck& check);

} // namespace holdfast
