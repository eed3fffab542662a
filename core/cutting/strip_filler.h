// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
// Fills a frame from its cut end: the lowest gap of the skyline takes the piece that fits it best
// (strip_rule.h). Where none fits, the gap is given up. One filling costs little (about 40 ns a piece), and
// no memory is asked for.

#include "core/cutting/strip_rule.h"

namespace holdfast {

struct FillOutcome {
    std::int64_t areaLeft = 0; // of pieces that found no room; too much where it lost more than it may
    std::int64_t end = 0;      // furthest end of a piece that was laid
    bool isStopped = false;

    static constexpr std::int64_t kTooMuch = std::numeric_limits<std::int64_t>::max();
};

class StripFiller {
public:
    StripFiller(const FillFrame& frame, std::span<const FillPiece> pieces, FillHabit habit);

    // Ends early when more area than `mostLost` is given up. REQUIRES: an order with each piece once.
    FillOutcome fill(const FillOrder& order, std::int64_t mostLost = FillOutcome::kTooMuch,
                     const ShouldStop& shouldStop = {});

    // Of the last filling.
    const std::vector<FilledPlace>& places() const { return m_places; }
    bool isLaid(std::size_t piece) const { return m_rule.left().isLaid[piece] != 0; }

private:
    StripRule m_rule;
    StripSkyline m_skyline;
    std::vector<FilledPlace> m_places;
};

} // namespace holdfast
