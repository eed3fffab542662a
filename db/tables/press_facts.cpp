// SPDX-License-Identifier: GPL-3.0-or-later
#include "db/tables/fact_readers.h"
#include "db/tables/fact_row.h"

#include <set>

namespace holdfast::db {

namespace {

constexpr double kMostDegreesAMinute = 1000;

} // namespace

std::vector<Press> readPresses(Connection& connection, UnreadFacts& unread) {
    std::vector<Press> presses;
    Query rows{
        connection,
        "SELECT id, name, platen_width_mm, platen_height_mm, has_small_platen, heats_per_minute, "
        "cools_per_minute, tolerance_c, even_within_c, check_every_days, retired_at FROM press ORDER BY id"};
    readFacts(rows, unread, "press", [&](const FactRow& row) {
        Press press;
        press.id = row.id<PressId>(0);
        press.name = row.text(1);
        press.platenWidth = row.extent(2);
        press.platenHeight = row.extent(3);
        press.hasSmallPlaten = row.truth(4);
        press.heatsPerMinute = row.measure(5, 0, kMostDegreesAMinute);
        press.coolsPerMinute = row.measure(6, 0, kMostDegreesAMinute);
        press.tolerance = row.temperature(7);
        press.evenWithin = row.temperature(8);
        press.checkEvery = row.lasting<Days>(9);
        press.isRetired = row.optionalInstant(10).has_value();
        presses.push_back(std::move(press));
    });
    return presses;
}

std::vector<PressCheck> readLastChecks(Connection& connection, UnreadFacts& unread) {
    std::vector<PressCheck> checks;
    std::set<PressId> leftOut;
    // Readings come in the order of their spots; a new check begins where the press changes.
    Query rows{connection, "SELECT press_check.id, press_check.press_id, press_check.at, press_check.set_c, "
                           "press_check.by_whom, celsius "
                           "FROM press_check JOIN press_check_reading ON check_id = press_check.id "
                           "WHERE press_check.id = (SELECT id FROM press_check AS last WHERE last.press_id = "
                           "press_check.press_id "
                           "ORDER BY at DESC, id DESC LIMIT 1) ORDER BY press_check.press_id, spot"};
    const auto read = [&](const FactRow& row) {
        const auto press = row.id<PressId>(1);
        PressCheck check{press, row.instant(2), row.temperature(3), {}, row.text(4)};
        const Celsius measured = row.temperature(5);
        if (checks.empty() || checks.back().press != press)
            checks.push_back(std::move(check));
        checks.back().readings.push_back(measured);
    };
    readFacts(rows, unread, "press_check", read,
              [&](const Query& row) { leftOut.insert(row.id<PressId>(1)); });
    std::erase_if(checks, [&](const PressCheck& check) { return leftOut.contains(check.press); });
    return checks;
}

} // namespace holdfast::db
