// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
// The drawings of resources/garments as text, embedded when the program is built: what is reckoned about a
// garment's shape comes from the very picture that is seen.

#include <span>
#include <string_view>

namespace holdfast {

struct GarmentDrawing {
    std::string_view outline; // "tee"
    std::string_view svg;
};

std::span<const GarmentDrawing> garmentDrawings();

} // namespace holdfast
