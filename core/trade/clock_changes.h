// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
// When the clocks of a place are put forward or back, and how far they are ahead of UTC in between.

#include "core/trade/offset_at.h"

#include <chrono>
#include <optional>
#include <vector>

namespace holdfast {

class ClockChanges {
public:
    // The changes from one moment to another. They are looked for week by week: no place is known that
    // changes its clocks twice within one.
    ClockChanges(Instant from, Instant until, const OffsetAt& offsetAt);

    Instant until() const { return m_until; }

    // Before and after those moments as at the nearest of them.
    std::chrono::seconds offsetAt(Instant when) const;
    LocalTime toLocal(Instant when) const { return LocalTime{when.time_since_epoch() + offsetAt(when)}; }
    // A time that the clocks have twice is the first of the two; one that they leave out is counted on as if
    // they had not been put forward yet.
    Instant toInstant(LocalTime when) const;

    // Times that the clocks leave out when they are put forward.
    struct LeftOut {
        LocalTime from{};
        LocalTime until{};
    };
    const std::vector<LeftOut>& leftOut() const { return m_leftOut; }

private:
    struct Change {
        Instant at;
        std::chrono::seconds offset{0}; // from then on
    };

    std::chrono::seconds m_first;
    std::vector<Change> m_changes;
    std::vector<LeftOut> m_leftOut;
    Instant m_until;
};

} // namespace holdfast
