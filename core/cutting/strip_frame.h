// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
// What the fillers of a strip work on: pieces to be laid, the frame they are laid in, and where they came to
// lie.

#include "core/cutting/strip.h"

#include <functional>
#include <vector>

namespace holdfast {

using ShouldStop = std::function<bool()>; // may be empty

// A piece that is to be laid: its number in the task, and its sizes as it lies unturned.
struct FillPiece {
    std::size_t piece = 0;
    std::int64_t across = 0;
    std::int64_t along = 0;
    bool mayTurn = false;

    std::int64_t area() const { return across * along; }
};

struct TakenArea {
    std::int64_t across = 0;
    std::int64_t along = 0;
    std::int64_t acrossEnd = 0;
    std::int64_t alongEnd = 0;
};

struct FilledPlace {
    std::size_t piece = 0; // its number in the task
    std::int64_t across = 0;
    std::int64_t along = 0;
    bool isTurned = false; // against its FillPiece
};

// What is filled. Pins are taken already.
struct FillFrame {
    std::int64_t width = 0;
    std::int64_t end = 0; // nothing lies beyond
    std::vector<TakenArea> pins;
};

} // namespace holdfast
