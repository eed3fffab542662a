// SPDX-License-Identifier: GPL-3.0-or-later
#include "db/journal/shop.h"

#include "core/trade/assertion.h"
#include "db/disk/incarnation.h"
#include "db/journal/recorded_tables.h"
#include "db/tables/kept_words.h"

#include <sqlite3.h>

#include <algorithm>

namespace holdfast::db {

namespace {

HistoryEntry entryAt(const Query& row) {
    return {row.id<EntryId>(0),
            row.instant(1),
            row.text(2),
            keptWords(row, 3, 7).sentence(),
            row.optionalId<EntryId>(4),
            row.optionalId<EntryId>(5),
            row.integer(6)};
}

std::vector<HistoryEntry> entriesOf(Query rows) {
    std::vector<HistoryEntry> entries;
    while (rows.step())
        entries.push_back(entryAt(rows));
    return entries;
}

} // namespace

Shop::Shop(ShopFile file, Clock clock, Steps steps)
    : m_file(std::move(file))
    , m_clock(std::move(clock))
    , m_steps(steps)
    , m_recordedTables(recordedTables(m_file.connection)) {
    makeIdsFrom(goingOn());
    connection().allowWriting(false);
}

Shop::GoingOn Shop::goingOn() {
    Query here = connection().query("SELECT seat_id, last_id FROM seat_here");
    if (!here.step())
        throw SqliteFailure::inWords(
            said("The shop file is damaged: it does not say which laptop it is on."));
    GoingOn from{here.integer(0), here.integer(1), m_file.incarnation};
    if (m_file.incarnation != 0)
        from.incarnation = connection().number("SELECT incarnation FROM seat_here");
    return from;
}

void Shop::makeIdsFrom(const GoingOn& from) {
    m_seat = from.seat;
    m_idMaker.emplace(from.seat, from.lastId);
    m_file.incarnation = from.incarnation;
}

void Shop::goOn(const GoingOn& from, const ChangedTables& touched) {
    makeIdsFrom(from);
    noteLastId();
    tell(touched);
}

void Shop::noteLastId() {
    if (m_file.incarnation != 0)
        db::noteLastId(path(), m_file.incarnation, m_idMaker->last());
}

Shop::~Shop() = default;

Result<std::unique_ptr<Shop>> Shop::opened(Result<ShopFile> file, Clock clock, Steps steps) {
    if (!file)
        return file.error();
    try {
        return std::unique_ptr<Shop>{new Shop{std::move(file).value(), std::move(clock), steps}};
    } catch (const SqliteFailure& failure) {
        return failure.error();
    }
}

Result<std::unique_ptr<Shop>> Shop::open(const std::filesystem::path& path, Clock clock, Steps steps) {
    auto file = openShopFile(path, steps, clock());
    return opened(std::move(file), std::move(clock), steps);
}

Result<std::unique_ptr<Shop>> Shop::create(const std::filesystem::path& path, Clock clock, Steps steps) {
    return opened(createShopFile(path, steps), std::move(clock), steps);
}

Result<std::unique_ptr<Shop>> Shop::openReadOnly(const std::filesystem::path& path, Clock clock,
                                                 Steps steps) {
    return opened(openShopFileReadOnly(path, steps), std::move(clock), steps);
}

Result<std::unique_ptr<Shop>> Shop::openBeside(Clock clock) const {
    HOLDFAST_ASSERT(!path().empty() && !isReadOnly());
    return opened(openShopFileBeside(path()), std::move(clock), m_steps);
}

Result<Done> Shop::catchUp(const ChangedTables& touched) {
    try {
        goOn(goingOn(), touched);
        return Done{};
    } catch (const SqliteFailure& failure) {
        return failure.error();
    }
}

void Shop::emptyLog() {
    (void)sqlite3_wal_checkpoint_v2(connection().handle(), nullptr, SQLITE_CHECKPOINT_TRUNCATE, nullptr,
                                    nullptr);
}

std::unique_ptr<Shop> Shop::createInMemory(Clock clock, Steps steps) {
    return std::unique_ptr<Shop>{new Shop{createShopInMemory(steps), std::move(clock), steps}};
}

Error Shop::readOnlyError() {
    return plainError(said("This shop is open for reading only."));
}

std::vector<HistoryEntry> Shop::history(Subject subject, int limit) {
    return entriesOf(connection().query(
        "SELECT journal_entry.id, at, seat.name, title, undoes, undone_by, LENGTH(changeset), said "
        "FROM journal_subject JOIN journal_entry ON journal_entry.id = "
        "entry_id JOIN seat ON seat.id = seat_id "
        "WHERE kind = ?1 AND subject_id = ?2 ORDER BY entry_id DESC LIMIT ?3",
        subject.kind, subject.id, limit));
}

std::vector<HistoryEntry> Shop::recent(int limit) {
    return entriesOf(connection().query(
        "SELECT journal_entry.id, at, seat.name, title, undoes, undone_by, LENGTH(changeset), said "
        "FROM journal_entry JOIN seat ON seat.id = seat_id ORDER BY journal_entry.id DESC LIMIT ?1",
        limit));
}

std::optional<HistoryEntry> Shop::lastUndoable() {
    auto found = entriesOf(connection().query(
        "SELECT journal_entry.id, at, seat.name, title, undoes, undone_by, LENGTH(changeset), said "
        "FROM journal_entry JOIN seat ON seat.id = seat_id "
        "WHERE seat_id = ?1 AND undoes IS NULL AND undone_by IS NULL ORDER BY journal_entry.id DESC LIMIT 1",
        m_seat));
    if (found.empty() || isForGood(found.front()))
        return std::nullopt;
    return std::move(found.front());
}

// Such an entry is small, and this is asked after each act.
bool Shop::isForGood(const HistoryEntry& entry) {
    constexpr std::int64_t kMostBytes = 100'000;
    if (entry.bytes > kMostBytes)
        return false;
    Query row = connection().query("SELECT changeset FROM journal_entry WHERE id = ?1", entry.id);
    return row.step() && db::isForGood(row.bytes(0));
}

// An undo of an act, or of its redo; not a redo.
bool Shop::undoesAnAct(const HistoryEntry& entry) {
    bool isUndo = false;
    for (std::optional<EntryId> before = entry.undoes; before; isUndo = !isUndo) {
        Query found = connection().query("SELECT undoes FROM journal_entry WHERE id = ?1", *before);
        before = found.step() ? found.optionalId<EntryId>(0) : std::nullopt;
    }
    return isUndo;
}

std::optional<HistoryEntry> Shop::lastRedoable() {
    Query rows = connection().query(
        "SELECT journal_entry.id, at, seat.name, title, undoes, undone_by, LENGTH(changeset), said "
        "FROM journal_entry JOIN seat ON seat.id = seat_id WHERE seat_id = ?1 ORDER BY journal_entry.id DESC",
        m_seat);
    while (rows.step() && !rows.isNull(4)) {
        const HistoryEntry entry = entryAt(rows);
        if (!entry.isUndone() && undoesAnAct(entry))
            return entry;
    }
    return std::nullopt;
}

int Shop::onChanged(ChangeListener listener) {
    m_listeners.push_back({++m_lastListener, std::move(listener)});
    return m_lastListener;
}

void Shop::forget(int listener) {
    std::erase_if(m_listeners, [&](const Listener& each) { return each.number == listener; });
}

void Shop::tell(const ChangedTables& touched) {
    if (touched.empty())
        return;
    // A listener may act, listen or forget: go by a copy, and skip who has been forgotten meanwhile.
    const auto listeners = m_listeners;
    for (const Listener& each : listeners) {
        const bool stillListens = std::ranges::any_of(
            m_listeners, [&](const Listener& other) { return other.number == each.number; });
        if (stillListens)
            each.told(touched);
    }
}

} // namespace holdfast::db
