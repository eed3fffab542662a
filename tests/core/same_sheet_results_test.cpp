// SPDX-License-Identifier: GPL-3.0-or-later
// Boxes, lines and garments on a sheet of whole units, so that edges touch and corners meet: one number for
// all that comes of it (see same_results_test.cpp).

#include "core/garments/on_cloth.h"
#include "core/garments/sheet.h"
#include "core/garments/svg_path.h"
#include "tests/core/drawn_sum.h"

#include <gtest/gtest.h>

#include <array>
#include <string>

namespace holdfast::test {
namespace {

double whole(Draw& draw, std::int64_t least, std::int64_t most) {
    return static_cast<double>(draw.between(least, most));
}

SheetBox wholeBox(Draw& draw, std::int64_t least, std::int64_t most) {
    SheetBox box;
    box.left = whole(draw, least, most);
    box.top = whole(draw, least, most);
    box.right = box.left + whole(draw, 1, 5);
    box.bottom = box.top + whole(draw, 1, 5);
    return box;
}

void addBox(DrawnSum& sum, const SheetBox& box) {
    sum << box.left << box.top << box.right << box.bottom;
}

std::uint64_t sumOfSheets() {
    Draw draw{91};
    DrawnSum sum;
    for (int sheet = 0; sheet < 4000; ++sheet) {
        std::vector<SheetLine> area(static_cast<std::size_t>(draw.between(0, 2)));
        for (SheetLine& line : area) {
            for (std::int64_t point = draw.between(0, 5); point > 0; --point)
                line.points.push_back({whole(draw, 0, 6), whole(draw, 0, 6)});
            line.isClosed = !draw.oneIn(4);
        }
        const SheetBox box = wholeBox(draw, 0, 6);
        sum << shareArea(box, wholeBox(draw, 0, 6))
            << crosses({whole(draw, 0, 6), whole(draw, 0, 6)}, {whole(draw, 0, 6), whole(draw, 0, 6)}, box)
            << isInside({whole(draw, 0, 6), whole(draw, 0, 6)}, area);
        for (const SheetLine& line : area)
            sum << crosses(line, box);
        for (const double at : meetsAcross(whole(draw, 0, 6), area))
            sum << at;
        for (const double at : meetsDown(whole(draw, 0, 6), area))
            sum << at;
    }
    return sum.value();
}

TEST(SameSheetResults, BoxesAndLinesThatTouch) {
    EXPECT_EQ(sumOfSheets(), 16878437464620566846u);
}

std::uint64_t sumOfPaths() {
    constexpr std::array<std::string_view, 22> kParts{"M",  "m",   "L", "l", "H",   "v",  "C",   "c",
                                                      "z",  "Z",   "Q", " ", ",",   "1",  "2.5", "-3",
                                                      ".5", "1e1", "7", "-", "4 5", "6,1"};
    Draw draw{92};
    DrawnSum sum;
    for (int path = 0; path < 4000; ++path) {
        std::string data = draw.oneIn(9) ? "" : "M1 2";
        for (std::int64_t part = draw.between(0, 14); part > 0; --part)
            data += kParts[static_cast<std::size_t>(draw.between(0, std::ssize(kParts) - 1))];
        for (const SheetLine& line : linesOfPath(data)) {
            sum << line.points.size() << line.isClosed;
            for (const SheetPoint& point : line.points)
                sum << point.x << point.y;
        }
    }
    return sum.value();
}

TEST(SameSheetResults, PathsAsTheyAreWritten) {
    EXPECT_EQ(sumOfPaths(), 502555451441221886u);
}

// ── boxes on cloth ──

std::string atSquare(std::int64_t left, std::int64_t top, std::int64_t size) {
    const std::string s = std::to_string(size);
    return "M" + std::to_string(left) + " " + std::to_string(top) + "h" + s + "v" + s + "h-" + s + "z";
}

// A square cloth with a corner cut off, a zip down its front, a pocket and a seam.
GarmentShape drawnShape(Draw& draw) {
    const std::string corner = std::to_string(4 * draw.between(0, 3));
    return shapeFromSvg(
        "<svg><path data-part=\"cloth\" d=\"M0 0H40V32H" + corner + "L0 " + corner +
            "Z\"/><path data-part=\"zip\" data-side=\"front\" d=\"M20 " +
            std::to_string(4 * draw.between(0, 6)) + "V32\"/><path data-part=\"pocket\" d=\"" +
            atSquare(4 * draw.between(5, 8), 4 * draw.between(2, 6), 4) +
            "\"/><path data-part=\"seam\" d=\"M" + std::to_string(draw.between(2, 18)) + " 0V8\"/></svg>",
        20);
}

std::uint64_t sumOfCloths() {
    Draw draw{93};
    DrawnSum sum;
    for (int garment = 0; garment < 30; ++garment) {
        const GarmentShape shape = drawnShape(draw);
        const std::array<GarmentPart, 1> pocket{GarmentPart::Pocket};
        Cloth cloth{shape, {20, 0}, 2, draw.oneIn(2), {}};
        if (draw.oneIn(3))
            cloth.across = pocket;
        for (int spot = 0; spot < 8; ++spot) {
            const SheetBox box = wholeBox(draw, -44, 60).grownBy(whole(draw, 0, 9));
            const OffCloth off = offCloth(cloth, box);
            sum << off.isAllOff << off.above << off.below << off.aside << liesOnCloth(cloth, box);
            for (const GarmentPart part : off.across)
                sum << partWords(part);
            const std::array clearOf{wholeBox(draw, -30, 30).grownBy(3)};
            if (const auto near = nearestOnCloth(cloth, ClothZone::Body, box, clearOf))
                addBox(sum, *near);
            if (const auto large = largestOnCloth(cloth, ClothZone::Body, box.grownBy(12), clearOf))
                addBox(sum, *large);
        }
    }
    return sum.value();
}

TEST(SameSheetResults, BoxesOnCloth) {
    EXPECT_EQ(sumOfCloths(), 16996153901147105227u);
}

} // namespace
} // namespace holdfast::test
