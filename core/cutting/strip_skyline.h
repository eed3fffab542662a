// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
// How far along a strip is taken, over its width. It only grows; pins are grown around when it reaches them.

#include "core/cutting/strip_frame.h"

#include <limits>
#include <optional>
#include <span>

namespace holdfast {

// The lowest, leftmost level: where the next piece is laid.
struct StripGap {
    std::size_t level = 0;
    std::int64_t across = 0;
    std::int64_t width = 0;
    std::int64_t along = 0;
    std::int64_t leftWall = 0; // how much further the neighbours reach; kNoWall at the strip's edge
    std::int64_t rightWall = 0;
    std::int64_t toEnd = 0;   // to the frame's end
    std::int64_t ceiling = 0; // to the nearest pin over the gap, or the frame's end

    static constexpr std::int64_t kNoWall = std::numeric_limits<std::int64_t>::max() / 4;
};

class StripSkyline {
public:
    struct Level {
        std::int64_t across = 0;
        std::int64_t width = 0;
        std::int64_t along = 0;
    };
    using Levels = std::vector<Level>; // from the left; neighbours differ

    explicit StripSkyline(const FillFrame& frame);

    void clear();
    const Levels& levels() const { return m_levels; }
    // REQUIRES: of a skyline of the same frame.
    void setLevels(const Levels& levels);

    // None: all is taken up to the frame's end.
    std::optional<StripGap> lowest();

    // Takes part of the gap's level up to `along`. REQUIRES: within the gap, further than it.
    void raise(const StripGap& gap, std::int64_t across, std::int64_t width, std::int64_t along);

    // Gives the gap up to its lower wall, or to the next pin over it; answers how much area is lost.
    std::int64_t giveUp(const StripGap& gap);

    // Whether no pin is in the way. REQUIRES: within the gap's width.
    bool isFree(std::int64_t across, std::int64_t width, std::int64_t along, std::int64_t height) const;

private:
    // The pins that begin before `end` and that the skyline has not passed yet, by where they begin.
    std::span<const TakenArea> pinsBefore(std::int64_t end) const;
    void passPins(std::int64_t along);
    bool growAroundPin(std::size_t level);
    StripGap gapAt(std::size_t level) const;
    void raiseLevel(std::size_t level, std::int64_t across, std::int64_t width, std::int64_t along);
    void joinNeighbours(std::size_t level);
    Levels::iterator at(std::size_t level) { return m_levels.begin() + static_cast<std::ptrdiff_t>(level); }

    FillFrame m_frame; // its pins by where they begin
    Levels m_levels;
    std::size_t m_passedPins = 0; // how many of the first end before the lowest level
};

} // namespace holdfast
