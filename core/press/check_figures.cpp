// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/press/check_figures.h"

#include "core/trade/assertion.h"

#include <algorithm>
#include <cmath>

namespace holdfast {

CheckFigures figuresOf(const PressCheck& check) {
    HOLDFAST_ASSERT(!check.readings.empty());
    CheckFigures figures;
    double sum = 0;
    for (const Celsius reading : check.readings) {
        const double departure = reading.value - check.set.value;
        sum += departure;
        if (std::abs(departure) > std::abs(figures.largestDeparture))
            figures.largestDeparture = departure;
    }
    const auto [coolest, hottest] = std::ranges::minmax(check.readings);
    figures.meanOffset = sum / static_cast<double>(check.readings.size());
    figures.spread = hottest.value - coolest.value;
    figures.dialIn = -figures.meanOffset;
    return figures;
}

} // namespace holdfast
