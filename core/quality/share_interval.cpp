// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/quality/share_interval.h"

#include "core/trade/assertion.h"

#include <algorithm>
#include <cmath>

namespace holdfast {

std::optional<ShareInterval> shareInterval(std::int64_t found, std::int64_t of, double z) {
    HOLDFAST_ASSERT(found >= 0 && found <= of);
    if (of == 0)
        return std::nullopt;
    const auto cases = static_cast<double>(of);
    const double share = static_cast<double>(found) / cases;
    const double middle = share + z * z / (2 * cases);
    const double spread = z * std::sqrt(share * (1 - share) / cases + z * z / (4 * cases * cases));
    const double scale = 1 + z * z / cases;
    // Of none and of all one end is known; the roots would leave a trace of rounding there.
    return ShareInterval{share, found == 0 ? 0 : std::max(0.0, (middle - spread) / scale),
                         found == of ? 1 : std::min(1.0, (middle + spread) / scale)};
}

} // namespace holdfast
