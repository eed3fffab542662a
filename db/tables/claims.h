// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
// What came back, out of the shop file. All functions throw SqliteFailure; Shop::read is their door.

#include "core/quality/claim.h"
#include "db/sqlite/connection.h"
#include "db/tables/unread_facts.h"

#include <vector>

namespace holdfast::db {

// Of the garments of an order, oldest first. One that cannot be read is left out.
std::vector<Claim> claimsOf(Connection& connection, OrderId order);
// Notes the claims of all orders that cannot be read.
void noteUnreadClaims(Connection& connection, UnreadFacts& unread);

// Of which nothing was done yet, the earliest reported first; each with its order.
struct OpenClaim {
    OrderId order;
    ClaimId claim;
};
std::vector<OpenClaim> openClaims(Connection& connection);

} // namespace holdfast::db
