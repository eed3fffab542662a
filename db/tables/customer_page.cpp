// SPDX-License-Identifier: GPL-3.0-or-later
#include "db/tables/customer_page.h"

#include "core/trade/folded.h"
#include "db/tables/claims.h"
#include "db/tables/fact_row.h"
#include "db/tables/joined_customers.h"

#include <algorithm>

namespace holdfast::db {

namespace {

constexpr int kMostOrdersLookedAt = 400; // for whose customers they are

// For json_each.
std::string rowsAsList(const std::vector<CustomerId>& rows) {
    std::string list = "[";
    for (const CustomerId row : rows)
        list += (list.size() > 1 ? "," : "") + std::to_string(row.value);
    return list + "]";
}

constexpr std::string_view kIsTheirs = "customer_id IN (SELECT value FROM json_each(?1))";

std::vector<OrderOfCustomer> ordersOfRows(Connection& connection, const std::string& rows) {
    std::vector<OrderOfCustomer> orders;
    UnreadFacts saidByTheOrder;
    Query found = connection.query(
        "SELECT order_card.id, order_card.number, customer, order_card.state, order_card.promised, garments, "
        "total_minor, paid_minor, taken_at FROM shop_order JOIN order_card ON order_card.id = shop_order.id "
        "WHERE " +
            std::string{kIsTheirs} + " ORDER BY taken_at DESC, shop_order.id DESC",
        rows);
    readFacts(found, saidByTheOrder, "order_card", [&](const FactRow& row) {
        OrderOfCustomer order;
        order.line.id = row.id<OrderId>(0);
        order.line.number = row.number(1, 1, kMostCount);
        order.line.customer = row.text(2);
        order.line.state = row.choice<OrderState>(3);
        order.line.promised = row.localTime(4);
        order.line.garments = row.count(5);
        order.line.total = row.money(6);
        order.line.paid = row.money(7);
        order.takenAt = row.instant(8);
        orders.push_back(std::move(order));
    });
    return orders;
}

std::vector<SizeTaken> sizesOfRows(Connection& connection, const std::string& rows) {
    std::vector<SizeTaken> sizes;
    Query found = connection.query(
        "SELECT blank_style.name, size, COUNT(*) FROM shop_order JOIN garment ON order_id = shop_order.id "
        "JOIN blank_style ON blank_style.id = style_id WHERE " +
            std::string{kIsTheirs} +
            " AND state IN ('confirmed', 'handed-over') AND garment.cancelled_at IS NULL "
            "GROUP BY style_id, size ORDER BY blank_style.name COLLATE NOCASE, style_id, 3 DESC, size",
        rows);
    while (found.step())
        sizes.push_back({found.text(0), found.text(1), found.integer(2)});
    return sizes;
}

std::vector<ClaimOfCustomer> claimsOfRows(Connection& connection, const std::string& rows) {
    std::vector<ClaimOfCustomer> claims;
    Query orders =
        connection.query("SELECT DISTINCT shop_order.id FROM shop_order JOIN garment ON order_id = "
                         "shop_order.id JOIN claim ON garment_id = garment.id WHERE " +
                             std::string{kIsTheirs},
                         rows);
    while (orders.step())
        for (Claim& claim : claimsOf(connection, orders.id<OrderId>(0))) {
            Query garment = connection.query("SELECT number, position FROM garment JOIN shop_order ON "
                                             "shop_order.id = order_id WHERE garment.id = ?1",
                                             claim.garment);
            if (!garment.step())
                continue;
            Order order;
            order.number = garment.integer(0);
            Garment named;
            named.position = static_cast<int>(garment.integer(1));
            claims.push_back({orders.id<OrderId>(0), garmentLabel(order, named), std::move(claim)});
        }
    std::ranges::stable_sort(claims, std::ranges::greater{},
                             [](const ClaimOfCustomer& each) { return each.claim.toldOn; });
    return claims;
}

Money owedOn(const std::vector<OrderOfCustomer>& orders) {
    Money owed;
    for (const OrderOfCustomer& order : orders)
        owed += std::max(order.line.owed(), Money{});
    return owed;
}

// A name or a number begins so, or is so but for a letter; a word that means something is none of theirs.
std::optional<CustomerFound> foundBy(Connection& connection, CustomerId customer, const OrderQuery& wanted) {
    const auto all = rowsOfCustomer(connection, customer);
    CustomerFound found;
    bool isFound = false;
    for (const CustomerId id : all) {
        Query row = connection.query("SELECT name, phone FROM customer WHERE id = ?1 AND id NOT IN (SELECT "
                                     "customer_id FROM forgotten_customer)",
                                     id);
        if (!row.step())
            return std::nullopt;
        if (id == all.front())
            found.customer = {id, row.text(0), row.text(1)};
        isFound = isFound || wanted.search.matches({{}, row.text(1), row.text(0), {}}, wanted.spelling);
    }
    if (!isFound)
        return std::nullopt;
    const auto orders = ordersOfRows(connection, rowsAsList(all));
    found.orders = std::ssize(orders);
    found.owed = owedOn(orders);
    return found;
}

} // namespace

std::optional<CustomerPage> customerPage(Connection& connection, CustomerId customer) {
    const auto all = rowsOfCustomer(connection, customer);
    Query row =
        connection.query("SELECT name, phone, note, id IN (SELECT customer_id FROM forgotten_customer) "
                         "FROM customer WHERE id = ?1",
                         all.front());
    if (!row.step())
        return std::nullopt;
    CustomerPage page;
    page.customer = {all.front(), row.text(0), row.text(1)};
    page.note = row.text(2);
    page.isForgotten = row.truth(3);
    for (const CustomerId joined : all) {
        Query name = connection.query("SELECT name FROM customer WHERE id = ?1", joined);
        if (name.step() && folded(name.view(0)) != folded(page.customer.name) &&
            std::ranges::find(page.alsoCalled, name.text(0)) == page.alsoCalled.end())
            page.alsoCalled.push_back(name.text(0));
    }
    const std::string rows = rowsAsList(all);
    page.orders = ordersOfRows(connection, rows);
    page.owed = owedOn(page.orders);
    page.claims = claimsOfRows(connection, rows);
    page.sizes = sizesOfRows(connection, rows);
    return page;
}

std::vector<CustomerFound> customersFound(Connection& connection, const OrderQuery& wanted,
                                          std::string_view typed, int most) {
    std::vector<CustomerId> looked;
    std::vector<CustomerFound> found;
    if (wanted.search.isEmpty())
        return found;
    const auto look = [&](CustomerId row) {
        const CustomerId customer = keptCustomer(connection, row);
        if (std::ssize(found) >= most || std::ranges::find(looked, customer) != looked.end())
            return;
        looked.push_back(customer);
        if (auto one = foundBy(connection, customer, wanted))
            found.push_back(std::move(*one));
    };
    for (const OrderLine& line : findOrders(connection, wanted, OrderFilter::All, kMostOrdersLookedAt))
        look(CustomerId{connection.number("SELECT customer_id FROM shop_order WHERE id = ?1", line.id)});
    for (const Customer& customer : findCustomers(connection, typed, most)) // who has no order
        look(customer.id);
    return found;
}

} // namespace holdfast::db
