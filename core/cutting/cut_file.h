// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
// The cut file of one roll: what the cutter is given. Mirrored, in millimetres, SVG 1.1 with width, height
// and viewBox in mm; the x axis runs along the roll, the y axis across it. Film that is pressed on cloth is
// always cut mirrored. Cut lines, weeding frames, the parting cut and labels are on layers (groups) of their
// own; a label is outside its decal's cut line.

#include "core/cutting/nest.h"

#include <string>
#include <vector>

namespace holdfast {

struct OutlinePoint {
    double x = 0;
    double y = 0;
};

// One stretch of an outline: a line to `end`, or a cubic curve by two control points.
struct OutlineStretch {
    bool isCurve = false;
    OutlinePoint control1;
    OutlinePoint control2;
    OutlinePoint end;
};

struct OutlineLoop {
    OutlinePoint start;
    std::vector<OutlineStretch> stretches; // closes itself
};

// What is cut of a decal, as it is worn: x to the right, y downwards, in mm from its upper left corner.
struct DecalOutline {
    DecalId decal;
    std::string label; // "418-b"
    std::vector<OutlineLoop> loops;
};

struct CutFileWish {
    bool hasFrames = true;     // a weeding frame round each decal
    bool hasPartingCut = true; // across the film after the last decal
    std::string title;         // "R-09, Dusk, 2026-11-26"
};

// REQUIRES: an outline for each decal of the nest.
std::string cutFileSvg(const Nest& nest, const std::vector<DecalOutline>& outlines, const CutFileWish& wish);

// Where a point of a decal's outline comes to lie on the film, mirrored: x along, y across.
OutlinePoint onSheet(const NestedDecal& decal, OutlinePoint point);

} // namespace holdfast
