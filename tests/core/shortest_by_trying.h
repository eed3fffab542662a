// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
// Whether a few rectangles fit a strip of some length, by trying every place there is to try. It knows
// nothing of how the program packs or of its bounds.
//
// In any packing pieces can be pushed towards the cut end and to the left until each touches the strip's
// edge, a pinned piece or another piece. So a piece lies, each way, at zero or at the end of a pin, plus the
// sizes of some of the other loose pieces.

#include "core/cutting/strip.h"

#include <algorithm>
#include <set>
#include <vector>

namespace holdfast::strips {

class EveryPlacing {
public:
    // For at most three pieces that are not pinned.
    EveryPlacing(const StripTask& task, std::int64_t length)
        : m_task(task)
        , m_length(length) {}

    bool isThereOne() {
        for (const StripPiece& piece : m_task.pieces)
            if (piece.pinned && !lay(piece, *piece.pinned))
                return false;
        return layFrom(0);
    }

private:
    struct Lying {
        StripPlace at;
        StripExtent size;
    };

    bool lay(const StripPiece& piece, const StripPlace& at) {
        const StripExtent size = extentOf(piece, at.isTurned);
        if (at.across + size.across > m_task.width || at.along + size.along > m_length)
            return false;
        for (const Lying& other : m_lying) {
            const bool isClear = at.across + size.across <= other.at.across ||
                                 other.at.across + other.size.across <= at.across ||
                                 at.along + size.along <= other.at.along ||
                                 other.at.along + other.size.along <= at.along;
            if (!isClear)
                return false;
        }
        m_lying.push_back({at, size});
        return true;
    }

    bool layFrom(std::size_t index) {
        if (index == m_task.pieces.size())
            return true;
        const StripPiece& piece = m_task.pieces[index];
        if (piece.pinned)
            return layFrom(index + 1);
        for (const bool isTurned : {false, true}) {
            if (isTurned && !piece.mayTurn)
                continue;
            for (const std::int64_t across : candidates(index, true))
                for (const std::int64_t along : candidates(index, false)) {
                    if (!lay(piece, {across, along, isTurned}))
                        continue;
                    if (layFrom(index + 1))
                        return true;
                    m_lying.pop_back();
                }
        }
        return false;
    }

    std::set<std::int64_t> candidates(std::size_t index, bool isAcross) const {
        std::set<std::int64_t> places{0};
        for (const StripPiece& piece : m_task.pieces) {
            if (!piece.pinned)
                continue;
            const StripExtent size = extentOf(piece, piece.pinned->isTurned);
            places.insert(isAcross ? piece.pinned->across + size.across : piece.pinned->along + size.along);
        }
        for (std::size_t other = 0; other < m_task.pieces.size(); ++other) {
            const StripPiece& piece = m_task.pieces[other];
            if (other == index || piece.pinned)
                continue;
            const std::set<std::int64_t> before = places;
            for (const std::int64_t place : before) {
                places.insert(place + (isAcross ? piece.across : piece.along));
                if (piece.mayTurn)
                    places.insert(place + (isAcross ? piece.along : piece.across));
            }
        }
        return places;
    }

    const StripTask& m_task;
    std::int64_t m_length;
    std::vector<Lying> m_lying;
};

inline bool fitsOn(const StripTask& task, std::int64_t length) {
    return EveryPlacing{task, length}.isThereOne();
}

} // namespace holdfast::strips
