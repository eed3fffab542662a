// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
// Two rows may be of one customer, once they were joined: one is kept, and the other stays for what still
// comes in for it from another laptop. All functions throw SqliteFailure; Shop::read is their door.

#include "core/trade/ids.h"
#include "db/sqlite/connection.h"

#include <vector>

namespace holdfast::db {

// Who this one is: themselves, if they were not joined to anybody.
CustomerId keptCustomer(Connection& connection, CustomerId customer);

// All rows of the customer: who is kept, and then those joined to them.
std::vector<CustomerId> rowsOfCustomer(Connection& connection, CustomerId customer);

} // namespace holdfast::db
