// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
// How decals on a roll are pieces on a strip: gap and edge margin go into the pieces and the strip's width.

#include "core/cutting/nest.h"

#include <span>
#include <vector>

namespace holdfast {

struct NestMargins {
    Millimetres gap;
    Millimetres edge;

    // Film on the nearer side of a decal that is its own; the further side takes the rest of the gap.
    Millimetres lead() const { return {gap.value / 2}; }
};

Millimetres stripWidth(Millimetres rollWidth, const NestMargins& margins);
StripPiece pieceOf(const Decal& decal, bool mayTurn, const NestMargins& margins);

StripPlace placeOf(const DecalPin& pin, const NestMargins& margins);
NestedDecal nestedAt(const Decal& decal, const StripPlace& place, Millimetres rollWidth,
                     const NestMargins& margins);

// Sorts the decals, and reckons length, least length and offcuts from where they lie.
void settle(Nest& nest);

} // namespace holdfast
