// SPDX-License-Identifier: GPL-3.0-or-later
#include "db/tables/order_meaning.h"

#include "db/sqlite/query.h"

#include <algorithm>

namespace holdfast::db {

namespace {

void addFound(std::vector<OrderId>& orders, Query rows) {
    while (rows.step())
        orders.push_back(rows.id<OrderId>(0));
}

// Promises are local times as text, which compare as they follow each other; of the day after, none.
void addOnDays(std::vector<OrderId>& orders, Connection& connection, const DaySpan& days, const Now& now) {
    const LocalDate after = days.last + Days{1};
    addFound(orders, connection.query("SELECT id FROM shop_order WHERE promised >= ?1 AND promised < ?2",
                                      isoDate(days.first), isoDate(after)));
    addFound(orders, connection.query("SELECT id FROM shop_order WHERE taken_at >= ?1 AND taken_at < ?2",
                                      now.toInstant(LocalTime{days.first}), now.toInstant(LocalTime{after})));
}

} // namespace

std::vector<OrderId> ordersMeant(Connection& connection, const OrderMeaning& meaning, const Now& now) {
    std::vector<OrderId> orders;
    switch (meaning.kind) {
    case OrderMeaning::Kind::OnDays:
        for (const DaySpan& days : meaning.days)
            addOnDays(orders, connection, days, now);
        break;
    case OrderMeaning::Kind::Owing:
        addFound(orders, connection.query("SELECT id FROM order_card WHERE total_minor > paid_minor "
                                          "AND state <> 'cancelled'"));
        break;
    case OrderMeaning::Kind::Late:
        addFound(orders, connection.query("SELECT id FROM shop_order WHERE state IN ('quoted', 'confirmed') "
                                          "AND promised < ?1",
                                          isoDate(now.today())));
        break;
    case OrderMeaning::Kind::Unconfirmed:
        addFound(orders,
                 connection.query("SELECT id FROM shop_order WHERE state = 'quoted' OR (state = 'confirmed' "
                                  "AND EXISTS (SELECT 1 FROM garment JOIN decal ON garment_id = garment.id "
                                  "WHERE order_id = shop_order.id AND garment.cancelled_at IS NULL "
                                  "AND decal.confirmed_by = ''))"));
        break;
    }
    std::ranges::sort(orders);
    orders.erase(std::unique(orders.begin(), orders.end()), orders.end());
    return orders;
}

} // namespace holdfast::db
