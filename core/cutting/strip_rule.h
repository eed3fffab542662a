// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
// The greedy rule of filling: which of the pieces that are left a gap of the skyline takes.
//
// Best is: as wide as the gap and as high as both its walls; as one of them, or up to the frame's end; only
// as wide, or nearly so where the habit allows that; narrower, with its top meeting a wall's or the end; else
// the first in the order that leaves no strip too narrow for any other piece; else the first that fits. Among
// equals the first in the order. Burke, Kendall and Whitwell 2004 (best fit) [M]; scores in the manner of
// Leung, Zhang and Sim 2011 [M].

#include "core/cutting/strip_sizes.h"
#include "core/cutting/strip_skyline.h"

#include <span>

namespace holdfast {

// What a gap does where the rule leaves it a choice.
struct FillHabit {
    bool avoidsNarrowRest = false; // first a piece next to which another still fits
    bool keepsLeft = false;        // the piece at the left wall, not at the higher one
    std::int64_t mayLeave = 0;     // a piece that leaves no more of the gap's width counts as wide as the gap
};

// A piece by its place in what the rule was given, and which of its ways comes first.
struct OrderedPiece {
    std::uint32_t piece = 0;
    bool isTurnedFirst = false;
};
using FillOrder = std::vector<OrderedPiece>;

class StripRule {
public:
    static constexpr std::uint32_t kNone = std::numeric_limits<std::uint32_t>::max();

    // A piece the one way or the other.
    struct PieceWay {
        std::int64_t across = 0;
        std::int64_t along = 0;
        std::int64_t area = 0;
        std::uint32_t piece = 0;
        std::uint32_t acrossSize = 0; // among the different sizes there are
        std::uint32_t alongSize = 0;
        bool isTurned = false;
    };

    // A list through the ways, in the order; ways of laid pieces are dropped as they are met.
    struct Links {
        std::vector<std::uint32_t> next;
        std::vector<std::uint32_t> first;
    };

    // Which pieces are left, in their order.
    struct Left {
        Links byAcross;
        Links byAlong;
        Links inOrder;
        std::vector<std::uint32_t> countByAcross; // ways left, by size across
        std::size_t narrowest = 0;                // the least size across that is left
        std::vector<char> isLaid;                 // by piece
    };

    // A way that a gap may take though it is not the best for it.
    struct Candidate {
        std::uint32_t way = 0;
        bool isSnug = false; // exactly as wide as the gap, or its top meets a wall's or the end
    };

    StripRule(const FillFrame& frame, std::span<const FillPiece> pieces, FillHabit habit);

    // All are left. REQUIRES: an order with each piece once.
    void begin(const FillOrder& order);
    bool isAnyLeft() const { return m_left.narrowest < m_acrossSizes.count(); }
    const Left& left() const { return m_left; }
    void setLeft(const Left& left) { m_left = left; }

    // None: none fits.
    std::uint32_t bestFor(const StripGap& gap, const StripSkyline& skyline);
    // Of different sizes, the first few in the order, as many as given, that leave no strip too narrow for
    // any other piece.
    std::vector<Candidate> candidatesFor(const StripGap& gap, const StripSkyline& skyline,
                                         std::size_t most) const;
    // Where it comes to lie. REQUIRES: it is the best for the gap, or a candidate.
    std::int64_t acrossOf(const StripGap& gap, const StripSkyline& skyline, std::uint32_t way) const;
    void take(std::uint32_t way);

    const PieceWay& way(std::uint32_t way) const { return m_ways[way]; }
    std::size_t pieces() const { return m_left.isLaid.size(); }
    std::int64_t area() const { return m_area; } // of all pieces
    std::size_t numberInTask(std::uint32_t piece) const { return m_numbers[piece]; }

private:
    // A gap, and the skyline it is in.
    struct Place {
        const StripGap& gap;
        const StripSkyline& skyline;
    };

    std::uint32_t asWideAs(const Place& place);
    std::uint32_t ofSizeAcross(const Place& place, std::uint32_t size);
    std::uint32_t withTopAt(const Place& place, std::int64_t height);
    std::uint32_t firstThatFits(const Place& place);
    bool canLie(const Place& place, const PieceWay& way) const;
    bool leavesUseful(const StripGap& gap, const PieceWay& way) const;
    std::optional<std::int64_t> acrossFor(const Place& place, const PieceWay& way) const;
    void findNarrowest();
    template <class Accept>
    std::uint32_t firstOf(Links& links, std::size_t list, Accept accept);

    FillHabit m_habit;
    std::vector<std::size_t> m_numbers; // in the task
    std::int64_t m_area = 0;
    std::vector<PieceWay> m_ways;
    std::vector<std::uint32_t> m_firstWay; // by piece; one more at the end
    StripSizes m_acrossSizes;
    StripSizes m_alongSizes;
    Left m_left;
};

} // namespace holdfast
