// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
// The readings of a long climate log loaded and summed up beside the window, by a connection of their own,
// while the window shows what needs none of them.

#include "core/film/roll_condition.h"
#include "core/trade/dates.h"

#include <filesystem>
#include <functional>
#include <optional>

namespace holdfast::app {

struct ClimateRead {
    ClimateHistory climate;
    ClimateReckoner reckoner; // with its sums over the climate for the rolls there are
};

// Asks `goesOn` with the share done and stops within a tenth of a second where it answers false. None:
// stopped, or the file could not be read. REQUIRES: a shop file.
std::optional<ClimateRead> readClimate(const std::filesystem::path& shop, const Now& now,
                                       const std::function<bool(double share)>& goesOn);

} // namespace holdfast::app
