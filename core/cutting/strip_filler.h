#pragma once
// Fills a frame from its cut end: the lowest gap of the skyline takes the piece that fits it best.
//
// Best is: as wide as the gap and as high as both its walls; as one of them, or up to the frame's end; only
// as wide; narrower, with its top meeting a wall's or the end; else the first in the order that leaves no
// strip too narrow for any other piece; else the first that fits. Among equals the first in the order. Where
// none fits, the gap is given up. One filling costs little (about 40 ns a piece), and no memory is asked for.
// Burke, Kendall and Whitwell 2004 (best fit) [M]; scores in the manner of Leung, Zhang and Sim 2011 [M].

#include "core/cutting/strip_skyline.h"

#include <span>

namespace holdfast {

using FillOrder = std::vector<std::uint32_t>; // pieces by their place in what the filler was given

struct FillOutcome {
    std::int64_t areaLeft = 0; // of pieces that found no room; too much where it lost more than it may
    std::int64_t end = 0;      // furthest end of a piece that was laid
    bool isStopped = false;

    static constexpr std::int64_t kTooMuch = std::numeric_limits<std::int64_t>::max();
};

class StripFiller {
public:
    StripFiller(const FillFrame& frame, std::span<const FillPiece> pieces);

    // Ends early when more area than `mostLost` is given up. REQUIRES: an order with each piece once.
    FillOutcome fill(const FillOrder& order, std::int64_t mostLost = FillOutcome::kTooMuch,
                     const ShouldStop& shouldStop = {});

    // Of the last filling.
    const std::vector<FilledPlace>& places() const { return m_places; }
    bool isLaid(std::size_t piece) const { return m_isLaid[piece] != 0; }

private:
    static constexpr std::uint32_t kNone = std::numeric_limits<std::uint32_t>::max();

    // A piece the one way or the other.
    struct Way {
        std::int64_t across = 0;
        std::int64_t along = 0;
        std::uint32_t piece = 0;
        std::uint32_t acrossSize = 0; // among the different sizes there are
        std::uint32_t alongSize = 0;
        bool isTurned = false;
    };

    // The different sizes there are, ascending, found by a hash.
    class Sizes {
    public:
        void add(std::int64_t size) { m_sizes.push_back(size); }
        void settle();
        std::uint32_t find(std::int64_t size) const; // or kNone
        std::size_t count() const { return m_sizes.size(); }
        std::int64_t operator[](std::size_t index) const { return m_sizes[index]; }

    private:
        std::size_t slotOf(std::int64_t size) const;

        std::vector<std::int64_t> m_sizes;
        std::vector<std::uint32_t> m_slots;
    };

    // A list through the ways, in the order; ways of laid pieces are dropped as they are met.
    struct Links {
        std::vector<std::uint32_t> next;
        std::vector<std::uint32_t> first;
    };

    void begin(const FillOrder& order);
    std::uint32_t bestFor(const StripGap& gap);
    std::uint32_t asWideAs(const StripGap& gap);
    std::uint32_t withTopAt(const StripGap& gap, std::int64_t height);
    std::uint32_t firstThatFits(const StripGap& gap);
    bool canLie(const StripGap& gap, const Way& way) const;
    bool leavesUseful(const StripGap& gap, const Way& way) const;
    std::optional<std::int64_t> acrossFor(const StripGap& gap, const Way& way) const;
    void lay(const StripGap& gap, std::uint32_t way);
    void findNarrowest();
    template <class Accept>
    std::uint32_t firstOf(Links& links, std::size_t list, Accept accept);

    StripSkyline m_skyline;
    std::vector<std::size_t> m_numbers; // in the task
    std::vector<std::int64_t> m_areas;
    std::vector<Way> m_ways;
    std::vector<std::uint32_t> m_firstWay; // by piece; one more at the end
    Sizes m_acrossSizes;
    Sizes m_alongSizes;

    Links m_byAcross;
    Links m_byAlong;
    Links m_inOrder;
    std::vector<std::uint32_t> m_leftByAcross; // ways left, by size across
    std::size_t m_narrowest = 0;               // the least size across that is left
    std::vector<char> m_isLaid;
    std::vector<FilledPlace> m_places;
    FillOutcome m_outcome;
};

} // namespace holdfast
