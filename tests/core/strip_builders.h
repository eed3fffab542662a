// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
// Strips for the tests: at random from a seed, and without waste, so that the shortest length is known.

#include "core/cutting/strip_packing.h"

#include <algorithm>
#include <initializer_list>
#include <random>
#include <utility>

namespace holdfast::strips {

inline StripTask aStrip(std::int64_t width,
                        std::initializer_list<std::pair<std::int64_t, std::int64_t>> pieces,
                        bool mayTurn = false) {
    StripTask task{width, std::nullopt, {}};
    for (const auto& [across, along] : pieces)
        task.pieces.push_back({across, along, mayTurn, std::nullopt});
    return task;
}

inline StripSearch rounds(std::uint64_t count, std::uint64_t seed = 1) {
    StripSearch search;
    search.rounds = count;
    search.seed = seed;
    return search;
}

// A strip cut up whole. Hopper and Turton 2001 (EJOR 128, 34-57) made their instances so: of a rectangle that
// is cut, either two come (one straight cut), or five, four around one in the middle (no straight cut reaches
// through).
class StripMaker {
public:
    explicit StripMaker(unsigned seed)
        : m_random(seed) {}

    std::int64_t between(std::int64_t low, std::int64_t high) {
        return std::uniform_int_distribution<std::int64_t>{low, high}(m_random);
    }
    bool oneIn(std::int64_t times) { return between(1, times) == 1; }

    // `slimmest`: no piece is more than so many times as long as wide, as far as cutting again and again
    // finds such pieces.
    StripTask withoutWaste(std::int64_t width, std::int64_t length, std::size_t count, bool straightCutsOnly,
                           std::int64_t slimmest = kAnyShape) {
        int refused = 0;
        std::vector<StripPiece> pieces{{width, length, false, std::nullopt}};
        while (pieces.size() < count) {
            const auto largest = std::ranges::max_element(pieces, {}, [&](const StripPiece& piece) {
                return static_cast<double>(piece.across * piece.along) * static_cast<double>(between(1, 8));
            });
            const StripPiece cut = *largest;
            if (cut.across * cut.along == 1)
                break;
            pieces.erase(largest);
            const bool isRound = !straightCutsOnly && pieces.size() + 5 <= count && cut.across > 3 &&
                                 cut.along > 3 && oneIn(2);
            std::vector<StripPiece> made = isRound ? fiveOf(cut) : twoOf(cut);
            if (std::ranges::any_of(made,
                                    [&](const StripPiece& piece) { return isSlimmer(piece, slimmest); }) &&
                ++refused < kMostRefused)
                made = {cut};
            pieces.insert(pieces.end(), made.begin(), made.end());
        }
        std::ranges::shuffle(pieces, m_random);
        return {width, std::nullopt, std::move(pieces)};
    }

    StripTask anyTask(std::int64_t mostPieces) {
        StripTask task{between(1, 60), std::nullopt, {}};
        const std::int64_t count = between(0, mostPieces);
        const std::int64_t largest = between(1, 70);
        for (std::int64_t piece = 0; piece < count; ++piece)
            task.pieces.push_back({between(1, largest), between(1, largest), oneIn(2), std::nullopt});
        if (oneIn(3))
            task.length = between(1, 200);
        for (std::int64_t pins = between(0, 4); pins > 0 && count > 0; --pins)
            pinSomewhere(task, task.pieces[static_cast<std::size_t>(between(0, count - 1))]);
        return task;
    }

    std::mt19937& random() { return m_random; }

private:
    static constexpr std::int64_t kAnyShape = 1'000'000;
    static constexpr int kMostRefused = 100'000;

    static bool isSlimmer(const StripPiece& piece, std::int64_t slimmest) {
        return piece.across > slimmest * piece.along || piece.along > slimmest * piece.across;
    }

    void pinSomewhere(const StripTask& task, StripPiece& piece) {
        piece.pinned = StripPlace{between(0, 40), between(0, 80), piece.mayTurn && oneIn(2)};
        if (!checkTask(task).ok())
            piece.pinned.reset();
    }

    std::vector<StripPiece> twoOf(const StripPiece& cut) {
        const bool isAcross =
            cut.along == 1 || (cut.across > 1 && between(1, cut.across + cut.along) <= cut.across);
        StripPiece one = cut;
        StripPiece other = cut;
        if (isAcross) {
            one.across = between(1, cut.across - 1);
            other.across -= one.across;
        } else {
            one.along = between(1, cut.along - 1);
            other.along -= one.along;
        }
        return {one, other};
    }

    std::vector<StripPiece> fiveOf(const StripPiece& cut) {
        const std::int64_t left = between(1, cut.across - 2);
        const std::int64_t right = between(left + 1, cut.across - 1);
        const std::int64_t low = between(1, cut.along - 2);
        const std::int64_t high = between(low + 1, cut.along - 1);
        return {{left, high, false, std::nullopt},
                {cut.across - left, low, false, std::nullopt},
                {cut.across - right, cut.along - low, false, std::nullopt},
                {right, cut.along - high, false, std::nullopt},
                {right - left, high - low, false, std::nullopt}};
    }

    std::mt19937 m_random;
};

// Pieces of 20 to 200 both ways, on a strip 1,000 wide.
inline StripTask manyPieces(std::size_t count, bool mayTurn) {
    StripMaker maker{3};
    StripTask task{1'000, std::nullopt, {}};
    for (std::size_t piece = 0; piece < count; ++piece) {
        const std::int64_t across = maker.between(20, 200);
        task.pieces.push_back({across, maker.between(20, 200), mayTurn, std::nullopt});
    }
    return task;
}

// The same on a strip 2,100 wide, the first so many pinned in rows of ten; the others find little room
// between them.
inline StripTask pinsAndPieces(std::size_t pins, std::size_t pieces) {
    constexpr std::size_t kInARow = 10;
    constexpr std::int64_t kApart = 210;
    StripTask task = manyPieces(pins + pieces, true);
    task.width = kApart * static_cast<std::int64_t>(kInARow);
    for (std::size_t pin = 0; pin < pins; ++pin)
        task.pieces[pin].pinned = StripPlace{static_cast<std::int64_t>(pin % kInARow) * kApart,
                                             static_cast<std::int64_t>(pin / kInARow) * kApart, false};
    return task;
}

// Every piece that has no place and no reason for it: on a strip without an end only what is too wide has
// none.
inline std::size_t placeable(const StripTask& task) {
    return static_cast<std::size_t>(std::ranges::count_if(task.pieces, [&](const StripPiece& piece) {
        return piece.pinned || piece.across <= task.width || (piece.mayTurn && piece.along <= task.width);
    }));
}

// More of the earlier pieces, then shorter: told independently of the search.
inline bool isWorse(const StripPacking& one, const StripPacking& other) {
    const auto [mine, its] =
        std::ranges::mismatch(one.places, other.places,
                              [](const auto& a, const auto& b) { return a.has_value() == b.has_value(); });
    if (mine != one.places.end())
        return !mine->has_value();
    return one.length > other.length;
}

} // namespace holdfast::strips
