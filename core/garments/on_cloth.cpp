// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/garments/on_cloth.h"

#include <algorithm>
#include <cmath>

namespace holdfast {

namespace {

constexpr double kRounding = 0.5;    // mm: boxes are kept in whole millimetres
constexpr double kSmallestSide = 5;  // mm, of what can be cut and weeded
constexpr double kSmallest = 0.05;   // of a box's size, below which no place is looked for
constexpr double kSizeWithin = 0.01; // of its size, the largest one is found
constexpr double kTried = 60;        // places that are tried first across the garment, and as many down

SheetBox inUnits(const Cloth& cloth, const SheetBox& box) {
    return {cloth.seam.x + box.left / cloth.perUnit, cloth.seam.y + box.top / cloth.perUnit,
            cloth.seam.x + box.right / cloth.perUnit, cloth.seam.y + box.bottom / cloth.perUnit};
}

bool mayLieAcross(const Cloth& cloth, const PartLines& part) {
    return (cloth.isBack && part.isFrontOnly) ||
           std::ranges::find(cloth.across, part.part) != cloth.across.end();
}

bool liesOn(const PartLines& part, const SheetBox& box) {
    return std::ranges::any_of(part.lines, [&](const SheetLine& line) {
        return crosses(line, box) || (line.isClosed && isInside(box.centre(), std::span(&line, 1)));
    });
}

bool isWithinEdges(const Cloth& cloth, const SheetBox& box) {
    return std::ranges::none_of(cloth.shape.cloth,
                                [&](const SheetLine& line) { return crosses(line, box); }) &&
           isInside(box.centre(), cloth.shape.cloth);
}

// What of a stretch lies beyond the area's edge at its low and at its high end; none where it does not meet
// the area at all.
struct Beyond {
    double low = 0;
    double high = 0;
};

std::optional<Beyond> beyond(double low, double high, const std::vector<double>& meetings) {
    std::optional<Beyond> found;
    for (std::size_t at = 0; at + 1 < meetings.size(); at += 2) {
        const double from = std::max(low, meetings[at]);
        const double to = std::min(high, meetings[at + 1]);
        if (from >= to)
            continue;
        if (!found)
            found = Beyond{from - low, 0};
        found->high = high - to;
    }
    return found;
}

// Where the cloth's edge bends within the box, and just inside the box's own sides: between these the edge is
// straight, so that it is furthest off at one of them.
std::vector<double> levelsWithin(const Cloth& cloth, double low, double high, double SheetPoint::* of) {
    const double inset = std::min(1e-6, (high - low) / 4);
    std::vector<double> levels{low + inset, high - inset};
    for (const SheetLine& line : cloth.shape.cloth)
        for (const SheetPoint point : line.points)
            if (low < point.*of && point.*of < high) {
                levels.push_back(point.*of - inset);
                levels.push_back(point.*of + inset);
            }
    return levels;
}

// The most that is beyond the edge at any level between `low` and `high`, along the other direction.
std::optional<Beyond> mostBeyond(const Cloth& cloth, const SheetBox& box, bool isDown, double low,
                                 double high) {
    std::optional<Beyond> most;
    for (const double level : levelsWithin(cloth, low, high, isDown ? &SheetPoint::x : &SheetPoint::y)) {
        const auto past = isDown ? beyond(box.top, box.bottom, meetsDown(level, cloth.shape.cloth))
                                 : beyond(box.left, box.right, meetsAcross(level, cloth.shape.cloth));
        if (past)
            most = most ? Beyond{std::max(most->low, past->low), std::max(most->high, past->high)} : *past;
    }
    return most;
}

// A corner beyond a slanting edge is off both ways: it counts the way that is shorter. So each direction is
// measured first, and then the other one over what that leaves; the pair that comes to less is taken.
void measureOverhang(const Cloth& cloth, const SheetBox& box, OffCloth& off) {
    const auto down = mostBeyond(cloth, box, true, box.left, box.right);
    const auto across = mostBeyond(cloth, box, false, box.top, box.bottom);
    off.isAllOff = !down || !across;
    if (off.isAllOff)
        return;
    const auto besides =
        mostBeyond(cloth, box, false, box.top + down->low, box.bottom - down->high).value_or(Beyond{});
    const auto beneath =
        mostBeyond(cloth, box, true, box.left + across->low, box.right - across->high).value_or(Beyond{});
    const auto sum = [](const Beyond& one, const Beyond& other) {
        return one.low + one.high + other.low + other.high;
    };
    const bool isDownFirst = sum(*down, besides) <= sum(*across, beneath);
    const Beyond upright = isDownFirst ? *down : beneath;
    const Beyond level = isDownFirst ? besides : *across;
    const auto measure = [&](double units) {
        const double length = units * cloth.perUnit;
        return length <= kRounding ? 0 : length;
    };
    off.above = measure(upright.low);
    off.below = measure(upright.high);
    off.aside = measure(std::max(level.low, level.high));
}

// A fixed zone of a garment's cloth to look for places in.
class Search {
public:
    Search(const Cloth& cloth, ClothZone zone, const SheetBox& box, std::span<const SheetBox> clearOf)
        : m_cloth(cloth)
        , m_zone(zone)
        , m_isLeft(box.centre().x < 0)
        , m_clearOf(clearOf) {}

    std::optional<SheetBox> nearest(const SheetBox& box) const {
        if (fits(box))
            return box;
        const auto coarse = nearestCoarse(box);
        return coarse ? std::optional{drawnIn(box, *coarse)} : std::nullopt;
    }

private:
    struct Step {
        double x = 0;
        double y = 0;
        double far() const { return x * x + y * y; }
    };

