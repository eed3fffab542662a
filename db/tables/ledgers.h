// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
// The moves of a roll's or a lot's ledger, and the readings of a place, for the screens that show them.
// All functions throw SqliteFailure; Shop::read is their door.

#include "core/facts/blank_lot.h"
#include "core/facts/climate.h"
#include "core/trade/ids.h"
#include "db/sqlite/connection.h"

#include <string>
#include <vector>

namespace holdfast::db {

struct LengthMove {
    Instant at;
    Millimetres length; // negative: taken
    std::string reason;
};
std::vector<LengthMove> lengthMovesOf(Connection& connection, RollId roll); // newest first

struct UnitMove {
    Instant at;
    std::int64_t units = 0; // negative: taken
    std::string reason;
};
std::vector<UnitMove> unitMovesOf(Connection& connection, BlankLotId lot); // newest first

// Loads that are not dry yet, oldest first, each with the units in it.
struct LoadUnderWay {
    WashLoad load;
    std::int64_t units = 0;
};
std::vector<LoadUnderWay> loadsUnderWay(Connection& connection);

// Detergents used lately, the last one first, for the wash form.
std::vector<std::string> usualDetergents(Connection& connection);

// The next number for a roll's core.
int nextRollNumber(Connection& connection);

} // namespace holdfast::db
