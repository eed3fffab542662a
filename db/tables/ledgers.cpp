// SPDX-License-Identifier: GPL-3.0-or-later
#include "db/tables/ledgers.h"

#include "db/tables/fact_row.h"

namespace holdfast::db {

// What cannot be read is left out here; it is named where the facts are loaded.

std::vector<LengthMove> lengthMovesOf(Connection& connection, RollId roll) {
    std::vector<LengthMove> moves;
    UnreadFacts unread;
    Query rows = connection.query(
        "SELECT id, at, mm, reason FROM roll_move WHERE roll_id = ?1 ORDER BY at DESC, id DESC", roll);
    readFacts(rows, unread, "roll_move",
              [&](const FactRow& row) { moves.push_back({row.instant(1), row.length(2), row.text(3)}); });
    return moves;
}

std::vector<UnitMove> unitMovesOf(Connection& connection, BlankLotId lot) {
    std::vector<UnitMove> moves;
    UnreadFacts unread;
    Query rows = connection.query(
        "SELECT id, at, units, reason FROM lot_move WHERE lot_id = ?1 ORDER BY at DESC, id DESC", lot);
    readFacts(rows, unread, "lot_move", [&](const FactRow& row) {
        moves.push_back({row.instant(1), row.number(2, -kMostCount, kMostCount), row.text(3)});
    });
    return moves;
}

std::vector<LoadUnderWay> loadsUnderWay(Connection& connection) {
    std::vector<LoadUnderWay> loads;
    UnreadFacts unread;
    Query rows = connection.query(
        "SELECT wash_load.id, started_at, detergent, softener, water_c, drying, dryer_sheet, "
        "(SELECT COALESCE(SUM(units), 0) FROM lot_move JOIN blank_lot ON blank_lot.id = lot_id "
        "WHERE last_load_id = wash_load.id AND units BETWEEN -?1 AND ?1) "
        "FROM wash_load WHERE dry_at IS NULL ORDER BY started_at, id",
        kMostCount);
    readFacts(rows, unread, "wash_load", [&](const FactRow& row) {
        loads.push_back({{row.id<WashLoadId>(0), row.instant(1), row.text(2), row.truth(3),
                          row.temperature(4), row.choice<Drying>(5), row.truth(6), std::nullopt},
                         row.number(7, -kMostMinor, kMostMinor)});
    });
    return loads;
}

std::vector<std::string> usualDetergents(Connection& connection) {
    std::vector<std::string> detergents;
    Query rows{connection, "SELECT detergent FROM wash_load WHERE detergent <> '' GROUP BY detergent ORDER "
                           "BY MAX(started_at) DESC LIMIT 6"};
    while (rows.step())
        detergents.push_back(rows.text(0));
    return detergents;
}

int nextRollNumber(Connection& connection) {
    return static_cast<int>(connection.number("SELECT COALESCE(MAX(number), 0) + 1 FROM film_roll"));
}

} // namespace holdfast::db
