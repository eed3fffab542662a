// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
// The line of entries, and what comes after its end.

#include "core/trade/ids.h"
#include "db/journal/carried_entry.h"

#include <cstdint>
#include <vector>

namespace holdfast::db {

class Connection;

// A place in the line. Two copies hold the same line up to it where both marks are the same: each mark is
// the hash of the one before it and of the seal of the entry in its place.
struct PlaceInLine {
    std::int64_t place = 0; // 0: before the first
    Hash mark{};

    bool operator==(const PlaceInLine&) const = default;
};

PlaceInLine endOfLine(Connection& connection);
// REQUIRES: 0 <= place <= endOfLine().place
PlaceInLine placeInLine(Connection& connection, std::int64_t place);
// The place of the entry of that seal, after another.
PlaceInLine placeBehind(const PlaceInLine& before, const Hash& seal);

// The entry, written already, takes the next place.
void putInLine(Connection& connection, EntryId entry);
// The entries after that place are no longer in the line. REQUIRES: as placeInLine.
void endLineAt(Connection& connection, std::int64_t place);

// Entries of the line after the place, in its order.
std::vector<EntryId> lineBehind(Connection& connection, std::int64_t place);
// Makes all marks again.
void markLine(Connection& connection);

// Entries that have no place yet, in the order in which they were done, which is that of their ids.
std::vector<EntryId> behindTheLine(Connection& connection);
// At the workshop those are its own, and take their places before anybody else's.
void putOwnInLine(Connection& connection);

// Ids that this copy makes from now on lie above all that it knows, whatever the clocks of the others say: so
// a later entry has the higher id, and what takes back comes after what is taken back.
void goOnAboveAllIds(Connection& connection);

} // namespace holdfast::db
