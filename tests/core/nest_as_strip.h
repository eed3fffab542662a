// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
// What lies on a nest, as rectangles on a strip, made from the drawing alone: each decal takes the gap with
// it, and the strip is what the edges leave and one gap more. For checks that do without the nesting's own
// words.

#include "core/cutting/nest.h"

namespace holdfast::strips {

inline StripTask asStrip(const Nest& nest) {
    StripTask task{(nest.rollWidth - nest.edge * 2 + nest.gap).value, std::nullopt, {}};
    for (const NestedDecal& decal : nest.decals) {
        StripPiece piece;
        piece.across = (decal.lies.acrossSize + nest.gap).value;
        piece.along = (decal.lies.alongSize + nest.gap).value;
        piece.mayTurn = nest.mayTurn;
        // The first decal keeps half a gap from the cut end, and the parting cut as much from the last.
        if (decal.isPinned)
            piece.pinned = StripPlace{(decal.lies.across - nest.edge).value,
                                      decal.lies.along.value - nest.gap.value / 2, false};
        task.pieces.push_back(piece);
    }
    return task;
}

} // namespace holdfast::strips
