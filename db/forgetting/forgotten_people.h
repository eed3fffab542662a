// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
// Who is forgotten: customers, with those of their orders that were closed then.

#include "db/sqlite/changeset.h"

#include <cstdint>
#include <set>

namespace holdfast::db {

class Connection;

struct ForgottenPeople {
    std::set<std::int64_t> customers;
    std::set<std::int64_t> orders;

    bool empty() const { return customers.empty() && orders.empty(); }
    void add(const ForgottenPeople& others);
};

// Those that an entry forgets; empty for nearly every entry.
ForgottenPeople peopleForgottenIn(ChangesetView changeset);

// Those that the entries of the line after a place forget: whoever knows the line up to there does not know
// it yet.
ForgottenPeople peopleForgottenBehind(Connection& connection, std::int64_t place);

// All orders of the customer that the rows or the journal know, also one that was undone.
std::set<std::int64_t> ordersEverOf(Connection& connection, std::int64_t customer);

} // namespace holdfast::db
