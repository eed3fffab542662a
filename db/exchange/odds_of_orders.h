// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
// Whether an entry that is taken in brings an order into a state that no form allows
// (core/orders/order_odds).

#include "core/trade/ids.h"
#include "core/trade/sentence.h"
#include "db/sqlite/changeset.h"

#include <map>
#include <vector>

namespace holdfast::db {

class Connection;

class OddsOfOrders {
public:
    // Before the changeset is applied.
    OddsOfOrders(Connection& connection, ChangesetView changeset);

    // After it: what is odd now and was not.
    std::vector<Sentence> brought();

private:
    Connection& m_connection;
    std::map<std::int64_t, std::vector<Sentence>> m_before; // by order
};

} // namespace holdfast::db
