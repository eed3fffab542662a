// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
// The days between two days, both of them included, and how a maker says them.

#include "core/trade/dates.h"

#include <string>

namespace holdfast {

struct DaySpan {
    LocalDate first;
    LocalDate last;

    bool operator==(const DaySpan&) const = default;
};

// "2–20 Jan 2027", "28 Jan – 9 Feb 2027", "28 Dec 2026 – 9 Jan 2027"; of a single day "2 Jan 2027".
std::string spokenSpan(const DaySpan& span);
// Without the year, of days that are near: "2–20 Jan", "28 Dec – 9 Jan".
std::string nearSpan(const DaySpan& span);

} // namespace holdfast
