// SPDX-License-Identifier: GPL-3.0-or-later
// Moving one decal of a nest by hand: the part of nest.h that keeps it legal.

#include "core/cutting/nest_layout.h"
#include "core/cutting/pins.h"
#include "core/trade/assertion.h"

#include <algorithm>
#include <cstdlib>
#include <limits>

namespace holdfast {

namespace {

// Sizes of a decal lying turned or not, from how it lies now.
FilmArea lyingAt(const NestedDecal& decal, const DecalPin& place) {
    const bool isOtherWay = decal.isTurned != place.isTurned;
    return {place.across, place.along, isOtherWay ? decal.lies.alongSize : decal.lies.acrossSize,
            isOtherWay ? decal.lies.acrossSize : decal.lies.alongSize};
}

// Where the decal's own corner may not lie because of another decal: an open rectangle.
struct Forbidden {
    std::int64_t acrossFrom;
    std::int64_t acrossTo;
    std::int64_t alongFrom;
    std::int64_t alongTo;
};

// Candidates by how near they lie to what is wished.
void sortByNearness(std::vector<std::int64_t>& values, std::int64_t wished) {
    std::ranges::sort(values, {},
                      [wished](std::int64_t value) { return std::pair{std::abs(value - wished), value}; });
    values.erase(std::unique(values.begin(), values.end()), values.end());
}

// The free place along the roll nearest to the one wished, so far across it: there, or at an end of what is
// forbidden without a gap around it. REQUIRES: `forbidden` by where it begins along the roll.
std::optional<std::int64_t> nearestAlong(const std::vector<Forbidden>& forbidden, std::int64_t across,
                                         std::int64_t wished, std::int64_t least, std::int64_t most) {
    std::int64_t from = std::numeric_limits<std::int64_t>::min();
    std::int64_t to = from;
    for (const Forbidden& area : forbidden) {
        if (across <= area.acrossFrom || area.acrossTo <= across)
            continue;
        if (area.alongFrom < to) {
            to = std::max(to, area.alongTo);
        } else if (to <= wished) {
            from = area.alongFrom;
            to = area.alongTo;
        } else {
            break;
        }
    }
    if (wished <= from || to <= wished)
        return wished;
    const bool isBefore = least <= from;
    const bool isBehind = to <= most;
    if (isBefore && (!isBehind || wished - from <= to - wished))
        return from;
    return isBehind ? std::optional{to} : std::nullopt;
}

} // namespace

std::optional<DecalPin> nearestFreePlace(const Nest& nest, DecalId decal, const DecalPin& wanted) {
    const NestedDecal* moved = nest.find(decal);
    if (!moved)
        return std::nullopt;
    const NestMargins margins{nest.gap, nest.edge};
    const FilmArea lying = lyingAt(*moved, wanted);
    const std::int64_t leastAcross = margins.edge.value;
    const std::int64_t mostAcross = (nest.rollWidth - margins.edge - lying.acrossSize).value;
    const std::int64_t leastAlong = margins.lead().value;
    const std::int64_t mostAlong = (nest.rollLeft - lying.alongSize - (margins.gap - margins.lead())).value;
    if (mostAcross < leastAcross || mostAlong < leastAlong)
        return std::nullopt;

    const std::int64_t wishedAcross = std::clamp(wanted.across.value, leastAcross, mostAcross);
    const std::int64_t wishedAlong = std::clamp(wanted.along.value, leastAlong, mostAlong);
    std::vector<Forbidden> forbidden;
    std::vector<std::int64_t> acrosses{wishedAcross};
    for (const NestedDecal& other : nest.decals) {
        if (other.decal == decal)
            continue;
        const Forbidden area{(other.lies.across - lying.acrossSize - nest.gap).value,
                             (other.lies.across + other.lies.acrossSize + nest.gap).value,
                             (other.lies.along - lying.alongSize - nest.gap).value,
                             (other.lies.along + other.lies.alongSize + nest.gap).value};
        forbidden.push_back(area);
        for (const std::int64_t across : {area.acrossFrom, area.acrossTo})
            if (leastAcross <= across && across <= mostAcross)
                acrosses.push_back(across);
    }
    std::ranges::sort(forbidden, {}, &Forbidden::alongFrom);
    sortByNearness(acrosses, wishedAcross);

    // The nearest free point lies at the wish itself or on edges of what is forbidden.
    std::optional<DecalPin> best;
    double bestDistance = std::numeric_limits<double>::max();
    for (const std::int64_t across : acrosses) {
        const double aside = static_cast<double>(across - wishedAcross);
        if (aside * aside >= bestDistance)
            break;
        const auto along = nearestAlong(forbidden, across, wishedAlong, leastAlong, mostAlong);
        if (!along)
            continue;
        const double further = static_cast<double>(*along - wishedAlong);
        const double distance = aside * aside + further * further;
        if (distance >= bestDistance)
            continue;
        best = DecalPin{{across}, {*along}, wanted.isTurned};
        bestDistance = distance;
    }
    return best;
}

Nest withDecalAt(const Nest& nest, DecalId decal, const DecalPin& place) {
    Nest moved = nest;
    const auto found = std::ranges::find(moved.decals, decal, &NestedDecal::decal);
    HOLDFAST_ASSERT(found != moved.decals.end());
    const FilmArea lies = lyingAt(*found, place);
    Decal sizes;
    sizes.id = decal;
    sizes.width = place.isTurned ? lies.alongSize : lies.acrossSize;
    sizes.height = place.isTurned ? lies.acrossSize : lies.alongSize;
    const NestMargins margins{nest.gap, nest.edge};
    *found = nestedAt(sizes, placeOf(place, margins), nest.rollWidth, margins);
    found->isPinned = true;
    settle(moved);
    return moved;
}

Nest withPin(const Nest& nest, DecalId decal, bool isPinned) {
    Nest turned = nest;
    const auto found = std::ranges::find(turned.decals, decal, &NestedDecal::decal);
    HOLDFAST_ASSERT(found != turned.decals.end());
    found->isPinned = isPinned;
    settle(turned);
    return turned;
}

} // namespace holdfast
