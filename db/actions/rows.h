// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
// Single rows as the actions look at them, and what they say when a row is gone or in no state for the work.
// All throw SqliteFailure; Shop::act is their door.

#include "core/facts/film_roll.h"
#include "core/facts/order.h"
#include "core/facts/unread_row.h"
#include "core/trade/result.h"
#include "db/journal/writer.h"

#include <optional>
#include <string>
#include <string_view>
#include <vector>

namespace holdfast::db {

// Of moves, steps and other rows that nobody names from outside.
using RowId = Id<struct RowKind>;

struct OrderRow {
    OrderId id;
    std::int64_t number = 0;
    CustomerId customer;
    OrderState state = OrderState::Confirmed;

    std::string label() const { return std::to_string(number); }
};

struct GarmentRow {
    GarmentId id;
    OrderRow order;
    int position = 1;
    BlankStyleId style;
    std::string size;
    ColourId colour;
    std::optional<BlankLotId> lot;
    int attempt = 1;
    bool isHandedOver = false;
    bool isCancelled = false;            // alone; its order may go on
    int steps = 0;                       // of the present attempt
    std::optional<std::string> openStep; // its key
    std::optional<RowId> openRow;        // its press_step.id

    std::string label() const; // "418-b"
    bool hasBegun() const { return steps > 0; }
    bool isOnPress() const { return openStep.has_value(); }
    bool isPressed() const { return hasBegun() && !isOnPress(); }
};

struct DecalRow {
    DecalId id;
    GarmentRow garment;
    FilmId film;
    DecalContent content;
    int layer = 1;
    std::optional<RollId> cutFrom;

    Sentence words() const; // "Heron"
};

struct RollRow {
    RollId id;
    int number = 0;
    FilmId film;
    RollState state = RollState::OnShelf;
    Millimetres left;

    std::string label() const; // "R-09"
};

struct LotRow {
    BlankLotId id;
    BlankStyleId style;
    std::string size;
    ColourId colour;
    std::optional<WashLoadId> lastLoad;
    bool isInTheWash = false; // its last load is not dry yet
    std::int64_t left = 0;
    std::string words; // "Tee, M, Moss"
};

// Half an order must not be worked on: one of which a row cannot be read is refused, with the reason, by
// orderRow, garmentRow and decalRow too.
Result<Done> requireReadable(Connection& connection, OrderId order);
Error cannotBeRead(const UnreadRow& row);

Result<OrderRow> orderRow(Connection& connection, OrderId order);
Result<GarmentRow> garmentRow(Connection& connection, GarmentId garment);
Result<DecalRow> decalRow(Connection& connection, DecalId decal);
Result<RollRow> rollRow(Connection& connection, RollId roll);
Result<LotRow> lotRow(Connection& connection, BlankLotId lot);

// Garments of an order, by position.
std::vector<GarmentId> garmentsOf(Connection& connection, OrderId order);

// "Tee", "Marram Soft, Dusk", "Back room shelf"; an error where there is none.
Result<std::string> styleName(Connection& connection, BlankStyleId style, std::string_view field = "style");
Result<std::string> filmName(Connection& connection, FilmId film, std::string_view field = "film");
Result<std::string> placeName(Connection& connection, PlaceId place, std::string_view field = "place");
Result<std::string> pressName(Connection& connection, PressId press, std::string_view field = "press");

// "Tee, M, Moss"; an error naming the field where style, size or colour is none of the shop's.
Result<std::string> blankWords(Connection& connection, BlankStyleId style, const std::string& size,
                               ColourId colour);

// An order that is neither handed over nor cancelled.
Result<Done> requireOpen(const OrderRow& order);
// A garment of an open order that was not handed over itself.
Result<Done> requireOpen(const GarmentRow& garment);
// Not one step was done at the press in this attempt.
Result<Done> requireNotBegun(const GarmentRow& garment);

// The entry shows in the history of the garment and of its order.
void concernsGarment(Writer& writer, const GarmentRow& garment);

} // namespace holdfast::db
