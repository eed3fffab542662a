// SPDX-License-Identifier: GPL-3.0-or-later
#include "db/tables/customers_called.h"

#include "core/trade/folded.h"
#include "db/tables/joined_customers.h"

#include <algorithm>

namespace holdfast::db {

namespace {

bool isDigit(char each) {
    return each >= '0' && each <= '9';
}

std::string digitsIn(std::string_view text) {
    std::string digits;
    std::ranges::copy_if(text, std::back_inserter(digits), isDigit);
    return digits;
}

// "07700 900421", "(07700) 900-421": nothing but digits and signs.
bool mayBePhoneNumber(std::string_view who) {
    return std::ranges::any_of(who, isDigit) && std::ranges::all_of(who, [](char each) {
               return isDigit(each) || std::string_view{" +-/.()"}.find(each) != std::string_view::npos;
           });
}

std::vector<std::int64_t> ordersOf(Connection& connection, CustomerId customer) {
    std::vector<std::int64_t> orders;
    for (const CustomerId row : rowsOfCustomer(connection, customer)) {
        Query rows = connection.query("SELECT number FROM shop_order WHERE customer_id = ?1", row);
        while (rows.step())
            orders.push_back(rows.integer(0));
    }
    std::ranges::sort(orders);
    return orders;
}

// By the row that is kept, once.
void add(std::vector<CustomerCalled>& called, Connection& connection, const Customer& customer,
         std::vector<std::int64_t> orders) {
    const CustomerId kept = keptCustomer(connection, customer.id);
    if (std::ranges::any_of(called, [&](const CustomerCalled& each) { return each.customer.id == kept; }))
        return;
    Query row = connection.query("SELECT name, phone FROM customer WHERE id = ?1", kept);
    if (row.step())
        called.push_back({{kept, row.text(0), row.text(1)}, std::move(orders)});
}

} // namespace

std::vector<CustomerCalled> customersCalled(Connection& connection, std::string_view who) {
    const std::string name = folded(who);
    const std::string digits = mayBePhoneNumber(who) ? digitsIn(who) : std::string{};
    std::vector<CustomerCalled> called;
    Query rows{connection, "SELECT id, name, phone FROM customer WHERE id NOT IN (SELECT customer_id FROM "
                           "forgotten_customer) ORDER BY id"};
    while (rows.step()) {
        const Customer customer{rows.id<CustomerId>(0), rows.text(1), rows.text(2)};
        std::vector<std::int64_t> orders = ordersOf(connection, customer.id);
        const bool hasOrder =
            std::ranges::any_of(orders, [&](std::int64_t number) { return std::to_string(number) == who; });
        if (hasOrder || folded(customer.name) == name ||
            (!digits.empty() && digitsIn(customer.phone) == digits))
            add(called, connection, customer, std::move(orders));
    }
    return called;
}

} // namespace holdfast::db
