// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
// What gave way when entries of other laptops were taken in, as a list.

#include "core/trade/dates.h"
#include "core/trade/ids.h"
#include "core/trade/sentence.h"

#include <string>
#include <vector>

namespace holdfast::db {

class Connection;

struct Remark {
    EntryId entry;
    Instant at{};
    Sentence title;   // of the entry
    std::string seat; // whose it was
    Sentence words;   // sentences: what was kept instead
};

// Newest entry first, at most `limit`. Throws SqliteFailure.
std::vector<Remark> recentRemarks(Connection& connection, int limit);

} // namespace holdfast::db
