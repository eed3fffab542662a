// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
// A long series as a line of few points that looks the same: of all readings that fall on one column of
// pixels the first, the lowest, the highest and the last are kept. Where readings lie further apart than the
// allowed gap the line is broken.

#include "core/facts/climate.h"
#include "core/film/exposure.h"

#include <vector>

namespace holdfast::app {

struct ThinPoint {
    double seconds = 0; // from the window's begin
    double value = 0;   // °C or %
};
using ThinLine = std::vector<ThinPoint>;

// From `from` to `to`; at the window's edges the line is cut where it crosses them. One pass over the
// readings of the window. REQUIRES: from < to, columns > 0.
std::vector<ThinLine> thinned(const ClimateSeries& series, Measure measure, Instant from, Instant to,
                              int columns, Hours allowedGap = kAllowedGap);

} // namespace holdfast::app
