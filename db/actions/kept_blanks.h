// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
// Which unit of stock is kept for which garment.
//
// A garment keeps one unit of a lot (garment.lot_id) from the moment one is free until it takes it to the
// press (its first step in the present attempt). Free units of a lot are its ledger's sum less the garments
// that keep one and have not taken it. Quotations keep nothing: their customer is still thinking it over.

#include "db/actions/rows.h"

#include <optional>
#include <string>
#include <vector>

namespace holdfast::db {

// One kind of blank on the rail.
struct BlankKind {
    BlankStyleId style;
    std::string size;
    ColourId colour;

    auto operator<=>(const BlankKind&) const = default;
};

std::int64_t freeUnits(Connection& connection, BlankLotId lot);

// Garments that keep a unit of the lot and have not taken it, earliest promise first.
std::vector<GarmentId> keepersOf(Connection& connection, BlankLotId lot);

// A lot with a free unit: one that may go to the press as it is before one that is being washed before an
// unwashed one before one washed with softener; of those the oldest.
std::optional<BlankLotId> freeLotFor(Connection& connection, const BlankKind& kind);

// Keeps a unit of it for the garment.
std::optional<BlankLotId> keepBlank(Writer& writer, GarmentId garment, const BlankKind& kind);

// The unit goes back to the rail.
void giveBack(Writer& writer, GarmentId garment);

// Garments of confirmed orders that wait for such a blank get theirs, earliest promise first, as far as there
// are any. The entry then concerns them, too.
void giveToWaiting(Writer& writer, const BlankKind& kind);

} // namespace holdfast::db
