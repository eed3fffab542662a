// Rounding and shares against the figures of two JavaScript libraries for money and decimals, big.js 7.0.1
// and dinero.js 2.0.2 (computed with them). Minor units: ISO 4217, list of 2024-06-25 (by npm
// currency-codes 2.2.0).

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

TEST(ReferenceMoney, SharesAgreeWithDineroJs) {
    const std::vector<std::int64_t> thirds{1, 1, 1};
    EXPECT_EQ(sharesOf({100}, thirds), (std::vector<Money>{{34}, {33}, {33}}));
    EXPECT_EQ(sharesOf({-100}, thirds), (std::vector<Money>{{-34}, {-33}, {-33}}));
    EXPECT_EQ(sharesOf({5}, std::vector<std::int64_t>{7, 3}), (std::vector<Money>{{4}, {1}}));
    EXPECT_EQ(sharesOf({5}, std::vector<std::int64_t>{3, 7}), (std::vector<Money>{{1}, {4}}));
}

// 3 × 1.99 at 20 %: by line 1.20, by total 1.19 (computed with big.js).
TEST(ReferenceMoney, TaxByLineAndByTotalDifferByAPenny) {
    const Money line{199};
    EXPECT_EQ(shareInBasisPoints(line, 2000, Rounding::HalfUp) * 3, Money{120});
    EXPECT_EQ(shareInBasisPoints(line * 3, 2000, Rounding::HalfUp), Money{119});
}

// ISO 4217: JPY 0, KWD 3, HUF 2.
TEST(ReferenceMoney, MinorUnitsFollowTheCurrency) {
    EXPECT_EQ(plainAmount({1}, {.code = "JPY", .sign = "¥", .exponent = 0}), "1");
    EXPECT_EQ(plainAmount({1}, {.code = "KWD", .sign = "KD", .exponent = 3}), "0.001");
    EXPECT_EQ(plainAmount({1}, {.code = "HUF", .sign = "Ft", .exponent = 2}), "0.01");
}

} // namespace
} // namespace holdfast
