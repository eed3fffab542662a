// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
// Each blank style, film, press and storage place by name, to be changed, retired or copied.

#include "app/shell/finder_entries.h"

#include <vector>

namespace holdfast::app {

std::vector<FinderEntry> stockEntries(ShopDesk& desk);

} // namespace holdfast::app
