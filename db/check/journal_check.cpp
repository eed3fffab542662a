// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/trade/id_maker.h"
#include "db/check/check_parts.h"
#include "db/sqlite/changeset_form.h"
#include "db/sqlite/connection.h"

#include <map>
#include <optional>

namespace holdfast::db {

namespace {

// An entry of another laptop that got its number here.
bool hasOtherIds(Connection& connection, std::int64_t entry) {
    return connection.number("SELECT COUNT(*) FROM journal_other_id WHERE entry_id = ?1", entry) > 0;
}

// Of a row that begins with the entry's number and title.
std::vector<NamedValue> entryNamed(const Query& row) {
    return {{"entry", row.text(0)}, {"title", row.text(1)}};
}

} // namespace

void checkJournal(Connection& connection, Findings& findings) {
    Query rows =
        connection.query("SELECT id, title, seat_id, undoes, undone_by, changeset FROM journal_entry "
                         "ORDER BY id");
    while (rows.step()) {
        if (IdMaker::seatOf(rows.integer(0)) != rows.integer(2) && !hasOtherIds(connection, rows.integer(0)))
            findings.push_back(
                said("The journal entry {entry}, “{title}”, bears the number of another laptop.",
                     entryNamed(rows)));
        if (!rows.isNull(3) && rows.integer(3) >= rows.integer(0))
            findings.push_back(
                said("The journal entry {entry}, “{title}”, undoes an entry that came after it.",
                     entryNamed(rows)));
        if (!rows.isNull(4) && rows.integer(4) <= rows.integer(0))
            findings.push_back(
                said("The journal entry {entry}, “{title}”, was undone by an entry that came before it.",
                     entryNamed(rows)));
        try {
            if (rows.bytes(5).empty())
                findings.push_back(
                    said("The journal entry {entry}, “{title}”, does not say what was changed.",
                         entryNamed(rows)));
            (void)tablesOf(rows.bytes(5));
        } catch (const SqliteFailure&) {
            findings.push_back(
                said("The journal entry {entry}, “{title}”, cannot be read.", entryNamed(rows)));
        }
    }
    if (connection.number("SELECT COALESCE(MAX(journal_entry.id), 0) FROM journal_entry, seat_here "
                          "WHERE journal_entry.seat_id = seat_here.seat_id") >
        connection.number("SELECT last_id FROM seat_here"))
        findings.push_back(said("The journal has entries of this laptop above the last number it gave out."));
}

// The line of entries of all laptops (db/exchange), once there are several. A shop file of an older step has
// none.
void checkLine(Connection& connection, Findings& findings) {
    if (connection.number("SELECT COUNT(*) FROM sqlite_master WHERE name = 'journal_line'") == 0)
        return;
    if (connection.number("SELECT COUNT(*) FROM journal_line") !=
        connection.number("SELECT COALESCE(MAX(place), 0) FROM journal_line"))
        findings.push_back(said("The line of entries that the laptops share has gaps."));
    Query rows =
        connection.query("SELECT place FROM journal_line "
                         "WHERE NOT EXISTS (SELECT 1 FROM journal_entry WHERE id = entry_id) "
                         "AND NOT EXISTS (SELECT 1 FROM journal_aside WHERE id = entry_id) LIMIT 20");
    while (rows.step())
        findings.push_back(said("The entry in place {place} of the line that the laptops share is missing.",
                                {{"place", rows.text(0)}}));
}

// An undo comes after what it undoes; the last ones count, as far as nothing undid them.
std::map<std::int64_t, std::int64_t> undoneByWhich(Connection& connection) {
    std::map<std::int64_t, std::int64_t> undoneBy;
    Query undos{connection, "SELECT id, undoes FROM journal_entry WHERE undoes IS NOT NULL ORDER BY id DESC"};
    while (undos.step())
        if (!undoneBy.contains(undos.integer(0)))
            undoneBy.emplace(undos.integer(1), undos.integer(0));
    return undoneBy;
}

void checkUndos(Connection& connection, Findings& findings) {
    const auto undoneBy = undoneByWhich(connection);
    std::vector<Sentence> sentences;
    Query rows{connection, "SELECT id, title, undone_by FROM journal_entry"};
    while (rows.step()) {
        const auto found = undoneBy.find(rows.integer(0));
        const auto undone = found == undoneBy.end() ? std::nullopt : std::optional{found->second};
        if (undone != rows.optionalInteger(2))
            sentences.push_back(
                said("The journal entry {entry}, “{title}”, is not marked as undone by what undid it.",
                     entryNamed(rows)));
    }
    addNamed(findings, sentences,
             phrase("And {n} more entry is not marked as it was undone.|"
                    "And {n} more entries are not marked as they were undone."));
}

} // namespace holdfast::db
