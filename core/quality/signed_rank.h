// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
// Whether differences lie about zero: Wilcoxon's signed-rank test, and what they lie about: the estimate of
// Hodges and Lehmann. Wilcoxon 1945; Hodges and Lehmann 1963; Hollander and Wolfe ch. 3 (from memory).
//
// Differences of nothing are left out of the test, and equal ones share their ranks. Up to kMostCountedOut
// differences the chance is counted out over all signs, ties included; beyond that it is the normal's, with
// its correction for ties.

#include <cstddef>
#include <span>

namespace holdfast {

inline constexpr std::size_t kMostCountedOut = 50;

// The chance that the ranks of either sign add up to as little or less, twice: 1 where nothing differs.
double chanceOfSignedRanks(std::span<const double> differences);

struct Centre {
    double estimate = 0; // the middle of the means of all pairs, each with itself too
    double low = 0;      // the ends of the interval that leaves out `outside` at most
    double high = 0;
};
// The whole range where the differences are too few for so narrow a share. REQUIRES: at least one difference;
// 0 < outside < 1. Takes time and room by the square of their number.
Centre centreOf(std::span<const double> differences, double outside);

} // namespace holdfast
