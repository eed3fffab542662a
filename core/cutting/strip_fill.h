#pragma once
// Fills a strip from its cut end: the lowest gap of the skyline takes the piece that fits it best.
//
// The skyline is how far along the film is taken, over the strip's width. At its lowest, leftmost level the
// piece with the most sides that meet something (both walls, the top of a wall, the end of the strip) is
// laid; among equals the earlier in the given order. Where none fits, the gap is given up to its lower wall.
// Pins are taken film that the skyline grows around. Burke, Kendall and Whitwell 2004 (best fit) [M]; fit
// scores as in Leung, Zhang and Sim 2011 [M].

#include "core/cutting/strip.h"

#include <functional>
#include <span>
#include <vector>

namespace holdfast {

// A piece that is to be laid: its number in the task, and as which it lies.
struct FillPiece {
    std::size_t piece = 0;
    std::int64_t across = 0;
    std::int64_t along = 0;
    bool mayTurn = false;
};

struct TakenArea {
    std::int64_t across = 0;
    std::int64_t along = 0;
    std::int64_t acrossEnd = 0;
    std::int64_t alongEnd = 0;
};

struct FilledPlace {
    std::size_t piece = 0;
    std::int64_t across = 0;
    std::int64_t along = 0;
    bool isTurned = false; // against its FillPiece
};

struct Filling {
    std::vector<FilledPlace> places;
    std::int64_t end = 0;   // furthest end of a piece laid; pins do not count
    bool isStopped = false; // some pieces were not looked at
};

// What is filled, without the pieces.
struct FillFrame {
    std::int64_t width = 0;
    std::int64_t end = 0; // nothing lies beyond
    std::vector<TakenArea> pins;
};

// Lays the pieces; who finds no room before the frame's end is left out. `shouldStop` may be empty.
Filling fillStrip(const FillFrame& frame, std::span<const FillPiece> order,
                  const std::function<bool()>& shouldStop);

} // namespace holdfast
