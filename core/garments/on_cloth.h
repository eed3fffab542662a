// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
// Whether a box lies on a garment's cloth, and where near by it would. Boxes are in millimetres from the top
// seam at the centre line, as they are seen: to the right and downwards positive. Pure geometry: the shape
// may be any.

#include "core/garments/garment_shape.h"

#include <optional>
#include <span>
#include <vector>

namespace holdfast {

// A garment's shape as large as it is.
struct Cloth {
    const GarmentShape& shape;
    SheetPoint seam;
    double perUnit = 1;                  // mm
    bool isBack = false;                 // what only the front has is not there
    std::span<const GarmentPart> across; // what may be lain across
};

// How far a box lies off the cloth, in mm, on each side; 0: not at all.
struct OffCloth {
    bool isAllOff = false; // no part of it lies on cloth
    double above = 0;
    double below = 0;
    double aside = 0; // on the side where it is further off
    std::vector<GarmentPart> across;

    bool isClean() const { return !isAllOff && above == 0 && below == 0 && aside == 0 && across.empty(); }
};

// A box keeps this far from zips, buttons, pockets and seams (common practice, no source).
inline constexpr double kClearOfParts = 3; // mm

OffCloth offCloth(const Cloth& cloth, const SheetBox& box);
bool liesOnCloth(const Cloth& cloth, const SheetBox& box);

enum class ClothZone { Body, Sleeve };

// The nearest place, by whole millimetres from where it is, at which the box lies on the cloth of its zone
// and clear of the others; as it is where it lies there already. None: it is too large for that.
std::optional<SheetBox> nearestOnCloth(const Cloth& cloth, ClothZone zone, const SheetBox& box,
                                       std::span<const SheetBox> clearOf);
// The same for the largest box of its shape for which there is a place.
std::optional<SheetBox> largestOnCloth(const Cloth& cloth, ClothZone zone, const SheetBox& box,
                                       std::span<const SheetBox> clearOf);

} // namespace holdfast
