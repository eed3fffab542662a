// SPDX-License-Identifier: GPL-3.0-or-later
// What could not be applied: the list, and doing it after all.
#include "db/exchange/laptops.h"
#include "db/exchange/merge_entry.h"
#include "db/journal/unrecorded_transaction.h"

namespace holdfast::db {

namespace {

// A subject as the journal wrote it, whose kind is known by its word only.
Subject subjectOf(std::string_view kind, std::int64_t id) {
    Subject subject{OrderId{id}};
    subject.kind = kind;
    return subject;
}

void takeOffTheList(Connection& connection, EntryId entry) {
    connection.run("INSERT INTO seat_let_go (entry_id) VALUES (?1) ON CONFLICT DO NOTHING", entry);
}

Error noSuchEntry() {
    return plainError(said("There is no such change left to be done."));
}

} // namespace

std::vector<SetAside> setAside(Connection& connection) {
    std::vector<SetAside> found;
    Query rows = connection.query(
        "SELECT journal_aside.id, title, seat.name, at, why, said, why_said FROM journal_aside "
        "JOIN seat ON seat.id = seat_id "
        "WHERE journal_aside.id NOT IN (SELECT entry_id FROM seat_let_go) "
        "ORDER BY journal_aside.id DESC");
    while (rows.step())
        found.push_back({rows.id<EntryId>(0), keptWords(rows, 1, 5).sentence(), rows.text(2), rows.instant(3),
                         keptWords(rows, 4, 6).sentence()});
    return found;
}

Result<EntryId> tryAgain(Shop& shop, EntryId id) {
    const auto done = shop.act([&](Writer& writer) -> Result<Done> {
        Connection& connection = writer.connection();
        const auto entry = readEntry(connection, id);
        if (!entry || !entry->isAside)
            return noSuchEntry();
        if (entry->undoes)
            return plainError(said("“{title}” is an undo: look for what it undoes in the history instead.",
                                   {{"title", asAlone(entry->title.sentence())}}));
        CarriedEntry anew = *entry;
        anew.isAside = false;
        anew.words = {};
        anew = EntryMerger{connection}.merge(std::move(anew), true);
        if (anew.isAside)
            return plainError(
                said("“{title}” still cannot be done. {why}",
                     {{"title", asAlone(anew.title.sentence())}, {"why", anew.words.sentence()}}));
        writer.describe(anew.title.sentence());
        for (const auto& [kind, subject] : anew.subjects)
            writer.concerns(subjectOf(kind, subject));
        takeOffTheList(connection, id);
        return Done{};
    });
    if (!done)
        return done.error();
    // Ids rise: the action's is the highest.
    return shop.read([](Connection& connection) {
        return EntryId{connection.number("SELECT MAX(id) FROM journal_entry")};
    });
}

Result<Done> dropSetAside(Shop& shop, EntryId id) {
    if (shop.isReadOnly())
        return plainError(said("This shop is open for reading only."));
    try {
        UnrecordedTransaction transaction{shop.connection()};
        if (const auto entry = readEntry(shop.connection(), id); !entry || !entry->isAside)
            return noSuchEntry();
        takeOffTheList(shop.connection(), id);
        transaction.commit();
        return Done{};
    } catch (const SqliteFailure& failure) {
        return failure.error();
    }
}

} // namespace holdfast::db