    bool isInZone(const SheetBox& box) const {
        const double sleevesFrom = m_cloth.shape.sleevesFrom * m_cloth.perUnit;
        if (m_zone == ClothZone::Sleeve)
            return sleevesFrom > 0 && (m_isLeft ? box.right <= -sleevesFrom : box.left >= sleevesFrom);
        return sleevesFrom == 0 || std::abs(box.centre().x) < sleevesFrom;
    }

    bool fits(const SheetBox& box) const {
        return isInZone(box) &&
               std::ranges::none_of(m_clearOf,
                                    [&](const SheetBox& other) { return shareArea(box, other); }) &&
               liesOnCloth(m_cloth, box);
    }

    // Of places in rows and columns over all the garment, counted from where the box is; and on the centre
    // line.
    std::optional<Step> nearestCoarse(const SheetBox& box) const {
        const SheetBox& reach = m_cloth.shape.reach;
        const double apart =
            std::max(2.0, std::ceil(std::max(reach.width(), reach.height()) * m_cloth.perUnit / kTried));
        const auto first = [&](double from, double to) { return std::ceil((to - from) / apart) * apart; };
        const double left = (reach.left - m_cloth.seam.x) * m_cloth.perUnit;
        const double right = (reach.right - m_cloth.seam.x) * m_cloth.perUnit - box.width();
        const double top = std::max(0.0, (reach.top - m_cloth.seam.y) * m_cloth.perUnit);
        const double bottom = (reach.bottom - m_cloth.seam.y) * m_cloth.perUnit - box.height();
        std::optional<Step> best;
        const auto consider = [&](Step step) {
            if ((!best || step.far() < best->far()) && fits(box.movedBy(step.x, step.y)))
                best = step;
        };
        for (double y = first(box.top, top); box.top + y <= bottom; y += apart) {
            consider({-box.centre().x, y});
            for (double x = first(box.left, left); box.left + x <= right; x += apart)
                consider({x, y});
        }
        return best;
    }

    // Drawn back towards where the box was, by whole millimetres, as long as it fits.
    SheetBox drawnIn(const SheetBox& box, Step step) const {
        const auto nearer = [](double by) { return by == 0 ? 0.0 : by - std::copysign(1.0, by); };
        const auto tryStep = [&](Step next) {
            if (next.far() >= step.far() || !fits(box.movedBy(next.x, next.y)))
                return false;
            step = next;
            return true;
        };
        while (tryStep({nearer(step.x), nearer(step.y)}) || tryStep({nearer(step.x), step.y}) ||
               tryStep({step.x, nearer(step.y)})) {
        }
        return box.movedBy(step.x, step.y);
    }

    const Cloth& m_cloth;
    ClothZone m_zone;
    bool m_isLeft; // a sleeve's decal stays on its sleeve
    std::span<const SheetBox> m_clearOf;
};

// Of this share of its size, in whole millimetres, with the upper edge and the middle where they were.
SheetBox shrunk(const SheetBox& box, double share) {
    const double width = std::max(kSmallestSide, std::floor(box.width() * share));
    const double height = std::max(kSmallestSide, std::floor(box.height() * share));
    const double left = box.centre().x - width / 2;
    return {left, box.top, left + width, box.top + height};
}

} // namespace

bool liesOnCloth(const Cloth& cloth, const SheetBox& box) {
    const SheetBox drawn = inUnits(cloth, box.grownBy(-kRounding));
    if (!isWithinEdges(cloth, drawn))
        return false;
    const SheetBox cleared = inUnits(cloth, box.grownBy(kClearOfParts - kRounding));
    return std::ranges::none_of(cloth.shape.parts, [&](const PartLines& part) {
        return !mayLieAcross(cloth, part) && liesOn(part, cleared);
    });
}

OffCloth offCloth(const Cloth& cloth, const SheetBox& box) {
    OffCloth off;
    if (!isWithinEdges(cloth, inUnits(cloth, box.grownBy(-kRounding))))
        measureOverhang(cloth, inUnits(cloth, box), off);
    if (off.isAllOff)
        return off;
    const SheetBox cleared = inUnits(cloth, box.grownBy(kClearOfParts - kRounding));
    for (const PartLines& part : cloth.shape.parts)
        if (!mayLieAcross(cloth, part) && liesOn(part, cleared) &&
            std::ranges::find(off.across, part.part) == off.across.end())
            off.across.push_back(part.part);
    return off;
}

std::optional<SheetBox> nearestOnCloth(const Cloth& cloth, ClothZone zone, const SheetBox& box,
                                       std::span<const SheetBox> clearOf) {
    return Search{cloth, zone, box, clearOf}.nearest(box);
}

std::optional<SheetBox> largestOnCloth(const Cloth& cloth, ClothZone zone, const SheetBox& box,
                                       std::span<const SheetBox> clearOf) {
    const Search search{cloth, zone, box, clearOf};
    if (const auto whole = search.nearest(box))
        return whole;
    double fits = std::max(kSmallest, kSmallestSide / std::min(box.width(), box.height()));
    if (fits >= 1)
        return std::nullopt;
    auto best = search.nearest(shrunk(box, fits));
    double tooLarge = 1;
    while (best && tooLarge - fits > kSizeWithin) {
        const double between = (fits + tooLarge) / 2;
        if (auto found = search.nearest(shrunk(box, between))) {
            best = found;
            fits = between;
        } else {
            tooLarge = between;
        }
    }
    return best;
}

} // namespace holdfast
