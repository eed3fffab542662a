// SPDX-License-Identifier: GPL-3.0-or-later
// A whole copy of the workshop's shop, made into another laptop's.
#include "core/trade/id_maker.h"
#include "core/trade/limits.h"
#include "db/disk/incarnation.h"
#include "db/disk/new_file.h"
#include "db/exchange/laptops.h"
#include "db/journal/line.h"
#include "db/journal/unrecorded_transaction.h"
#include "db/sqlite/online_copy.h"

#include <algorithm>
#include <optional>

namespace holdfast::db {

namespace {

Result<Seat> newSeat(Connection& connection, const std::string& name) {
    if (!isTheWorkshop(connection))
        return plainError(said(
            "A copy for another laptop is made in the workshop, where everybody’s work comes together."));
    const auto typed =
        typedText(name, {.field = "name", .what = phrase("The laptop’s name"), .least = 1, .most = 40});
    if (!typed)
        return typed.error();
    const auto known = seats(connection);
    if (std::ranges::any_of(known, [&](const Seat& seat) { return seat.name == *typed; }))
        return fieldError("name", said("There is a laptop of that name already: choose another."));
    if (known.back().number >= IdMaker::kHighestSeat)
        return plainError(said("The shop has had 1023 laptops: there are no numbers left for another."));
    const auto range = takeOrderRange(connection);
    if (!range)
        return plainError(said("There are not enough order numbers left to hand out: another laptop needs "
                               "1000, and the workshop keeps as many."));
    return Seat{known.back().number + 1, *typed, range->first, range->last, false, std::nullopt};
}

// Before the file is copied, which may take long.
std::optional<Error> whyNot(Connection& connection, const std::string& name) {
    const UnrecordedTransaction onlyTried{connection};
    const auto seat = newSeat(connection, name);
    return seat ? std::nullopt : std::optional{seat.error()};
}

void addSeat(Connection& connection, const Seat& seat) {
    connection.run(
        "INSERT INTO seat (id, name, first_order_number, last_order_number) VALUES (?1, ?2, ?3, ?4)",
        seat.number, seat.name, seat.firstOrderNumber, seat.lastOrderNumber);
}

// The copied file becomes the laptop's: its number, its order numbers, nobody's half-typed slips.
void makeIts(Connection& copy, const Seat& seat, const std::vector<Seat>& all, const Known& workshop) {
    copy.script("PRAGMA journal_mode = DELETE; PRAGMA secure_delete = ON; BEGIN");
    learnSeats(copy, all);
    copy.run("UPDATE seat_here SET seat_id = ?1, next_order_number = ?2", seat.number, seat.firstOrderNumber);
    copy.run("DELETE FROM seat_note");
    copy.run("DELETE FROM seat_let_go");
    copy.run("DELETE FROM seat_known");
    noteKnown(copy, kWorkshopSeat, workshop, Instant{});
    dropIncarnation(copy);
    goOnAboveAllIds(copy);
    copy.script("COMMIT");
}

// A laptop of which no copy came about: its order numbers are the workshop's again, for nobody has them.
Result<Done> withdrawSeat(Connection& connection, const Seat& seat) {
    try {
        UnrecordedTransaction transaction{connection};
        connection.run("DELETE FROM seat_known WHERE seat_id = ?1", seat.number);
        connection.run("DELETE FROM seat WHERE id = ?1", seat.number);
        connection.run("UPDATE seat SET last_order_number = ?2 WHERE id = ?1", kWorkshopSeat,
                       seat.lastOrderNumber);
        transaction.commit();
        return Done{};
    } catch (const SqliteFailure& failure) {
        return failure.error();
    }
}

CopyProgress told(const TellProgress& progress) {
    if (!progress)
        return {};
    return [&progress](int done, int inAll) { return progress(inAll == 0 ? 1.0 : 0.9 * done / inAll); };
}

} // namespace

Result<Seat> makeCopyForLaptop(Shop& shop, const std::filesystem::path& path, const std::string& name,
                               const TellProgress& progress) {
    if (shop.isReadOnly())
        return plainError(said("This shop is open for reading only."));
    auto file = NewFile::begin(path);
    if (!file)
        return file.error();
    Connection& connection = shop.connection();
    try {
        Seat seat;
        PlaceInLine end;
        {
            UnrecordedTransaction transaction{connection};
            putOwnInLine(connection);
            end = endOfLine(connection);
            transaction.commit();
        }
        if (auto refused = whyNot(connection, name))
            return *refused;
        {
            Connection copy = Connection::open(file->temporaryPath(), Access::ReadWrite);
            if (!copyOnline(connection, copy, told(progress)) || (progress && !progress(0.95)))
                return plainError(said("The copying was stopped. Nothing was left behind."));
            // Written at the workshop first: a number is not given twice, even if the stick is pulled out
            // now.
            UnrecordedTransaction transaction{connection};
            auto made = newSeat(connection, name);
            if (!made)
                return made;
            seat = *made;
            addSeat(connection, seat);
            noteKnown(connection, seat.number, {end.place, 0}, Instant{});
            makeIts(copy, seat, seats(connection), {end.place, incarnationHere(connection)});
            if (auto written = file->reachDisk(); !written)
                return written.error();
            transaction.commit();
        }
        auto kept = file->keep();
        if (!kept && !withdrawSeat(connection, seat))
            return plainError(said("{why} “{laptop}” is among the laptops all the same, with no copy: choose "
                                   "another name for the "
                                   "next one.",
                                   {{"why", kept.error().message}, {"laptop", seat.name}}));
        return kept ? Result<Seat>{seat} : Result<Seat>{kept.error()};
    } catch (const SqliteFailure& failure) {
        return failure.error();
    }
}

} // namespace holdfast::db
