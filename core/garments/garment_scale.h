// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
// How large a drawn garment is: where its measures begin on the sheet, and how many millimetres a unit of the
// sheet is in each size. The widths across are middling ones of our own (common practice, no source): real
// garments differ by some centimetres from maker to maker.

#include "core/garments/sheet.h"

#include <string_view>

namespace holdfast {

struct GarmentMeasures {
    SheetBox body;       // that can be decorated; its top is the seam or hem that distances are measured from
    SheetPoint seam;     // its top, on the centre line
    double units = 1;    // the width measured, in sheet units
    double middle = 1;   // the same in mm, of size M
    double sizeStep = 0; // mm from one letter size to the next
    double atBirth = 1;  // mm, of the smallest child's size
    double perYear = 0;  // mm that a year adds
};

// An outline that is not drawn counts as a tee.
const GarmentMeasures& garmentMeasures(std::string_view outline);

// `size` as the maker wrote it: XS … 3XL, or months or years for children ("6–12 months", "3-4 y", "18 m");
// any other counts as M.
double millimetresPerUnit(std::string_view outline, std::string_view size);

} // namespace holdfast
