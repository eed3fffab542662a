// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/cutting/strip_rule.h"

#include <algorithm>

namespace holdfast {

StripRule::StripRule(const FillFrame& frame, std::span<const FillPiece> pieces, FillHabit habit)
    : m_habit(habit) {
    for (const FillPiece& piece : pieces) {
        m_firstWay.push_back(static_cast<std::uint32_t>(m_ways.size()));
        const auto number = static_cast<std::uint32_t>(m_numbers.size());
        if (piece.across <= frame.width && piece.along <= frame.end)
            m_ways.push_back({piece.across, piece.along, piece.area(), number, 0, 0, false});
        if (piece.mayTurn && piece.along <= frame.width && piece.across <= frame.end)
            m_ways.push_back({piece.along, piece.across, piece.area(), number, 0, 0, true});
        m_numbers.push_back(piece.piece);
        m_area += piece.area();
    }
    m_firstWay.push_back(static_cast<std::uint32_t>(m_ways.size()));
    for (const PieceWay& way : m_ways) {
        m_acrossSizes.add(way.across);
        m_alongSizes.add(way.along);
    }
    m_acrossSizes.settle();
    m_alongSizes.settle();
    for (PieceWay& way : m_ways) {
        way.acrossSize = m_acrossSizes.find(way.across);
        way.alongSize = m_alongSizes.find(way.along);
    }
    for (Links* links : {&m_left.byAcross, &m_left.byAlong, &m_left.inOrder})
        links->next.resize(m_ways.size());
    m_left.isLaid.resize(pieces.size());
}

void StripRule::begin(const FillOrder& order) {
    m_left.byAcross.first.assign(m_acrossSizes.count(), kNone);
    m_left.byAlong.first.assign(m_alongSizes.count(), kNone);
    m_left.inOrder.first.assign(1, kNone);
    m_left.countByAcross.assign(m_acrossSizes.count(), 0);
    m_left.isLaid.assign(m_numbers.size(), 0);
    const auto putFirst = [](Links& links, std::size_t list, std::uint32_t way) {
        links.next[way] = links.first[list];
        links.first[list] = way;
    };
    const auto putWayFirst = [&](std::uint32_t way) {
        putFirst(m_left.byAcross, m_ways[way].acrossSize, way);
        putFirst(m_left.byAlong, m_ways[way].alongSize, way);
        putFirst(m_left.inOrder, 0, way);
        ++m_left.countByAcross[m_ways[way].acrossSize];
    };
    for (auto ordered = order.rbegin(); ordered != order.rend(); ++ordered) {
        const std::uint32_t first = m_firstWay[ordered->piece];
        const std::uint32_t end = m_firstWay[ordered->piece + 1];
        for (std::uint32_t way = 0; way < end - first; ++way)
            putWayFirst(ordered->isTurnedFirst ? first + way : end - 1 - way);
    }
    m_left.narrowest = 0;
    findNarrowest();
}

void StripRule::findNarrowest() {
    while (m_left.narrowest < m_acrossSizes.count() && m_left.countByAcross[m_left.narrowest] == 0)
        ++m_left.narrowest;
}

void StripRule::take(std::uint32_t way) {
    const std::uint32_t piece = m_ways[way].piece;
    m_left.isLaid[piece] = 1;
    for (std::uint32_t either = m_firstWay[piece]; either < m_firstWay[piece + 1]; ++either)
        --m_left.countByAcross[m_ways[either].acrossSize];
    findNarrowest();
}

std::uint32_t StripRule::bestFor(const StripGap& gap, const StripSkyline& skyline) {
    if (m_acrossSizes[m_left.narrowest] > gap.width)
        return kNone;
    const Place place{gap, skyline};
    if (const std::uint32_t way = asWideAs(place); way != kNone)
        return way;
    for (const std::int64_t height : {gap.leftWall, gap.rightWall, gap.ceiling}) {
        if (const std::uint32_t way = withTopAt(place, height); way != kNone)
            return way;
    }
    return firstThatFits(place);
}

template <class Accept>
std::uint32_t StripRule::firstOf(Links& links, std::size_t list, Accept accept) {
    for (std::uint32_t* link = &links.first[list]; *link != kNone;) {
        const std::uint32_t way = *link;
        if (m_left.isLaid[m_ways[way].piece]) {
            *link = links.next[way];
            continue;
        }
        if (accept(m_ways[way]))
            return way;
        link = &links.next[way];
    }
    return kNone;
}

std::uint32_t StripRule::asWideAs(const Place& place) {
    const std::int64_t width = place.gap.width;
    if (m_habit.mayLeave == 0) {
        const std::uint32_t size = m_acrossSizes.find(width);
        return size == kNone ? kNone : ofSizeAcross(place, size);
    }
    for (std::uint32_t size = m_acrossSizes.countUpTo(width); size-- > 0;) {
        if (m_acrossSizes[size] < width - m_habit.mayLeave)
            break;
        if (const std::uint32_t way = ofSizeAcross(place, size); way != kNone)
            return way;
    }
    return kNone;
}

std::uint32_t StripRule::ofSizeAcross(const Place& place, std::uint32_t size) {
    if (m_left.countByAcross[size] == 0)
        return kNone;
    const StripGap& gap = place.gap;
    int bestMeets = -1;
    std::uint32_t best = kNone;
    firstOf(m_left.byAcross, size, [&](const PieceWay& way) {
        if (!canLie(place, way))
            return false;
        const int walls = (way.along == gap.leftWall) + (way.along == gap.rightWall);
        const int meets = walls == 0 && way.along == gap.ceiling ? 1 : walls;
        if (meets > bestMeets) {
            bestMeets = meets;
            best = static_cast<std::uint32_t>(&way - m_ways.data());
        }
        return meets == 2;
    });
    return best;
}

std::uint32_t StripRule::withTopAt(const Place& place, std::int64_t height) {
    if (height > place.gap.toEnd)
        return kNone;
    const std::uint32_t size = m_alongSizes.find(height);
    if (size == kNone)
        return kNone;
    return firstOf(m_left.byAlong, size,
                   [&](const PieceWay& way) { return leavesUseful(place.gap, way) && canLie(place, way); });
}

std::uint32_t StripRule::firstThatFits(const Place& place) {
    std::uint32_t wasteful = kNone;
    const std::uint32_t useful = firstOf(m_left.inOrder, 0, [&](const PieceWay& way) {
        if (!canLie(place, way))
            return false;
        if (leavesUseful(place.gap, way))
            return true;
        if (wasteful == kNone)
            wasteful = static_cast<std::uint32_t>(&way - m_ways.data());
        return false;
    });
    return useful != kNone ? useful : wasteful;
}

std::vector<StripRule::Candidate> StripRule::candidatesFor(const StripGap& gap, const StripSkyline& skyline,
                                                           std::size_t most) const {
    std::vector<Candidate> found;
    for (std::uint32_t index = m_left.inOrder.first[0]; index != kNone && found.size() < most;
         index = m_left.inOrder.next[index]) {
        const PieceWay& way = m_ways[index];
        const bool isWhole = way.across == gap.width;
        if (m_left.isLaid[way.piece] || !canLie({gap, skyline}, way) || !(isWhole || leavesUseful(gap, way)))
            continue;
        if (std::ranges::any_of(found, [&](const Candidate& other) {
                return m_ways[other.way].across == way.across && m_ways[other.way].along == way.along;
            }))
            continue;
        const bool meetsTop =
            way.along == gap.leftWall || way.along == gap.rightWall || way.along == gap.ceiling;
        found.push_back({index, isWhole || meetsTop});
    }
    return found;
}

bool StripRule::leavesUseful(const StripGap& gap, const PieceWay& way) const {
    return !m_habit.avoidsNarrowRest || gap.width - way.across >= m_acrossSizes[m_left.narrowest];
}

bool StripRule::canLie(const Place& place, const PieceWay& way) const {
    const StripGap& gap = place.gap;
    return way.across <= gap.width && way.along <= gap.toEnd &&
           (way.along <= gap.ceiling || acrossFor(place, way).has_value());
}

// At the wall that the habit names, or at the other one where its top meets only that; where a pin is in the
// way, at the other.
std::optional<std::int64_t> StripRule::acrossFor(const Place& place, const PieceWay& way) const {
    const StripGap& gap = place.gap;
    const std::int64_t left = gap.across;
    const std::int64_t right = gap.across + gap.width - way.across;
    const bool meetsLeft = way.along == gap.leftWall;
    const bool meetsRight = way.along == gap.rightWall;
    const bool isAtRight =
        meetsLeft == meetsRight ? !m_habit.keepsLeft && gap.rightWall > gap.leftWall : meetsRight;
    const std::int64_t wanted = isAtRight ? right : left;
    if (way.along <= gap.ceiling || place.skyline.isFree(wanted, way.across, gap.along, way.along))
        return wanted;
    const std::int64_t other = isAtRight ? left : right;
    if (place.skyline.isFree(other, way.across, gap.along, way.along))
        return other;
    return std::nullopt;
}

std::int64_t StripRule::acrossOf(const StripGap& gap, const StripSkyline& skyline, std::uint32_t way) const {
    return *acrossFor({gap, skyline}, m_ways[way]);
}

} // namespace holdfast
