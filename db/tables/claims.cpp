#include "db/tables/claims.h"

#include "db/tables/codes.h"

namespace holdfast::db {

std::vector<Claim> claimsOf(Connection& connection, OrderId order) {
    std::vector<Claim> claims;
    Query rows = connection.query(
        "SELECT claim.id, garment_id, decal_id, told_on, fault, washes, note, answer, answered_on "
        "FROM claim JOIN garment ON garment.id = garment_id WHERE order_id = ?1 ORDER BY told_on, claim.id",
        order);
    while (rows.step()) {
        Claim& claim = claims.emplace_back();
        claim.id = rows.id<ClaimId>(0);
        claim.garment = rows.id<GarmentId>(1);
        claim.decal = rows.optionalId<DecalId>(2);
        claim.toldOn = rows.date(3);
        claim.fault = fromCode<Fault>(rows.view(4));
        if (!rows.isNull(5))
            claim.washes = static_cast<int>(rows.integer(5));
        claim.note = rows.text(6);
        if (!rows.isNull(7)) {
            claim.answer = fromCode<ClaimAnswer>(rows.view(7));
            claim.answeredOn = rows.date(8);
        }
    }
    return claims;
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
