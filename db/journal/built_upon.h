// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
// Which entries of a history have later ones built upon them, or are for good, so that undoing them is
// refused. A good guess from the entries of that history: what the ledgers or other histories would not bear
// is only found by trying.

#include "db/journal/history.h"

#include <set>
#include <span>

namespace holdfast::db {

class Connection;

// Newest first, as Shop::history reads them. Throws SqliteFailure.
std::set<EntryId> builtUpon(Connection& connection, std::span<const HistoryEntry> entries);

} // namespace holdfast::db
