// SPDX-License-Identifier: GPL-3.0-or-later
#include "db/journal/line.h"

#include "core/trade/id_maker.h"
#include "db/sqlite/connection.h"

#include <sqlite3.h>

#include <algorithm>

namespace holdfast::db {

namespace {

Hash sealIn(Connection& connection, EntryId entry) {
    if (const auto seal = writtenSeal(connection, entry))
        return *seal;
    throw SqliteFailure{SQLITE_CORRUPT, "an entry of the line has no seal"};
}

} // namespace

PlaceInLine placeBehind(const PlaceInLine& before, const Hash& seal) {
    Digest digest;
    digest.add(std::span<const std::byte>{before.mark});
    digest.add(std::span<const std::byte>{seal});
    return {before.place + 1, digest.value()};
}

PlaceInLine endOfLine(Connection& connection) {
    Query last = connection.query("SELECT place, mark FROM journal_line ORDER BY place DESC LIMIT 1");
    return last.step() ? PlaceInLine{last.integer(0), last.fixedBytes<sizeof(Hash)>(1)} : PlaceInLine{};
}

PlaceInLine placeInLine(Connection& connection, std::int64_t place) {
    Query found = connection.query("SELECT mark FROM journal_line WHERE place = ?1", place);
    return found.step() ? PlaceInLine{place, found.fixedBytes<sizeof(Hash)>(0)} : PlaceInLine{};
}

void putInLine(Connection& connection, EntryId entry) {
    const PlaceInLine next = placeBehind(endOfLine(connection), sealIn(connection, entry));
    connection.run("INSERT INTO journal_line (place, entry_id, mark) VALUES (?1, ?2, ?3)", next.place, entry,
                   next.mark);
}

void endLineAt(Connection& connection, std::int64_t place) {
    connection.run("DELETE FROM journal_line WHERE place > ?1", place);
}

std::vector<EntryId> lineBehind(Connection& connection, std::int64_t place) {
    std::vector<EntryId> entries;
    Query rows = connection.query("SELECT entry_id FROM journal_line WHERE place > ?1 ORDER BY place", place);
    while (rows.step())
        entries.push_back(rows.id<EntryId>(0));
    return entries;
}

void markLine(Connection& connection) {
    PlaceInLine last;
    for (const EntryId entry : lineBehind(connection, 0)) {
        last = placeBehind(last, sealIn(connection, entry));
        connection.run("UPDATE journal_line SET mark = ?2 WHERE place = ?1", last.place, last.mark);
    }
}

std::vector<EntryId> behindTheLine(Connection& connection) {
    std::vector<EntryId> entries;
    Query rows =
        connection.query("SELECT id FROM journal_entry WHERE id NOT IN (SELECT entry_id FROM journal_line) "
                         "UNION ALL SELECT id FROM journal_aside WHERE id NOT IN (SELECT entry_id FROM "
                         "journal_line) ORDER BY id");
    while (rows.step())
        entries.push_back(rows.id<EntryId>(0));
    return entries;
}

void putOwnInLine(Connection& connection) {
    for (const EntryId id : behindTheLine(connection))
        putInLine(connection, id);
}

void goOnAboveAllIds(Connection& connection) {
    Query known =
        connection.query("SELECT seat_id, last_id, MAX((SELECT COALESCE(MAX(id), 0) FROM journal_entry), "
                         "(SELECT COALESCE(MAX(id), 0) FROM journal_aside)) FROM seat_here");
    if (!known.step())
        throw SqliteFailure::inWords(
            said("The shop file is damaged: it does not say which laptop it is on."));
    std::int64_t above = known.integer(1);
    if (const std::int64_t highest = known.integer(2); highest > above)
        above = IdMaker{known.integer(0)}.next(IdMaker::timeOf(highest) + Seconds{1});
    connection.run("UPDATE seat_here SET last_id = ?1", above);
}

} // namespace holdfast::db
