// SPDX-License-Identifier: GPL-3.0-or-later
#include "db/tables/order_book.h"

#include "db/tables/fact_row.h"

#include <algorithm>
#include <iterator>

namespace holdfast::db {

namespace {

std::string_view filterSql(OrderFilter filter) {
    switch (filter) {
    case OrderFilter::Open:
        return " AND order_card.state IN ('quoted', 'confirmed')";
    case OrderFilter::Owing:
        return " AND total_minor > paid_minor AND order_card.state <> 'cancelled'";
    case OrderFilter::HandedOver:
        return " AND order_card.state = 'handed-over'";
    case OrderFilter::All:
        break;
    }
    return "";
}

// Where nothing is looked for in the text, the cards alone; else the cards whose text matches.
std::string fromWanted(const OrderQuery& wanted) {
    return wanted.match.empty() ? "FROM order_card WHERE ?1 = ''"
                                : "FROM order_text JOIN order_card ON order_card.id = order_text.rowid "
                                  "WHERE order_text MATCH ?1";
}

// FTS reads its rows backwards as cheaply as forwards, so the newest come first without a sort.
std::string sortedBy(const OrderQuery& wanted, OrderSort sort) {
    if (sort == OrderSort::Promise)
        return " ORDER BY promised, order_card.id ";
    return wanted.match.empty() ? " ORDER BY order_card.id DESC " : " ORDER BY order_text.rowid DESC ";
}

constexpr std::string_view kLineColumns = "order_card.id, order_card.number, order_card.customer, state, "
                                          "promised, garments, total_minor, paid_minor, "
                                          "state = 'cancelled' AND EXISTS (SELECT 1 FROM garment WHERE "
                                          "order_id = order_card.id AND handed_over_at IS NOT NULL) ";

// For json_each.
std::string listOf(std::span<const OrderId> orders) {
    std::string list = "[";
    for (const OrderId order : orders)
        list += (list.size() > 1 ? "," : "") + std::to_string(order.value);
    return list + "]";
}

OrderLine lineFrom(const FactRow& row) {
    OrderLine line;
    line.id = row.id<OrderId>(0);
    line.number = row.number(1, 1, kMostCount);
    line.customer = row.text(2);
    line.state = row.choice<OrderState>(3);
    line.promised = row.localTime(4);
    line.garments = row.count(5);
    line.total = row.money(6);
    line.paid = row.money(7);
    line.isAnyHandedOver = row.truth(8);
    return line;
}

// A line that cannot be read keeps its place in the list, for whoever looks for the order.
std::vector<OrderLine> readLines(Query& rows) {
    std::vector<OrderLine> lines;
    UnreadFacts saidByTheLine;
    readFacts(
        rows, saidByTheLine, "order_card", [&](const FactRow& row) { lines.push_back(lineFrom(row)); },
        [&](const Query& row) {
            OrderLine& line = lines.emplace_back();
            line.id = row.id<OrderId>(0);
            line.number = row.integer(1);
            line.customer = row.text(2);
            line.isUnread = true;
        });
    return lines;
}

std::vector<OrderId> inTurn(std::span<const OrderId> orders) {
    std::vector<OrderId> lowestFirst(orders.begin(), orders.end());
    std::ranges::sort(lowestFirst);
    return lowestFirst;
}

std::vector<OrderId> inBoth(const std::vector<OrderId>& one, const std::vector<OrderId>& other) {
    std::vector<OrderId> both;
    std::ranges::set_intersection(one, other, std::back_inserter(both));
    return both;
}

std::vector<OrderId> idsOf(Connection& connection, const std::string& condition) {
    std::vector<OrderId> ids;
    Query rows{connection, "SELECT id FROM order_card WHERE " + condition + " ORDER BY id"};
    while (rows.step())
        ids.push_back(rows.id<OrderId>(0));
    return ids;
}

std::vector<OrderId> listedUnder(Connection& connection, const std::vector<OrderId>& orders,
                                 OrderFilter filter) {
    return filter == OrderFilter::All
               ? orders
               : inBoth(orders, idsOf(connection, "TRUE" + std::string(filterSql(filter))));
}

bool findsAny(Connection& connection, const OrderQuery& wanted) {
    return wanted.orders
               ? !wanted.orders->empty()
               : connection.number("SELECT EXISTS (SELECT 1 FROM order_text WHERE order_text MATCH ?1)",
                                   wanted.match) != 0;
}

// A number that was typed is an order's before it is a part of a phone number.
std::string isOfNumber(const OrderQuery& wanted) {
    return "order_card.number = " + wanted.search.number();
}

// Of `orders`, the lowest id first; a limit of -1 is none.
std::vector<OrderLine> findListed(Connection& connection, const OrderQuery& wanted,
                                  std::vector<OrderId> orders, OrderSort sort, int limit, int offset) {
    std::string sql = "SELECT " + std::string(kLineColumns) +
                      "FROM order_card WHERE order_card.id IN (SELECT value FROM json_each(?1)) ORDER BY ";
    if (sort == OrderSort::Promise) {
        Query rows = connection.query(sql + "promised, order_card.id LIMIT ?2 OFFSET ?3", listOf(orders),
                                      limit, offset);
        return readLines(rows);
    }
    std::ranges::reverse(orders);
    if (wanted.search.isNumber()) {
        const auto numbered = idsOf(connection, isOfNumber(wanted));
        std::ranges::stable_partition(
            orders, [&](OrderId each) { return std::ranges::binary_search(numbered, each); });
        sql += isOfNumber(wanted) + " DESC, ";
    }
    const auto from = std::min(static_cast<std::size_t>(offset), orders.size());
    const auto most =
        std::min(limit < 0 ? orders.size() : static_cast<std::size_t>(limit), orders.size() - from);
    const std::span<const OrderId> page = std::span<const OrderId>{orders}.subspan(from, most);
    Query rows = connection.query(sql + "order_card.id DESC", listOf(page));
    return readLines(rows);
}

// The newest of those that match, but the order of the number that was typed before all others. Sorting all
// that match would take longer than a key that is typed may.
std::vector<OrderLine> findNumberFirst(Connection& connection, const OrderQuery& wanted, OrderFilter filter,
                                       int limit, int offset) {
    const std::string columns = "SELECT " + std::string(kLineColumns);
    Query first = connection.query(
        columns + "FROM order_card WHERE " + isOfNumber(wanted) + std::string(filterSql(filter)) +
            " AND EXISTS (SELECT 1 FROM order_text WHERE order_text MATCH ?1 AND rowid = order_card.id) "
            "ORDER BY id DESC",
        wanted.match);
    std::vector<OrderLine> lines = readLines(first);
    const int numbered = static_cast<int>(lines.size());
    lines.erase(lines.begin(), lines.begin() + std::min(offset, numbered));
    lines.resize(std::min(lines.size(), static_cast<std::size_t>(limit)));
    Query others = connection.query(
        columns + fromWanted(wanted) + " AND NOT " + isOfNumber(wanted) + std::string(filterSql(filter)) +
            sortedBy(wanted, OrderSort::Newest) + "LIMIT ?2 OFFSET ?3",
        wanted.match, limit - static_cast<int>(lines.size()), std::max(offset - numbered, 0));
    std::ranges::move(readLines(others), std::back_inserter(lines));
    return lines;
}

} // namespace

OrderQuery::OrderQuery(Connection& connection, OrderSearch wanted)
    : search(std::move(wanted))
    , match(search.match(connection, spelling))
    , orders(search.ordersListed(connection, match)) {
    if (!search.mayBeNear() || findsAny(connection, *this))
        return;
    spelling = Spelling::Near;
    match = search.match(connection, spelling);
    orders = search.ordersListed(connection, match);
}

std::vector<OrderLine> findOrders(Connection& connection, const OrderQuery& wanted, OrderFilter filter,
                                  int limit, int offset, OrderSort sort) {
    if (wanted.orders)
        return findListed(connection, wanted, listedUnder(connection, *wanted.orders, filter), sort, limit,
                          offset);
    if (wanted.search.isNumber() && sort == OrderSort::Newest)
        return findNumberFirst(connection, wanted, filter, limit, offset);
    const std::string sql = "SELECT " + std::string(kLineColumns) + fromWanted(wanted) +
                            std::string(filterSql(filter)) + sortedBy(wanted, sort) + "LIMIT ?2 OFFSET ?3";
    Query rows = connection.query(sql, wanted.match, limit, offset);
    return readLines(rows);
}

std::vector<OrderLine> findOrders(Connection& connection, std::string_view search, OrderFilter filter,
                                  int limit, int offset, OrderSort sort) {
    return findOrders(connection, OrderQuery{connection, search}, filter, limit, offset, sort);
}

std::int64_t countOrders(Connection& connection, const OrderQuery& wanted, OrderFilter filter) {
    if (wanted.orders)
        return std::ssize(listedUnder(connection, *wanted.orders, filter));
    // The index alone knows how many match, without a look at their cards.
    if (filter == OrderFilter::All && !wanted.match.empty())
        return connection.number("SELECT COUNT(*) FROM order_text WHERE order_text MATCH ?1", wanted.match);
    return connection.number("SELECT COUNT(*) " + fromWanted(wanted) + std::string(filterSql(filter)),
                             wanted.match);
}

std::int64_t countOrders(Connection& connection, std::string_view search, OrderFilter filter) {
    return countOrders(connection, OrderQuery{connection, search}, filter);
}

std::vector<OrderLine> findAmong(Connection& connection, const OrderQuery& wanted,
                                 std::span<const OrderId> orders, OrderSort sort) {
    if (wanted.orders)
        return findListed(connection, wanted, inBoth(*wanted.orders, inTurn(orders)), sort, -1, 0);
    const bool isByNumber = wanted.search.isNumber() && sort == OrderSort::Newest;
    const std::string sql = "SELECT " + std::string(kLineColumns) + fromWanted(wanted) +
                            " AND order_card.id IN (SELECT value FROM json_each(?2))" +
                            (isByNumber ? " ORDER BY " + isOfNumber(wanted) + " DESC, order_card.id DESC"
                                        : sortedBy(wanted, sort));
    Query rows = connection.query(sql, wanted.match, listOf(orders));
    return readLines(rows);
}

std::vector<OrderLine> findAmong(Connection& connection, std::string_view search,
                                 std::span<const OrderId> orders, OrderSort sort) {
    return findAmong(connection, OrderQuery{connection, search}, orders, sort);
}

OrderCounts countAll(Connection& connection, std::span<const OrderId> leftOut) {
    OrderCounts counts;
    Query open = connection.query(
        "SELECT COUNT(*), COALESCE(SUM(MAX(total_minor - paid_minor, 0)) FILTER (WHERE total_minor BETWEEN "
        "-?1 AND ?1 AND paid_minor BETWEEN -?1 AND ?1 AND id NOT IN (SELECT value FROM json_each(?2))), 0) "
        "FROM order_card WHERE state IN ('quoted', 'confirmed')",
        kMostMinor, listOf(leftOut));
    if (open.step()) {
        counts.open = open.integer(0);
        counts.owedOnOpen = Money{open.integer(1)};
    }
    counts.owing = connection.number(
        "SELECT COUNT(*) FROM order_card WHERE total_minor > paid_minor AND state <> 'cancelled'");
    counts.all = connection.number("SELECT COUNT(*) FROM order_card");
    return counts;
}

Takings takingsBetween(Connection& connection, Instant from, Instant to) {
    Takings takings;
    takings.orders = connection.number(
        "SELECT COUNT(*) FROM shop_order WHERE taken_at >= ?1 AND taken_at < ?2 AND state <> "
        "'cancelled'",
        from, to);
    takings.money = Money{connection.number("SELECT COALESCE(SUM(minor), 0) FROM money_move "
                                            "WHERE at >= ?1 AND at < ?2 AND minor BETWEEN -?3 AND ?3",
                                            from, to, kMostMinor)};
    return takings;
}

std::vector<Customer> findCustomers(Connection& connection, std::string_view search, int limit) {
    std::vector<Customer> customers;
    // LIKE's own signs are taken as text.
    std::string text;
    for (const char each : search) {
        if (each == '%' || each == '_' || each == '\\')
            text += '\\';
        text += each;
    }
    Query rows = connection.query(
        "SELECT id, name, phone FROM customer WHERE id NOT IN (SELECT customer_id FROM forgotten_customer) "
        "AND id NOT IN (SELECT id FROM customer_joined) AND (name LIKE ?1 || '%' ESCAPE '\\' "
        "OR name LIKE '% ' || ?1 || '%' ESCAPE '\\' "
        "OR (?1 <> '' AND replace(replace(phone, ' ', ''), '-', '') LIKE '%' || replace(?1, "
        "' ', '') || '%' ESCAPE "
        "'\\')) ORDER BY name COLLATE NOCASE, id LIMIT ?2",
        text, limit);
    while (rows.step())
        customers.push_back({rows.id<CustomerId>(0), rows.text(1), rows.text(2)});
    return customers;
}

std::vector<MoneyMove> moneyOf(Connection& connection, OrderId order) {
    std::vector<MoneyMove> moves;
    UnreadFacts unread;
    Query rows = connection.query(
        "SELECT id, at, minor, kind, how FROM money_move WHERE order_id = ?1 ORDER BY at, id", order);
    readFacts(rows, unread, "money_move", [&](const FactRow& row) {
        moves.push_back({row.instant(1), row.money(2), row.choice<MoneyKind>(3), row.choice<PaidHow>(4)});
    });
    return moves;
}

void noteUnreadMoney(Connection& connection, UnreadFacts& unread) {
    Query rows{connection, "SELECT id, at, minor, kind, how FROM money_move ORDER BY id"};
    readFacts(rows, unread, "money_move", [](const FactRow& row) {
        (void)row.instant(1);
        (void)row.money(2);
        (void)row.choice<MoneyKind>(3);
        (void)row.choice<PaidHow>(4);
    });
}

} // namespace holdfast::db
