// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
// Points, lines and boxes on a drawing's sheet, y downwards. Plain geometry; knows no garment and no shop.

#include <optional>
#include <span>
#include <vector>

namespace holdfast {

struct SheetPoint {
    double x = 0;
    double y = 0;

    bool operator==(const SheetPoint&) const = default;
};

struct SheetLine {
    std::vector<SheetPoint> points;
    bool isClosed = false; // the last point is joined to the first
};

struct SheetBox {
    double left = 0;
    double top = 0;
    double right = 0;
    double bottom = 0;

    double width() const { return right - left; }
    double height() const { return bottom - top; }
    SheetPoint centre() const { return {(left + right) / 2, (top + bottom) / 2}; }
    SheetBox grownBy(double margin) const {
        return {left - margin, top - margin, right + margin, bottom + margin};
    }
    SheetBox movedBy(double x, double y) const { return {left + x, top + y, right + x, bottom + y}; }
};

// Whether a stretch of the straight line lies inside the box; touching its edge is not inside.
bool crosses(SheetPoint from, SheetPoint to, const SheetBox& box);
// Whether any stretch of the line does.
bool crosses(const SheetLine& line, const SheetBox& box);
// By odd and even, over all closed lines together.
bool isInside(SheetPoint point, std::span<const SheetLine> area);
bool shareArea(const SheetBox& one, const SheetBox& other);

// Where a straight line across the sheet at that height (or down it, at that distance) meets the area's edge,
// in rising order.
std::vector<double> meetsAcross(double y, std::span<const SheetLine> area);
std::vector<double> meetsDown(double x, std::span<const SheetLine> area);

} // namespace holdfast
