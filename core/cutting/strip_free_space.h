// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
// The free space between what lies on a strip, as the largest rectangles that are free (they overlap), and
// single pieces laid into it where they fit tightest. Jylänki 2010 (maximal rectangles, best short side fit)
// [M].

#include "core/cutting/strip_frame.h"

#include <span>

namespace holdfast {

class StripFreeSpace {
public:
    // Free rectangles that none of the pieces fits into are not kept.
    StripFreeSpace(const FillFrame& frame, std::span<const FillPiece> pieces);

    void take(const TakenArea& area);

    // Where a piece fits tightest; none: nowhere.
    std::optional<FilledPlace> tightest(const FillPiece& piece) const;
    // Where its end comes to lie nearest to the cut end, there furthest to the left; none: nowhere.
    std::optional<FilledPlace> lowest(const FillPiece& piece) const;

private:
    bool isWorthKeeping(const TakenArea& free) const;
    void keepIfLargest(const TakenArea& free);

    std::vector<TakenArea> m_free;
    std::vector<TakenArea> m_cut;
    std::int64_t m_leastAcross = 0;
    std::int64_t m_leastAlong = 0;
};

TakenArea areaOf(const FillPiece& piece, const FilledPlace& place);

} // namespace holdfast
