// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/trade/unit_normal.h"

#include "core/trade/assertion.h"

#include <cmath>
#include <numbers>

namespace holdfast {

double unitNormalShare(double z) {
    return std::erfc(-z / std::numbers::sqrt2) / 2;
}

double unitNormalQuantile(double share) {
    HOLDFAST_ASSERT(share > 0 && share < 1);
    double low = -40, high = 40;
    for (int halving = 0; halving < 100; ++halving) {
        const double middle = (low + high) / 2;
        (unitNormalShare(middle) < share ? low : high) = middle;
    }
    return (low + high) / 2;
}

double unitNormalLoss(double z) {
    const double density = std::exp(-z * z / 2) / std::sqrt(2 * std::numbers::pi);
    return density - z * std::erfc(z / std::numbers::sqrt2) / 2;
}

} // namespace holdfast
