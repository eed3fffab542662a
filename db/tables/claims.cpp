// SPDX-License-Identifier: GPL-3.0-or-later
#include "db/tables/claims.h"

#include "db/tables/fact_row.h"

namespace holdfast::db {

namespace {

Claim claimFrom(const FactRow& row) {
    Claim claim;
    claim.id = row.id<ClaimId>(0);
    claim.garment = row.id<GarmentId>(1);
    claim.decal = row.optionalId<DecalId>(2);
    claim.toldOn = row.date(3);
    claim.fault = row.choice<Fault>(4);
    if (!row.isNull(5))
        claim.washes = row.count(5);
    claim.note = row.text(6);
    if (!row.isNull(7)) {
        claim.answer = row.choice<ClaimAnswer>(7);
        claim.answeredOn = row.date(8);
    }
    return claim;
}

} // namespace

std::vector<Claim> claimsOf(Connection& connection, OrderId order) {
    std::vector<Claim> claims;
    UnreadFacts unread;
    Query rows = connection.query(
        "SELECT claim.id, garment_id, decal_id, told_on, fault, washes, note, answer, answered_on "
        "FROM claim JOIN garment ON garment.id = garment_id WHERE order_id = ?1 ORDER BY told_on, claim.id",
        order);
    readFacts(rows, unread, "claim", [&](const FactRow& row) { claims.push_back(claimFrom(row)); });
    return claims;
}

void noteUnreadClaims(Connection& connection, UnreadFacts& unread) {
    Query rows{connection,
               "SELECT id, garment_id, decal_id, told_on, fault, washes, note, answer, answered_on "
               "FROM claim ORDER BY id"};
    readFacts(rows, unread, "claim", [](const FactRow& row) { (void)claimFrom(row); });
}

std::vector<OpenClaim> openClaims(Connection& connection) {
    std::vector<OpenClaim> open;
    Query rows{connection, "SELECT order_id, claim.id FROM claim JOIN garment ON garment.id = garment_id "
                           "WHERE answer IS NULL ORDER BY told_on, claim.id"};
    while (rows.step())
        open.push_back({rows.id<OrderId>(0), rows.id<ClaimId>(1)});
    return open;
}

} // namespace holdfast::db
