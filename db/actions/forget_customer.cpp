// SPDX-License-Identifier: GPL-3.0-or-later
#include "db/actions/forget_customer.h"

#include "core/trade/unit_words.h"
#include "db/actions/rows.h"
#include "db/forgetting/forgetting.h"
#include "db/forgetting/personal_columns.h"
#include "db/tables/codes.h"
#include "db/tables/invoices.h"
#include "db/tables/joined_customers.h"

#include <algorithm>

namespace holdfast::db {

namespace {

Error stillOpen(const std::vector<std::int64_t>& open) {
    std::vector<Sentence> numbers;
    for (const std::int64_t number : open)
        numbers.push_back(asItIs(std::to_string(number)));
    return plainError(said("Order {orders} is still open. Hand it over or cancel it first.|"
                           "Orders {orders} are still open. Hand them over or cancel them first.",
                           {{"orders", listed(std::move(numbers))}, {"n", open.size()}}));
}

Sentence titleOf(std::size_t orders) {
    return orders == 0
               ? said("Forgot a customer")
               : said("Forgot the customer of {n} order|Forgot the customer of {n} orders", {{"n", orders}});
}

// Rows of their own say who is forgotten: other laptops forget when they take them in.
void writeDown(Writer& writer, const ForgottenPeople& people) {
    Connection& connection = writer.connection();
    for (const std::int64_t customer : people.customers) {
        const auto forgotten = writer.newId<RowId>();
        connection.run("INSERT INTO forgotten_customer (id, customer_id, at) VALUES (?1, ?2, ?3)", forgotten,
                       customer, writer.now());
        writer.concerns(CustomerId{customer});
        if (customer != *people.customers.begin())
            continue; // the orders are written down once
        for (const std::int64_t order : people.orders) {
            connection.run("INSERT INTO forgotten_order (id, order_id, forgotten_id) VALUES (?1, ?2, ?3)",
                           writer.newId<RowId>(), order, forgotten);
            writer.concerns(OrderId{order});
        }
    }
    writer.describe(titleOf(people.orders.size()));
}

void addOrdersOf(Connection& connection, CustomerId customer, ToBeForgotten& found) {
    Query orders = connection.query(
        "SELECT number, state, (SELECT total_minor - paid_minor FROM order_card WHERE order_card.id = "
        "shop_order.id) FROM shop_order WHERE customer_id = ?1 ORDER BY number",
        customer);
    while (orders.step()) {
        found.orders.push_back(orders.integer(0));
        const auto state = knownCode<OrderState>(orders.view(1));
        if (state == OrderState::Quoted || state == OrderState::Confirmed)
            found.open.push_back(orders.integer(0));
        if (state != OrderState::Cancelled && state != OrderState::Quoted)
            found.owed = found.owed + Money{std::max<std::int64_t>(0, orders.integer(2))};
    }
}

} // namespace

Result<ToBeForgotten> toBeForgotten(Connection& connection, CustomerId customer) {
    ToBeForgotten found{keptCustomer(connection, customer),
                        rowsOfCustomer(connection, customer),
                        {},
                        {},
                        {},
                        {},
                        {},
                        {},
                        false};
    Query row = connection.query("SELECT name, phone FROM customer WHERE id = ?1", found.id);
    if (row.step()) {
        found.name = row.text(0);
        found.phone = row.text(1);
    } else if (ordersEverOf(connection, customer.value).empty()) {
        return fieldError("customer", said("The shop has no such customer any more."));
    }
    found.isForgotten =
        connection.number("SELECT COUNT(*) FROM forgotten_customer WHERE customer_id = ?1", found.id) > 0;
    for (const CustomerId each : found.rows) {
        addOrdersOf(connection, each, found);
        for (std::string& invoice : invoicesNaming(connection, each))
            found.invoices.push_back(std::move(invoice));
    }
    std::ranges::sort(found.orders);
    std::ranges::sort(found.open);
    return found;
}

Result<Done> forgetCustomer(Shop& shop, CustomerId customer, const TellProgress& progress) {
    auto done = shop.act([&](Writer& writer) -> Result<Done> {
        const auto found = toBeForgotten(writer.connection(), customer);
        if (!found)
            return found.error();
        if (!found->open.empty())
            return stillOpen(found->open);
        ForgottenPeople people;
        for (const CustomerId each : found->rows)
            people.add({{each.value}, ordersEverOf(writer.connection(), each.value)});
        writer.unrecorded(tablesOfPeople(),
                          [&] { Forgetting{writer.connection(), people}.forgetHere(progress); });
        writeDown(writer, people);
        return Done{};
    });
    if (done)
        shop.emptyLog();
    return done;
}

} // namespace holdfast::db
