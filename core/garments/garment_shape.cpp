// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/garments/garment_shape.h"

#include "core/garments/garment_drawings.h"
#include "core/garments/garment_scale.h"
#include "core/garments/svg_path.h"
#include "core/trade/enumerators.h"

#include <algorithm>
#include <array>
#include <cmath>
#include <cstdlib>
#include <limits>
#include <map>
#include <numbers>
#include <optional>
#include <utility>

namespace holdfast {

namespace {

using PartAndName = std::pair<GarmentPart, std::string_view>;
constexpr std::array kPartNames{
    PartAndName{GarmentPart::Zip, "zip"},         PartAndName{GarmentPart::Buttons, "buttons"},
    PartAndName{GarmentPart::Pocket, "pocket"},   PartAndName{GarmentPart::Seam, "seam"},
    PartAndName{GarmentPart::Armhole, "armhole"}, PartAndName{GarmentPart::Hem, "hem"},
    PartAndName{GarmentPart::Collar, "collar"},   PartAndName{GarmentPart::Strap, "strap"}};
static_assert(hasEach<GarmentPart>(kPartNames, &PartAndName::first));

constexpr int kSidesOfARound = 24;

// The value of an attribute of one element; empty where it has none.
std::string_view attribute(std::string_view element, std::string_view name) {
    const std::string sought = " " + std::string(name) + "=\"";
    const std::size_t found = element.find(sought);
    if (found == std::string_view::npos)
        return {};
    const std::size_t from = found + sought.size();
    return element.substr(from, element.find('"', from) - from);
}

double numberIn(std::string_view element, std::string_view name) {
    return std::strtod(std::string(attribute(element, name)).c_str(), nullptr);
}

SheetLine roundLine(SheetPoint centre, double across, double down) {
    SheetLine line;
    line.isClosed = true;
    for (int at = 0; at < kSidesOfARound; ++at) {
        const double angle = 2 * std::numbers::pi * at / kSidesOfARound;
        line.points.push_back({centre.x + across * std::cos(angle), centre.y + down * std::sin(angle)});
    }
    return line;
}

std::vector<SheetLine> linesOf(std::string_view element) {
    if (element.starts_with("<path"))
        return linesOfPath(attribute(element, "d"));
    const SheetPoint centre{numberIn(element, "cx"), numberIn(element, "cy")};
    if (element.starts_with("<circle"))
        return {roundLine(centre, numberIn(element, "r"), numberIn(element, "r"))};
    if (element.starts_with("<ellipse"))
        return {roundLine(centre, numberIn(element, "rx"), numberIn(element, "ry"))};
    return {};
}

SheetBox reachOf(const std::vector<SheetLine>& lines) {
    constexpr double kFar = std::numeric_limits<double>::max();
    SheetBox reach{kFar, kFar, -kFar, -kFar};
    for (const SheetLine& line : lines)
        for (const SheetPoint point : line.points)
            reach = {std::min(reach.left, point.x), std::min(reach.top, point.y),
                     std::max(reach.right, point.x), std::max(reach.bottom, point.y)};
    return reach;
}

double nearestTo(double centreLine, const std::vector<SheetLine>& lines) {
    double nearest = std::numeric_limits<double>::max();
    for (const SheetLine& line : lines)
        for (const SheetPoint point : line.points)
            nearest = std::min(nearest, std::abs(point.x - centreLine));
    return nearest;
}

} // namespace

GarmentShape shapeFromSvg(std::string_view svg, double centreLine) {
    GarmentShape shape;
    for (std::size_t at = svg.find('<'); at != std::string_view::npos; at = svg.find('<', at + 1)) {
        const std::string_view element = svg.substr(at, svg.find('>', at) - at);
        const std::string_view name = attribute(element, "data-part");
        if (name == "cloth")
            std::ranges::copy(linesOf(element), std::back_inserter(shape.cloth));
        const auto* known = std::ranges::find(kPartNames, name, &PartAndName::second);
        if (known == kPartNames.end())
            continue;
        shape.parts.push_back({known->first, attribute(element, "data-side") == "front", linesOf(element)});
        if (known->first == GarmentPart::Armhole)
            shape.sleevesFrom = nearestTo(centreLine, shape.parts.back().lines);
    }
    shape.reach = reachOf(shape.cloth);
    return shape;
}

const GarmentShape& garmentShape(std::string_view outline) {
    static const std::map<std::string_view, GarmentShape> shapes = [] {
        std::map<std::string_view, GarmentShape> read;
        for (const GarmentDrawing& drawing : garmentDrawings())
            read.emplace(drawing.outline, shapeFromSvg(drawing.svg, garmentMeasures(drawing.outline).seam.x));
        return read;
    }();
    const auto found = shapes.find(outline);
    return found == shapes.end() ? shapes.at("tee") : found->second;
}

Phrase partWords(GarmentPart part) {
    switch (part) {
    case GarmentPart::Zip:
        return phrase("the zip");
    case GarmentPart::Buttons:
        return phrase("the buttons");
    case GarmentPart::Pocket:
        return phrase("the pocket");
    case GarmentPart::Seam:
        return phrase("a seam");
    case GarmentPart::Armhole:
        return phrase("the sleeve seam");
    case GarmentPart::Hem:
        return phrase("the hem");
    case GarmentPart::Collar:
        return phrase("the collar");
    case GarmentPart::Strap:
        return phrase("a strap");
    }
    return {};
}

} // namespace holdfast
