// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/cutting/strip.h"

#include <algorithm>
#include <iterator>
#include <map>

namespace holdfast {

namespace {

// How far along a pin may lie on a strip without end: all pieces, end to end, are no longer.
constexpr std::int64_t kFurthestPin = kLongestSide * static_cast<std::int64_t>(kMostPieces);

std::string pieceField(std::size_t piece) {
    return "piece " + std::to_string(piece + 1);
}

std::string pieceWords(std::size_t piece) {
    return "Piece " + std::to_string(piece + 1);
}

// `fault` says of {piece} what is wrong with it.
Error pieceError(std::size_t piece, std::string_view fault, std::vector<NamedValue> values = {}) {
    values.push_back({"piece", piece + 1});
    return fieldError(pieceField(piece), said(fault, std::move(values)));
}

struct Lying {
    std::size_t piece = 0;
    std::int64_t across = 0;
    std::int64_t along = 0;
    StripExtent extent;

    std::int64_t acrossEnd() const { return across + extent.across; }
    std::int64_t alongEnd() const { return along + extent.along; }
};

Lying lyingAt(const StripTask& task, std::size_t piece, const StripPlace& place) {
    return {piece, place.across, place.along, extentOf(task.pieces[piece], place.isTurned)};
}

bool isOnStrip(const StripTask& task, const Lying& lying) {
    const std::int64_t end = task.length ? std::min(*task.length, kFurthestPin) : kFurthestPin;
    return lying.across >= 0 && lying.along >= 0 && lying.across <= task.width - lying.extent.across &&
           lying.along <= end - lying.extent.along;
}

// Two pieces that lie over one another; none: there are none. A line sweeps along the strip, and the pieces
// under it are sorted by where they lie across, none over another.
std::optional<std::pair<std::size_t, std::size_t>> firstOverlap(const std::vector<Lying>& lying) {
    struct Event {
        std::int64_t along = 0;
        bool begins = false; // at the same line ends come first
        std::size_t index = 0;
    };
    std::vector<Event> events;
    events.reserve(lying.size() * 2);
    for (std::size_t index = 0; index < lying.size(); ++index) {
        events.push_back({lying[index].along, true, index});
        events.push_back({lying[index].alongEnd(), false, index});
    }
    std::ranges::sort(events, [](const Event& left, const Event& right) {
        return left.along != right.along ? left.along < right.along : left.begins < right.begins;
    });
    std::map<std::int64_t, std::size_t> under;
    for (const Event& event : events) {
        const Lying& piece = lying[event.index];
        if (!event.begins) {
            under.erase(piece.across);
            continue;
        }
        const auto next = under.lower_bound(piece.across);
        if (next != under.end() && next->first < piece.acrossEnd())
            return std::pair{lying[next->second].piece, piece.piece};
        if (next != under.begin()) {
            const auto before = std::prev(next);
            if (lying[before->second].acrossEnd() > piece.across)
                return std::pair{lying[before->second].piece, piece.piece};
        }
        under.emplace(piece.across, event.index);
    }
    return std::nullopt;
}

Result<Done> checkPiece(const StripTask& task, std::size_t piece) {
    const StripPiece& checked = task.pieces[piece];
    for (const std::int64_t side : {checked.across, checked.along}) {
        if (side < 1)
            return pieceError(piece, phrase("Piece {piece} needs a size of at least 1 both ways.").english);
        if (side > kLongestSide)
            return pieceError(piece, phrase("Piece {piece} is larger than {most}.").english,
                              {{"most", Numeral{kLongestSide}}});
    }
    if (!checked.pinned)
        return Done{};
    if (checked.pinned->isTurned && !checked.mayTurn)
        return pieceError(piece, phrase("Piece {piece} is pinned turned, and may not be turned.").english);
    if (!isOnStrip(task, lyingAt(task, piece, *checked.pinned)))
        return pieceError(piece, phrase("Piece {piece} is pinned off the strip.").english);
    return Done{};
}

} // namespace

std::size_t StripPacking::placed() const {
    return static_cast<std::size_t>(
        std::ranges::count_if(places, [](const auto& place) { return place.has_value(); }));
}

StripExtent extentOf(const StripPiece& piece, bool isTurned) {
    return isTurned ? StripExtent{piece.along, piece.across} : StripExtent{piece.across, piece.along};
}

Result<Done> checkTask(const StripTask& task) {
    if (task.width < 1)
        return fieldError("width", said("The strip's width must be at least 1."));
    if (task.width > kLongestSide)
        return fieldError(
            "width", said("The strip's width may be at most {most}.", {{"most", Numeral{kLongestSide}}}));
    if (task.length && *task.length < 1)
        return fieldError("length", said("The strip's length must be at least 1."));
    if (task.pieces.size() > kMostPieces)
        return fieldError("pieces",
                          said("At most {most} pieces are nested at once; these are {count}.",
                               {{"most", Numeral{kMostPieces}},
                                {"count", Numeral{static_cast<std::int64_t>(task.pieces.size())}}}));
    std::vector<Lying> pins;
    for (std::size_t piece = 0; piece < task.pieces.size(); ++piece) {
        if (const Result<Done> checked = checkPiece(task, piece); !checked)
            return checked;
        if (const auto& pinned = task.pieces[piece].pinned)
            pins.push_back(lyingAt(task, piece, *pinned));
    }
    if (const auto over = firstOverlap(pins)) {
        const auto [first, second] = std::minmax(over->first, over->second);
        return pieceError(second, phrase("Piece {piece} is pinned over piece {other}.").english,
                          {{"other", first + 1}});
    }
    return Done{};
}

std::optional<std::string> faultOf(const StripTask& task, const StripPacking& packing) {
    if (packing.places.size() != task.pieces.size())
        return "There are " + std::to_string(packing.places.size()) + " places for " +
               std::to_string(task.pieces.size()) + " pieces.";
    std::vector<Lying> lying;
    std::int64_t furthest = 0;
    for (std::size_t piece = 0; piece < task.pieces.size(); ++piece) {
        const StripPiece& wanted = task.pieces[piece];
        const std::optional<StripPlace>& place = packing.places[piece];
        if (wanted.pinned && place != wanted.pinned)
            return pieceWords(piece) + " does not lie where it is pinned.";
        if (!place)
            continue;
        if (place->isTurned && !wanted.mayTurn)
            return pieceWords(piece) + " is turned, and may not be.";
        lying.push_back(lyingAt(task, piece, *place));
        if (!isOnStrip(task, lying.back()))
            return pieceWords(piece) + " does not lie on the strip.";
        furthest = std::max(furthest, lying.back().alongEnd());
    }
    if (const auto over = firstOverlap(lying))
        return pieceWords(over->first) + " lies over piece " + std::to_string(over->second + 1) + ".";
    if (packing.length != furthest)
        return "The length is said to be " + std::to_string(packing.length) + " and is " +
               std::to_string(furthest) + ".";
    return std::nullopt;
}

} // namespace holdfast
