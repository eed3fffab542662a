// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
// Every garment of the shop, one after the other, with its decals and what triggers keep of its steps: each
// table is read once, in the order in which it lies in the file. Throws SqliteFailure.
//
//   for (GarmentsInTurn garment{connection}; garment.next();)
//       … garment.row() … garment.decals() … garment.card() …

#include "core/facts/order.h"
#include "db/sqlite/connection.h"

#include <cstdint>
#include <optional>
#include <set>
#include <span>
#include <string_view>
#include <vector>

namespace holdfast::db {

// As much of a decal as figures ask for. Of many garments all are in memory.
struct DecalInTurn {
    GarmentId garment;
    DecalId id;
    FilmId film;
    RollId cutFrom;                                           // not set: it is not cut
    std::int32_t below = 0, aside = 0, width = 0, height = 0; // millimetres
    std::int32_t layer = 1;
    Placement placement = Placement::Chest;
    bool isWording = false;

    Decal asDecal() const; // with no name or wording
};

// What garment_card says, valid until the next garment.
struct GarmentCard {
    std::optional<std::int64_t> pressedAt; // seconds; none: a step is not done yet
    std::string_view presses;              // ids with a space between, the one used last at the end

    std::vector<PressId> pressIds() const;
};

class GarmentsInTurn {
public:
    explicit GarmentsInTurn(Connection& connection);

    bool next();

    GarmentId id() const { return m_rows.id<GarmentId>(0); }
    const Query& row() const { return m_rows; } // kGarmentColumns
    // Lowest layer first. Those that cannot be read are not there.
    std::span<const DecalInTurn> decals() const { return m_own; }
    bool hasUnreadDecals() const { return m_withUnread.contains(id()); }
    // None of a garment that was never begun.
    const std::optional<GarmentCard>& card() const { return m_card; }

private:
    void readDecals(Connection& connection);

    std::vector<DecalInTurn> m_decals;
    std::set<GarmentId> m_withUnread;
    Query m_rows;
    Query m_cards;
    bool m_isCardThere;
    std::size_t m_nextDecal = 0;
    std::span<const DecalInTurn> m_own;
    std::optional<GarmentCard> m_card;
};

} // namespace holdfast::db
