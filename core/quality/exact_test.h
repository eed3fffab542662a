#pragma once
// Whether two groups differ by more than chance would make them, from counts as small as a workshop's.
//
// Fisher's exact test of a two-by-two table: with its sums fixed, how likely is a table like this one. The
// chance of a table is hypergeometric.

#include <cstdint>

namespace holdfast {

// Of one group so many with a fault and so many without, of the other likewise. REQUIRES: none below nothing.
struct FaultTable {
    std::int64_t withFault = 0;
    std::int64_t withoutFault = 0;
    std::int64_t otherWithFault = 0;
    std::int64_t otherWithoutFault = 0;
};

// The chance that the first group has as many faults as it has, or more.
double chanceOfAsMany(const FaultTable& table);
// The chance of a table that is as unlikely as this one, or more so, either way.
double chanceOfAsUnlikely(const FaultTable& table);

} // namespace holdfast
