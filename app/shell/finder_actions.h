// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
// What the finder offers in addition to what the shop holds: the places, what waits in them, and the acts,
// each with the words that people type for it.

#include "app/shell/finder_entries.h"

#include <vector>

namespace holdfast::app {

std::vector<FinderEntry> placeEntries();
// Places where something waits, with what and how much.
std::vector<FinderEntry> waitingEntries(ShopDesk& desk);
std::vector<FinderEntry> actionEntries(ShopDesk& desk);
// Fairs of the list, the latest first, to be changed.
std::vector<FinderEntry> fairEntries(ShopDesk& desk);

} // namespace holdfast::app
