// SPDX-License-Identifier: GPL-3.0-or-later
#include "db/tables/numbered.h"

#include "core/trade/paper_numbers.h"
#include "db/sqlite/query.h"
#include "db/tables/codes.h"

namespace holdfast::db {

std::optional<NumberedOrder> orderNumbered(Connection& connection, std::int64_t number) {
    Query row = connection.query("SELECT id, state FROM shop_order WHERE number = ?1", number);
    if (!row.step())
        return std::nullopt;
    // One that cannot be read is found too: its place says what is wrong with it.
    return NumberedOrder{row.id<OrderId>(0),
                         knownCode<OrderState>(row.view(1)).value_or(OrderState::Confirmed)};
}

std::optional<GarmentId> garmentLettered(Connection& connection, OrderId order, std::string_view letter) {
    Query rows = connection.query("SELECT id, position FROM garment WHERE order_id = ?1", order);
    while (rows.step())
        if (garmentLetter(rows.integer(1)) == letter)
            return rows.id<GarmentId>(0);
    return std::nullopt;
}

std::optional<NumberedRoll> rollNumbered(Connection& connection, std::int64_t number) {
    Query row = connection.query("SELECT id, film_id FROM film_roll WHERE number = ?1", number);
    if (!row.step())
        return std::nullopt;
    return NumberedRoll{row.id<RollId>(0), row.id<FilmId>(1)};
}

int orderDigits(Connection& connection) {
    const std::int64_t highest = connection.number("SELECT COALESCE(MAX(number), 0) FROM shop_order");
    return highest == 0 ? 0 : static_cast<int>(std::to_string(highest).size());
}

} // namespace holdfast::db
