// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
// Times as data loggers write them: "2026-11-25T09:30[:00][Z|+01:00]", "2026-11-25 09:30[:00]",
// "25.11.2026 09:30", "25/11/2026 09:30", "25-Nov-2026 09:30", "Nov 25, 2026 09:30", seconds since 1970.
// Fractions of a second are dropped, am and pm after a clock are understood. Years 1970 to 2199.

#include "core/trade/dates.h"

#include <optional>
#include <string_view>

namespace holdfast {

// Of a date such as 03/04/2026.
enum class DateOrder { DayFirst, MonthFirst };

enum class LogTimeKind {
    Read,
    NoTime,     // nothing that is understood
    OtherOrder, // a day that exists only in the other order of day and month
};

struct LogTime {
    LogTimeKind kind = LogTimeKind::NoTime;
    Instant at;
    bool needsOrder = false; // day and month are both written as numbers, the year after them
    bool hasDots = false;    // between them
    bool hasZone = false;    // it says itself how far it is from UTC
};

// A time without a zone is `localOffset` ahead of UTC.
LogTime readLogTime(std::string_view text, std::chrono::seconds localOffset,
                    DateOrder order = DateOrder::DayFirst);

// Date and clock in fields of their own.
LogTime readLogTime(std::string_view date, std::string_view clock, std::chrono::seconds localOffset,
                    DateOrder order = DateOrder::DayFirst);

} // namespace holdfast
