// SPDX-License-Identifier: GPL-3.0-or-later
#include "db/exchange/laptops.h"

#include "core/trade/id_maker.h"
#include "db/journal/line.h"

#include <algorithm>

namespace holdfast::db {

std::vector<Seat> seats(Connection& connection) {
    std::vector<Seat> found;
    Query rows =
        connection.query("SELECT seat.id, name, first_order_number, last_order_number, "
                         "seat.id = (SELECT seat_id FROM seat_here), seat_known.at, "
                         "(SELECT seat_id FROM seat_here) = seat.id OR (SELECT seat_id FROM seat_here) <> ?1 "
                         "OR seat_known.seat_id IS NOT NULL "
                         "FROM seat LEFT JOIN seat_known ON seat_known.seat_id = seat.id ORDER BY seat.id",
                         kWorkshopSeat);
    while (rows.step())
        found.push_back({rows.integer(0), rows.text(1), rows.integer(2), rows.integer(3), rows.truth(4),
                         rows.integer(5) == 0 ? std::nullopt : rows.optionalInstant(5), rows.truth(6)});
    return found;
}

Seat seatHere(Connection& connection) {
    for (Seat& seat : seats(connection))
        if (seat.isHere)
            return seat;
    throw SqliteFailure::inWords(said("The shop file is damaged: it does not say which laptop it is on."));
}

bool isTheWorkshop(Connection& connection) {
    return connection.number("SELECT seat_id FROM seat_here") == kWorkshopSeat;
}

std::int64_t shopNumber(Connection& connection) {
    return connection.number("SELECT shop FROM journal_shop");
}

std::int64_t entriesToBring(Connection& connection) {
    return isTheWorkshop(connection) ? 0 : static_cast<std::int64_t>(behindTheLine(connection).size());
}

std::int64_t entriesToFetch(Connection& connection, SeatNumber laptop) {
    return endOfLine(connection).place + static_cast<std::int64_t>(behindTheLine(connection).size()) -
           knownOf(connection, laptop).place;
}

std::int64_t orderNumbersLeft(Connection& connection) {
    return std::max<std::int64_t>(
        0, connection.number("SELECT last_order_number - next_order_number + 1 FROM seat_here "
                             "JOIN seat ON seat.id = seat_id"));
}

std::optional<OrderRange> takeOrderRange(Connection& connection) {
    Query own = connection.query("SELECT next_order_number, last_order_number FROM seat_here "
                                 "JOIN seat ON seat.id = seat_id");
    if (!own.step() || own.integer(1) - own.integer(0) + 1 < 2 * kOrderNumbersEach)
        return std::nullopt;
    const std::int64_t last = own.integer(1);
    connection.run("UPDATE seat SET last_order_number = ?2 WHERE id = ?1", kWorkshopSeat,
                   last - kOrderNumbersEach);
    return OrderRange{last - kOrderNumbersEach + 1, last};
}

void giveRangeIfFew(Connection& connection, SeatNumber laptop) {
    const std::int64_t left = connection.number(
        "SELECT last_order_number - MAX(first_order_number - 1, COALESCE((SELECT MAX(number) FROM shop_order "
        "WHERE number BETWEEN first_order_number AND last_order_number), 0)) FROM seat WHERE id = ?1",
        laptop);
    if (left >= kFewOrderNumbers)
        return;
    if (const auto range = takeOrderRange(connection))
        connection.run("UPDATE seat SET first_order_number = ?2, last_order_number = ?3 WHERE id = ?1",
                       laptop, range->first, range->last);
}

void learnSeats(Connection& connection, const std::vector<Seat>& seats) {
    for (const Seat& seat : seats)
        connection.run(
            "INSERT INTO seat (id, name, first_order_number, last_order_number) VALUES (?1, ?2, ?3, ?4) "
            "ON CONFLICT (id) DO UPDATE SET name = excluded.name, "
            "first_order_number = excluded.first_order_number, "
            "last_order_number = excluded.last_order_number",
            seat.number, seat.name, seat.firstOrderNumber, seat.lastOrderNumber);
    goOnAboveAllOrderNumbers(connection);
}

void goOnAboveAllOrderNumbers(Connection& connection) {
    connection.run(
        "UPDATE seat_here SET next_order_number = MAX("
        "CASE WHEN next_order_number BETWEEN first_order_number AND last_order_number + 1 THEN "
        "next_order_number "
        "ELSE first_order_number END, "
        "1 + COALESCE((SELECT MAX(number) FROM shop_order WHERE number BETWEEN first_order_number AND "
        "last_order_number), 0)) FROM seat WHERE seat.id = seat_id");
}

void learnForgottenSeats(Connection& connection, const std::vector<Seat>& seats) {
    for (const Seat& seat : seats) {
        connection.run("INSERT INTO seat (id, name, first_order_number, last_order_number) "
                       "VALUES (?1, ?2, ?3, ?4) ON CONFLICT DO NOTHING",
                       seat.number, seat.name, seat.firstOrderNumber, seat.lastOrderNumber);
        if (connection.changes() > 0)
            connection.run("UPDATE seat SET last_order_number = MAX(first_order_number, "
                           "MIN(last_order_number, ?2 - 1)) WHERE id = ?1",
                           kWorkshopSeat, seat.firstOrderNumber);
    }
}

std::int64_t newIdHere(Connection& connection, Instant at) {
    Query here = connection.query("SELECT seat_id, last_id FROM seat_here");
    if (!here.step())
        throw SqliteFailure::inWords(
            said("The shop file is damaged: it does not say which laptop it is on."));
    const std::int64_t id = IdMaker{here.integer(0), here.integer(1)}.next(at);
    connection.run("UPDATE seat_here SET last_id = ?1", id);
    return id;
}

void noteKnown(Connection& connection, SeatNumber laptop, const Known& known, Instant at) {
    connection.run(
        "INSERT INTO seat_known (seat_id, place, incarnation, at) VALUES (?1, ?2, ?3, ?4) "
        "ON CONFLICT (seat_id) DO UPDATE SET place = excluded.place, incarnation = excluded.incarnation, "
        "at = excluded.at WHERE excluded.at >= seat_known.at",
        laptop, known.place, known.incarnation, at);
}

Known knownOf(Connection& connection, SeatNumber laptop) {
    Query known = connection.query("SELECT place, incarnation FROM seat_known WHERE seat_id = ?1", laptop);
    return known.step() ? Known{known.integer(0), known.integer(1)} : Known{};
}

std::int64_t incarnationHere(Connection& connection) {
    return connection.number("SELECT incarnation FROM seat_here");
}

std::optional<Sentence> remark(Connection& connection, EntryId entry) {
    Query found = connection.query("SELECT words, said FROM journal_remark WHERE entry_id = ?1", entry);
    return found.step() ? std::optional{keptWords(found, 0, 1).sentence()} : std::nullopt;
}

} // namespace holdfast::db
