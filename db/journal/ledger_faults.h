#pragma once
// Ledgers below zero, in words: what the view ledger_fault says.

#include <string>
#include <vector>

namespace holdfast::db {

class Connection;

// Empty when every ledger stands, or where the schema keeps none.
std::vector<std::string> ledgerFaults(Connection& connection);

} // namespace holdfast::db
