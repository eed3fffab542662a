// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
// Orders that were taken and then undone: their rows are gone from the tables, the journal has them still.
// What is shown of them is read from the undo that removed them, which holds each row as it was then. All
// functions throw SqliteFailure; Shop::read is their door.

#include "db/tables/order_book.h"

#include <optional>
#include <string>
#include <vector>

namespace holdfast::db {

struct UndoneGarment {
    int position = 1;
    Sentence blank;               // "Tee, M, Moss"
    std::vector<Sentence> decals; // "Heron in Dusk"
    Money price;
};

struct UndoneOrder {
    OrderLine line;
    EntryId undo; // undoing that puts the order back
    std::string phone;
    Instant takenAt{};
    std::string takenAtPlace; // the fair, or "workshop"
    std::string note;
    std::vector<UndoneGarment> garments; // by position
    std::vector<BillLine> lines;
    TaxRule tax;
};

// Newest first. Cheap where few orders were undone, however many were taken.
std::vector<UndoneOrder> undoneOrders(Connection& connection);
std::int64_t countUndone(Connection& connection);
std::optional<UndoneOrder> undoneOrder(Connection& connection, OrderId order);

// Those that the search finds, newest first, as the order book lists them.
std::vector<OrderLine> findUndone(Connection& connection, const OrderQuery& wanted);

// As OrderSearch finds those that are in the tables.
bool matches(const UndoneOrder& order, const OrderSearch& search, Spelling spelling);

} // namespace holdfast::db
