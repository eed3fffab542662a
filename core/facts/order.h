// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
// An order: a customer, a promise, garments. It moves quoted → confirmed → handed over, or is cancelled;
// everything between is derived from what has been done to its garments.

#include "core/facts/bill_line.h"
#include "core/facts/placement.h"
#include "core/trade/dates.h"
#include "core/trade/ids.h"
#include "core/trade/money.h"
#include "core/trade/sentence.h"
#include "core/trade/units.h"

#include <optional>
#include <string>
#include <variant>
#include <vector>

namespace holdfast {

struct Customer {
    CustomerId id;
    std::string name;
    std::string phone;
};

enum class OrderState { Quoted, Confirmed, HandedOver, Cancelled };

struct Order {
    OrderId id;
    std::int64_t number = 0;
    CustomerId customer;
    OrderState state = OrderState::Confirmed;
    Instant takenAt;
    std::string takenAtPlace;              // the fair, or "workshop"
    LocalTime promised{};                  // ready from this day and time on
    std::optional<LocalDate> validUntil{}; // of a quotation, its last day; none: from before there was one
    std::optional<Instant> handedOverAt;
    std::vector<BillLine> lines; // besides its garments, in the order they were written
    TaxRule tax;
    Money total; // of garments, lines and added tax: what the customer pays (core/orders/order_sum.h)
    Money paid;  // sum of its money ledger
    std::string note;

    // A cancelled order owes nothing; what was paid for it may be paid back.
    Money owed() const { return state == OrderState::Cancelled ? Money{} : total - paid; }
    // Its last day is past; it may be confirmed all the same.
    bool isPastItsDay(LocalDate today) const {
        return state == OrderState::Quoted && validUntil && *validUntil < today;
    }
    bool isOpen() const { return state == OrderState::Quoted || state == OrderState::Confirmed; }
};

enum class Face { BookSerif, Plain };

// Cut from a drawing in the shop's artwork, by name ("heron").
struct Artwork {
    std::string name;
    bool operator==(const Artwork&) const = default;
};

// Cut as letters.
struct Wording {
    std::string text;
    Face face = Face::BookSerif;
    // What the knife follows, kept when the order was taken (SVG path data); empty: not kept.
    std::string outline{};
    bool operator==(const Wording&) const = default;
};

using DecalContent = std::variant<Artwork, Wording>;

struct Decal {
    DecalId id;
    GarmentId garment;
    FilmId film;
    DecalContent content;
    Placement placement = Placement::Chest;
    Millimetres below; // top seam to upper edge
    Millimetres aside; // centre line to the decal's centre, wearer's left positive
    Millimetres width;
    Millimetres height;
    int layer = 1;           // 1 lies on the cloth
    std::string confirmedBy; // how the customer agreed to wording or artwork ("at the table"); empty: not yet
    std::optional<RollId> cutFrom;
    std::optional<Instant> cutAt;

    bool isCut() const { return cutAt.has_value(); }
    bool isConfirmed() const { return !confirmedBy.empty(); }
    Sentence describe() const; // "Heron" or "Name “Juno”"
};

struct Garment {
    GarmentId id;
    OrderId order;
    int position = 1; // 1 is written a
    BlankStyleId style;
    std::string size;
    ColourId colour;
    std::optional<BlankLotId> lot; // the lot one unit of which is kept for it
    Money price;
    int attempt = 1; // grows by one each time it was spoiled
    std::optional<Instant> handedOverAt;
    std::vector<Decal> decals; // lowest layer first

    std::string letter() const; // "a" … "z", "aa" …
};

std::string garmentLabel(const Order& order, const Garment& garment); // "418-b"

// One step of a garment at the press, as it was done. Rows of one garment and attempt in the order of work;
// the last may be open (no finish): the step under way.
struct StepRecord {
    GarmentId garment;
    int attempt = 1;
    std::string key; // see core/press/route.h
    std::optional<PressId> press;
    Instant startedAt;
    std::optional<Instant> finishedAt;
};

struct Spoil {
    GarmentId garment;
    int attempt = 1;
    Instant at;
    std::string cause;
};

} // namespace holdfast
