// SPDX-License-Identifier: GPL-3.0-or-later
#include "db/tables/fact_readers.h"
#include "db/tables/fact_row.h"

namespace holdfast::db {

std::vector<Fair> readFairs(Connection& connection, UnreadFacts& unread) {
    std::vector<Fair> fairs;
    Query rows{connection, "SELECT id, name, first_day, last_day, opens_min, closes_min, stall_minor, "
                           "other_minor, worked_min, note FROM fair ORDER BY id"};
    readFacts(rows, unread, "fair", [&](const FactRow& row) {
        Fair fair;
        fair.id = row.id<FairId>(0);
        fair.name = row.text(1);
        fair.firstDay = row.date(2);
        fair.lastDay = row.date(3);
        fair.hours = {Minutes{row.number(4, 0, kMinutesOfADay)}, Minutes{row.number(5, 0, kMinutesOfADay)}};
        fair.stallCost = row.money(6);
        fair.otherCosts = row.money(7);
        if (!row.isNull(8))
            fair.worked = row.lasting<Minutes>(8);
        fair.note = row.text(9);
        fairs.push_back(std::move(fair));
    });
    return fairs;
}

} // namespace holdfast::db
