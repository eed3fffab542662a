// SPDX-License-Identifier: GPL-3.0-or-later
#include "db/tables/till.h"

#include "db/tables/fact_row.h"

namespace holdfast::db {

DayMoney moneyOfDay(Connection& connection, LocalDate day, const Now& now) {
    DayMoney money;
    UnreadFacts namedElsewhere;
    Query rows = connection.query("SELECT id, minor, kind, how FROM money_move WHERE at >= ?1 AND at < ?2",
                                  now.toInstant(LocalTime{day}), now.toInstant(LocalTime{day + Days{1}}));
    readFacts(rows, namedElsewhere, "money_move", [&](const FactRow& row) {
        money.add(row.choice<PaidHow>(3), row.choice<MoneyKind>(2), row.money(1));
    });
    return money;
}

std::vector<TillCount> readTillCounts(Connection& connection, UnreadFacts& unread) {
    std::vector<TillCount> counts;
    Query rows{connection, "SELECT id, day, at, float_minor, cash_minor, counted_minor FROM till_count "
                           "ORDER BY day DESC, at DESC, id DESC"};
    readFacts(rows, unread, "till_count", [&](const FactRow& row) {
        counts.push_back(
            {row.id<TillCountId>(0), row.date(1), row.instant(2), row.money(3), row.money(4), row.money(5)});
    });
    return counts;
}

} // namespace holdfast::db
