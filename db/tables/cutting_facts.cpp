// SPDX-License-Identifier: GPL-3.0-or-later
#include "db/tables/fact_readers.h"
#include "db/tables/fact_row.h"

namespace holdfast::db {

// A kept offcut is a correction of a roll that never was received. What is cut from it later is film cut
// then. Lengths that no roll has are in no sum: the readers of rolls and of orders name them.
CuttingHistory readCutting(Connection& connection) {
    Query rows = connection.query(
        "WITH latest AS (SELECT at, mm, width_mm, roll_id FROM roll_move "
        "JOIN film_roll ON film_roll.id = roll_id WHERE kind = 'cut' "
        "AND mm BETWEEN -?2 AND ?2 AND width_mm BETWEEN 0 AND ?2 ORDER BY at DESC LIMIT ?1), "
        "first AS (SELECT MIN(at) AS at FROM latest) "
        "SELECT (SELECT COUNT(*) FROM latest), "
        "(SELECT COALESCE(-SUM(mm * width_mm), 0) FROM latest) - "
        "(SELECT COALESCE(SUM(mm * width_mm), 0) FROM roll_move JOIN film_roll ON film_roll.id = roll_id "
        "WHERE roll_move.at >= (SELECT at FROM first) AND kind = 'correction' "
        "AND mm BETWEEN 1 AND ?2 AND width_mm BETWEEN 0 AND ?2 AND NOT EXISTS "
        "(SELECT 1 FROM roll_move AS received WHERE received.roll_id = film_roll.id AND kind = 'received')), "
        "(SELECT COALESCE(SUM(decal.width_mm * height_mm), 0) FROM decal "
        "WHERE cut_roll_id IN (SELECT roll_id FROM latest) AND cut_at >= (SELECT at FROM first) "
        "AND decal.width_mm BETWEEN 0 AND ?2 AND height_mm BETWEEN 0 AND ?2)",
        kCutsLookedAt, kMostMillimetres);
    CuttingHistory history;
    if (rows.step())
        history = {rows.integer(0), rows.integer(1), rows.integer(2)};
    return history;
}

} // namespace holdfast::db
