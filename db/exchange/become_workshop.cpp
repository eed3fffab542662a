// SPDX-License-Identifier: GPL-3.0-or-later
// A laptop's copy takes the place of the workshop's, which is lost.
#include "core/trade/id_maker.h"
#include "db/disk/incarnation.h"
#include "db/exchange/laptops.h"
#include "db/journal/line.h"
#include "db/journal/unrecorded_transaction.h"

#include <algorithm>

namespace holdfast::db {

namespace {

// The lost file has given out order numbers that nobody here knows: they are passed over, up to a full
// hundred and a hundred more.
constexpr std::int64_t kPassedOver = 100;

std::int64_t firstNumberAfterTheLost(Connection& connection) {
    Query range =
        connection.query("SELECT first_order_number, last_order_number, COALESCE((SELECT MAX(number) "
                         "FROM shop_order WHERE number BETWEEN first_order_number AND "
                         "last_order_number), first_order_number - 1) FROM seat WHERE id = ?1",
                         kWorkshopSeat);
    if (!range.step())
        throw SqliteFailure::inWords(
            said("The shop file is damaged: it does not say which laptop it is on."));
    const std::int64_t known = range.integer(2);
    const std::int64_t next = (known / kPassedOver + 2) * kPassedOver + 1;
    return std::min(next, range.integer(1) + 1);
}

// Ids of the workshop's own seat that lie above all that is known here.
std::int64_t lastIdForTheWorkshop(Connection& connection) {
    goOnAboveAllIds(connection);
    const std::int64_t last = connection.number("SELECT last_id FROM seat_here");
    return IdMaker{kWorkshopSeat}.next(IdMaker::timeOf(last) + Seconds{1});
}

// Answers the next order number.
std::int64_t putInPlaceOfTheLost(Connection& connection) {
    const SeatNumber here = seatHere(connection).number;
    const std::int64_t known = endOfLine(connection).place;
    const std::int64_t next = firstNumberAfterTheLost(connection);
    connection.run("UPDATE seat_here SET seat_id = ?1, last_id = ?2, next_order_number = ?3", kWorkshopSeat,
                   lastIdForTheWorkshop(connection), next);
    connection.run("DELETE FROM seat_known");
    for (const Seat& seat : seats(connection))
        if (seat.number != kWorkshopSeat && seat.number != here)
            noteKnown(connection, seat.number, {known, 0}, Instant{});
    putOwnInLine(connection);
    return next;
}

} // namespace

Result<std::int64_t> becomeWorkshop(Shop& shop) {
    if (shop.isReadOnly())
        return plainError(said("This shop is open for reading only."));
    Connection& connection = shop.connection();
    try {
        if (isTheWorkshop(connection))
            return plainError(said("This is the workshop’s copy already."));
        std::int64_t next = 0;
        Shop::GoingOn from;
        {
            UnrecordedTransaction transaction{connection};
            next = putInPlaceOfTheLost(connection);
            renewIncarnation(connection, shop.path());
            from = shop.goingOn();
            transaction.commit();
        }
        shop.goOn(from, {});
        return next;
    } catch (const SqliteFailure& failure) {
        return failure.error();
    }
}

} // namespace holdfast::db
