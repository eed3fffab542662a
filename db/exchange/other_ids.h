// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
// Two copies of one laptop's file can give one number to different entries and rows. What comes second gets
// numbers of its own here, and all that speaks of it in the same file follows.

#include "db/journal/carried_entry.h"

#include <cstdint>
#include <map>
#include <optional>
#include <set>
#include <string>

namespace holdfast::db {

class Connection;

// The keys of the rows that it adds, where they are numbers.
std::set<std::int64_t> rowsInserted(ChangesetView changeset);

// For the entries of one file, in their order: within it a number means one thing.
class OtherIds {
public:
    explicit OtherIds(Connection& connection);

    // The entry is in the journal here already, under that number.
    void knownAs(const CarriedEntry& theirs, EntryId here);

    // The number that is its here, as far as entries that are known here say.
    std::int64_t here(std::int64_t number) const;

    // The entry, which is not yet in the journal, with the numbers that are its here; its words say so where
    // they are others. REQUIRES: a transaction in which writing is allowed.
    CarriedEntry asHere(CarriedEntry entry);

private:
    bool isTaken(EntryId entry);
    std::set<std::int64_t> takenRows(const CarriedEntry& entry);
    bool isThere(const std::string& table, std::int64_t id);
    bool isSetAside(std::int64_t row);
    bool isIdColumn(const std::string& table, std::size_t column);
    void rename(CarriedEntry& entry);

    Connection& m_connection;
    std::map<std::int64_t, std::int64_t> m_here; // by the number in the file
    bool m_numbersAgain = false; // once one has another number, all after it have: later is higher
    std::map<std::string, std::set<std::size_t>> m_idColumns;
    std::optional<std::set<std::int64_t>> m_setAside;
};

} // namespace holdfast::db
