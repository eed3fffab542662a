// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
// Local search over the order in which pieces are laid as low as they can lie. Where sizes have nothing to do
// with one another this reaches further than filling a frame does; where they fit together exactly it does
// not.

#include "core/cutting/strip_search.h"

namespace holdfast {

class LowestSearch {
public:
    // Begins with the orders of the construction. The frame's end does not count.
    LowestSearch(FillFrame frame, std::span<const FillPiece> pieces, std::uint64_t seed);

    // A filling that ends before `end`, the first one met in that many rounds. It goes on from there next
    // time.
    std::optional<Filling> search(std::int64_t end, std::uint64_t rounds, StripBudget& budget);

    // The least end it reached so far.
    std::int64_t reached() const { return m_end; }

private:
    bool tryNext(StripBudget& budget);
    void change(FillOrder& order);

    FillFrame m_frame;
    std::vector<FillPiece> m_pieces;
    std::vector<FillOrder> m_toBegin; // still to be tried
    FillOrder m_order;                // the best so far
    std::int64_t m_end;
    Filling m_filling;
    StripRandom m_random;
};

} // namespace holdfast
