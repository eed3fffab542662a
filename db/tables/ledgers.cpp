#include "db/tables/ledgers.h"

#include "db/tables/codes.h"

namespace holdfast::db {

std::vector<LengthMove> lengthMovesOf(Connection& connection, RollId roll) {
    std::vector<LengthMove> moves;
    Query rows = connection.query(
        "SELECT at, mm, reason FROM roll_move WHERE roll_id = ?1 ORDER BY at DESC, id DESC", roll);
    while (rows.step())
        moves.push_back({rows.instant(0), Millimetres{rows.integer(1)}, rows.text(2)});
    return moves;
}

std::vector<UnitMove> unitMovesOf(Connection& connection, BlankLotId lot) {
    std::vector<UnitMove> moves;
    Query rows = connection.query(
        "SELECT at, units, reason FROM lot_move WHERE lot_id = ?1 ORDER BY at DESC, id DESC", lot);
    while (rows.step())
        moves.push_back({rows.instant(0), rows.integer(1), rows.text(2)});
    return moves;
}

std::vector<LoadUnderWay> loadsUnderWay(Connection& connection) {
    std::vector<LoadUnderWay> loads;
    Query rows{
        connection,
        "SELECT wash_load.id, started_at, detergent, softener, water_c, drying, dryer_sheet, "
        "(SELECT COALESCE(SUM(units), 0) FROM lot_move JOIN blank_lot ON blank_lot.id = lot_id "
        "WHERE last_load_id = wash_load.id) FROM wash_load WHERE dry_at IS NULL ORDER BY started_at, id"};
    while (rows.step())
        loads.push_back({{rows.id<WashLoadId>(0), rows.instant(1), rows.text(2), rows.truth(3),
                          Celsius{rows.real(4)}, fromCode<Drying>(rows.view(5)), rows.truth(6), std::nullopt},
                         rows.integer(7)});
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
