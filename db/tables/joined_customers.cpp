// SPDX-License-Identifier: GPL-3.0-or-later
#include "db/tables/joined_customers.h"

#include "db/sqlite/query.h"

namespace holdfast::db {

CustomerId keptCustomer(Connection& connection, CustomerId customer) {
    Query kept = connection.query("SELECT kept_id FROM customer_joined WHERE id = ?1", customer);
    return kept.step() ? kept.id<CustomerId>(0) : customer;
}

std::vector<CustomerId> rowsOfCustomer(Connection& connection, CustomerId customer) {
    std::vector<CustomerId> all{keptCustomer(connection, customer)};
    Query joined =
        connection.query("SELECT id FROM customer_joined WHERE kept_id = ?1 ORDER BY id", all.front());
    while (joined.step())
        all.push_back(joined.id<CustomerId>(0));
    return all;
}

} // namespace holdfast::db
