// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
// Orders that two laptops took for one reference of a web shop. Both stay: a person cancels the one too many.

#include "core/trade/sentence.h"
#include "db/sqlite/changeset.h"

#include <vector>

namespace holdfast::db {

class Connection;

// After the changeset is applied: a sentence for each reference it brings that another order has too, unless
// one of the two is cancelled. Throws SqliteFailure.
std::vector<Sentence> referencesTakenTwice(Connection& connection, ChangesetView changeset);

} // namespace holdfast::db
