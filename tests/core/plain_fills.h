// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
// Plain ways of filling a strip, written from their descriptions and from nothing of the program: rows (first
// fit by falling length, Coffman, Garey, Johnson and Tarjan 1980), each piece as low and then as far left as
// it can lie (bottom left, Baker, Coffman and Rivest 1980), the widest that fits the lowest gap (best fit,
// Burke, Kendall and Whitwell 2004). Each in several orders. Sources from memory.

#include "core/cutting/strip.h"

#include <algorithm>
#include <functional>
#include <limits>
#include <vector>

namespace holdfast::strips {

using Sizes = std::vector<StripExtent>;

struct TakenPlace {
    std::int64_t across = 0;
    std::int64_t along = 0;
    StripExtent size;
};

inline std::int64_t inRows(const Sizes& sizes, std::int64_t width) {
    struct Row {
        std::int64_t filled = 0;
        std::int64_t length = 0;
    };
    std::vector<Row> rows;
    for (const StripExtent& size : sizes) {
        const auto row = std::ranges::find_if(rows, [&](const Row& each) {
            return each.filled + size.across <= width && size.along <= each.length;
        });
        if (row == rows.end())
            rows.push_back({size.across, size.along});
        else
            row->filled += size.across;
    }
    std::int64_t length = 0;
    for (const Row& row : rows)
        length += row.length;
    return length;
}

inline std::int64_t bottomLeft(const Sizes& sizes, std::int64_t width) {
    std::vector<TakenPlace> taken;
    std::int64_t length = 0;
    for (const StripExtent& size : sizes) {
        TakenPlace best{0, std::numeric_limits<std::int64_t>::max(), size};
        const auto tryAt = [&](std::int64_t across, std::int64_t along) {
            if (across + size.across > width || along > best.along ||
                (along == best.along && across >= best.across))
                return;
            const bool isFree = std::ranges::none_of(taken, [&](const TakenPlace& other) {
                return across < other.across + other.size.across && other.across < across + size.across &&
                       along < other.along + other.size.along && other.along < along + size.along;
            });
            if (isFree)
                best = {across, along, size};
        };
        tryAt(0, 0);
        for (const TakenPlace& left : taken) {
            tryAt(left.across + left.size.across, 0);
            tryAt(0, left.along + left.size.along);
            for (const TakenPlace& below : taken)
                tryAt(left.across + left.size.across, below.along + below.size.along);
        }
        taken.push_back(best);
        length = std::max(length, best.along + size.along);
    }
    return length;
}

// A height for each unit of the strip's width: slow, and there is little to go wrong with it.
inline std::int64_t widestIntoTheLowestGap(Sizes sizes, std::int64_t width) {
    std::vector<std::int64_t> heights(static_cast<std::size_t>(width), 0);
    while (!sizes.empty()) {
        const auto low = std::ranges::min_element(heights);
        const auto end = std::find_if(low, heights.end(), [&](std::int64_t each) { return each != *low; });
        auto widest = sizes.end();
        for (auto size = sizes.begin(); size != sizes.end(); ++size) {
            if (size->across <= end - low && (widest == sizes.end() || size->across > widest->across))
                widest = size;
        }
        if (widest != sizes.end()) {
            std::fill(low, low + widest->across, *low + widest->along);
            sizes.erase(widest);
            continue;
        }
        std::int64_t wall = std::numeric_limits<std::int64_t>::max();
        if (low != heights.begin())
            wall = *(low - 1);
        if (end != heights.end())
            wall = std::min(wall, *end);
        std::fill(low, end, wall);
    }
    return std::ranges::max(heights);
}

inline std::int64_t plainest(Sizes sizes, std::int64_t width) {
    std::int64_t shortest = std::numeric_limits<std::int64_t>::max();
    const auto tryInOrder = [&](auto measure) {
        std::ranges::stable_sort(sizes, std::ranges::greater{}, measure);
        shortest = std::min({shortest, bottomLeft(sizes, width), widestIntoTheLowestGap(sizes, width)});
    };
    tryInOrder([](const StripExtent& size) { return size.across; });
    tryInOrder([](const StripExtent& size) { return size.across * size.along; });
    tryInOrder([](const StripExtent& size) { return size.across + size.along; });
    tryInOrder([](const StripExtent& size) { return size.along; });
    return std::min(shortest, inRows(sizes, width));
}

// Turned as a hand would turn all of them: as they come, all lying, all upright.
inline std::int64_t plainestTurned(const Sizes& sizes, std::int64_t width) {
    Sizes lying = sizes;
    Sizes upright = sizes;
    for (std::size_t index = 0; index < sizes.size(); ++index) {
        const auto [shorter, longer] = std::minmax({sizes[index].across, sizes[index].along});
        lying[index] = longer <= width ? StripExtent{longer, shorter} : StripExtent{shorter, longer};
        upright[index] = {shorter, longer};
    }
    return std::min({plainest(sizes, width), plainest(lying, width), plainest(upright, width)});
}

// The shortest of them all.
inline std::int64_t plainestOf(const StripTask& task, bool mayTurn) {
    Sizes sizes;
    for (const StripPiece& piece : task.pieces)
        sizes.push_back({piece.across, piece.along});
    return mayTurn ? plainestTurned(sizes, task.width) : plainest(sizes, task.width);
}

} // namespace holdfast::strips
