// SPDX-License-Identifier: GPL-3.0-or-later
#include "db/exchange/news_file.h"

#include "db/disk/file_probe.h"
#include "db/sqlite/stopping.h"

#include <sqlite3.h>

namespace holdfast::db {

namespace {

constexpr std::int64_t kNewsApplicationId = 0x486F6C4E; // "HolN"
constexpr std::int64_t kNewsForm = 4;

constexpr const char* kNewsTables = R"(
CREATE TABLE label (
    id INTEGER PRIMARY KEY CHECK (id = 1), shop INTEGER NOT NULL, schema_step INTEGER NOT NULL,
    from_seat INTEGER NOT NULL, from_name TEXT NOT NULL, to_seat INTEGER NOT NULL, written_at INTEGER NOT NULL,
    known_place INTEGER NOT NULL, known_mark BLOB NOT NULL, behind_place INTEGER NOT NULL,
    behind_mark BLOB NOT NULL, since INTEGER NOT NULL, incarnation INTEGER NOT NULL, entries INTEGER NOT NULL,
    sum BLOB NOT NULL) STRICT;
CREATE TABLE seat (id INTEGER PRIMARY KEY, name TEXT NOT NULL, first_order_number INTEGER NOT NULL,
    last_order_number INTEGER NOT NULL) STRICT;
CREATE TABLE entry (number INTEGER PRIMARY KEY, id INTEGER NOT NULL, seat_id INTEGER NOT NULL, at INTEGER NOT NULL,
    title TEXT NOT NULL, undoes INTEGER, is_aside INTEGER NOT NULL, words TEXT NOT NULL, changeset BLOB NOT NULL,
    identity BLOB NOT NULL, salt BLOB NOT NULL, sealed_as BLOB, said TEXT, words_said TEXT) STRICT;
CREATE TABLE other_id (number INTEGER NOT NULL, was INTEGER NOT NULL, here INTEGER NOT NULL,
    PRIMARY KEY (number, was)) STRICT, WITHOUT ROWID;
CREATE TABLE subject (number INTEGER NOT NULL, kind TEXT NOT NULL, subject_id INTEGER NOT NULL,
    PRIMARY KEY (number, kind, subject_id)) STRICT, WITHOUT ROWID;
)";

// A file with anything else in it was not written here, and none of it is looked at.
bool isOfThisForm(Connection& file) {
    constexpr const char* kSchema = "SELECT type || ' ' || name || ' ' || tbl_name || ' ' || COALESCE(sql, "
                                    "'') FROM sqlite_schema ORDER BY 1";
    const auto schemaOf = [](Connection& of) {
        std::vector<std::string> lines;
        Query rows = of.query(kSchema);
        while (rows.step())
            lines.push_back(rows.text(0));
        return lines;
    };
    Connection fresh = Connection::openInMemory();
    fresh.script(kNewsTables);
    return schemaOf(file) == schemaOf(fresh);
}

Error noNews(const std::filesystem::path& path) {
    return plainError(said("{path} is not news of a Holdfast shop.", {{"path", path.string()}}));
}

Error damagedNews(const std::filesystem::path& path) {
    return plainError(said("{path} is damaged or was copied only in part. Copy it again, or save the news "
                           "again on the other laptop. Nothing was brought in.",
                           {{"path", path.string()}}));
}

CarriedEntry entryIn(Connection& file, std::int64_t number) {
    Query row = file.query("SELECT id, seat_id, at, title, undoes, is_aside, words, changeset, identity, "
                           "salt, sealed_as, said, words_said FROM entry "
                           "WHERE number = ?1",
                           number);
    if (!row.step())
        throw SqliteFailure{SQLITE_CORRUPT, "an entry of the news is missing"};
    const auto bytes = row.bytes(7);
    CarriedEntry entry;
    entry.id = row.id<EntryId>(0);
    entry.seat = row.integer(1);
    entry.at = row.instant(2);
    entry.title = keptWords(row, 3, 11);
    entry.undoes = row.optionalId<EntryId>(4);
    entry.isAside = row.truth(5);
    entry.words = keptWords(row, 6, 12);
    entry.changeset.assign(bytes.begin(), bytes.end());
    entry.identity = row.fixedBytes<sizeof(Hash)>(8);
    entry.salt = row.fixedBytes<sizeof(Salt)>(9);
    if (!row.isNull(10))
        entry.sealedAs = row.fixedBytes<sizeof(Hash)>(10);
    Query subjects = file.query(
        "SELECT kind, subject_id FROM subject WHERE number = ?1 ORDER BY kind, subject_id", number);
    while (subjects.step())
        entry.subjects.emplace_back(subjects.text(0), subjects.integer(1));
    Query others = file.query("SELECT was, here FROM other_id WHERE number = ?1 ORDER BY was", number);
    while (others.step())
        entry.otherIds.emplace_back(others.integer(0), others.integer(1));
    return entry;
}

std::vector<Seat> seatsIn(Connection& file) {
    std::vector<Seat> seats;
    Query rows = file.query("SELECT id, name, first_order_number, last_order_number FROM seat ORDER BY id");
    while (rows.step())
        seats.push_back(
            {rows.integer(0), rows.text(1), rows.integer(2), rows.integer(3), false, std::nullopt});
    return seats;
}

// Over every value in the file.
Hash sumOf(Connection& file, const NewsLabel& label, const TellProgress& progress) {
    Digest sum;
    for (const std::int64_t number :
         {label.shop, label.schemaStep, label.from, label.to,
          std::int64_t{label.writtenAt.time_since_epoch().count()}, label.known.place, label.behind.place,
          label.since, label.incarnation, label.entries})
        sum.add(number);
    sum.add(std::span<const std::byte>{label.known.mark});
    sum.add(std::span<const std::byte>{label.behind.mark});
    sum.add(label.fromName);
    for (const Seat& seat : seatsIn(file)) {
        sum.add(seat.number);
        sum.add(seat.name);
        sum.add(seat.firstOrderNumber);
        sum.add(seat.lastOrderNumber);
    }
    for (std::int64_t number = 1; number <= label.entries; ++number) {
        if (progress && !progress(static_cast<double>(number) / static_cast<double>(label.entries)))
            throw SqliteFailure::inWords(said("Reading the news was stopped. Nothing was changed."));
        const CarriedEntry entry = entryIn(file, number);
        for (const Hash& seal : {sealOf(entry), contentSealOf(entry)})
            sum.add(std::span<const std::byte>{seal});
    }
    return sum.value();
}

} // namespace

