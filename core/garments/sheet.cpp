// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/garments/sheet.h"

#include <algorithm>
#include <cstddef>

namespace holdfast {

namespace {

template <class Visit>
void eachStretch(const SheetLine& line, Visit visit) {
    for (std::size_t at = 1; at < line.points.size(); ++at)
        visit(line.points[at - 1], line.points[at]);
    if (line.isClosed && line.points.size() > 1)
        visit(line.points.back(), line.points.front());
}

// Shortens the stretch [from, to] of a line, as shares of its length, to where start + share × along stays
// between low and high. False where nothing is left.
bool keepBetween(double start, double along, double low, double high, double& from, double& to) {
    if (along == 0)
        return low < start && start < high;
    double enters = (low - start) / along;
    double leaves = (high - start) / along;
    if (enters > leaves)
        std::swap(enters, leaves);
    from = std::max(from, enters);
    to = std::min(to, leaves);
    return from < to;
}

// Where the area's edge meets a straight line at `level` of one coordinate, as the other coordinate.
std::vector<double> meets(double level, std::span<const SheetLine> area, double SheetPoint::* held,
                          double SheetPoint::* other) {
    std::vector<double> meetings;
    for (const SheetLine& line : area)
        eachStretch(line, [&](SheetPoint from, SheetPoint to) {
            // A corner on the level counts with one of its two stretches.
            if ((from.*held <= level) == (to.*held <= level))
                return;
            const double share = (level - from.*held) / (to.*held - from.*held);
            meetings.push_back(from.*other + share * (to.*other - from.*other));
        });
    std::ranges::sort(meetings);
    return meetings;
}

} // namespace

bool crosses(SheetPoint from, SheetPoint to, const SheetBox& box) {
    double begin = 0, end = 1;
    return keepBetween(from.x, to.x - from.x, box.left, box.right, begin, end) &&
           keepBetween(from.y, to.y - from.y, box.top, box.bottom, begin, end);
}

bool crosses(const SheetLine& line, const SheetBox& box) {
    bool found = false;
    eachStretch(line, [&](SheetPoint from, SheetPoint to) { found = found || crosses(from, to, box); });
    return found;
}

bool isInside(SheetPoint point, std::span<const SheetLine> area) {
    const auto meetings = meetsAcross(point.y, area);
    return std::ranges::count_if(meetings, [&](double x) { return x < point.x; }) % 2 == 1;
}

bool shareArea(const SheetBox& one, const SheetBox& other) {
    return one.left < other.right && other.left < one.right && one.top < other.bottom &&
           other.top < one.bottom;
}

std::vector<double> meetsAcross(double y, std::span<const SheetLine> area) {
    return meets(y, area, &SheetPoint::y, &SheetPoint::x);
}

std::vector<double> meetsDown(double x, std::span<const SheetLine> area) {
    return meets(x, area, &SheetPoint::x, &SheetPoint::y);
}

} // namespace holdfast
