// SPDX-License-Identifier: GPL-3.0-or-later
#include "db/exchange/odds_of_orders.h"

#include "core/orders/order_odds.h"
#include "core/press/step_key.h"
#include "db/actions/rows.h"
#include "db/sqlite/changeset_form.h"
#include "db/sqlite/connection.h"
#include "db/tables/codes.h"
#include "db/tables/facts.h"

#include <algorithm>
#include <set>

namespace holdfast::db {

namespace {

constexpr int kOwnerColumn = 1; // of a garment and of money the order, of a step at the press the garment

bool isAboutOrders(std::string_view table) {
    return table == "shop_order" || table == "garment" || table == "bill_line" || table == "money_move" ||
           table == "press_step";
}

// Of a row that is changed, the changeset need not say to which it belongs.
std::int64_t ownerOf(Connection& connection, const RowChange& change, const std::string& column) {
    if (const auto owner =
            change.after(kOwnerColumn) ? change.after(kOwnerColumn) : change.before(kOwnerColumn))
        return std::stoll(*owner);
    return connection.number("SELECT " + column + " FROM \"" + std::string{change.table} + "\" WHERE id = ?1",
                             std::stoll(change.key));
}

std::int64_t orderOf(Connection& connection, const RowChange& change) {
    if (change.table == "shop_order")
        return std::stoll(change.key);
    if (change.table == "press_step")
        return connection.number("SELECT order_id FROM garment WHERE id = ?1",
                                 ownerOf(connection, change, "garment_id"));
    return ownerOf(connection, change, "order_id");
}

std::set<std::int64_t> ordersIn(Connection& connection, ChangesetView changeset) {
    std::set<std::int64_t> orders;
    const auto tables = tablesOf(changeset);
    if (std::ranges::none_of(tables, [](const TableChanges& each) { return isAboutOrders(each.table); }))
        return orders;
    forEachChange(changeset, [&](const RowChange& change) {
        if (isAboutOrders(change.table))
            orders.insert(orderOf(connection, change));
        return true;
    });
    return orders;
}

std::vector<SharedPress> sharedPressesOf(Connection& connection, std::int64_t order) {
    std::vector<SharedPress> shared;
    Query rows = connection.query(
        "SELECT own.id, other.id, press.name, mine.step_key, theirs.step_key FROM garment AS own "
        "JOIN press_step AS mine ON mine.garment_id = own.id AND mine.attempt = own.attempt "
        "JOIN press_step AS theirs ON theirs.press_id = mine.press_id AND theirs.finished_at IS NULL "
        "JOIN garment AS other ON other.id = theirs.garment_id AND theirs.attempt = other.attempt "
        "JOIN press ON press.id = mine.press_id "
        "WHERE own.order_id = ?1 AND mine.finished_at IS NULL AND other.id <> own.id "
        "AND own.cancelled_at IS NULL AND other.cancelled_at IS NULL ORDER BY 1, 2",
        order);
    while (rows.step()) {
        if (!isHeatKey(rows.view(3)) || !isHeatKey(rows.view(4)))
            continue;
        const auto own = garmentRow(connection, rows.id<GarmentId>(0));
        const auto other = garmentRow(connection, rows.id<GarmentId>(1));
        if (own && other)
            shared.push_back({own->label(), other->label(), rows.text(2)});
    }
    return shared;
}

std::vector<Sentence> oddsOf(Connection& connection, std::int64_t id) {
    Query row =
        connection.query("SELECT number, state, (SELECT total_minor FROM order_card WHERE id = ?1), "
                         "(SELECT paid_minor FROM order_card WHERE id = ?1), "
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
    const auto shared = sharedPressesOf(connection, id);
    if (orderOdds(order, handedOver, {}, shared).empty())
        return {};
    return orderOdds(order, handedOver, loadSettings(connection).currency, shared);
}

} // namespace

OddsOfOrders::OddsOfOrders(Connection& connection, ChangesetView changeset)
    : m_connection(connection) {
    for (const std::int64_t order : ordersIn(connection, changeset))
        m_before.emplace(order, oddsOf(connection, order));
}

std::vector<Sentence> OddsOfOrders::brought() {
    std::vector<Sentence> brought;
    for (const auto& [order, before] : m_before)
        for (Sentence& sentence : oddsOf(m_connection, order))
            if (before.empty())
                brought.push_back(std::move(sentence));
    return brought;
}

} // namespace holdfast::db
