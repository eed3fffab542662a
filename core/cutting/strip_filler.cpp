#include "core/cutting/strip_filler.h"

#include <algorithm>
#include <bit>

namespace holdfast {

namespace {

constexpr std::size_t kPiecesBetweenAsking = 32;

} // namespace

void StripFiller::Sizes::settle() {
    std::ranges::sort(m_sizes);
    m_sizes.erase(std::ranges::unique(m_sizes).begin(), m_sizes.end());
    m_slots.assign(std::bit_ceil(m_sizes.size() * 2 + 2), kNone);
    for (std::size_t index = 0; index < m_sizes.size(); ++index) {
        std::size_t slot = slotOf(m_sizes[index]);
        while (m_slots[slot] != kNone)
            slot = (slot + 1) & (m_slots.size() - 1);
        m_slots[slot] = static_cast<std::uint32_t>(index);
    }
}

std::size_t StripFiller::Sizes::slotOf(std::int64_t size) const {
    constexpr std::uint64_t kSpread = 0x9e3779b97f4a7c15; // 2^64 over the golden ratio
    return static_cast<std::size_t>((static_cast<std::uint64_t>(size) * kSpread) >> 32) &
           (m_slots.size() - 1);
}

std::uint32_t StripFiller::Sizes::find(std::int64_t size) const {
    for (std::size_t slot = slotOf(size); m_slots[slot] != kNone; slot = (slot + 1) & (m_slots.size() - 1)) {
        if (m_sizes[m_slots[slot]] == size)
            return m_slots[slot];
    }
    return kNone;
}

StripFiller::StripFiller(const FillFrame& frame, std::span<const FillPiece> pieces)
    : m_skyline(frame) {
    for (const FillPiece& piece : pieces) {
        m_firstWay.push_back(static_cast<std::uint32_t>(m_ways.size()));
        const auto number = static_cast<std::uint32_t>(m_numbers.size());
        if (piece.across <= frame.width && piece.along <= frame.end)
            m_ways.push_back({piece.across, piece.along, number, 0, 0, false});
        if (piece.mayTurn && piece.along <= frame.width && piece.across <= frame.end)
            m_ways.push_back({piece.along, piece.across, number, 0, 0, true});
        m_numbers.push_back(piece.piece);
        m_areas.push_back(piece.area());
    }
    m_firstWay.push_back(static_cast<std::uint32_t>(m_ways.size()));
    for (const Way& way : m_ways) {
        m_acrossSizes.add(way.across);
        m_alongSizes.add(way.along);
    }
    m_acrossSizes.settle();
    m_alongSizes.settle();
    for (Way& way : m_ways) {
        way.acrossSize = m_acrossSizes.find(way.across);
        way.alongSize = m_alongSizes.find(way.along);
    }
    for (Links* links : {&m_byAcross, &m_byAlong, &m_inOrder})
        links->next.resize(m_ways.size());
    m_places.reserve(pieces.size());
}

void StripFiller::begin(const FillOrder& order) {
    m_skyline.clear();
    m_byAcross.first.assign(m_acrossSizes.count(), kNone);
    m_byAlong.first.assign(m_alongSizes.count(), kNone);
    m_inOrder.first.assign(1, kNone);
    m_leftByAcross.assign(m_acrossSizes.count(), 0);
    m_isLaid.assign(m_numbers.size(), 0);
    m_places.clear();
    m_outcome = {};
    const auto putFirst = [](Links& links, std::size_t list, std::uint32_t way) {
        links.next[way] = links.first[list];
        links.first[list] = way;
    };
    for (auto piece = order.rbegin(); piece != order.rend(); ++piece) {
        m_outcome.areaLeft += m_areas[*piece];
        for (std::uint32_t way = m_firstWay[*piece + 1]; way-- > m_firstWay[*piece];) {
            putFirst(m_byAcross, m_ways[way].acrossSize, way);
            putFirst(m_byAlong, m_ways[way].alongSize, way);
            putFirst(m_inOrder, 0, way);
            ++m_leftByAcross[m_ways[way].acrossSize];
        }
    }
    m_narrowest = 0;
    findNarrowest();
}

FillOutcome StripFiller::fill(const FillOrder& order, std::int64_t mostLost, const ShouldStop& shouldStop) {
    begin(order);
    std::int64_t lost = 0;
    while (m_narrowest < m_acrossSizes.count()) {
        const std::optional<StripGap> gap = m_skyline.lowest();
        if (!gap)
            break;
        if (const std::uint32_t way = bestFor(*gap); way != kNone) {
            lay(*gap, way);
            if (shouldStop && m_places.size() % kPiecesBetweenAsking == 0 && shouldStop()) {
                m_outcome.isStopped = true;
                break;
            }
            continue;
        }
        lost += m_skyline.giveUp(*gap);
        if (lost > mostLost) {
            m_outcome.areaLeft = FillOutcome::kTooMuch;
            break;
        }
    }
    return m_outcome;
}

void StripFiller::findNarrowest() {
    while (m_narrowest < m_acrossSizes.count() && m_leftByAcross[m_narrowest] == 0)
        ++m_narrowest;
}

std::uint32_t StripFiller::bestFor(const StripGap& gap) {
    if (m_acrossSizes[m_narrowest] > gap.width)
        return kNone;
    if (const std::uint32_t way = asWideAs(gap); way != kNone)
        return way;
    for (const std::int64_t height : {gap.leftWall, gap.rightWall, gap.ceiling}) {
        if (const std::uint32_t way = withTopAt(gap, height); way != kNone)
            return way;
    }
    return firstThatFits(gap);
}

template <class Accept>
std::uint32_t StripFiller::firstOf(Links& links, std::size_t list, Accept accept) {
    for (std::uint32_t* link = &links.first[list]; *link != kNone;) {
        const std::uint32_t way = *link;
        if (m_isLaid[m_ways[way].piece]) {
            *link = links.next[way];
            continue;
        }
        if (accept(m_ways[way]))
            return way;
        link = &links.next[way];
    }
    return kNone;
}

std::uint32_t StripFiller::asWideAs(const StripGap& gap) {
    const std::uint32_t size = m_acrossSizes.find(gap.width);
    if (size == kNone || m_leftByAcross[size] == 0)
        return kNone;
    int bestMeets = -1;
    std::uint32_t best = kNone;
    firstOf(m_byAcross, size, [&](const Way& way) {
        if (!canLie(gap, way))
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

std::uint32_t StripFiller::withTopAt(const StripGap& gap, std::int64_t height) {
    if (height > gap.toEnd)
        return kNone;
    const std::uint32_t size = m_alongSizes.find(height);
    if (size == kNone)
        return kNone;
    return firstOf(m_byAlong, size,
                   [&](const Way& way) { return leavesUseful(gap, way) && canLie(gap, way); });
}

std::uint32_t StripFiller::firstThatFits(const StripGap& gap) {
    std::uint32_t wasteful = kNone;
    const std::uint32_t useful = firstOf(m_inOrder, 0, [&](const Way& way) {
        if (!canLie(gap, way))
            return false;
        if (leavesUseful(gap, way))
            return true;
        if (wasteful == kNone)
            wasteful = static_cast<std::uint32_t>(&way - m_ways.data());
        return false;
    });
    return useful != kNone ? useful : wasteful;
}

bool StripFiller::leavesUseful(const StripGap& gap, const Way& way) const {
    return gap.width - way.across >= m_acrossSizes[m_narrowest];
}

bool StripFiller::canLie(const StripGap& gap, const Way& way) const {
    return way.across <= gap.width && way.along <= gap.toEnd &&
           (way.along <= gap.ceiling || acrossFor(gap, way).has_value());
}

// At the left wall, or at the right one where its top meets only that; where a pin is in the way, at the
// other.
std::optional<std::int64_t> StripFiller::acrossFor(const StripGap& gap, const Way& way) const {
    const std::int64_t left = gap.across;
    const std::int64_t right = gap.across + gap.width - way.across;
    const bool isAtRight = way.along == gap.rightWall && way.along != gap.leftWall;
    const std::int64_t wanted = isAtRight ? right : left;
    if (way.along <= gap.ceiling || m_skyline.isFree(wanted, way.across, gap.along, way.along))
        return wanted;
    const std::int64_t other = isAtRight ? left : right;
    if (m_skyline.isFree(other, way.across, gap.along, way.along))
        return other;
    return std::nullopt;
}

void StripFiller::lay(const StripGap& gap, std::uint32_t index) {
    const Way& way = m_ways[index];
    const std::int64_t across = *acrossFor(gap, way);
    m_skyline.raise(gap, across, way.across, gap.along + way.along);
    m_places.push_back({m_numbers[way.piece], across, gap.along, way.isTurned});
    m_outcome.end = std::max(m_outcome.end, gap.along + way.along);
    m_outcome.areaLeft -= m_areas[way.piece];
    m_isLaid[way.piece] = 1;
    for (std::uint32_t other = m_firstWay[way.piece]; other < m_firstWay[way.piece + 1]; ++other)
        --m_leftByAcross[m_ways[other].acrossSize];
    findNarrowest();
}

} // namespace holdfast
