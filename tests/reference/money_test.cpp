// SPDX-License-Identifier: GPL-3.0-or-later
// Rounding against the figures of a JavaScript library for decimals, big.js 7.0.1 (computed with it).

#include "core/trade/money.h"

#include <gtest/gtest.h>

namespace holdfast {
namespace {

struct Rounded {
    std::int64_t thousandths;
    std::int64_t perUnit; // thousandths in what is kept
    std::int64_t halfUp;
    std::int64_t halfEven;
};

TEST(ReferenceMoney, HalfUpAndHalfEvenAgreeWithBigJs) {
    // 2.5 → 3/2; −2.5 → −3/−2; 1.005 → 1.01/1.00; .125 → .13/.12
    for (const Rounded& row : {Rounded{2500, 1000, 3, 2}, Rounded{-2500, 1000, -3, -2},
                               Rounded{1005, 10, 101, 100}, Rounded{125, 10, 13, 12}}) {
        EXPECT_EQ(divided({row.thousandths}, 1, row.perUnit, Rounding::HalfUp).minor, row.halfUp);
        EXPECT_EQ(divided({row.thousandths}, 1, row.perUnit, Rounding::HalfEven).minor, row.halfEven);
    }
}

} // namespace
} // namespace holdfast
