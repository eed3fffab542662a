// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
// What to take to a fair, as far as the shop's file knows: garments of customers of that fair, washed blanks
// to take orders on, a sample of each film with the rolls of it that may be used, and the papers that go with
// what is handed over. The table, the cash and the tape are for whoever packs.

#include "core/facts/fair.h"
#include "core/shop/reckoned_shop.h"
#include "core/stock/kinds_asked.h"

#include <vector>

namespace holdfast {

// Of an order that was taken at a fair of this name, or is promised for one of its days. Confirmed ones only.
enum class WhyPacked { TakenThere, PromisedThen };

struct GarmentToPack {
    GarmentId garment;
    WhyPacked why = WhyPacked::TakenThere;
    bool isPressed = false;            // else it is to be finished before
    std::optional<Instant> restsUntil; // of one that is pressed and still rests when this was asked
};

struct BlanksToPack {
    BlankKind kind;
    std::int64_t units = 0; // washed, dry and not reserved
};

struct FilmToPack {
    FilmId film;
    std::vector<RollId> rolls; // that may be used, first to use up first; at least one
    Millimetres left;          // on them, less what waiting decals are allotted
};

struct PackingList {
    std::vector<GarmentToPack> garments; // pressed ones first, then by order and position
    std::vector<BlanksToPack> blanks;    // by style, its colours and its sizes; of those offered for new work
    std::vector<FilmToPack> films;       // by name; of those offered for new work
    std::int64_t claimTickets = 0;       // a stub for each order of which anything pressed goes along
    std::int64_t careCards = 0;          // one for each pressed garment
};

PackingList packingList(const ReckonedShop& shop, const Fair& fair);

} // namespace holdfast
