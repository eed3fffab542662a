// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
// The clock on the wall of this computer, for what is named by day and time.

#include "core/trade/dates.h"

namespace holdfast::db {

// Of local time from UTC at that instant.
std::chrono::seconds wallOffsetAt(Instant instant);

inline LocalTime wallTime(Instant instant) {
    return Now{instant, wallOffsetAt(instant)}.local();
}

} // namespace holdfast::db
