// SPDX-License-Identifier: GPL-3.0-or-later
#include "db/forgetting/forgotten_people.h"

#include "db/journal/recorded_tables.h"
#include "db/sqlite/changeset_values.h"
#include "db/sqlite/connection.h"

namespace holdfast::db {

namespace {

constexpr std::size_t kCustomerOfOrder = 2; // the column of shop_order
constexpr std::size_t kForgottenId = 1;     // of forgotten_customer and forgotten_order

} // namespace

void ForgottenPeople::add(const ForgottenPeople& others) {
    customers.insert(others.customers.begin(), others.customers.end());
    orders.insert(others.orders.begin(), others.orders.end());
}

ForgottenPeople peopleForgottenIn(ChangesetView changeset) {
    ForgottenPeople people;
    if (!isForGood(changeset))
        return people;
    forEachValue(changeset, [&](const ValueChange& change) {
        if (change.kind != ChangeKind::Insert || change.after.size() <= kForgottenId)
            return;
        const auto whom = integerIn(change.after[kForgottenId]);
        if (whom && change.table == "forgotten_customer")
            people.customers.insert(*whom);
        if (whom && change.table == "forgotten_order")
            people.orders.insert(*whom);
    });
    return people;
}

ForgottenPeople peopleForgottenBehind(Connection& connection, std::int64_t place) {
    ForgottenPeople people;
    if (connection.number("SELECT COUNT(*) FROM forgotten_customer") == 0)
        return people;
    Query entries = connection.query("SELECT changeset FROM journal_line JOIN journal_entry "
                                     "ON journal_entry.id = entry_id WHERE place > ?1",
                                     place);
    while (entries.step())
        people.add(peopleForgottenIn(entries.bytes(0)));
    return people;
}

std::set<std::int64_t> ordersEverOf(Connection& connection, std::int64_t customer) {
    std::set<std::int64_t> orders;
    Query rows = connection.query("SELECT id FROM shop_order WHERE customer_id = ?1", customer);
    while (rows.step())
        orders.insert(rows.integer(0));
    Query entries =
        connection.query("SELECT changeset FROM journal_entry WHERE id IN "
                         "(SELECT entry_id FROM journal_subject WHERE kind = 'customer' AND subject_id = ?1)",
                         customer);
    while (entries.step())
        forEachValue(entries.bytes(0), [&](const ValueChange& change) {
            if (change.table == "shop_order" && change.kind == ChangeKind::Insert &&
                change.after.size() > kCustomerOfOrder &&
                integerIn(change.after[kCustomerOfOrder]) == customer)
                orders.insert(integerIn(change.after.front()).value_or(0));
        });
    return orders;
}

} // namespace holdfast::db
