// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
// Ids of each kind, so that an OrderId is never taken for a RollId.
//
// An id is a positive 63-bit number made from time, seat and a counter (see IdMaker), so that two laptops
// never make the same one. 0 is "none" and is never stored.

#include <cstdint>
#include <functional>

namespace holdfast {

template <class Kind>
struct Id {
    std::int64_t value = 0;

    constexpr bool isSet() const { return value != 0; }
    constexpr auto operator<=>(const Id&) const = default;
};

using CustomerId = Id<struct CustomerKind>;
using OrderId = Id<struct OrderKind>;
using BillLineId = Id<struct BillLineIdKind>;
using InvoiceId = Id<struct InvoiceIdKind>;
using InvoiceRowId = Id<struct InvoiceRowKind>;
using GarmentId = Id<struct GarmentKind>;
using DecalId = Id<struct DecalKind>;
using BlankStyleId = Id<struct BlankStyleKind>;
using ColourId = Id<struct ColourKind>;
using BlankLotId = Id<struct BlankLotKind>;
using WashLoadId = Id<struct WashLoadKind>;
using FilmId = Id<struct FilmKind>;
using RollId = Id<struct RollKind>;
using PlaceId = Id<struct StoragePlaceKind>;
using PressId = Id<struct PressKind>;
using FairId = Id<struct FairKind>;
using EntryId = Id<struct JournalEntryKind>;

} // namespace holdfast

template <class Kind>
struct std::hash<holdfast::Id<Kind>> {
    std::size_t operator()(const holdfast::Id<Kind>& id) const noexcept {
        return std::hash<std::int64_t>{}(id.value);
    }
};
