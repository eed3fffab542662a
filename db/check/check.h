#pragma once
// Is the shop whole? Looks at the file, the references between rows, the ledgers and the journal.

#include "core/trade/result.h"

#include <string>
#include <vector>

namespace holdfast::db {

class Shop;

// What is wrong, one sentence each; empty when all is well. An error only where the checking itself cannot go
// on. Takes about 20 ms per megabyte.
Result<std::vector<std::string>> checkShop(Shop& shop);

} // namespace holdfast::db
