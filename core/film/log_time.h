#pragma once
// Times as data loggers write them: "2026-11-25T09:30[:00][Z|+01:00]", "2026-11-25 09:30[:00]",
// "25.11.2026 09:30", "25/11/2026 09:30" (day first), seconds since 1970. Fractions of a second are dropped,
// am and pm after a clock are understood. Years 1970 to 2199.

#include "core/trade/dates.h"

#include <optional>
#include <string_view>

namespace holdfast {

enum class LogTimeKind {
    Read,
    NoTime,     // nothing that is understood
    MonthFirst, // a day that exists only with the month before the day
};

struct LogTime {
    LogTimeKind kind = LogTimeKind::NoTime;
    Instant at;
};

// A time without a zone is `localOffset` ahead of UTC.
LogTime readLogTime(std::string_view text, std::chrono::seconds localOffset);

// Date and clock in fields of their own.
LogTime readLogTime(std::string_view date, std::string_view clock, std::chrono::seconds localOffset);

} // namespace holdfast
