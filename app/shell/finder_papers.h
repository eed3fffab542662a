// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
// What the command finder can have printed: the day sheet, papers of open orders, labels of rolls on the
// shelf.

#include "app/shell/finder_entries.h"

#include <QStringList>

namespace holdfast::app {

FinderEntry daySheetEntry();
FinderEntry buyingListEntry();

// Of orders whose number begins with one of these words, and of every roll on the shelf.
std::vector<FinderEntry> paperEntries(const ReckonedShop& shop, const QStringList& typed);

} // namespace holdfast::app
