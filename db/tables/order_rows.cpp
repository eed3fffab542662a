// SPDX-License-Identifier: GPL-3.0-or-later
#include "db/tables/order_rows.h"

namespace holdfast::db {

Order orderFrom(const FactRow& row) {
    Order order;
    order.id = row.id<OrderId>(0);
    order.number = row.number(1, 1, kMostCount);
    order.customer = row.id<CustomerId>(2);
    order.state = row.choice<OrderState>(3);
    order.takenAt = row.instant(4);
    order.takenAtPlace = row.text(5);
    order.promised = row.localTime(6);
    order.handedOverAt = row.optionalInstant(7);
    order.note = row.text(8);
    order.total = row.money(9);
    order.paid = row.money(10);
    order.tax = {row.choice<TaxKind>(11), Percentage{row.number(12, 0, kWholePercentage.hundredths)},
                 row.choice<TaxedBy>(13), row.choice<Rounding>(14)};
    order.validUntil = row.optionalDate(15);
    return order;
}

BillLine billLineFrom(const FactRow& row) {
    BillLine line;
    line.taken = row.id<BillLineId>(0);
    line.kind = row.choice<BillLineKind>(2);
    line.words = row.text(3);
    if (row.isNull(4))
        line.worth = Percentage{row.number(5, -kWholePercentage.hundredths, kWholePercentage.hundredths)};
    else
        line.worth = row.money(4);
    return line;
}

Garment garmentFrom(const FactRow& row) {
    Garment garment;
    garment.id = row.id<GarmentId>(0);
    garment.order = row.id<OrderId>(1);
    garment.position = static_cast<int>(row.number(2, 1, kMostCount));
    garment.style = row.id<BlankStyleId>(3);
    garment.size = row.text(4);
    garment.colour = row.id<ColourId>(5);
    garment.lot = row.optionalId<BlankLotId>(6);
    garment.price = row.money(7);
    garment.attempt = row.count(8);
    garment.handedOverAt = row.optionalInstant(9);
    return garment;
}

Decal decalFrom(const FactRow& row) {
    Decal decal;
    decal.id = row.id<DecalId>(0);
    decal.garment = row.id<GarmentId>(1);
    decal.film = row.id<FilmId>(2);
    if (row.isNull(4))
        decal.content = Artwork{row.text(3)};
    else
        decal.content = Wording{row.text(4), row.choice<Face>(5), row.text(15)};
    decal.placement = row.choice<Placement>(6);
    decal.below = row.length(7);
    decal.aside = row.length(8);
    decal.width = row.extent(9);
    decal.height = row.extent(10);
    decal.layer = row.count(11);
    decal.confirmedBy = row.text(12);
    decal.cutFrom = row.optionalId<RollId>(13);
    decal.cutAt = row.optionalInstant(14);
    return decal;
}

} // namespace holdfast::db
