// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
// Ledgers below zero, in words: what the views of the schema say.

#include "db/sqlite/changeset.h"

#include <string>
#include <vector>

namespace holdfast::db {

class Connection;

// Empty when every ledger stands, or where the schema keeps none.
std::vector<std::string> ledgerFaults(Connection& connection);

// The same of the lots, rolls and orders whose ledgers the changes move, after they were made; of them alone,
// however many others the shop has.
std::vector<std::string> ledgerFaults(Connection& connection, ChangesetView changes);

} // namespace holdfast::db
