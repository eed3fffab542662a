// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/cutting/nest_layout.h"

#include "core/cutting/offcuts.h"

#include <algorithm>
#include <tuple>

namespace holdfast {

namespace {

constexpr std::size_t kMostOffcuts = 4;

FilmArea grown(const FilmArea& area, Millimetres by, Millimetres rollWidth) {
    const Millimetres across = std::max(Millimetres{}, area.across - by);
    const Millimetres along = std::max(Millimetres{}, area.along - by);
    const Millimetres acrossEnd = std::min(rollWidth, area.across + area.acrossSize + by);
    return {across, along, acrossEnd - across, area.along + area.alongSize + by - along};
}

NestMargins marginsOf(const Nest& nest) {
    return {nest.gap, nest.edge};
}

StripPiece pieceOf(const NestedDecal& nested, bool mayTurn, const NestMargins& margins) {
    Decal decal;
    decal.width = nested.isTurned ? nested.lies.alongSize : nested.lies.acrossSize;
    decal.height = nested.isTurned ? nested.lies.acrossSize : nested.lies.alongSize;
    StripPiece piece = pieceOf(decal, mayTurn, margins);
    if (nested.isPinned)
        piece.pinned = placeOf({nested.lies.across, nested.lies.along, nested.isTurned}, margins);
    return piece;
}

} // namespace

Millimetres stripWidth(Millimetres rollWidth, const NestMargins& margins) {
    return rollWidth - margins.edge * 2 + margins.gap;
}

StripPiece pieceOf(const Decal& decal, bool mayTurn, const NestMargins& margins) {
    return {(decal.width + margins.gap).value, (decal.height + margins.gap).value,
            mayTurn && decal.width != decal.height, std::nullopt};
}

StripPlace placeOf(const DecalPin& pin, const NestMargins& margins) {
    return {(pin.across - margins.edge).value, (pin.along - margins.lead()).value, pin.isTurned};
}

NestedDecal nestedAt(const Decal& decal, const StripPlace& place, Millimetres rollWidth,
                     const NestMargins& margins) {
    NestedDecal nested;
    nested.decal = decal.id;
    nested.isTurned = place.isTurned;
    nested.lies = {margins.edge + Millimetres{place.across}, margins.lead() + Millimetres{place.along},
                   place.isTurned ? decal.height : decal.width, place.isTurned ? decal.width : decal.height};
    nested.box = grown(nested.lies, {margins.gap.value / 4}, rollWidth);
    return nested;
}

void settle(Nest& nest) {
    const NestMargins margins = marginsOf(nest);
    std::ranges::sort(nest.decals, [](const NestedDecal& one, const NestedDecal& other) {
        return std::tuple{one.lies.along, one.lies.across, one.decal} <
               std::tuple{other.lies.along, other.lies.across, other.decal};
    });
    nest.length = {};
    std::vector<FilmArea> taken;
    StripTask task{stripWidth(nest.rollWidth, margins).value, std::nullopt, {}};
    for (const NestedDecal& decal : nest.decals) {
        task.pieces.push_back(pieceOf(decal, nest.mayTurn, margins));
        const Millimetres tail = margins.gap - margins.lead();
        nest.length = std::max(nest.length, decal.lies.along + decal.lies.alongSize + tail);
        taken.push_back(grown(decal.lies, margins.lead(), nest.rollWidth));
    }
    nest.leastLength = {leastLength(task, nest.length.value)};
    nest.offcuts = offcutsOf({{}, {}, nest.rollWidth, nest.length}, taken, kSmallestOffcut, kMostOffcuts);
}

FilmShares Nest::shares() const {
    FilmShares shares;
    const double charged = static_cast<double>(rollWidth.value) * static_cast<double>(length.value);
    if (charged <= 0)
        return shares;
    for (const NestedDecal& nested : decals)
        shares.decals += static_cast<double>(nested.box.area()) / charged;
    for (const FilmArea& offcut : offcuts)
        shares.offcuts += static_cast<double>(offcut.area()) / charged;
    shares.waste = std::max(0.0, 1 - shares.decals - shares.offcuts);
    return shares;
}

const NestedDecal* Nest::find(DecalId decal) const {
    const auto found = std::ranges::find(decals, decal, &NestedDecal::decal);
    return found == decals.end() ? nullptr : &*found;
}

double Nest::aboveLeast() const {
    if (leastLength.value <= 0)
        return 0;
    return static_cast<double>((length - leastLength).value) / static_cast<double>(leastLength.value);
}

} // namespace holdfast
