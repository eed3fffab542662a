#include "db/journal/check.h"

#include "core/trade/id_maker.h"
#include "db/journal/ledger_faults.h"
#include "db/journal/shop.h"
#include "db/sqlite/changeset_form.h"

#include <functional>

namespace holdfast::db {

namespace {

using Findings = std::vector<std::string>;

void checkPages(Connection& connection, Findings& findings) {
    Query rows = connection.query("PRAGMA integrity_check(20)");
    while (rows.step())
        if (rows.view(0) != "ok")
            findings.push_back("The file is damaged: " + rows.text(0) + ".");
}

void checkReferences(Connection& connection, Findings& findings) {
    Query rows = connection.query("SELECT \"table\", COUNT(*), parent FROM pragma_foreign_key_check "
                                  "GROUP BY \"table\", parent");
    while (rows.step())
        findings.push_back("In " + rows.text(0) + ", " + rows.text(1) + " rows refer to a row of " +
                           rows.text(2) + " that is not there.");
}

void checkLedgers(Connection& connection, Findings& findings) {
    for (std::string& fault : ledgerFaults(connection))
        findings.push_back(std::move(fault));
}

std::string entryNamed(const Query& row) {
    return "The journal entry " + row.text(0) + ", “" + row.text(1) + "”, ";
}

void checkJournal(Connection& connection, Findings& findings) {
    Query rows =
        connection.query("SELECT id, title, seat_id, undoes, undone_by, changeset FROM journal_entry "
                         "ORDER BY id");
    while (rows.step()) {
        if (IdMaker::seatOf(rows.integer(0)) != rows.integer(2))
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

} // namespace

Result<std::vector<std::string>> checkShop(Shop& shop) {
    return shop.read([](Connection& connection) {
        Findings findings;
        using Part = std::function<void(Connection&, Findings&)>;
        for (const Part& part : {Part{checkPages}, Part{checkReferences}, Part{checkLedgers},
                                 Part{checkJournal}, Part{checkLine}}) {
            try {
                part(connection, findings);
            } catch (const SqliteFailure& failure) {
                if (!failure.isDamage())
                    throw;
                // A damaged page stops one part of the checking, not the rest.
                findings.push_back(std::string{"The file is damaged: "} + failure.what() + ".");
            }
        }
        return findings;
    });
}

} // namespace holdfast::db
