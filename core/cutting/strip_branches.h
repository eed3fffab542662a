// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
// Lays pieces before an end by trying several for each gap, and judging each by what the greedy rule leaves
// over when it fills the rest after it. Of all that were tried for the next piece the best few go on, more of
// them the fewer pieces are left, for then a filling costs less.
//
// Of what it lays nothing is lost beyond the frame's spare area. A beam search (Ow and Morton 1988 [M]) that
// judges by filling to the end (the pilot method, Duin and Voß 1999 [M]).

#include "core/cutting/strip_random.h"
#include "core/cutting/strip_rule.h"

namespace holdfast {

class StripBranches {
public:
    static constexpr std::size_t kWaysTried = 5; // for a gap

    // `spare` is the frame's area beyond the pieces and pins.
    StripBranches(const FillFrame& frame, std::span<const FillPiece> pieces, FillHabit habit,
                  std::int64_t spare);

    // All pieces before the frame's end; none: not found, or `mayFill` said no (it is asked before each
    // filling). `width` is how many branches there are at first. REQUIRES: an order with each piece once,
    // after which the rule leaves `areaLeft`, more than nothing.
    std::optional<std::vector<FilledPlace>> search(const FillOrder& order, std::int64_t areaLeft,
                                                   double width, StripRandom& random,
                                                   const std::function<bool()>& mayFill);

private:
    // Some pieces laid.
    struct Branch {
        StripSkyline::Levels levels;
        StripRule::Left left;
        std::vector<FilledPlace> laid;
        std::int64_t lost = 0;
        std::int64_t areaToLay = 0;
        std::int64_t areaLeft = 0; // after the rule laid what it could of that
        std::uint64_t laidSizes = 0;
    };

    // One more piece on a branch.
    struct Twig {
        std::size_t branch = 0;
        StripGap gap;
        std::uint32_t way = 0;
        std::int64_t across = 0;
        std::int64_t areaLeft = 0;
        std::uint64_t drawn = 0; // decides among equals
        std::uint64_t laidSizes = 0;
    };

    void sprout(std::size_t branch);
    std::uint32_t goToNextGap(Branch& branch, std::optional<StripGap>& gap);
    std::vector<std::uint32_t> waysFor(const StripGap& gap, std::uint32_t best);
    void tryTwig(Twig twig, bool isBest);
    void raise(const Branch& branch, const Twig& twig);
    std::int64_t fillAfter(const Branch& branch, std::uint32_t way, std::vector<FilledPlace>* places);
    void keepTwig(const Twig& twig);
    bool isNew(std::uint64_t laidSizes);
    std::vector<Branch> grown();
    std::size_t mostBranches(std::size_t laid) const;
    FilledPlace placeOf(std::uint32_t way, const StripGap& gap, std::int64_t across) const;

    StripRule m_rule;
    StripSkyline m_skyline;
    std::int64_t m_spare = 0;
    double m_width = 1;
    StripRandom* m_random = nullptr;
    const std::function<bool()>* m_mayFill = nullptr;

    std::vector<Branch> m_branches;
    std::vector<Twig> m_twigs;
    std::vector<std::int64_t> m_leastLeft; // over by the best twigs, as many as may go on
    std::size_t m_most = 1;                // twigs that may go on
    std::vector<std::uint64_t> m_seen;
    std::optional<std::vector<FilledPlace>> m_found;
    bool m_isOver = false;
};

} // namespace holdfast
