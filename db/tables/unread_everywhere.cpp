// SPDX-License-Identifier: GPL-3.0-or-later
#include "db/tables/unread_everywhere.h"

#include "db/sqlite/connection.h"
#include "db/tables/claims.h"
#include "db/tables/facts.h"
#include "db/tables/invoices.h"
#include "db/tables/order_book.h"
#include "db/tables/till.h"
#include "db/tables/unread_facts.h"

#include <algorithm>
#include <set>
#include <utility>

namespace holdfast::db {

namespace {

// Each batch loads all stock and films too, so it is not small; and no more orders than these are in memory.
constexpr std::int64_t kOrdersAtOnce = 2'000;

std::vector<OrderId> ordersAfter(Connection& connection, OrderId last) {
    std::vector<OrderId> orders;
    Query rows =
        connection.query("SELECT id FROM shop_order WHERE id > ?1 ORDER BY id LIMIT ?2", last, kOrdersAtOnce);
    while (rows.step())
        orders.push_back(rows.id<OrderId>(0));
    return orders;
}

// Rows that every batch finds are found once.
class Gathered {
public:
    void add(std::vector<UnreadRow> rows) {
        for (UnreadRow& row : rows)
            if (m_known.insert(row.table + '\n' + row.key + '\n' + row.what.english() + row.why.english())
                    .second)
                m_rows.push_back(std::move(row));
    }

    std::vector<UnreadRow> take() { return std::move(m_rows); }

private:
    std::set<std::string> m_known;
    std::vector<UnreadRow> m_rows;
};

} // namespace

std::vector<UnreadRow> unreadEverywhere(Connection& connection, const std::function<bool(double)>& told) {
    Gathered gathered;
    const auto inAll = static_cast<double>(connection.number("SELECT COUNT(*) FROM shop_order"));
    double done = 0;
    OrderId last{std::numeric_limits<std::int64_t>::min()};
    do {
        const std::vector<OrderId> orders = ordersAfter(connection, last);
        gathered.add(loadFactsOf(connection, orders).unread);
        if (orders.empty())
            break;
        last = orders.back();
        done += static_cast<double>(orders.size());
        if (told)
            (void)told(done / inAll); // a stop ends the next statement
    } while (true);

    UnreadFacts rest;
    noteUnreadReadings(connection, rest);
    noteUnreadMoney(connection, rest);
    noteUnreadClaims(connection, rest);
    noteUnreadInvoices(connection, rest);
    (void)readTillCounts(connection, rest);
    gathered.add(rest.named(connection));
    return gathered.take();
}

} // namespace holdfast::db
