// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/cutting/percent_shares.h"

#include <algorithm>
#include <array>
#include <functional>

namespace holdfast {

PercentShares inPercent(const FilmShares& shares) {
    struct Part {
        double share;
        int* percent;
        double remainder() const { return share - *percent; }
    };
    PercentShares whole;
    if (shares.decals + shares.offcuts + shares.waste <= 0)
        return whole;
    std::array<Part, 3> parts{{{shares.decals * 100, &whole.decals},
                               {shares.offcuts * 100, &whole.offcuts},
                               {shares.waste * 100, &whole.lost}}};
    int missing = 100;
    for (const Part& part : parts) {
        *part.percent = std::clamp(static_cast<int>(part.share), 0, missing);
        missing -= *part.percent;
    }
    std::ranges::stable_sort(parts, std::greater<>(), &Part::remainder);
    for (std::size_t at = 0; missing > 0; ++at, --missing)
        ++*parts[at % parts.size()].percent;
    return whole;
}

} // namespace holdfast
