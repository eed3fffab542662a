// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
// A share that was seen in a few cases, and between which ends the true one may well lie.

#include <cstdint>
#include <optional>

namespace holdfast {

inline constexpr double kTwoSided95 = 1.959963984540054; // of the unit normal

struct ShareInterval {
    double share = 0; // 0 … 1, as are the ends
    double low = 0;
    double high = 0;
};

// Wilson's interval, which holds for few cases and for shares of none and all:
// (p + z²/2n ± z·√(p(1−p)/n + z²/4n²)) / (1 + z²/n). Wilson 1927; as method 3 in Newcombe 1998. None of no
// cases. REQUIRES: 0 ≤ found ≤ of.
std::optional<ShareInterval> shareInterval(std::int64_t found, std::int64_t of, double z = kTwoSided95);

} // namespace holdfast
