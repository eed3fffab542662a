// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
// Ledgers below zero, in words: what the views of the schema say.

#include "core/trade/sentence.h"
#include "db/sqlite/changeset.h"

#include <vector>

namespace holdfast::db {

class Connection;

// Empty when every ledger is sound, or where the schema keeps none.
std::vector<Sentence> ledgerFaults(Connection& connection);

// The same of the lots, rolls and orders whose ledgers the changes move, after they were made; of them alone,
// however many others the shop has.
std::vector<Sentence> ledgerFaults(Connection& connection, ChangesetView changes);

} // namespace holdfast::db
