// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/facts/climate.h"

#include <algorithm>
#include <iterator>

namespace holdfast {

ClimateSeries withHumidity(const ClimateSeries& series) {
    ClimateSeries known;
    std::ranges::copy_if(series, std::back_inserter(known), &ClimateReading::hasHumidity);
    return known;
}

bool allHaveHumidity(const ClimateSeries& series) {
    return std::ranges::all_of(series, &ClimateReading::hasHumidity);
}

} // namespace holdfast
