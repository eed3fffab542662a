// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/cutting/strip_plan.h"

#include <algorithm>

namespace holdfast {

namespace {

std::optional<FillPiece> asItCanLie(const StripTask& task, std::size_t index) {
    const StripPiece& piece = task.pieces[index];
    const std::int64_t end = task.length.value_or(kLongestSide);
    const bool fits = piece.across <= task.width && piece.along <= end;
    const bool fitsTurned = piece.mayTurn && piece.along <= task.width && piece.across <= end;
    const bool isSquare = piece.across == piece.along;
    if (fits)
        return FillPiece{index, piece.across, piece.along, fitsTurned && !isSquare};
    if (fitsTurned)
        return FillPiece{index, piece.along, piece.across, false};
    return std::nullopt;
}

} // namespace

StripPlan planOf(const StripTask& task) {
    StripPlan plan;
    plan.frame.width = task.width;
    std::int64_t needed = 0;
    for (std::size_t index = 0; index < task.pieces.size(); ++index) {
        const StripPiece& piece = task.pieces[index];
        if (piece.pinned) {
            const StripExtent extent = extentOf(piece, piece.pinned->isTurned);
            const StripPlace& at = *piece.pinned;
            plan.frame.pins.push_back(
                {at.across, at.along, at.across + extent.across, at.along + extent.along});
            needed = std::max(needed, at.along + extent.along);
        } else if (const auto lying = asItCanLie(task, index)) {
            plan.pieces.push_back(*lying);
        }
    }
    for (const FillPiece& piece : plan.pieces)
        needed += std::max(piece.along, piece.mayTurn ? piece.across : 0);
    plan.frame.end = std::max<std::int64_t>(needed, 1);
    if (task.length && *task.length < plan.frame.end) {
        plan.hasLength = true;
        plan.frame.end = *task.length;
    }
    return plan;
}

StripPacking packingOf(const StripTask& task, const std::vector<FilledPlace>& laid) {
    StripPacking packing;
    packing.places.resize(task.pieces.size());
    for (std::size_t index = 0; index < task.pieces.size(); ++index)
        packing.places[index] = task.pieces[index].pinned;
    for (const FilledPlace& place : laid) {
        const StripPiece& piece = task.pieces[place.piece];
        const bool standsTurned = piece.across > task.width || (task.length && piece.along > *task.length);
        packing.places[place.piece] = StripPlace{place.across, place.along, place.isTurned || standsTurned};
    }
    for (std::size_t index = 0; index < task.pieces.size(); ++index) {
        if (const auto& place = packing.places[index])
            packing.length =
                std::max(packing.length, place->along + extentOf(task.pieces[index], place->isTurned).along);
    }
    return packing;
}

std::vector<FilledPlace> shelvedAfter(const FillFrame& frame, std::int64_t along,
                                      std::vector<FillPiece> pieces) {
    for (const TakenArea& pin : frame.pins)
        along = std::max(along, pin.alongEnd);
    std::ranges::stable_sort(pieces, std::ranges::greater{}, &FillPiece::along);
    std::vector<FilledPlace> laid;
    std::int64_t across = 0;
    std::int64_t shelf = 0;
    for (const FillPiece& piece : pieces) {
        if (across + piece.across > frame.width) {
            along += shelf;
            across = 0;
            shelf = 0;
        }
        if (along + piece.along > frame.end)
            continue;
        laid.push_back({piece.piece, across, along, false});
        across += piece.across;
        shelf = std::max(shelf, piece.along);
    }
    return laid;
}

bool isBetter(const StripPacking& one, const StripPacking& other) {
    for (std::size_t piece = 0; piece < one.places.size(); ++piece) {
        if (one.places[piece].has_value() != other.places[piece].has_value())
            return one.places[piece].has_value();
    }
    return one.length < other.length;
}

} // namespace holdfast
