// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
// A heat press with its platen, and the checks of its temperature at marked spots.

#include "core/trade/dates.h"
#include "core/trade/ids.h"
#include "core/trade/units.h"

#include <optional>
#include <string>
#include <vector>

namespace holdfast {

struct Press {
    PressId id;
    std::string name;
    Millimetres platenWidth;
    Millimetres platenHeight;
    bool hasSmallPlaten = false;
    double heatsPerMinute = 20; // °C
    double coolsPerMinute = 5;  // °C; platens are slow to cool
    Celsius tolerance{3};       // departure from the set temperature that is still in order; common practice
    Celsius evenWithin{6};      // largest spread over the platen that is still even; common practice
    Days checkEvery{30};
    bool isRetired = false; // nothing more is taken up on it
};

struct PressCheck {
    PressId press;
    Instant at;
    Celsius set;
    std::vector<Celsius> readings; // at the marked spots, in order
    std::string by;
};

} // namespace holdfast
