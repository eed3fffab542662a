// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
// Customers who were joined on one laptop while another forgot one of them: joining would give the orders of
// the one a name again, or those of the other none.

#include "core/trade/sentence.h"
#include "db/sqlite/changeset.h"

#include <optional>

namespace holdfast::db {

class Connection;

// Why the entry cannot be done, if it joins somebody who is forgotten here.
std::optional<Sentence> whyNotJoined(Connection& connection, ChangesetView changeset);

} // namespace holdfast::db
