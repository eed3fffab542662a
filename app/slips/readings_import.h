// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
// Readings written to the shop beside the window, by a connection of their own, as one action. What was
// written is loaded there, too, for the desk to take over.

#include "app/desk/shop_beside.h"
#include "app/slips/place_pick.h"
#include "db/actions/film_actions.h"

#include <functional>

namespace holdfast::app {

struct ReadingsWritten {
    Result<db::ReadingsImported> imported;
    WrittenBeside written;
};

// Asks `progress` with the share done and stops where it answers false, up to the commit. REQUIRES: a thread
// of its own, and a window's shop with a file, which outlives it.
ReadingsWritten importBeside(const db::Shop& window, const KnownBefore& known, const ChosenPlace& place,
                             const ClimateSeries& readings,
                             const std::function<bool(double share)>& progress);

} // namespace holdfast::app
