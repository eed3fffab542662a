// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
// An entry whole, as it is carried from one copy of the shop to another, and its way in and out of the
// journal.
//
// What makes an entry itself is its identity, not its number: the hash of what it said when it was done. Two
// copies of one laptop's file can give one number to two entries; no two entries have one identity. Its seal
// is the hash of what the journal says of it here, where it may have given way to others.

#include "core/trade/dates.h"
#include "core/trade/ids.h"
#include "db/disk/digest.h"
#include "db/sqlite/changeset.h"
#include "db/tables/kept_words.h"

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
    KeptWords title;
    std::optional<EntryId> undoes;
    bool isAside = false;
    KeptWords words; // why it is aside, or what of it gave way; empty for most
    Changeset changeset;
    std::vector<std::pair<std::string, std::int64_t>> subjects; // ordered
    Hash identity{};
    Salt salt{}; // so that what is forgotten cannot be guessed from a hash
    // Where something in it was forgotten since: the seal that it had, of which the line's marks are made.
    std::optional<Hash> sealedAs{};
    // Ids, of entries and rows, that had been given to others: the one it had, and the one it has in the
    // line.
    std::vector<std::pair<std::int64_t, std::int64_t>> otherIds; // ordered
};

// The identity of an entry that was just done: of all but isAside, words and otherIds; of its title the
// English, for the sentence says the same.
Hash identityOf(const CarriedEntry& entry);
// Of all of it; or, where something in it was forgotten since, what it was before.
Hash sealOf(const CarriedEntry& entry);
// Of all that it holds now.
Hash contentSealOf(const CarriedEntry& entry);

// Out of journal_entry or journal_aside; nothing where it is in neither.
std::optional<CarriedEntry> readEntry(Connection& connection, EntryId entry);
// As it was sealed when it was written, or what is left of it when something in it was forgotten.
std::optional<Hash> writtenContentSeal(Connection& connection, EntryId entry);
// As it was sealed when it was written, for the line.
std::optional<Hash> writtenSeal(Connection& connection, EntryId entry);
// The same entry as it is in the journal here: the one of its identity, whatever its number, or one that says
// the same under the same number, where a seal was lost.
std::optional<EntryId> knownEntry(Connection& connection, const CarriedEntry& entry);

// Into journal_entry, marking what it takes back, or into journal_aside.
void writeEntry(Connection& connection, const CarriedEntry& entry);
// Its identity, seal and other ids, for an entry that is in the journal.
void writeSeal(Connection& connection, const CarriedEntry& entry);

// What it says is another now, though it is the same entry: its title, words and changeset are written over,
// and its seal. REQUIRES: that it is in the journal.
void rewriteEntry(Connection& connection, const CarriedEntry& entry);

// Out of whichever it is in, with what it took back standing again. REQUIRES: no other entry takes it back.
void removeEntry(Connection& connection, const CarriedEntry& entry);

// Gives an identity and a seal to each entry that has none: those of a shop from before there were any.
// The same entry gets the same in every copy.
void sealUnsealed(Connection& connection);

} // namespace holdfast::db
