// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/cutting/cut_length.h"

#include "core/cutting/nest_layout.h"

#include <algorithm>
#include <tuple>
#include <utility>

namespace holdfast {

namespace {

struct Size {
    Millimetres across; // over the roll's width
    Millimetres along;
};

Millimetres clearWidth(Millimetres rollWidth, const ShopSettings& settings) {
    return rollWidth - settings.edgeMargin * 2;
}

// The ways round in which a decal goes onto a roll; none, one or two.
std::vector<Size> waysRound(const Decal& decal, const Film& film, Millimetres rollWidth,
                            const ShopSettings& settings) {
    std::vector<Size> ways;
    const Millimetres clear = clearWidth(rollWidth, settings);
    if (decal.width <= clear)
        ways.push_back({decal.width, decal.height});
    if (!film.hasGrain && decal.height <= clear && decal.height != decal.width)
        ways.push_back({decal.height, decal.width});
    return ways;
}

// First fit by falling height: each into the first row that is wide enough for it.
Millimetres lengthOfRows(std::vector<Size> sizes, Millimetres clear, const ShopSettings& settings) {
    std::ranges::stable_sort(sizes, [](const Size& one, const Size& other) {
        return std::tie(other.along, other.across) < std::tie(one.along, one.across);
    });
    std::vector<Millimetres> freeWidths; // of each row
    Millimetres length;
    for (const Size& size : sizes) {
        const Millimetres wants = size.across + settings.decalGap;
        const auto row = std::ranges::find_if(freeWidths, [&](Millimetres width) { return width >= wants; });
        if (row != freeWidths.end()) {
            *row = *row - wants;
        } else {
            freeWidths.push_back(clear - size.across);
            length += size.along + settings.decalGap;
        }
    }
    return length;
}

} // namespace

std::optional<Millimetres> lengthFor(const Decal& decal, const Film& film, Millimetres rollWidth,
                                     const ShopSettings& settings) {
    std::optional<Millimetres> shortest;
    for (const Size& way : waysRound(decal, film, rollWidth, settings)) {
        const Millimetres length = way.along + settings.decalGap;
        shortest = shortest ? std::min(*shortest, length) : length;
    }
    return shortest;
}

Millimetres lengthInRows(std::span<const Decal* const> decals, const Film& film, Millimetres rollWidth,
                         const ShopSettings& settings) {
    const Millimetres clear = clearWidth(rollWidth, settings);
    std::vector<Size> upright; // as they were drawn, where that fits
    std::vector<Size> lying;   // the way that is shortest along the roll
    for (const Decal* decal : decals) {
        const std::vector<Size> ways = waysRound(*decal, film, rollWidth, settings);
        if (ways.empty())
            continue;
        upright.push_back(ways.front());
        lying.push_back(std::ranges::min(ways, {}, &Size::along));
    }
    return std::min(lengthOfRows(std::move(upright), clear, settings),
                    lengthOfRows(std::move(lying), clear, settings));
}

Millimetres nestedLength(std::span<const Decal* const> decals, const Film& film, Millimetres rollWidth,
                         const ShopSettings& settings) {
    const NestMargins margins{settings.decalGap, settings.edgeMargin};
    StripTask task{stripWidth(rollWidth, margins).value, std::nullopt, {}};
    for (const Decal* decal : decals)
        task.pieces.push_back(pieceOf(*decal, !film.hasGrain, margins));
    const Result<StripPacking> packing = packAtOnce(task);
    // More than are nested at once are cut in rows.
    return packing.ok() ? Millimetres{packing->length} : lengthInRows(decals, film, rollWidth, settings);
}

bool fitOnto(std::span<const Decal* const> decals, const Film& film, Millimetres rollWidth, Millimetres left,
             const ShopSettings& settings) {
    Millimetres sum;
    double area =
        0; // mm², with the gap after each and at its side; a size that is none may be beyond any integer
    for (const Decal* decal : decals) {
        const std::optional<Millimetres> length = lengthFor(*decal, film, rollWidth, settings);
        if (!length)
            continue;
        sum += *length;
        area += static_cast<double>((decal->width + settings.decalGap).value) *
                static_cast<double>((decal->height + settings.decalGap).value);
    }
    if (sum <= left)
        return true;
    const double room = static_cast<double>(left.value) *
                        static_cast<double>((clearWidth(rollWidth, settings) + settings.decalGap).value);
    return area <= room && (lengthInRows(decals, film, rollWidth, settings) <= left ||
                            nestedLength(decals, film, rollWidth, settings) <= left);
}

} // namespace holdfast
