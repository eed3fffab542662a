// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/cutting/strip_pairs.h"

#include <algorithm>
#include <limits>
#include <tuple>

namespace holdfast {

namespace {

constexpr std::int64_t kAnyDistance = std::numeric_limits<std::int64_t>::min() / 4;

} // namespace

StripPairs::Distances::Distances() {
    for (std::size_t from = 0; from <= kMostPieces; ++from) {
        m_least[from].fill(kAnyDistance);
        m_least[from][from] = 0;
    }
}

bool StripPairs::Distances::demand(std::size_t from, std::size_t to, std::int64_t distance,
                                   std::size_t pieces) {
    if (m_least[from][to] >= distance)
        return true;
    if (m_least[to][from] + distance > 0)
        return false;
    const std::int64_t* const after = m_least[to].data();
    const auto lengthenPathsOf = [&](std::size_t first) {
        std::int64_t* const paths = m_least[first].data();
        const std::int64_t before = paths[from] + distance;
        if (before <= paths[to])
            return;
        for (std::size_t last = 0; last < pieces; ++last)
            paths[last] = std::max(paths[last], before + after[last]);
        paths[kStrip] = std::max(paths[kStrip], before + after[kStrip]);
    };
    for (std::size_t first = 0; first < pieces; ++first)
        lengthenPathsOf(first);
    lengthenPathsOf(kStrip);
    return true;
}

StripPairs::StripPairs(std::int64_t width, std::vector<Piece> pieces)
    : m_width(width)
    , m_pieces(std::move(pieces)) {
    std::ranges::stable_sort(m_pieces, std::ranges::greater{}, [](const Piece& piece) {
        const StripExtent& lies = piece.ways.front();
        return std::tuple{piece.pinned.has_value(), lies.across * lies.along, lies.across};
    });
    m_isAnyPinned = !m_pieces.empty() && m_pieces.front().pinned;
}

StripPairs::Answer StripPairs::fitsBefore(std::int64_t end, std::uint64_t mostChoices) {
    m_end = end;
    m_choices = 0;
    m_mostChoices = mostChoices;
    m_isCutShort = false;
    if (bringIn(0, State{}))
        return Answer::Fits;
    return m_isCutShort ? Answer::NotKnown : Answer::DoesNotFit;
}

// After all that are in already.
bool StripPairs::bringIn(std::size_t piece, const State& state) {
    if (piece == m_pieces.size()) {
        m_length = lengthOf(state);
        return true;
    }
    for (std::size_t way = 0; way < m_pieces[piece].ways.size(); ++way) {
        m_way[piece] = way;
        m_lies[piece] = m_pieces[piece].ways[way];
        State with = state;
        if (layOnStrip(piece, with) && putLikeOnesInOrder(piece, with) && relate(piece, with, {}))
            return true;
    }
    return false;
}

// A packing seen in a mirror is a packing, too, both ways: so the largest piece need only lie in one quarter.
bool StripPairs::layOnStrip(std::size_t piece, State& state) const {
    constexpr std::size_t kStrip = Distances::kStrip;
    const std::int64_t overAcross = m_width - m_lies[piece].across;
    const std::int64_t overAlong = m_end - m_lies[piece].along;
    if (overAcross < 0 || overAlong < 0)
        return false;
    const bool isMirrored = piece == 0 && !m_isAnyPinned;
    const auto& pinned = m_pieces[piece].pinned;
    const std::size_t in = piece + 1;
    const auto keepWithin = [&](Distances& distances, std::int64_t least, std::int64_t most) {
        return least <= most && distances.demand(kStrip, piece, least, in) &&
               distances.demand(piece, kStrip, -most, in);
    };
    if (pinned)
        return pinned->across <= overAcross && pinned->along <= overAlong &&
               keepWithin(state.across, pinned->across, pinned->across) &&
               keepWithin(state.along, pinned->along, pinned->along);
    return keepWithin(state.across, 0, isMirrored ? overAcross / 2 : overAcross) &&
           keepWithin(state.along, 0, isMirrored ? overAlong / 2 : overAlong);
}

// Like pieces may change places: unturned ones come first, each no further left than those before it.
bool StripPairs::putLikeOnesInOrder(std::size_t piece, State& state) const {
    const auto isLike = [](const StripExtent& one, const StripExtent& other) {
        return one.across == other.across && one.along == other.along;
    };
    if (m_pieces[piece].pinned)
        return true;
    for (std::size_t other = m_isAnyPinned ? 0 : 1; other < piece; ++other) { // the mirrored one stays
        if (m_pieces[other].pinned || !std::ranges::equal(m_pieces[other].ways, m_pieces[piece].ways, isLike))
            continue;
        if (m_way[other] > m_way[piece] ||
            (m_way[other] == m_way[piece] && !state.across.demand(other, piece, 0, piece + 1)))
            return false;
    }
    return true;
}

// To all that are in already, first to the one to which it can lie in the fewest ways.
bool StripPairs::relate(std::size_t piece, State state, Related isRelated) {
    for (;;) {
        const Choice choice = fewestRelations(piece, state, isRelated);
        if (choice.other == piece)
            return bringIn(piece + 1, state);
        isRelated[choice.other] = true;
        if (choice.count == 1) {
            if (!demand(choice.relations[0], choice.other, piece, state))
                return false;
            continue;
        }
        for (std::size_t next = 0; next < choice.count; ++next) {
            if (m_choices == m_mostChoices) {
                m_isCutShort = true;
                return false;
            }
            ++m_choices;
            State after = state;
            if (demand(choice.relations[next], choice.other, piece, after) && relate(piece, after, isRelated))
                return true;
        }
        return false;
    }
}

StripPairs::Choice StripPairs::fewestRelations(std::size_t piece, const State& state,
                                               const Related& isRelated) const {
    Choice fewest{piece, {}, std::numeric_limits<std::size_t>::max()};
    for (std::size_t other = 0; other < piece && fewest.count > 1; ++other) {
        if (isRelated[other])
            continue;
        Choice choice{other, {}, 0};
        for (const Relation relation :
             {Relation::LeftOf, Relation::RightOf, Relation::Before, Relation::After}) {
            if (isPossible(relation, other, piece, state))
                choice.relations[choice.count++] = relation;
        }
        if (choice.count < fewest.count)
            fewest = choice;
    }
    return fewest;
}

bool StripPairs::isPossible(Relation relation, std::size_t one, std::size_t other, const State& state) const {
    const StripExtent& first = m_lies[one];
    const StripExtent& second = m_lies[other];
    const bool mayOverlapAcross =
        state.across.least(one, other) < first.across && state.across.least(other, one) < second.across;
    switch (relation) {
    case Relation::LeftOf:
        return state.across.least(other, one) + first.across <= 0;
    case Relation::RightOf:
        return state.across.least(one, other) + second.across <= 0;
    case Relation::Before:
        return mayOverlapAcross && state.along.least(other, one) + first.along <= 0;
    case Relation::After:
        return mayOverlapAcross && state.along.least(one, other) + second.along <= 0;
    }
    return false;
}

bool StripPairs::demand(Relation relation, std::size_t one, std::size_t other, State& state) const {
    const StripExtent& first = m_lies[one];
    const StripExtent& second = m_lies[other];
    const std::size_t in = other + 1;
    const auto overlapAcross = [&] {
        return state.across.demand(other, one, 1 - first.across, in) &&
               state.across.demand(one, other, 1 - second.across, in);
    };
    switch (relation) {
    case Relation::LeftOf:
        return state.across.demand(one, other, first.across, in);
    case Relation::RightOf:
        return state.across.demand(other, one, second.across, in);
    case Relation::Before:
        return overlapAcross() && state.along.demand(one, other, first.along, in);
    case Relation::After:
        return overlapAcross() && state.along.demand(other, one, second.along, in);
    }
    return false;
}

std::int64_t StripPairs::lengthOf(const State& state) const {
    std::int64_t length = 0;
    for (std::size_t piece = 0; piece < m_pieces.size(); ++piece)
        length = std::max(length, state.along.least(Distances::kStrip, piece) + m_lies[piece].along);
    return length;
}

} // namespace holdfast
