// SPDX-License-Identifier: GPL-3.0-or-later
// The least length of a strip (leastLength in strip.h).

#include "core/cutting/strip_pairs.h"

#include <algorithm>
#include <limits>

namespace holdfast {

namespace {

// Areas of the largest pieces, as many as there may be, fit 64 bits.
static_assert(kLongestSide * kLongestSide <
              std::numeric_limits<std::int64_t>::max() / static_cast<std::int64_t>(kMostPieces) -
                  kLongestSide);

// At most this many thresholds are tried, evenly among those there are.
constexpr std::size_t kMostThresholds = 128;

// Stacks of more pieces say no more than the area does.
constexpr std::size_t kHighestStack = 64;

// Of more pieces only this many, the largest, are looked at one by one.
constexpr std::size_t kPiecesTriedAlone = 8;

// Choices made for one length, and for all lengths that are tried.
constexpr std::uint64_t kChoicesOfALength = 2'000;
constexpr std::uint64_t kMostChoices = 8'000;

// The ways a piece may lie within the strip's width, pins as they lie.
struct Ways {
    std::vector<StripExtent> extents; // one or two
    std::optional<StripPlace> pinned;
    std::int64_t leastAcross = 0;
    std::int64_t leastAlong = 0;
};

std::vector<Ways> waysOf(const StripTask& task) {
    std::vector<Ways> all;
    all.reserve(task.pieces.size());
    for (const StripPiece& piece : task.pieces) {
        Ways ways;
        ways.pinned = piece.pinned;
        for (const bool isTurned : {false, true}) {
            if (piece.pinned ? piece.pinned->isTurned != isTurned : isTurned && !piece.mayTurn)
                continue;
            if (const StripExtent extent = extentOf(piece, isTurned); extent.across <= task.width)
                ways.extents.push_back(extent);
        }
        if (ways.extents.empty())
            continue;
        ways.leastAcross = ways.extents.front().across;
        ways.leastAlong = ways.extents.front().along;
        for (const StripExtent& extent : ways.extents) {
            ways.leastAcross = std::min(ways.leastAcross, extent.across);
            ways.leastAlong = std::min(ways.leastAlong, extent.along);
        }
        all.push_back(std::move(ways));
    }
    return all;
}

// What a width counts for where all narrower than the threshold count for nothing and all that leave room for
// nothing else count for the whole strip. Any pieces that fit side by side count for at most the strip.
std::int64_t countedWidth(std::int64_t across, std::int64_t threshold, std::int64_t width) {
    if (across > width - threshold)
        return width;
    return across < threshold ? 0 : across;
}

std::int64_t byArea(const std::vector<Ways>& all, std::int64_t threshold, std::int64_t width) {
    std::int64_t area = 0;
    for (const Ways& ways : all) {
        std::int64_t least = std::numeric_limits<std::int64_t>::max();
        for (const StripExtent& extent : ways.extents)
            least = std::min(least, countedWidth(extent.across, threshold, width) * extent.along);
        area += least;
    }
    return (area + width - 1) / width;
}

// Where the longest pieces are together wider than n strips, n + 1 of them lie one after the other
// somewhere.
std::int64_t byStacks(std::vector<Ways> all, std::int64_t width) {
    std::ranges::sort(all, std::ranges::greater{}, &Ways::leastAlong);
    std::int64_t longest = 0;
    std::int64_t across = 0;
    std::size_t fullStrips = 0;
    for (std::size_t last = 0; last < all.size() && fullStrips < kHighestStack; ++last) {
        across += all[last].leastAcross;
        if (across <= static_cast<std::int64_t>(fullStrips) * width)
            continue;
        std::int64_t stack = 0;
        for (std::size_t piece = last - fullStrips; piece <= last; ++piece)
            stack += all[piece].leastAlong;
        longest = std::max(longest, stack);
        ++fullStrips;
    }
    return longest;
}

std::vector<std::int64_t> thresholds(const std::vector<Ways>& all, std::int64_t width) {
    std::vector<std::int64_t> found;
    for (const Ways& ways : all) {
        for (const StripExtent& extent : ways.extents)
            found.push_back(std::min(extent.across, width - extent.across + 1));
    }
    std::ranges::sort(found);
    found.erase(std::ranges::unique(found).begin(), found.end());
    if (found.size() <= kMostThresholds)
        return found;
    std::vector<std::int64_t> some;
    for (std::size_t index = 0; index < kMostThresholds; ++index)
        some.push_back(found[index * (found.size() - 1) / (kMostThresholds - 1)]);
    return some;
}

// Where all fit: one after the other, after the pins.
std::int64_t enoughFor(const std::vector<Ways>& all) {
    std::int64_t enough = 0;
    for (const Ways& ways : all) {
        std::int64_t longest = 0;
        for (const StripExtent& extent : ways.extents)
            longest = std::max(longest, extent.along);
        enough += longest + (ways.pinned ? ways.pinned->along : 0);
    }
    return enough;
}

// The shortest that holds the largest pieces, as far as trying everything within its choices shows. Lengths
// are tried in growing steps as long as the pieces do not fit.
std::int64_t byTrying(std::vector<Ways> all, std::size_t largest, std::int64_t width, std::int64_t least,
                      std::int64_t known) {
    std::ranges::stable_sort(all, std::ranges::greater{}, [](const Ways& ways) {
        return ways.extents.front().across * ways.extents.front().along;
    });
    all.resize(std::min(largest, all.size()));
    std::vector<StripPairs::Piece> pieces;
    for (const Ways& ways : all)
        pieces.push_back({ways.extents, ways.pinned});
    StripPairs pairs{width, std::move(pieces)};
    std::int64_t enough = std::min(enoughFor(all), known); // or not known not to be
    std::int64_t step = 1;
    for (std::uint64_t choices = 0; least < enough && choices < kMostChoices; choices += pairs.choices()) {
        const std::int64_t tried = least + std::min(step - 1, (enough - 1 - least) / 2);
        const StripPairs::Answer answer = pairs.fitsBefore(tried, kChoicesOfALength);
        if (answer == StripPairs::Answer::DoesNotFit) {
            least = tried + 1;
            step *= 2;
        } else {
            enough = answer == StripPairs::Answer::Fits ? pairs.length() : tried;
        }
    }
    return least;
}

} // namespace

std::int64_t leastLength(const StripTask& task, std::optional<std::int64_t> known) {
    const std::vector<Ways> all = waysOf(task);
    std::int64_t least = std::max(byArea(all, 0, task.width), byStacks(all, task.width));
    for (const std::int64_t threshold : thresholds(all, task.width))
        least = std::max(least, byArea(all, threshold, task.width));
    for (const StripPiece& piece : task.pieces) {
        if (piece.pinned)
            least = std::max(least, piece.pinned->along + extentOf(piece, piece.pinned->isTurned).along);
    }
    const std::int64_t most = known.value_or(std::numeric_limits<std::int64_t>::max());
    if (least >= most)
        return least;
    least = byTrying(all, kPiecesTriedAlone, task.width, least, most);
    if (all.size() > kPiecesTriedAlone && all.size() <= StripPairs::kMostPieces)
        least = byTrying(all, all.size(), task.width, least, most);
    return least;
}

} // namespace holdfast
