// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
// Rectangles on a strip of fixed width: what is placed, where, and whether it may lie so.
//
// Whole units (millimetres at the bench), no gaps: who wants a gap between pieces adds it to both their sizes
// and once to the strip's width. `across` runs over the strip's width, `along` runs along it from its cut
// end.

#include "core/trade/result.h"

#include <cstddef>
#include <cstdint>
#include <optional>
#include <string>
#include <vector>

namespace holdfast {

struct StripPlace {
    std::int64_t across = 0;
    std::int64_t along = 0;
    bool isTurned = false; // a quarter turn: its sizes are exchanged

    bool operator==(const StripPlace&) const = default;
};

struct StripPiece {
    std::int64_t across = 0;
    std::int64_t along = 0;
    bool mayTurn = false;
    std::optional<StripPlace> pinned; // it lies there and nowhere else
};

struct StripTask {
    std::int64_t width = 0;
    std::optional<std::int64_t> length; // none: as long as it takes
    std::vector<StripPiece> pieces;     // where not all find room, the earlier ones matter more
};

struct StripPacking {
    std::vector<std::optional<StripPlace>> places; // the task's pieces; none: no room for it
    std::int64_t length = 0;                       // to the furthest end of a piece

    std::size_t placed() const;
};

// The sizes of a piece as it lies.
struct StripExtent {
    std::int64_t across = 0;
    std::int64_t along = 0;
};
StripExtent extentOf(const StripPiece& piece, bool isTurned);

inline constexpr std::size_t kMostPieces = 10'000;
inline constexpr std::int64_t kLongestSide = 10'000'000;

// An error names the piece (counted from 1; its field is "piece 3") whose size is below 1 or above
// kLongestSide, a pin that lies off the strip, over another pin or turned where it may not; a width of the
// strip that is below 1 or above kLongestSide, a length below 1; more pieces than kMostPieces. A piece that
// is only too wide is no error: it finds no place.
Result<Done> checkTask(const StripTask& task);

// Looks at a packing independently of who made it: sizes as in the task, everything on the strip, nothing
// over anything else, pins kept, turned only where allowed, length right. None: it is right.
std::optional<std::string> faultOf(const StripTask& task, const StripPacking& packing);

// No packing of all pieces that fit the width is shorter: the greatest of the area over the width, the
// longest piece, the sum of pieces too wide to lie side by side, stacks that cannot be avoided, and the
// furthest pin. Wide pieces and area together after Fekete and Schepers 2004 (dual feasible functions) [M].
// A few pieces, and the few largest of many, are tried in every way to one another (strip_pairs.h), as far as
// some milliseconds allow; where a packing is `known`, only up to its length.
// REQUIRES: a task that checkTask passes.
std::int64_t leastLength(const StripTask& task, std::optional<std::int64_t> known = std::nullopt);

} // namespace holdfast
