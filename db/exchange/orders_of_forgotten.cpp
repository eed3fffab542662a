// SPDX-License-Identifier: GPL-3.0-or-later
#include "db/exchange/orders_of_forgotten.h"

#include "core/trade/unit_words.h"
#include "db/exchange/laptops.h"
#include "db/forgetting/personal_columns.h"
#include "db/journal/carried_entry.h"
#include "db/journal/line.h"
#include "db/journal/recorded_tables.h"
#include "db/sqlite/session.h"

#include <algorithm>
#include <vector>

namespace holdfast::db {

namespace {

std::vector<OrderId> openOrdersOf(Connection& connection, std::int64_t customer) {
    std::vector<OrderId> orders;
    Query rows = connection.query(
        "SELECT id FROM shop_order WHERE customer_id = ?1 AND state IN ('quoted', 'confirmed') ORDER BY id",
        customer);
    while (rows.step())
        orders.push_back(rows.id<OrderId>(0));
    return orders;
}

Sentence titleFor(std::size_t orders) {
    return said("{n} open order of a customer who was forgotten on another laptop kept|"
                "{n} open orders of a customer who was forgotten on another laptop kept",
                {{"n", orders}});
}

} // namespace

OrdersOfForgotten::OrdersOfForgotten(Connection& connection)
    : m_connection(connection) {}

void OrdersOfForgotten::remember(const ForgottenPeople& people) {
    for (const std::int64_t customer : people.customers) {
        Query row = m_connection.query("SELECT name, phone FROM customer WHERE id = ?1 AND name <> ?2",
                                       customer, kForgottenName);
        if (row.step())
            m_people.emplace(customer, Person{row.text(0), row.text(1)});
    }
}

std::optional<EntryId> OrdersOfForgotten::keepOpenOnes(Instant now) {
    if (m_people.empty())
        return std::nullopt;
    CarriedEntry entry;
    std::size_t kept = 0;
    goOnAboveAllIds(m_connection);
    const auto recorded = recordedTables(m_connection);
    Session session{m_connection, recorded};
    for (const auto& [customer, person] : m_people)
        for (const OrderId order : openOrdersOf(m_connection, customer)) {
            const std::int64_t again = newIdHere(m_connection, now);
            m_connection.run("INSERT INTO customer (id, name, phone) VALUES (?1, ?2, ?3)", again, person.name,
                             person.phone);
            m_connection.run("UPDATE shop_order SET customer_id = ?2 WHERE id = ?1", order, again);
            entry.subjects.emplace_back("customer", again);
            entry.subjects.emplace_back("order", order.value);
            ++kept;
        }
    if (kept == 0)
        return std::nullopt;
    std::ranges::sort(entry.subjects);
    entry.id = EntryId{newIdHere(m_connection, now)};
    entry.seat = seatHere(m_connection).number;
    entry.at = now;
    entry.title = KeptWords::of(titleFor(kept));
    entry.changeset = session.changeset();
    entry.salt = randomSalt();
    entry.identity = identityOf(entry);
    writeEntry(m_connection, entry);
    return entry.id;
}

} // namespace holdfast::db
