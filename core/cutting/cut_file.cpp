// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/cutting/cut_file.h"

#include "core/trade/assertion.h"

#include <algorithm>
#include <array>
#include <charconv>
#include <string_view>

namespace holdfast {

namespace {

constexpr double kLargestLabel = 3; // mm
constexpr double kLineWidth = 0.1;  // mm

// "12.5", with a decimal point wherever the program runs; to the micrometre.
std::string number(double value) {
    std::array<char, 64> text{};
    const auto end =
        std::to_chars(text.data(), text.data() + text.size(), value, std::chars_format::fixed, 3).ptr;
    std::string written(text.data(), end);
    written.erase(written.find_last_not_of('0') + 1);
    if (written.ends_with('.'))
        written.pop_back();
    return written == "-0" ? "0" : written;
}

std::string number(Millimetres length) {
    return std::to_string(length.value);
}

std::string escaped(std::string_view text) {
    std::string safe;
    for (const char letter : text) {
        switch (letter) {
        case '&':
            safe += "&amp;";
            break;
        case '<':
            safe += "&lt;";
            break;
        case '>':
            safe += "&gt;";
            break;
        case '"':
            safe += "&quot;";
            break;
        default:
            // XML 1.0 knows no other control characters than these.
            if (static_cast<unsigned char>(letter) >= 0x20 || letter == '\t' || letter == '\n')
                safe += letter;
        }
    }
    return safe;
}

std::string point(OutlinePoint where) {
    return number(where.x) + "," + number(where.y);
}

std::string pathOf(const NestedDecal& decal, const std::vector<OutlineLoop>& loops) {
    const auto written = [&](OutlinePoint worn) { return point(onSheet(decal, worn)); };
    std::string path;
    for (const OutlineLoop& loop : loops) {
        path += "M" + written(loop.start);
        for (const OutlineStretch& stretch : loop.stretches) {
            if (stretch.isCurve)
                path += "C" + written(stretch.control1) + " " + written(stretch.control2) + " " +
                        written(stretch.end);
            else
                path += "L" + written(stretch.end);
        }
        path += "Z";
    }
    return path;
}

const DecalOutline& outlineOf(const std::vector<DecalOutline>& outlines, DecalId decal) {
    const auto found = std::ranges::find(outlines, decal, &DecalOutline::decal);
    HOLDFAST_ASSERT(found != outlines.end());
    return *found;
}

std::string cutLines(const Nest& nest, const std::vector<DecalOutline>& outlines) {
    std::string svg = "  <g id=\"cut-lines\" fill=\"none\" stroke=\"#000000\" stroke-width=\"" +
                      number(kLineWidth) + "\">\n";
    for (const NestedDecal& decal : nest.decals)
        svg += "    <path id=\"decal-" + std::to_string(decal.decal.value) + "\" d=\"" +
               pathOf(decal, outlineOf(outlines, decal.decal).loops) + "\"/>\n";
    return svg + "  </g>\n";
}

std::string weedingFrames(const Nest& nest) {
    std::string svg = "  <g id=\"weeding-frames\" fill=\"none\" stroke=\"#000000\" stroke-width=\"" +
                      number(kLineWidth) + "\">\n";
    for (const NestedDecal& decal : nest.decals)
        svg += "    <rect x=\"" + number(decal.box.along) + "\" y=\"" + number(decal.box.across) +
               "\" width=\"" + number(decal.box.alongSize) + "\" height=\"" + number(decal.box.acrossSize) +
               "\"/>\n";
    return svg + "  </g>\n";
}

std::string partingCut(const Nest& nest) {
    return "  <g id=\"parting-cut\" fill=\"none\" stroke=\"#000000\" stroke-width=\"" + number(kLineWidth) +
           "\">\n    <path d=\"M" + number(nest.length) + ",0V" + number(nest.rollWidth) + "\"/>\n  </g>\n";
}

// In the gap below each decal, where no cut line runs: for the eye, not for the knife.
std::string labels(const Nest& nest, const std::vector<DecalOutline>& outlines) {
    const double size = std::min(kLargestLabel, static_cast<double>(nest.gap.value) / 2);
    if (size <= 0)
        return {};
    std::string svg = "  <g id=\"labels-not-cut\" fill=\"#808080\" stroke=\"none\" "
                      "font-family=\"sans-serif\" font-size=\"" +
                      number(size) + "\">\n";
    for (const NestedDecal& decal : nest.decals) {
        const double below = static_cast<double>((decal.lies.across + decal.lies.acrossSize).value);
        svg += "    <text x=\"" + number(decal.lies.along) + "\" y=\"" + number(below + size * 0.8) + "\">" +
               escaped(outlineOf(outlines, decal.decal).label) + "</text>\n";
    }
    return svg + "  </g>\n";
}

} // namespace

OutlinePoint onSheet(const NestedDecal& decal, OutlinePoint worn) {
    const double along = static_cast<double>(decal.lies.along.value);
    const double across = static_cast<double>(decal.lies.across.value);
    if (decal.isTurned) {
        const double width = static_cast<double>(decal.lies.alongSize.value);
        return {along + width - worn.x, across + worn.y};
    }
    return {along + worn.y, across + worn.x};
}

std::string cutFileSvg(const Nest& nest, const std::vector<DecalOutline>& outlines, const CutFileWish& wish) {
    const std::string length = number(nest.length);
    const std::string width = number(nest.rollWidth);
    std::string svg = "<?xml version=\"1.0\" encoding=\"UTF-8\"?>\n"
                      "<svg xmlns=\"http://www.w3.org/2000/svg\" version=\"1.1\" width=\"" +
                      length + "mm\" height=\"" + width + "mm\" viewBox=\"0 0 " + length + " " + width +
                      "\">\n";
    svg += "  <title>" + escaped(wish.title) + "</title>\n";
    svg += cutLines(nest, outlines);
    if (wish.hasFrames)
        svg += weedingFrames(nest);
    if (wish.hasPartingCut)
        svg += partingCut(nest);
    svg += labels(nest, outlines);
    return svg + "</svg>\n";
}

} // namespace holdfast
