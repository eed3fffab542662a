// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/cutting/strip_free_space.h"

#include <algorithm>
#include <limits>

namespace holdfast {

namespace {

bool isWithin(const TakenArea& inner, const TakenArea& outer) {
    return inner.across >= outer.across && inner.along >= outer.along && inner.acrossEnd <= outer.acrossEnd &&
           inner.alongEnd <= outer.alongEnd;
}

} // namespace

TakenArea areaOf(const FillPiece& piece, const FilledPlace& place) {
    const std::int64_t across = place.isTurned ? piece.along : piece.across;
    const std::int64_t along = place.isTurned ? piece.across : piece.along;
    return {place.across, place.along, place.across + across, place.along + along};
}

StripFreeSpace::StripFreeSpace(const FillFrame& frame, std::span<const FillPiece> pieces)
    : m_free{{0, 0, frame.width, frame.end}}
    , m_leastAcross(frame.width)
    , m_leastAlong(frame.end) {
    for (const FillPiece& piece : pieces) {
        m_leastAcross =
            std::min(m_leastAcross, piece.mayTurn ? std::min(piece.across, piece.along) : piece.across);
        m_leastAlong =
            std::min(m_leastAlong, piece.mayTurn ? std::min(piece.across, piece.along) : piece.along);
    }
    for (const TakenArea& pin : frame.pins)
        take(pin);
}

void StripFreeSpace::take(const TakenArea& area) {
    m_cut.clear();
    std::erase_if(m_free, [&](const TakenArea& free) {
        if (free.across >= area.acrossEnd || free.acrossEnd <= area.across || free.along >= area.alongEnd ||
            free.alongEnd <= area.along)
            return false;
        m_cut.push_back({free.across, free.along, area.across, free.alongEnd});
        m_cut.push_back({area.acrossEnd, free.along, free.acrossEnd, free.alongEnd});
        m_cut.push_back({free.across, free.along, free.acrossEnd, area.along});
        m_cut.push_back({free.across, area.alongEnd, free.acrossEnd, free.alongEnd});
        return true;
    });
    for (const TakenArea& free : m_cut) {
        if (isWorthKeeping(free))
            keepIfLargest(free);
    }
}

bool StripFreeSpace::isWorthKeeping(const TakenArea& free) const {
    return free.acrossEnd - free.across >= m_leastAcross && free.alongEnd - free.along >= m_leastAlong;
}

void StripFreeSpace::keepIfLargest(const TakenArea& free) {
    if (std::ranges::any_of(m_free, [&](const TakenArea& other) { return isWithin(free, other); }))
        return;
    std::erase_if(m_free, [&](const TakenArea& other) { return isWithin(other, free); });
    m_free.push_back(free);
}

std::optional<FilledPlace> StripFreeSpace::tightest(const FillPiece& piece) const {
    std::optional<FilledPlace> best;
    std::int64_t leastOver = std::numeric_limits<std::int64_t>::max();
    for (const bool isTurned : {false, true}) {
        if (isTurned && !piece.mayTurn)
            continue;
        const std::int64_t across = isTurned ? piece.along : piece.across;
        const std::int64_t along = isTurned ? piece.across : piece.along;
        for (const TakenArea& free : m_free) {
            const std::int64_t overAcross = free.acrossEnd - free.across - across;
            const std::int64_t overAlong = free.alongEnd - free.along - along;
            if (overAcross < 0 || overAlong < 0 || std::min(overAcross, overAlong) >= leastOver)
                continue;
            leastOver = std::min(overAcross, overAlong);
            best = FilledPlace{piece.piece, free.across, free.along, isTurned};
        }
    }
    return best;
}

std::optional<FilledPlace> StripFreeSpace::lowest(const FillPiece& piece) const {
    std::optional<FilledPlace> best;
    std::int64_t bestEnd = 0;
    for (const bool isTurned : {false, true}) {
        if (isTurned && !piece.mayTurn)
            continue;
        const std::int64_t across = isTurned ? piece.along : piece.across;
        const std::int64_t along = isTurned ? piece.across : piece.along;
        for (const TakenArea& free : m_free) {
            if (free.acrossEnd - free.across < across || free.alongEnd - free.along < along)
                continue;
            const std::int64_t end = free.along + along;
            if (best && (end > bestEnd || (end == bestEnd && free.across >= best->across)))
                continue;
            bestEnd = end;
            best = FilledPlace{piece.piece, free.across, free.along, isTurned};
        }
    }
    return best;
}

} // namespace holdfast
