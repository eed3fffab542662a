// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
// Shares of the film charged in whole percent that add up to a hundred: rounded down, and what is missing
// goes to those that lost the most by that (the largest remainder method).

#include "core/cutting/nest.h"

namespace holdfast {

struct PercentShares {
    int decals = 0;
    int offcuts = 0;
    int lost = 0; // in this cut

    bool operator==(const PercentShares&) const = default;
};

// All zero where nothing is cut.
PercentShares inPercent(const FilmShares& shares);

} // namespace holdfast
