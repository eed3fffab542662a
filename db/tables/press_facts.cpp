#include "db/tables/fact_readers.h"

namespace holdfast::db {

std::vector<Press> readPresses(Connection& connection) {
    std::vector<Press> presses;
    Query rows{connection,
               "SELECT id, name, platen_width_mm, platen_height_mm, has_small_platen, heats_per_minute, "
               "cools_per_minute, tolerance_c, even_within_c, check_every_days FROM press ORDER BY id"};
    while (rows.step()) {
        Press press;
        press.id = rows.id<PressId>(0);
        press.name = rows.text(1);
        press.platenWidth = Millimetres{rows.integer(2)};
        press.platenHeight = Millimetres{rows.integer(3)};
        press.hasSmallPlaten = rows.truth(4);
        press.heatsPerMinute = rows.real(5);
        press.coolsPerMinute = rows.real(6);
        press.tolerance = Celsius{rows.real(7)};
        press.evenWithin = Celsius{rows.real(8)};
        press.checkEvery = Days{rows.integer(9)};
        presses.push_back(std::move(press));
    }
    return presses;
}

std::vector<PressCheck> readLastChecks(Connection& connection) {
    std::vector<PressCheck> checks;
    // Readings come in the order of their spots; a new check begins where the press changes.
    Query rows{connection,
               "SELECT press_check.press_id, press_check.at, press_check.set_c, press_check.by_whom, celsius "
               "FROM press_check JOIN press_check_reading ON check_id = press_check.id "
               "WHERE press_check.id = (SELECT id FROM press_check AS last WHERE last.press_id = "
               "press_check.press_id "
               "ORDER BY at DESC, id DESC LIMIT 1) ORDER BY press_check.press_id, spot"};
    while (rows.step()) {
        if (checks.empty() || checks.back().press != rows.id<PressId>(0))
            checks.push_back({rows.id<PressId>(0), rows.instant(1), Celsius{rows.real(2)}, {}, rows.text(3)});
        checks.back().readings.push_back(Celsius{rows.real(4)});
    }
    return checks;
}

} // namespace holdfast::db
