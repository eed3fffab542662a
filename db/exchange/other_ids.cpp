// SPDX-License-Identifier: GPL-3.0-or-later
#include "db/exchange/other_ids.h"

#include "core/trade/id_maker.h"
#include "db/exchange/laptops.h"
#include "db/journal/line.h"
#include "db/sqlite/changeset_form.h"
#include "db/sqlite/connection.h"

#include <algorithm>
#include <charconv>

namespace holdfast::db {

namespace {

constexpr Phrase kNewNumber = phrase(
    "It has a new number here: that laptop’s file was put back from a copy, or two copies of it are in use.");

// Of a row that was added, where its key is one number.
std::optional<std::int64_t> addedRow(const RowChange& change) {
    std::int64_t id = 0;
    const char* end = change.key.data() + change.key.size();
    const auto read = std::from_chars(change.key.data(), end, id);
    const bool isNumber = read.ec == std::errc{} && read.ptr == end && id > 0;
    return change.kind == ChangeKind::Insert && isNumber ? std::optional{id} : std::nullopt;
}

std::int64_t instead(const std::map<std::int64_t, std::int64_t>& others, std::int64_t id) {
    const auto other = others.find(id);
    return other == others.end() ? id : other->second;
}

} // namespace

std::set<std::int64_t> rowsInserted(ChangesetView changeset) {
    std::set<std::int64_t> rows;
    forEachChange(changeset, [&](const RowChange& change) {
        if (const auto row = addedRow(change))
            rows.insert(*row);
        return true;
    });
    return rows;
}

OtherIds::OtherIds(Connection& connection)
    : m_connection(connection) {}

void OtherIds::knownAs(const CarriedEntry& theirs, EntryId here) {
    if (theirs.id != here) {
        m_here[theirs.id.value] = here.value;
        m_numbersAgain = true;
    }
    Query others = m_connection.query("SELECT was, here FROM journal_other_id WHERE entry_id = ?1", here);
    while (others.step()) {
        const std::pair other{others.integer(0), others.integer(1)};
        if (std::ranges::find(theirs.otherIds, other) == theirs.otherIds.end())
            m_here.insert(other);
    }
}

std::int64_t OtherIds::here(std::int64_t number) const {
    return instead(m_here, number);
}

CarriedEntry OtherIds::asHere(CarriedEntry entry) {
    const auto taken = takenRows(entry);
    const bool isRenamed = m_numbersAgain || !taken.empty() || isTaken(entry.id);
    if (isRenamed) {
        m_numbersAgain = true;
        goOnAboveAllIds(m_connection);
    }
    for (const std::int64_t row : taken)
        m_here[row] = newIdHere(m_connection, entry.at);
    if (isRenamed)
        m_here[entry.id.value] = newIdHere(m_connection, entry.at);
    rename(entry);
    return entry;
}

void OtherIds::rename(CarriedEntry& entry) {
    if (m_here.empty())
        return;
    const Changeset before = entry.changeset;
    entry.changeset = withOtherNumbers(before, m_here, [this](const std::string& table, std::size_t column) {
        return isIdColumn(table, column);
    });
    for (auto& [kind, subject] : entry.subjects)
        subject = instead(m_here, subject);
    std::ranges::sort(entry.subjects);
    if (entry.undoes)
        entry.undoes = EntryId{instead(m_here, entry.undoes->value)};
    const std::int64_t id = instead(m_here, entry.id.value);
    if (id == entry.id.value)
        return;
    std::map<std::int64_t, std::int64_t> others;
    for (const auto& [was, here] : entry.otherIds)
        others[was] = instead(m_here, here);
    others[entry.id.value] = id;
    for (const std::int64_t row : rowsInserted(before))
        if (m_here.contains(row))
            others[row] = m_here.at(row);
    entry.otherIds.assign(others.begin(), others.end());
    entry.id = EntryId{id};
    if (entry.words.empty())
        entry.words = KeptWords::of(kNewNumber);
    else if (entry.words.english.find(kNewNumber.english) == std::string::npos)
        entry.words = KeptWords::of(oneAfterTheOther(entry.words.sentence(), kNewNumber));
}

bool OtherIds::isTaken(EntryId entry) {
    return m_connection.number("SELECT EXISTS (SELECT 1 FROM journal_entry WHERE id = ?1) "
                               "OR EXISTS (SELECT 1 FROM journal_aside WHERE id = ?1)",
                               entry) != 0;
}

// Rows that the entry made and that are another entry's here. What an undo puts back, and what was set aside
// and then done after all, is the same row.
std::set<std::int64_t> OtherIds::takenRows(const CarriedEntry& entry) {
    std::set<std::int64_t> taken;
    if (entry.undoes)
        return taken;
    forEachChange(entry.changeset, [&](const RowChange& change) {
        const auto row = addedRow(change);
        if (row && IdMaker::seatOf(*row) == entry.seat && !m_here.contains(*row) &&
            isThere(std::string{change.table}, *row) && !isSetAside(*row))
            taken.insert(*row);
        return true;
    });
    return taken;
}

bool OtherIds::isThere(const std::string& table, std::int64_t id) {
    return isIdColumn(table, 0) &&
           m_connection.number("SELECT COUNT(*) FROM \"" + table + "\" WHERE rowid = ?1", id) > 0;
}

bool OtherIds::isSetAside(std::int64_t row) {
    if (!m_setAside) {
        m_setAside.emplace();
        Query asides = m_connection.query("SELECT changeset FROM journal_aside");
        while (asides.step())
            m_setAside->merge(rowsInserted(asides.bytes(0)));
    }
    return m_setAside->contains(row);
}

// The id of the row itself, and of those that it refers to.
bool OtherIds::isIdColumn(const std::string& table, std::size_t column) {
    auto found = m_idColumns.find(table);
    if (found == m_idColumns.end()) {
        std::set<std::size_t> columns;
        Query names = m_connection.query("SELECT cid FROM pragma_table_info(?1) WHERE name = 'id' "
                                         "OR name LIKE '%\\_id' ESCAPE '\\'",
                                         table);
        while (names.step())
            columns.insert(static_cast<std::size_t>(names.integer(0)));
        found = m_idColumns.emplace(table, std::move(columns)).first;
    }
    return found->second.contains(column);
}

} // namespace holdfast::db
