// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
// What time it is, handed in, so that a test or `--on` can say otherwise.
//
// `now` is the wall clock, `steady` runs on through sleep and is never set back (CLOCK_BOOTTIME): a count of
// seconds at the press uses steady while the program runs, and the wall clock only to find its place again
// after the program was closed.

#include "core/trade/dates.h"

#include <chrono>
#include <functional>

namespace holdfast::app {

struct Clock {
    std::function<Instant()> now;
    std::function<std::chrono::milliseconds()> steady;
    std::function<std::chrono::seconds(Instant)> offsetAt; // of local time from UTC

    Now moment() const {
        const Instant instant = now();
        return Now{instant, offsetAt(instant)};
    }
};

Clock systemClock();

// It is this instant now, and the time runs on from there.
Clock clockFrom(Instant start);

// The day is `date`, beginning at this local time, and runs on from there.
Clock clockOn(LocalDate date, std::chrono::minutes timeOfDay);

} // namespace holdfast::app
