// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
// Which of several chances are less than once in twenty, judged together: Holm 1979 (from memory). Where
// nothing differs, any is taken for more in no more than one shop in twenty.

#include <span>
#include <vector>

namespace holdfast {

inline constexpr double kOnceInTwenty = 0.05;

// In the order of the chances.
std::vector<bool> beyondChance(std::span<const double> chances);

} // namespace holdfast
