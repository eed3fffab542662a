// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
// Rows and columns in the words of the trade, for saying what was kept and what gave way.

#include "core/trade/ids.h"
#include "core/trade/sentence.h"
#include "db/sqlite/merge_rows.h"

#include <cstdint>
#include <optional>
#include <string>
#include <vector>

namespace holdfast::db {

class Connection;

// "order 426", "roll R-14", "the film Marram Soft, Dusk"; for a row that is gone "an order".
Sentence rowWords(Connection& connection, const std::string& table, const std::string& key);

// "“Moved the promise of order 426” (This workshop)": what was done last, on another laptop than `seat`, with
// the row, and where columns are named, with one of those. Looks at the last 5,000 entries.
std::optional<Sentence> whoseDoing(Connection& connection, const std::string& table, const std::string& key,
                                   std::int64_t seat, const std::vector<std::string>& columns = {});

// "Order 426: its promise stays as “…” (This workshop) left it." `seat` is the laptop whose entry gives way.
Sentence differenceWords(Connection& connection, const RowDifference& difference, std::int64_t seat);

} // namespace holdfast::db
