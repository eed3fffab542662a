// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
// Whether the letters of a wording are large enough to be weeded.

#include "core/facts/order.h"

namespace holdfast {

// How wide the thinnest strokes of cut words are: 0.12 of the letter height for the serif face, 0.15 for the
// plain one. The letter height is that of capitals, judged from the decal's height by which letters reach
// above and below the line. An estimate from the program's own two faces; below kThinnestStroke film tears
// when it is weeded (common practice, no source).
double strokeEstimate(const Wording& wording, Millimetres height); // mm
inline constexpr double kThinnestStroke = 2.0;

} // namespace holdfast
