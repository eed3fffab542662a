#pragma once
// An entry as it is carried from one copy of the shop to another, and its way in and out of the journal.

#include "core/trade/dates.h"
#include "core/trade/ids.h"
#include "db/sqlite/changeset.h"

#include <cstdint>
#include <optional>
#include <string>
#include <utility>
#include <vector>

namespace holdfast::db {

class Connection;

struct CarriedEntry {
    EntryId id;
    std::int64_t seat = 0;
    Instant at{};
    std::string title;
    std::optional<EntryId> undoes;
    bool isAside = false;
    std::string words; // why it is aside, or what of it gave way; empty for most
    Changeset changeset;
    std::vector<std::pair<std::string, std::int64_t>> subjects;
};

// Out of journal_entry or journal_aside; nothing where it is in neither.
std::optional<CarriedEntry> readEntry(Connection& connection, EntryId entry);

// Into journal_entry, marking what it takes back, or into journal_aside.
void writeEntry(Connection& connection, const CarriedEntry& entry);

// Out of whichever it is in, with what it took back standing again. REQUIRES: no other entry takes it back.
void removeEntry(Connection& connection, const CarriedEntry& entry);

} // namespace holdfast::db
