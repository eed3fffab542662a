#include "db/exchange/carried_entry.h"

#include "db/journal/standing.h"
#include "db/sqlite/connection.h"

namespace holdfast::db {

namespace {

std::optional<CarriedEntry> readFrom(Query rows, bool isAside) {
    if (!rows.step())
        return std::nullopt;
    const auto bytes = rows.bytes(6);
    return CarriedEntry{rows.id<EntryId>(0),
                        rows.integer(1),
                        rows.instant(2),
                        rows.text(3),
                        rows.optionalId<EntryId>(4),
                        isAside,
                        rows.text(5),
                        Changeset(bytes.begin(), bytes.end()),
                        {}};
}

void readSubjects(CarriedEntry& entry, Query rows) {
    while (rows.step())
        entry.subjects.emplace_back(rows.text(0), rows.integer(1));
}

void writeDone(Connection& connection, const CarriedEntry& entry) {
    connection.run("INSERT INTO journal_entry (id, seat_id, at, title, undoes, changeset) "
                   "VALUES (?1, ?2, ?3, ?4, ?5, ?6)",
                   entry.id, entry.seat, entry.at, entry.title, entry.undoes, ChangesetView{entry.changeset});
    for (const auto& [kind, subject] : entry.subjects)
        connection.run("INSERT INTO journal_subject (kind, subject_id, entry_id) VALUES (?1, ?2, ?3)", kind,
                       subject, entry.id);
    if (!entry.words.empty())
        connection.run("INSERT INTO journal_remark (entry_id, words) VALUES (?1, ?2)", entry.id, entry.words);
    if (entry.undoes)
        markUndone(connection, *entry.undoes, entry.id);
}

void writeAside(Connection& connection, const CarriedEntry& entry) {
    connection.run("INSERT INTO journal_aside (id, seat_id, at, title, undoes, why, changeset) "
                   "VALUES (?1, ?2, ?3, ?4, ?5, ?6, ?7)",
                   entry.id, entry.seat, entry.at, entry.title, entry.undoes, entry.words,
                   ChangesetView{entry.changeset});
    for (const auto& [kind, subject] : entry.subjects)
        connection.run("INSERT INTO journal_aside_subject (entry_id, kind, subject_id) VALUES (?1, ?2, ?3)",
                       entry.id, kind, subject);
}

} // namespace

std::optional<CarriedEntry> readEntry(Connection& connection, EntryId id) {
    auto entry =
        readFrom(connection.query(
                     "SELECT journal_entry.id, seat_id, at, title, undoes, COALESCE(words, ''), changeset "
                     "FROM journal_entry LEFT JOIN journal_remark ON entry_id = journal_entry.id "
                     "WHERE journal_entry.id = ?1",
                     id),
                 false);
    if (entry) {
        readSubjects(*entry,
                     connection.query("SELECT kind, subject_id FROM journal_subject WHERE entry_id = ?1 "
                                      "ORDER BY kind, subject_id",
                                      id));
        return entry;
    }
    entry =
        readFrom(connection.query("SELECT id, seat_id, at, title, undoes, why, changeset FROM journal_aside "
                                  "WHERE id = ?1",
                                  id),
                 true);
    if (entry)
        readSubjects(*entry, connection.query("SELECT kind, subject_id FROM journal_aside_subject "
                                              "WHERE entry_id = ?1 ORDER BY kind, subject_id",
                                              id));
    return entry;
}

void writeEntry(Connection& connection, const CarriedEntry& entry) {
    if (entry.isAside)
        writeAside(connection, entry);
    else
        writeDone(connection, entry);
}

void removeEntry(Connection& connection, const CarriedEntry& entry) {
    if (entry.isAside) {
        connection.run("DELETE FROM journal_aside_subject WHERE entry_id = ?1", entry.id);
        connection.run("DELETE FROM journal_aside WHERE id = ?1", entry.id);
        return;
    }
    if (entry.undoes)
        markStanding(connection, *entry.undoes);
    connection.run("DELETE FROM journal_remark WHERE entry_id = ?1", entry.id);
    connection.run("DELETE FROM journal_subject WHERE entry_id = ?1", entry.id);
    connection.run("DELETE FROM journal_entry WHERE id = ?1", entry.id);
}

} // namespace holdfast::db
