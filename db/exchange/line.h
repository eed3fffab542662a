#pragma once
// The line of entries, and what stands behind its end.

#include "core/trade/ids.h"
#include "db/exchange/carried_entry.h"

#include <cstdint>
#include <vector>

namespace holdfast::db {

class Connection;

// A place in the line. Two copies hold the same line up to it where both marks are the same: each mark is
// made of the one before it and of all that the entry in its place says was changed.
struct PlaceInLine {
    std::int64_t place = 0; // 0: before the first
    std::int64_t mark = 0;

    bool operator==(const PlaceInLine&) const = default;
};

PlaceInLine endOfLine(Connection& connection);
// REQUIRES: 0 <= place <= endOfLine().place
PlaceInLine placeInLine(Connection& connection, std::int64_t place);
bool isInLine(Connection& connection, EntryId entry);

// The entry, written already, takes the next place.
void putInLine(Connection& connection, const CarriedEntry& entry);

// Entries that have no place yet, in the order in which they were done, which is that of their ids.
std::vector<EntryId> behindTheLine(Connection& connection);
// At the workshop those are its own, and take their places before anybody else's.
void putOwnInLine(Connection& connection);

// Ids that this copy makes from now on lie above all that it knows, whatever the clocks of the others say: so
// a later entry has the higher id, and what takes back comes after what is taken back.
void goOnAboveAllIds(Connection& connection);

// FNV-1a, 64 bits: for telling damage, not for secrecy.
class Sum {
public:
    void add(const void* bytes, std::size_t count);
    void add(std::int64_t number);
    void add(const std::string& text);
    std::int64_t value() const { return static_cast<std::int64_t>(m_sum); }

private:
    std::uint64_t m_sum = 14695981039346656037U;
};

} // namespace holdfast::db
