// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/trade/clock_changes.h"

#include <algorithm>

namespace holdfast {

namespace {

constexpr Days kBetweenLooks{7};

// The first second of the other offset. REQUIRES: the offsets at the two moments differ, and change once.
Instant changeBetween(Instant before, Instant after, const OffsetAt& offsetAt) {
    const auto offset = offsetAt(before);
    while (after - before > std::chrono::seconds{1}) {
        const Instant middle = before + (after - before) / 2;
        (offsetAt(middle) == offset ? before : after) = middle;
    }
    return after;
}

} // namespace

ClockChanges::ClockChanges(Instant from, Instant until, const OffsetAt& offsetAt)
    : m_first(offsetAt(from))
    , m_until(until) {
    auto offset = m_first;
    while (from < until) {
        const Instant next = std::min(until, from + kBetweenLooks);
        if (const auto then = offsetAt(next); then != offset) {
            const Instant at = changeBetween(from, next, offsetAt);
            m_changes.push_back({at, then});
            if (then > offset)
                m_leftOut.push_back(
                    {LocalTime{at.time_since_epoch() + offset}, LocalTime{at.time_since_epoch() + then}});
            offset = then;
        }
        from = next;
    }
}

std::chrono::seconds ClockChanges::offsetAt(Instant when) const {
    const auto next = std::ranges::upper_bound(m_changes, when, {}, &Change::at);
    return next == m_changes.begin() ? m_first : std::prev(next)->offset;
}

Instant ClockChanges::toInstant(LocalTime when) const {
    // No clock is a day ahead of UTC, or behind it.
    const auto before = offsetAt(Instant{when.time_since_epoch()} - Days{1});
    const auto after = offsetAt(Instant{when.time_since_epoch()} + Days{1});
    const Instant first{when.time_since_epoch() - before};
    const Instant second{when.time_since_epoch() - after};
    return offsetAt(first) != before && offsetAt(second) == after ? second : first;
}

} // namespace holdfast
