// SPDX-License-Identifier: GPL-3.0-or-later
#include "db/journal/carried_entry.h"

#include "db/journal/standing.h"
#include "db/sqlite/connection.h"

namespace holdfast::db {

namespace {

constexpr std::string_view kIdentityForm = "Holdfast identity 1";
constexpr std::string_view kSealForm = "Holdfast seal 1";
constexpr std::string_view kSaidBeside = "said";

void readSeal(Connection& connection, CarriedEntry& entry) {
    Query seal = connection.query(
        "SELECT identity, salt, seal, left_over IS NOT NULL FROM journal_seal WHERE entry_id = ?1", entry.id);
    if (seal.step()) {
        entry.identity = seal.fixedBytes<sizeof(Hash)>(0);
        entry.salt = seal.fixedBytes<sizeof(Salt)>(1);
        if (seal.truth(3))
            entry.sealedAs = seal.fixedBytes<sizeof(Hash)>(2);
    }
    Query others =
        connection.query("SELECT was, here FROM journal_other_id WHERE entry_id = ?1 ORDER BY was", entry.id);
    while (others.step())
        entry.otherIds.emplace_back(others.integer(0), others.integer(1));
}

std::optional<CarriedEntry> readFrom(Connection& connection, Query rows, bool isAside, Query subjects) {
    if (!rows.step())
        return std::nullopt;
    CarriedEntry entry;
    entry.id = rows.id<EntryId>(0);
    entry.seat = rows.integer(1);
    entry.at = rows.instant(2);
    entry.title = keptWords(rows, 3, 7);
    entry.undoes = rows.optionalId<EntryId>(4);
    entry.isAside = isAside;
    entry.words = keptWords(rows, 5, 8);
    const auto bytes = rows.bytes(6);
    entry.changeset.assign(bytes.begin(), bytes.end());
    while (subjects.step())
        entry.subjects.emplace_back(subjects.text(0), subjects.integer(1));
    readSeal(connection, entry);
    return entry;
}

void writeDone(Connection& connection, const CarriedEntry& entry) {
    connection.run("INSERT INTO journal_entry (id, seat_id, at, title, undoes, changeset, said) "
                   "VALUES (?1, ?2, ?3, ?4, ?5, ?6, ?7)",
                   entry.id, entry.seat, entry.at, entry.title.english, entry.undoes,
                   ChangesetView{entry.changeset}, entry.title.saidOrNull());
    for (const auto& [kind, subject] : entry.subjects)
        connection.run("INSERT INTO journal_subject (kind, subject_id, entry_id) VALUES (?1, ?2, ?3)", kind,
                       subject, entry.id);
    if (!entry.words.empty())
        connection.run("INSERT INTO journal_remark (entry_id, words, said) VALUES (?1, ?2, ?3)", entry.id,
                       entry.words.english, entry.words.saidOrNull());
    if (entry.undoes)
        markUndone(connection, *entry.undoes, entry.id);
}

void writeAside(Connection& connection, const CarriedEntry& entry) {
    connection.run(
        "INSERT INTO journal_aside (id, seat_id, at, title, undoes, why, changeset, said, why_said) "
        "VALUES (?1, ?2, ?3, ?4, ?5, ?6, ?7, ?8, ?9)",
        entry.id, entry.seat, entry.at, entry.title.english, entry.undoes, entry.words.english,
        ChangesetView{entry.changeset}, entry.title.saidOrNull(), entry.words.saidOrNull());
    for (const auto& [kind, subject] : entry.subjects)
        connection.run("INSERT INTO journal_aside_subject (entry_id, kind, subject_id) VALUES (?1, ?2, ?3)",
                       entry.id, kind, subject);
}

// What a forgotten name left of the entry has a hash of its own in addition to the seal.
void writeLeftOver(Connection& connection, const CarriedEntry& entry) {
    if (entry.sealedAs)
        connection.run("UPDATE journal_seal SET left_over = ?2 WHERE entry_id = ?1", entry.id,
                       contentSealOf(entry));
}

// What both hashes are of. The title and the subjects are counted, so that none runs into the next.
void addContent(Digest& digest, const CarriedEntry& entry) {
    digest.add(std::span<const std::byte>{entry.salt});
    digest.add(entry.id.value);
    digest.add(entry.seat);
    digest.add(std::int64_t{entry.at.time_since_epoch().count()});
    digest.add(entry.title.english);
    digest.add(entry.undoes ? entry.undoes->value : 0);
    digest.add(static_cast<std::int64_t>(entry.subjects.size()));
    for (const auto& [kind, subject] : entry.subjects) {
        digest.add(kind);
        digest.add(subject);
    }
    digest.add(static_cast<std::int64_t>(entry.changeset.size()));
    digest.add(ChangesetView{entry.changeset});
}

} // namespace

Hash identityOf(const CarriedEntry& entry) {
    Digest digest;
    digest.add(kIdentityForm);
    addContent(digest, entry);
    return digest.value();
}

Hash sealOf(const CarriedEntry& entry) {
    return entry.sealedAs ? *entry.sealedAs : contentSealOf(entry);
}

Hash contentSealOf(const CarriedEntry& entry) {
    Digest digest;
    digest.add(kSealForm);
    digest.add(std::span<const std::byte>{entry.identity});
    digest.add(entry.isAside ? 1 : 0);
    digest.add(entry.words.english);
    digest.add(static_cast<std::int64_t>(entry.otherIds.size()));
    for (const auto& [was, here] : entry.otherIds) {
        digest.add(was);
        digest.add(here);
    }
    addContent(digest, entry);
    if (!entry.title.said.empty() || !entry.words.said.empty()) { // of older entries the seal is as it was
        digest.add(kSaidBeside);
        digest.add(entry.title.said);
        digest.add(kSaidBeside);
        digest.add(entry.words.said);
    }
    return digest.value();
}

std::optional<CarriedEntry> readEntry(Connection& connection, EntryId id) {
    auto entry = readFrom(
        connection,
        connection.query(
            "SELECT journal_entry.id, seat_id, at, title, undoes, COALESCE(words, ''), changeset, "
            "journal_entry.said, journal_remark.said "
            "FROM journal_entry LEFT JOIN journal_remark ON entry_id = journal_entry.id "
            "WHERE journal_entry.id = ?1",
            id),
        false,
        connection.query(
            "SELECT kind, subject_id FROM journal_subject WHERE entry_id = ?1 ORDER BY kind, subject_id",
            id));
    if (entry)
        return entry;
    return readFrom(connection,
                    connection.query("SELECT id, seat_id, at, title, undoes, why, changeset, said, why_said "
                                     "FROM journal_aside WHERE id = ?1",
                                     id),
                    true,
                    connection.query("SELECT kind, subject_id FROM journal_aside_subject WHERE entry_id = ?1 "
                                     "ORDER BY kind, subject_id",
                                     id));
}

std::optional<Hash> writtenContentSeal(Connection& connection, EntryId entry) {
    Query seal =
        connection.query("SELECT COALESCE(left_over, seal) FROM journal_seal WHERE entry_id = ?1", entry);
    return seal.step() ? std::optional{seal.fixedBytes<sizeof(Hash)>(0)} : std::nullopt;
}

std::optional<Hash> writtenSeal(Connection& connection, EntryId entry) {
    Query seal = connection.query("SELECT seal FROM journal_seal WHERE entry_id = ?1", entry);
    return seal.step() ? std::optional{seal.fixedBytes<sizeof(Hash)>(0)} : std::nullopt;
}

std::optional<EntryId> knownEntry(Connection& connection, const CarriedEntry& entry) {
    Query found = connection.query("SELECT entry_id FROM journal_seal WHERE identity = ?1", entry.identity);
    if (found.step())
        return found.id<EntryId>(0);
    auto here = readEntry(connection, entry.id);
    if (!here)
        return std::nullopt;
    here->salt = entry.salt;
    return identityOf(*here) == identityOf(entry) ? std::optional{entry.id} : std::nullopt;
}

void writeEntry(Connection& connection, const CarriedEntry& entry) {
    if (entry.isAside)
        writeAside(connection, entry);
    else
        writeDone(connection, entry);
    writeSeal(connection, entry);
}

void writeSeal(Connection& connection, const CarriedEntry& entry) {
    connection.run("INSERT INTO journal_seal (entry_id, identity, salt, seal) VALUES (?1, ?2, ?3, ?4)",
                   entry.id, entry.identity, entry.salt, sealOf(entry));
    writeLeftOver(connection, entry);
    for (const auto& [was, here] : entry.otherIds)
        connection.run("INSERT INTO journal_other_id (entry_id, was, here) VALUES (?1, ?2, ?3)", entry.id,
                       was, here);
}

void rewriteEntry(Connection& connection, const CarriedEntry& entry) {
    if (entry.isAside) {
        connection.run("UPDATE journal_aside SET title = ?2, why = ?3, changeset = ?4, said = ?5, "
                       "why_said = ?6 WHERE id = ?1",
                       entry.id, entry.title.english, entry.words.english, ChangesetView{entry.changeset},
                       entry.title.saidOrNull(), entry.words.saidOrNull());
    } else {
        connection.run("UPDATE journal_entry SET title = ?2, changeset = ?3, said = ?4 WHERE id = ?1",
                       entry.id, entry.title.english, ChangesetView{entry.changeset},
                       entry.title.saidOrNull());
        connection.run("UPDATE journal_remark SET words = ?2, said = ?3 WHERE entry_id = ?1", entry.id,
                       entry.words.english, entry.words.saidOrNull());
    }
    connection.run("UPDATE journal_seal SET salt = ?2 WHERE entry_id = ?1", entry.id, entry.salt);
    writeLeftOver(connection, entry);
}

void removeEntry(Connection& connection, const CarriedEntry& entry) {
    connection.run("DELETE FROM journal_seal WHERE entry_id = ?1", entry.id);
    connection.run("DELETE FROM journal_other_id WHERE entry_id = ?1", entry.id);
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

void sealUnsealed(Connection& connection) {
    std::vector<EntryId> unsealed;
    Query rows = connection.query(
        "SELECT id FROM journal_entry WHERE id NOT IN (SELECT entry_id FROM journal_seal) UNION ALL "
        "SELECT id FROM journal_aside WHERE id NOT IN (SELECT entry_id FROM journal_seal)");
    while (rows.step())
        unsealed.push_back(rows.id<EntryId>(0));
    for (const EntryId id : unsealed) {
        CarriedEntry entry = *readEntry(connection, id);
        entry.identity = identityOf(entry);
        writeSeal(connection, entry);
    }
}

} // namespace holdfast::db
