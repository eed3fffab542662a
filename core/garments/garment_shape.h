// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
// The shape of a drawn garment: its cloth, and what on it no decal should lie across. Read from the drawing
// itself, where each line says by data-part what it is, and by data-side="front" that the back has none.
// Sheet units; see garment_scale.h for millimetres.

#include "core/garments/sheet.h"
#include "core/trade/phrase.h"

#include <string>
#include <string_view>
#include <vector>

namespace holdfast {

enum class GarmentPart { Zip, Buttons, Pocket, Seam, Armhole, Hem, Collar, Strap };

struct PartLines {
    GarmentPart part = GarmentPart::Seam;
    bool isFrontOnly = false;
    std::vector<SheetLine> lines;
};

struct GarmentShape {
    std::vector<SheetLine> cloth; // closed
    SheetBox reach;               // of the cloth
    std::vector<PartLines> parts;
    double sleevesFrom = 0; // from the centre line: what lies further out is a sleeve; 0: none is drawn
};

// An outline that is not drawn counts as a tee, which is what is painted for it.
const GarmentShape& garmentShape(std::string_view outline);

// Of a drawing in SVG, all of whose coordinates are on its sheet (no transforms).
GarmentShape shapeFromSvg(std::string_view svg, double centreLine);

Phrase partWords(GarmentPart part); // "the zip", "a seam"

} // namespace holdfast
