// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
// How much film was cut lately, and how much of it became decals.

#include <cstdint>

namespace holdfast {

inline constexpr int kCutsLookedAt = 60; // the latest

// The latest cuts, kCutsLookedAt of them at most.
struct CuttingHistory {
    std::int64_t cuts = 0;
    std::int64_t film = 0;   // mm²
    std::int64_t decals = 0; // mm², of those cut since the first of the cuts that still count as cut

    bool operator==(const CuttingHistory&) const = default;
};

} // namespace holdfast
