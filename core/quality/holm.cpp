// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/quality/holm.h"

#include <algorithm>
#include <cstddef>
#include <numeric>

namespace holdfast {

// The least likely must be so by all comparisons, the next by one fewer, until one is not.
std::vector<bool> beyondChance(std::span<const double> chances) {
    std::vector<std::size_t> order(chances.size());
    std::iota(order.begin(), order.end(), std::size_t{0});
    std::ranges::sort(order, {}, [&](std::size_t at) { return chances[at]; });
    std::vector<bool> beyond(chances.size());
    for (std::size_t before = 0; before < order.size(); ++before) {
        if (chances[order[before]] * static_cast<double>(order.size() - before) >= kOnceInTwenty)
            break;
        beyond[order[before]] = true;
    }
    return beyond;
}

} // namespace holdfast
