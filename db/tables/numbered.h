// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
// What a number on a paper names, whatever its state: an order, one of its garments, or a roll.

#include "core/facts/film_roll.h"
#include "core/facts/order.h"
#include "db/sqlite/connection.h"

#include <optional>
#include <string_view>

namespace holdfast::db {

struct NumberedOrder {
    OrderId id;
    OrderState state = OrderState::Confirmed;
};

std::optional<NumberedOrder> orderNumbered(Connection& connection, std::int64_t number);
// By its letter, "b".
std::optional<GarmentId> garmentLettered(Connection& connection, OrderId order, std::string_view letter);
struct NumberedRoll {
    RollId id;
    FilmId film;
};
std::optional<NumberedRoll> rollNumbered(Connection& connection, std::int64_t number);

// Digits of the highest order number given so far; 0 before the first.
int orderDigits(Connection& connection);

} // namespace holdfast::db
