// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
// Where a decal usually sits on a garment and how large it is there: presets of the trade with their
// measures, which the maker may change. Measures are from the top seam (collar, hem of a bag's mouth, strap
// seam) at the centre line of the body.

#include "core/facts/placement.h"
#include "core/trade/units.h"

#include <optional>
#include <span>
#include <string_view>

namespace holdfast {

struct PlacementPreset {
    Placement placement = Placement::Chest;
    Millimetres below;  // from the top seam to the decal's upper edge
    Millimetres aside;  // decal's centre from the centre line, to the wearer's left positive
    Millimetres wide;   // usual width of a decal there
    Millimetres widest; // what fits there
    Millimetres tallest;
};

// The presets that make sense on a drawn garment (tee, long-sleeve, hoodie, tote, bib, bodysuit, cap, apron),
// the usual one first; none for an outline that is not drawn. Measures suit a middle size; a decal as wide
// and as tall as fits there lies on the cloth. Common practice, no source.
std::span<const PlacementPreset> presetsFor(std::string_view outline);
std::optional<PlacementPreset> presetFor(std::string_view outline, Placement placement);
// The same for a size: on smaller garments nearer to the seam and smaller, on larger ones as far below it and
// as large as on a middle one. A sleeve's goes with the sleeve.
std::optional<PlacementPreset> presetFor(std::string_view outline, Placement placement,
                                         std::string_view size);

} // namespace holdfast
