#pragma once
// What came back, out of the shop file. All functions throw SqliteFailure; Shop::read is their door.

#include "core/quality/claim.h"
#include "db/sqlite/connection.h"

#include <vector>

namespace holdfast::db {

// Of the garments of an order, oldest first.
std::vector<Claim> claimsOf(Connection& connection, OrderId order);

} // namespace holdfast::db
