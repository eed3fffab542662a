// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
// Path data as SVG 1.1, section 8.3, writes it: moves, straight lines, cubic curves and closing, absolute and
// relative. Curves become short straight lines.

#include "core/garments/sheet.h"

#include <string_view>
#include <vector>

namespace holdfast {

// Stops at the first thing that is none of these; what was read until then is kept.
std::vector<SheetLine> linesOfPath(std::string_view data);

} // namespace holdfast
