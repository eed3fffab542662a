#include "db/exchange/odds_of_orders.h"

#include "core/orders/order_odds.h"
#include "db/sqlite/changeset_form.h"
#include "db/sqlite/connection.h"
#include "db/tables/codes.h"
#include "db/tables/facts.h"

#include <algorithm>
#include <set>

namespace holdfast::db {

namespace {

constexpr int kOrderColumn = 1; // of a garment and of money

bool isAboutOrders(ChangesetView changeset) {
    return std::ranges::any_of(tablesOf(changeset), [](const TableChanges& changes) {
        return changes.table == "shop_order" || changes.table == "garment" || changes.table == "money_move";
    });
}

// Of a row that is changed, the changeset need not say to which order it belongs.
std::int64_t orderOf(Connection& connection, const RowChange& change) {
    if (change.table == "shop_order")
        return std::stoll(change.key);
    if (const auto order =
            change.after(kOrderColumn) ? change.after(kOrderColumn) : change.before(kOrderColumn))
        return std::stoll(*order);
    return connection.number("SELECT order_id FROM \"" + std::string{change.table} + "\" WHERE id = ?1",
                             std::stoll(change.key));
}

std::set<std::int64_t> ordersIn(Connection& connection, ChangesetView changeset) {
    std::set<std::int64_t> orders;
    if (!isAboutOrders(changeset))
        return orders;
    forEachChange(changeset, [&](const RowChange& change) {
        if (change.table == "shop_order" || change.table == "garment" || change.table == "money_move")
            orders.insert(orderOf(connection, change));
        return true;
    });
    return orders;
}

std::vector<std::string> oddsOf(Connection& connection, std::int64_t id) {
    Query row = connection.query(
        "SELECT number, state, (SELECT COALESCE(SUM(price_minor), 0) FROM garment WHERE order_id = ?1), "
        "(SELECT COALESCE(SUM(minor), 0) FROM money_move WHERE order_id = ?1), "
        "(SELECT COUNT(*) FROM garment WHERE order_id = ?1 AND handed_over_at IS NOT NULL) "
        "FROM shop_order WHERE id = ?1",
        id);
    if (!row.step())
        return {};
    Order order;
    order.number = row.integer(0);
    const auto state = knownCode<OrderState>(row.view(1));
    if (!state)
        return {};
    order.state = *state;
    order.total = {row.integer(2)};
    order.paid = {row.integer(3)};
    const auto handedOver = static_cast<std::size_t>(row.integer(4));
    if (orderOdds(order, handedOver, {}).empty())
        return {};
    return orderOdds(order, handedOver, loadSettings(connection).currency);
}

} // namespace

OddsOfOrders::OddsOfOrders(Connection& connection, ChangesetView changeset)
    : m_connection(connection) {
    for (const std::int64_t order : ordersIn(connection, changeset))
        m_before.emplace(order, oddsOf(connection, order));
}

std::vector<std::string> OddsOfOrders::brought() {
    std::vector<std::string> brought;
    for (const auto& [order, before] : m_before)
        for (std::string& sentence : oddsOf(m_connection, order))
            if (before.empty())
                brought.push_back(std::move(sentence));
    return brought;
}

} // namespace holdfast::db
