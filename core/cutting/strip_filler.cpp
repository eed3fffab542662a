// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/cutting/strip_filler.h"

#include <algorithm>

namespace holdfast {

namespace {

// Pieces laid and gaps given up.
constexpr std::size_t kStepsBetweenAsking = 32;

} // namespace

StripFiller::StripFiller(const FillFrame& frame, std::span<const FillPiece> pieces, FillHabit habit)
    : m_rule(frame, pieces, habit)
    , m_skyline(frame) {
    m_places.reserve(pieces.size());
}

FillOutcome StripFiller::fill(const FillOrder& order, std::int64_t mostLost, const ShouldStop& shouldStop) {
    m_rule.begin(order);
    m_skyline.clear();
    m_places.clear();
    FillOutcome outcome;
    outcome.areaLeft = m_rule.area();
    std::int64_t lost = 0;
    for (std::size_t step = 1; m_rule.isAnyLeft(); ++step) {
        if (shouldStop && step % kStepsBetweenAsking == 0 && shouldStop()) {
            outcome.isStopped = true;
            break;
        }
        const std::optional<StripGap> gap = m_skyline.lowest();
        if (!gap)
            break;
        const std::uint32_t best = m_rule.bestFor(*gap, m_skyline);
        if (best == StripRule::kNone) {
            lost += m_skyline.giveUp(*gap);
            if (lost <= mostLost)
                continue;
            outcome.areaLeft = FillOutcome::kTooMuch;
            break;
        }
        const StripRule::PieceWay& way = m_rule.way(best);
        const std::int64_t across = m_rule.acrossOf(*gap, m_skyline, best);
        const std::int64_t end = gap->along + way.along;
        m_skyline.raise(*gap, across, way.across, end);
        m_rule.take(best);
        m_places.push_back({m_rule.numberInTask(way.piece), across, gap->along, way.isTurned});
        outcome.end = std::max(outcome.end, end);
        outcome.areaLeft -= way.area;
    }
    return outcome;
}

} // namespace holdfast
