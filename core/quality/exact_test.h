// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
// What chance would make of counts as small as a workshop's: whether two groups differ by more, whether one
// number is more.
//
// Fisher's exact test of a two-by-two table: with its sums fixed, how likely is a table like this one. The
// chance of a table is hypergeometric.

#include <cstdint>

namespace holdfast {

// How many of each group had a fault and how many had none. REQUIRES: none is negative.
struct FaultTable {
    std::int64_t withFault = 0;
    std::int64_t withoutFault = 0;
    std::int64_t otherWithFault = 0;
    std::int64_t otherWithoutFault = 0;
};

// The chance that the first group has as many faults as it has, or more.
double chanceOfAsMany(const FaultTable& table);

// The chance that more than `found` of `of` have a fault, where each has one with chance `share` (binomial).
// REQUIRES: 0 ≤ found ≤ of, 0 ≤ share ≤ 1.
double chanceOfMoreThan(std::int64_t found, std::int64_t of, double share);

} // namespace holdfast
