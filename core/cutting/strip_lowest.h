// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
// Two plain ways of laying pieces that do well where sizes have nothing to do with one another: each piece,
// in a given order, as near to the cut end as it can lie (bottom left, Baker, Coffman and Rivest 1980 [M],
// over maximal free rectangles); and rows, each as long as its first piece (first fit by falling length,
// Coffman, Garey, Johnson and Tarjan 1980 [M]).

#include "core/cutting/strip_construction.h"

#include <optional>

namespace holdfast {

// Gives up where `end` would be reached. REQUIRES: a frame that has room for every piece; an order with each
// piece once.
std::optional<Filling> fillLowest(const FillFrame& frame, std::span<const FillPiece> pieces,
                                  const FillOrder& order, std::int64_t end, const ShouldStop& shouldStop);

// After the pins. Pieces lie as they are given. None: it was asked to stop.
std::optional<Filling> fillInRows(const FillFrame& frame, std::span<const FillPiece> pieces,
                                  const ShouldStop& shouldStop);

} // namespace holdfast
