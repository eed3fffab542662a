#include "db/exchange/line.h"

#include "core/trade/id_maker.h"
#include "db/sqlite/connection.h"

#include <algorithm>

namespace holdfast::db {

namespace {

std::int64_t markBehind(const PlaceInLine& before, const CarriedEntry& entry) {
    Sum sum;
    sum.add(before.mark);
    sum.add(entry.id.value);
    sum.add(entry.isAside ? 1 : 0);
    sum.add(entry.changeset.data(), entry.changeset.size());
    return sum.value();
}

} // namespace

void Sum::add(const void* bytes, std::size_t count) {
    const auto* each = static_cast<const unsigned char*>(bytes);
    for (std::size_t at = 0; at < count; ++at)
        m_sum = (m_sum ^ each[at]) * 1099511628211U;
}

void Sum::add(std::int64_t number) {
    for (int shift = 0; shift < 64; shift += 8)
        m_sum = (m_sum ^ ((static_cast<std::uint64_t>(number) >> shift) & 0xff)) * 1099511628211U;
}

void Sum::add(const std::string& text) {
    add(static_cast<std::int64_t>(text.size()));
    add(text.data(), text.size());
}

PlaceInLine endOfLine(Connection& connection) {
    Query last = connection.query("SELECT place, mark FROM journal_line ORDER BY place DESC LIMIT 1");
    return last.step() ? PlaceInLine{last.integer(0), last.integer(1)} : PlaceInLine{};
}

PlaceInLine placeInLine(Connection& connection, std::int64_t place) {
    Query found = connection.query("SELECT mark FROM journal_line WHERE place = ?1", place);
    return found.step() ? PlaceInLine{place, found.integer(0)} : PlaceInLine{};
}

bool isInLine(Connection& connection, EntryId entry) {
    return connection.number("SELECT COUNT(*) FROM journal_line WHERE entry_id = ?1", entry) > 0;
}

void putInLine(Connection& connection, const CarriedEntry& entry) {
    const PlaceInLine end = endOfLine(connection);
    connection.run("INSERT INTO journal_line (place, entry_id, mark) VALUES (?1, ?2, ?3)", end.place + 1,
                   entry.id, markBehind(end, entry));
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
        putInLine(connection, *readEntry(connection, id));
}

void goOnAboveAllIds(Connection& connection) {
    Query known =
        connection.query("SELECT seat_id, last_id, MAX((SELECT COALESCE(MAX(id), 0) FROM journal_entry), "
                         "(SELECT COALESCE(MAX(id), 0) FROM journal_aside)) FROM seat_here");
    if (!known.step())
        throw SqliteFailure::inWords("The shop file is damaged: it does not say which laptop it is on.");
    std::int64_t above = known.integer(1);
    if (const std::int64_t highest = known.integer(2); highest > above)
        above = IdMaker{known.integer(0)}.next(IdMaker::timeOf(highest) + Seconds{1});
    connection.run("UPDATE seat_here SET last_id = ?1", above);
}

} // namespace holdfast::db
