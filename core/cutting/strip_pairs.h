// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
// Whether a few pieces fit before an end, by trying how each two of them lie to one another: one left of the
// other, or one before the other while they overlap across the strip. Every packing is exactly one choice for
// all the pairs, so where all choices fail, there is no packing.
//
// Pieces come in one after another, the largest first: where some of them do not fit, the rest need not be
// tried. From each choice follow the least distances between all pieces (longest paths). In the manner of
// Fekete, Schepers and van der Veen 2007 (packing classes) [M]. Made for about ten pieces.

#include "core/cutting/strip.h"

#include <array>

namespace holdfast {

class StripPairs {
public:
    static constexpr std::size_t kMostPieces = 12;

    struct Piece {
        std::vector<StripExtent> ways; // one or two
        std::optional<StripPlace> pinned;
    };

    enum class Answer { Fits, DoesNotFit, NotKnown };

    // REQUIRES: at most kMostPieces.
    StripPairs(std::int64_t width, std::vector<Piece> pieces);

    // Not known: it made `mostChoices`, and there were more.
    Answer fitsBefore(std::int64_t end, std::uint64_t mostChoices);

    // Made for the last answer.
    std::uint64_t choices() const { return m_choices; }
    // Of the packing that was found last.
    std::int64_t length() const { return m_length; }

private:
    // From each piece's near side to each other's, and to the strip's own, along one axis.
    class Distances {
    public:
        static constexpr std::size_t kStrip = kMostPieces;

        Distances();
        std::int64_t least(std::size_t from, std::size_t to) const { return m_least[from][to]; }
        // Among the first pieces, as many as given. False: it contradicts what was demanded before.
        bool demand(std::size_t from, std::size_t to, std::int64_t distance, std::size_t pieces);

    private:
        std::array<std::array<std::int64_t, kMostPieces + 1>, kMostPieces + 1> m_least;
    };

    struct State {
        Distances across;
        Distances along;
    };

    enum class Relation : std::uint8_t { LeftOf, RightOf, Before, After };

    // How the piece that comes in may lie to one that is in.
    struct Choice {
        std::size_t other = 0; // the piece itself: it is related to all
        std::array<Relation, 4> relations{};
        std::size_t count = 0;
    };
    using Related = std::array<bool, kMostPieces>;

    bool bringIn(std::size_t piece, const State& state);
    bool layOnStrip(std::size_t piece, State& state) const;
    bool putLikeOnesInOrder(std::size_t piece, State& state) const;
    bool relate(std::size_t piece, State state, Related isRelated);
    Choice fewestRelations(std::size_t piece, const State& state, const Related& isRelated) const;
    bool isPossible(Relation relation, std::size_t one, std::size_t other, const State& state) const;
    bool demand(Relation relation, std::size_t one, std::size_t other, State& state) const;
    std::int64_t lengthOf(const State& state) const;

    std::int64_t m_width = 0;
    std::int64_t m_end = 0;
    std::vector<Piece> m_pieces; // pinned ones first, then the largest
    bool m_isAnyPinned = false;
    std::array<StripExtent, kMostPieces> m_lies{}; // as the pieces that are in lie
    std::array<std::size_t, kMostPieces> m_way{};
    std::uint64_t m_choices = 0;
    std::uint64_t m_mostChoices = 0;
    bool m_isCutShort = false;
    std::int64_t m_length = 0;
};

} // namespace holdfast
