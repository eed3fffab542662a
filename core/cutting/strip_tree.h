// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
// Lays a few pieces before an end by trying everything: at the lowest gap of the skyline each piece, at its
// left and at its right wall, or none. A branch ends where more area is given up than there is to spare.
//
// It finds packings that no order of filling leads to, in which a gap stays open though a piece would fit.
// For some twelve pieces; with more it does not come far.

#include "core/cutting/strip_skyline.h"

#include <span>

namespace holdfast {

class StripTree {
public:
    StripTree(const FillFrame& frame, std::span<const FillPiece> pieces);

    // All pieces before the frame's end; none: not found before everything was tried or `mayGoOn` said no (it
    // is asked at each branch).
    std::optional<std::vector<FilledPlace>> search(const std::function<bool()>& mayGoOn);

private:
    struct LaidWay {
        FillPiece piece;
        std::size_t index = 0;
        std::int64_t across = 0;
        std::int64_t along = 0;
        bool isTurned = false;

        bool isLike(const LaidWay& other) const { return across == other.across && along == other.along; }
    };

    bool grow(std::size_t depth, std::int64_t spare);
    bool layEach(std::size_t depth, const StripGap& gap, std::int64_t spare);
    bool layAt(std::size_t depth, const StripGap& gap, const LaidWay& way, std::int64_t across,
               std::int64_t spare);
    StripSkyline& nextSkyline(std::size_t depth);

    std::vector<LaidWay> m_ways; // largest first
    std::vector<char> m_isLaid;
    std::size_t m_left = 0;
    std::int64_t m_spare = 0;
    std::vector<StripSkyline> m_skylines; // by depth
    std::vector<FilledPlace> m_places;
    const std::function<bool()>* m_mayGoOn = nullptr;
};

} // namespace holdfast
