// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
// What time it is, handed in, so that a test or `--on` can say otherwise.
//
// `now` is the wall clock, `steady` runs on through sleep and is never set back (CLOCK_BOOTTIME): a count of
// seconds at the press uses steady while the program runs, and the wall clock only to find its place again
// after the program was closed.

#include "core/trade/clock_changes.h"

#include <chrono>
#include <functional>
#include <memory>
#include <mutex>

namespace holdfast::app {

// The changes of the clocks around now, looked for once and again where they are no longer right: the year
// has gone on, or the computer is in another place.
class KnownClockChanges {
public:
    std::shared_ptr<const ClockChanges> around(Instant now, const OffsetAt& offsetAt);

private:
    std::mutex m_guard;
    std::shared_ptr<const ClockChanges> m_known;
};

struct Clock {
    std::function<Instant()> now;
    std::function<std::chrono::milliseconds()> steady;
    OffsetAt offsetAt; // of local time from UTC
    std::shared_ptr<KnownClockChanges> known = std::make_shared<KnownClockChanges>();

    Now moment() const {
        const Instant instant = now();
        return Now{instant, offsetAt(instant), known->around(instant, offsetAt)};
    }
};

Clock systemClock();

// It is this instant now, and the time runs on from there.
Clock clockFrom(Instant start);

// The day is `date`, beginning at this local time, and runs on from there.
Clock clockOn(LocalDate date, std::chrono::minutes timeOfDay);

} // namespace holdfast::app
