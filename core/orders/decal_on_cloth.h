// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
// Whether a decal lies on the cloth of its garment, at the size of that garment: within the drawn outline,
// and clear of zip, buttons, pocket and seams. Film never lies across a zip or buttons. Across a pocket, a
// seam, a collar or a hem it may, once the style says by which way round such a thing is pressed.

#include "core/facts/blank_style.h"
#include "core/facts/order.h"

#include <optional>
#include <span>
#include <string>
#include <string_view>

namespace holdfast {

// Where a decal lies, in the measures of its placement.
struct DecalSpot {
    Placement placement = Placement::Chest;
    Millimetres below;
    Millimetres aside;
    Millimetres width;
    Millimetres height;

    bool operator==(const DecalSpot&) const = default;
};

DecalSpot spotOf(const Decal& decal);

// "It runs 24 mm over the lower edge and lies across the pocket."; empty: it lies on the cloth.
Sentence offClothWords(const BlankStyle& style, std::string_view size, const DecalSpot& spot);

// The nearest spot for it on the cloth, clear of the others on its side that it does not lie on already; else
// for the largest of its shape that there is one for. None: it lies on the cloth as it is, or nowhere.
std::optional<DecalSpot> betterSpot(const BlankStyle& style, std::string_view size, const DecalSpot& spot,
                                    std::span<const DecalSpot> others);

// "24 mm up, 10 mm to the wearer’s left" or "as 209 × 220 mm, 24 mm up": how one gets from a spot to another.
Sentence wayToSpot(const DecalSpot& from, const DecalSpot& to);

} // namespace holdfast
