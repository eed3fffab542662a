#include "db/tables/fact_readers.h"

namespace holdfast::db {

std::vector<Fair> readFairs(Connection& connection) {
    std::vector<Fair> fairs;
    Query rows{connection, "SELECT id, name, first_day, last_day, opens_min, closes_min, stall_minor, "
                           "other_minor, worked_min, note FROM fair ORDER BY id"};
    while (rows.step()) {
        Fair fair;
        fair.id = rows.id<FairId>(0);
        fair.name = rows.text(1);
        fair.firstDay = rows.date(2);
        fair.lastDay = rows.date(3);
        fair.hours = {Minutes{rows.integer(4)}, Minutes{rows.integer(5)}};
        fair.stallCost = {rows.integer(6)};
        fair.otherCosts = {rows.integer(7)};
        if (const auto worked = rows.optionalInteger(8))
            fair.worked = Minutes{*worked};
        fair.note = rows.text(9);
        fairs.push_back(std::move(fair));
    }
    return fairs;
}

} // namespace holdfast::db
