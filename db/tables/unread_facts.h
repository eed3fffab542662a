// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
// What could not be read while facts were loaded, noted row by row and then named in the words of the trade.

#include "core/facts/unread_row.h"
#include "db/sqlite/failure.h"

#include <set>
#include <string>
#include <string_view>
#include <vector>

namespace holdfast::db {

class Connection;
class Query;

// One value of a row. Where nobody leaves the row out, an action is refused with these words.
class UnreadValue : public SqliteFailure {
public:
    UnreadValue(std::string column, std::string value);

    const std::string& column() const { return m_column; }
    const std::string& value() const { return m_value; }

private:
    std::string m_column;
    std::string m_value;
};

class UnreadFacts {
public:
    // This many are kept with their words; the rest are counted.
    static constexpr std::size_t kMostNamed = 200;

    // The key is in the first `keyColumns` columns of the row.
    void add(std::string_view table, const Query& row, int keyColumns, const UnreadValue& value);
    void add(std::string_view table, std::string key, const UnreadValue& value);
    void addOrder(OrderId order) { m_orders.insert(order); }

    // Orders of which any row could not be read.
    const std::set<OrderId>& orders() const { return m_orders; }
    bool empty() const { return m_noted.empty(); }

    // Reads what the rows belong to; a few queries for each.
    std::vector<UnreadRow> named(Connection& connection) const;

private:
    struct Noted {
        std::string table;
        std::string key;
        std::string column;
        std::string value;
    };

    std::vector<Noted> m_noted;
    std::size_t m_more = 0;
    std::set<OrderId> m_orders;
};

// "Order 427 of Maren Holt", from whatever of it can be read.
Sentence orderWords(Connection& connection, OrderId order);

} // namespace holdfast::db
