// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
// Which backups stay, and until when. All of the last 14 days; of each of the last 8 weeks (Monday to Sunday)
// and of each of the last 12 months the newest. The present day, week and month count as one of them. Always
// stay the two newest, for after a long pause there may be no others, and whatever is later than now: it was
// made while the clock was wrong, and nobody knows when.

#include "core/trade/dates.h"

#include <optional>
#include <span>
#include <vector>

namespace holdfast::db {

inline constexpr int kDaysKept = 14;
inline constexpr int kWeeksKept = 8;
inline constexpr int kMonthsKept = 12;

// For each of the times whether it stays.
std::vector<bool> whichStay(std::span<const LocalTime> times, LocalTime now);

// The last day on which that one of the times is still there, if a backup is made each day from now on.
LocalDate lastDayOf(std::span<const LocalTime> times, std::size_t which, LocalTime now);

} // namespace holdfast::db