NewsWriter::NewsWriter(const std::filesystem::path& path)
    : m_file(Connection::open(path, Access::ReadWrite)) {
    m_file.script(kNewsTables);
    m_file.script("PRAGMA application_id = " + std::to_string(kNewsApplicationId));
    m_file.script("PRAGMA user_version = " + std::to_string(kNewsForm));
    m_file.script("BEGIN");
}

void NewsWriter::add(const CarriedEntry& entry) {
    ++m_entries;
    m_file.run("INSERT INTO entry (number, id, seat_id, at, title, undoes, is_aside, words, changeset, "
               "identity, salt, sealed_as, said, words_said) "
               "VALUES (?1, ?2, ?3, ?4, ?5, ?6, ?7, ?8, ?9, ?10, ?11, ?12, ?13, ?14)",
               m_entries, entry.id, entry.seat, entry.at, entry.title.english, entry.undoes, entry.isAside,
               entry.words.english, ChangesetView{entry.changeset}, entry.identity, entry.salt,
               entry.sealedAs, entry.title.saidOrNull(), entry.words.saidOrNull());
    for (const auto& [was, here] : entry.otherIds)
        m_file.run("INSERT INTO other_id (number, was, here) VALUES (?1, ?2, ?3)", m_entries, was, here);
    for (const auto& [kind, subject] : entry.subjects)
        m_file.run("INSERT INTO subject (number, kind, subject_id) VALUES (?1, ?2, ?3)", m_entries, kind,
                   subject);
}

