// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
// Makes the ids of everything that is stored: 41 bits of milliseconds since 2024-01-01 UTC, 10 bits of seat,
// 12 bits of counter. Two seats never make the same id, and ids of one seat only ever rise: when the clock is
// set back, or more than 4,096 ids fall into one millisecond, the maker goes on from its last id.
//
// The range ends in 2093. Times before 2024 count as 2024-01-01.

#include "core/trade/dates.h"

#include <cstdint>

namespace holdfast {

class IdMaker {
public:
    static constexpr std::int64_t kLowestSeat = 1;
    static constexpr std::int64_t kHighestSeat = 1023;

    // `lastId` is the last id this seat made before, or 0: what is made next lies above it.
    // REQUIRES: kLowestSeat <= seat <= kHighestSeat
    explicit IdMaker(std::int64_t seat, std::int64_t lastId = 0);

    std::int64_t next(Instant now);
    std::int64_t last() const { return m_last; }

    // What `id` would be after that many more of that moment: for a maker that must not go on where another,
    // begun from the same id, goes on. REQUIRES: steps >= 0
    static std::int64_t movedOn(std::int64_t id, std::int64_t steps);

    static std::int64_t seatOf(std::int64_t id);
    static Instant timeOf(std::int64_t id);

private:
    std::int64_t m_seat;
    std::int64_t m_last;
};

} // namespace holdfast
