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

std::string entryNamed(const Query& row) {
    return "The journal entry " + row.text(0) + ", “" + row.text(1) + "”, ";
}

} // namespace

void checkJournal(Connection& connection, Findings& findings) {
    Query rows =
        connection.query("SELECT id, title, seat_id, undoes, undone_by, changeset FROM journal_entry "
                         "ORDER BY id");
    while (rows.step()) {
        if (IdMaker::seatOf(rows.integer(0)) != rows.integer(2) && !hasOtherIds(connection, rows.integer(0)))
            findings.push_back(entryNamed(rows) + "bears the number of another laptop.");
        if (!rows.isNull(3) && rows.integer(3) >= rows.integer(0))
            findings.push_back(entryNamed(rows) + "undoes an entry that came after it.");
        if (!rows.isNull(4) && rows.integer(4) <= rows.integer(0))
            findings.push_back(entryNamed(rows) + "was undone by an entry that came before it.");
        try {
            if (rows.bytes(5).empty())
                findings.push_back(entryNamed(rows) + "does not say what was changed.");
            (void)tablesOf(rows.bytes(5));
        } catch (const SqliteFailure&) {
            findings.push_back(entryNamed(rows) + "cannot be read.");
        }
    }
    if (connection.number("SELECT COALESCE(MAX(journal_entry.id), 0) FROM journal_entry, seat_here "
                          "WHERE journal_entry.seat_id = seat_here.seat_id") >
        connection.number("SELECT last_id FROM seat_here"))
        findings.push_back("The journal has entries of this laptop above the last number it gave out.");
}

// The line of entries of all laptops (db/exchange), once there are several. A shop file of an older step has
// none.
void checkLine(Connection& connection, Findings& findings) {
    if (connection.number("SELECT COUNT(*) FROM sqlite_master WHERE name = 'journal_line'") == 0)
        return;
    if (connection.number("SELECT COUNT(*) FROM journal_line") !=
        connection.number("SELECT COALESCE(MAX(place), 0) FROM journal_line"))
        findings.push_back("The line of entries that the laptops share has gaps.");
    Query rows =
        connection.query("SELECT place FROM journal_line "
                         "WHERE NOT EXISTS (SELECT 1 FROM journal_entry WHERE id = entry_id) "
                         "AND NOT EXISTS (SELECT 1 FROM journal_aside WHERE id = entry_id) LIMIT 20");
    while (rows.step())
        findings.push_back("The entry in place " + rows.text(0) +
                           " of the line that the laptops share is missing.");
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
    std::vector<std::string> sentences;
    Query rows{connection, "SELECT id, title, undone_by FROM journal_entry"};
    while (rows.step()) {
        const auto found = undoneBy.find(rows.integer(0));
        const auto undone = found == undoneBy.end() ? std::nullopt : std::optional{found->second};
        if (undone != rows.optionalInteger(2))
            sentences.push_back(entryNamed(rows) + "is not marked as undone by what undid it.");
    }
    addNamed(findings, sentences, "entries are not marked as they were undone");
}

} // namespace holdfast::db
