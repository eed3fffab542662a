// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/cutting/strip_lowest.h"

#include "core/cutting/strip_free_space.h"

#include <algorithm>

namespace holdfast {

namespace {

// A row is as long as its first piece; what comes later is no longer.
struct Row {
    std::int64_t along = 0;
    std::int64_t filled = 0; // across
};

} // namespace

std::optional<Filling> fillLowest(const FillFrame& frame, std::span<const FillPiece> pieces,
                                  const FillOrder& order, std::int64_t end, const ShouldStop& shouldStop) {
    StripFreeSpace space{frame, pieces};
    Filling filling;
    for (const OrderedPiece& ordered : order) {
        if (shouldStop && shouldStop())
            return std::nullopt;
        const FillPiece& piece = pieces[ordered.piece];
        const std::optional<FilledPlace> place = space.lowest(piece);
        if (!place)
            return std::nullopt;
        const TakenArea taken = areaOf(piece, *place);
        if (taken.alongEnd >= end)
            return std::nullopt;
        filling.places.push_back(*place);
        filling.end = std::max(filling.end, taken.alongEnd);
        space.take(taken);
    }
    return filling;
}

std::optional<Filling> fillInRows(const FillFrame& frame, std::span<const FillPiece> pieces,
                                  const ShouldStop& shouldStop) {
    std::vector<FillPiece> longestFirst(pieces.begin(), pieces.end());
    std::ranges::stable_sort(longestFirst, [](const FillPiece& one, const FillPiece& other) {
        return std::pair{one.along, one.across} > std::pair{other.along, other.across};
    });
    Filling filling;
    for (const TakenArea& pin : frame.pins)
        filling.end = std::max(filling.end, pin.alongEnd);
    std::vector<Row> rows;
    for (const FillPiece& piece : longestFirst) {
        if (shouldStop && shouldStop())
            return std::nullopt;
        auto row = std::ranges::find_if(
            rows, [&](const Row& each) { return each.filled + piece.across <= frame.width; });
        if (row == rows.end()) {
            row = rows.insert(rows.end(), Row{filling.end, 0});
            filling.end += piece.along;
        }
        filling.places.push_back({piece.piece, row->filled, row->along, false});
        row->filled += piece.across;
    }
    return filling;
}

} // namespace holdfast
