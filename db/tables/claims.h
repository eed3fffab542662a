#pragma once
// What came back, out of the shop file. All functions throw SqliteFailure; Shop::read is their door.

#include "core/quality/claim.h"
#include "db/sqlite/connection.h"

#include <vector>

namespace holdfast::db {

// Of the garments of an order, oldest first.
std::vector<Claim> claimsOf(Connection& connection, OrderId order);

// Of which nothing was done yet, the earliest told first; each with its order.
struct OpenClaim {
    OrderId order;
    ClaimId claim;
};
std::vector<OpenClaim> openClaims(Connection& connection);

} // namespace holdfast::db