void NewsWriter::add(const Seat& seat) {
    m_file.run("INSERT INTO seat (id, name, first_order_number, last_order_number) VALUES (?1, ?2, ?3, ?4)",
               seat.number, seat.name, seat.firstOrderNumber, seat.lastOrderNumber);
}

void NewsWriter::close(NewsLabel label) {
    label.entries = m_entries;
    m_file.run(
        "INSERT INTO label (id, shop, schema_step, from_seat, from_name, to_seat, written_at, known_place, "
        "known_mark, behind_place, behind_mark, since, incarnation, entries, sum) "
        "VALUES (1, ?1, ?2, ?3, ?4, ?5, ?6, ?7, ?8, ?9, ?10, ?11, ?12, ?13, ?14)",
        label.shop, label.schemaStep, label.from, label.fromName, label.to, label.writtenAt,
        label.known.place, label.known.mark, label.behind.place, label.behind.mark, label.since,
        label.incarnation, label.entries, sumOf(m_file, label, {}));
    m_file.script("COMMIT");
}

NewsReader::NewsReader(Connection file)
    : m_file(std::move(file)) {}

Result<NewsReader> NewsReader::open(const std::filesystem::path& path, const TellProgress& progress) {
    if (auto probed = probeFile(path); !probed)
        return probed.error();
    try {
        NewsReader reader{Connection::open(path, Access::Untrusted)};
        if (auto read = reader.readThrough(path, progress); !read)
            return read.error();
        return reader;
    } catch (const SqliteFailure& failure) {
        if (failure.primaryCode() == SQLITE_NOTADB)
            return noNews(path);
        if (failure.isDamage() || failure.primaryCode() == SQLITE_ERROR)
            return damagedNews(path);
        return failure.error();
    }
}

Result<Done> NewsReader::readThrough(const std::filesystem::path& path, const TellProgress& progress) {
    double share = 0;
    const TellProgress tell =
        progress ? TellProgress{[&](double done) { return progress(share = done); }} : nullptr;
    const Stopping stopping{m_file,
                            progress ? std::function<bool()>{[&] { return progress(share); }} : nullptr};
    if (m_file.number("PRAGMA application_id") != kNewsApplicationId)
        return noNews(path);
    if (m_file.number("PRAGMA user_version") > kNewsForm)
        return plainError(said(
            "{path} was saved by a newer version of Holdfast. Bring both laptops to the same version first.",
            {{"path", path.string()}}));
    if (m_file.number("PRAGMA user_version") < kNewsForm)
        return plainError(said("{path} was saved by an older version of Holdfast. Bring the other laptop to "
                               "the same version and save the news again. Nothing was brought in.",
                               {{"path", path.string()}}));
    if (!isOfThisForm(m_file))
        return damagedNews(path);
    Query row =
        m_file.query("SELECT shop, schema_step, from_seat, from_name, to_seat, written_at, known_place, "
                     "known_mark, behind_place, behind_mark, since, incarnation, entries, sum FROM label");
    if (!row.step())
        return damagedNews(path);
    m_label = {row.integer(0),
               row.integer(1),
               row.integer(2),
               row.text(3),
               row.integer(4),
               row.instant(5),
               {row.integer(6), row.fixedBytes<sizeof(Hash)>(7)},
               {row.integer(8), row.fixedBytes<sizeof(Hash)>(9)},
               row.integer(10),
               row.integer(11),
               row.integer(12)};
    if (m_label.behind.place < 0 || m_label.ofTheLine() < 0 || m_label.ofTheLine() > m_label.entries)
        return damagedNews(path);
    return sumOf(m_file, m_label, tell) == row.fixedBytes<sizeof(Hash)>(13) ? Result<Done>{Done{}}
                                                                            : damagedNews(path);
}

std::vector<Seat> NewsReader::seats() {
    return seatsIn(m_file);
}

CarriedEntry NewsReader::entry(std::int64_t number) {
    return entryIn(m_file, number);
}

} // namespace holdfast::db
