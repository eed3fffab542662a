// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
// Strip packings made in one go, by filling the strip in several orders.

#include "core/cutting/strip_filler.h"
#include "core/cutting/strip_plan.h"

namespace holdfast {

struct Filling {
    std::vector<FilledPlace> places;
    std::int64_t end = 0;   // furthest end of a piece that was laid, or of a pin
    bool isStopped = false; // it was asked to stop, and is poorer for it
};

// Largest first: by the longer side (or the side across), the side along, the area, the sum of the sides. Of
// very many pieces only the first orders, so that the answer comes at once.
std::vector<FillOrder> fillOrders(std::span<const FillPiece> pieces);

// The shortest that several orders give of all these pieces, turned, unturned and lying, in rows, and, of not
// too many, as low as each can lie; the frame's end does not count. Stopped, what is not laid yet follows in
// rows. REQUIRES: pieces in the task's order.
Filling fillInSeveralOrders(const FillFrame& frame, std::span<const FillPiece> pieces,
                            const ShouldStop& shouldStop);

// On a strip that ends: as many of the earlier pieces as are found to fit.
Filling fillByPrecedence(const StripPlan& plan, const ShouldStop& shouldStop);

// Each of the pieces that is not laid yet, in the order given, where it fits tightest between what is.
// REQUIRES: all pieces of the filling among the plan's.
void layIntoFreeSpace(const StripPlan& plan, Filling& filling, const ShouldStop& shouldStop);

} // namespace holdfast
