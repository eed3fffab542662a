// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
// Lists for the order book and the fair table: search as you type, customers, money, where a fair is. All
// functions throw SqliteFailure; Shop::read is their door.

#include "core/facts/order.h"
#include "core/orders/order_draft.h"
#include "db/sqlite/connection.h"
#include "db/tables/order_search.h"
#include "db/tables/unread_facts.h"

#include <optional>
#include <span>
#include <string>
#include <string_view>
#include <vector>

namespace holdfast::db {

// One line of the order book.
struct OrderLine {
    OrderId id;
    std::int64_t number = 0;
    std::string customer;
    OrderState state = OrderState::Confirmed;
    LocalTime promised{};
    std::int64_t garments = 0;
    Money total;
    Money paid;
    bool isAnyHandedOver = false; // of an order that is cancelled: two laptops can bring that about
    bool isUndone = false;        // taken, and then undone: see undone_orders.h
    bool isUnread = false;        // it cannot be read: all but its id, number and customer is nothing

    // Nothing is owed on an order that is cancelled or undone.
    Money owed() const {
        return isUndone || isUnread || state == OrderState::Cancelled ? Money{} : total - paid;
    }
};

enum class OrderFilter { Open, Owing, HandedOver, All };
enum class OrderSort { Newest, Promise };

// What was typed, with the words of the shop that it may mean. Those are read from all of the shop's words:
// for several looks at the same orders make it once. Good until an order changes.
struct OrderQuery {
    OrderQuery(Connection& connection, std::string_view typed)
        : OrderQuery(connection, OrderSearch{typed}) {}
    OrderQuery(Connection& connection, OrderSearch wanted);

    OrderSearch search;
    Spelling spelling = Spelling::Right;        // near where nothing is found else
    std::string match;                          // see OrderSearch::match
    std::optional<std::vector<OrderId>> orders; // see OrderSearch::ordersListed
};

// Newest or earliest promise first, from `offset`, at most `limit`; the order whose number was typed before
// all others that are found newest first. See order_search.h; an empty search finds all.
std::vector<OrderLine> findOrders(Connection& connection, const OrderQuery& wanted, OrderFilter filter,
                                  int limit, int offset = 0, OrderSort sort = OrderSort::Newest);
std::vector<OrderLine> findOrders(Connection& connection, std::string_view search, OrderFilter filter,
                                  int limit, int offset = 0, OrderSort sort = OrderSort::Newest);
std::int64_t countOrders(Connection& connection, const OrderQuery& wanted, OrderFilter filter);
std::int64_t countOrders(Connection& connection, std::string_view search, OrderFilter filter);

// These orders, where they match the search.
std::vector<OrderLine> findAmong(Connection& connection, const OrderQuery& wanted,
                                 std::span<const OrderId> orders, OrderSort sort = OrderSort::Newest);
std::vector<OrderLine> findAmong(Connection& connection, std::string_view search,
                                 std::span<const OrderId> orders, OrderSort sort = OrderSort::Newest);

struct OrderCounts {
    std::int64_t open = 0;
    std::int64_t owing = 0;
    std::int64_t all = 0;
    Money owedOnOpen;
};
// What is owed on the orders in `leftOut`, which cannot be read, is in no sum.
OrderCounts countAll(Connection& connection, std::span<const OrderId> leftOut = {});

// What was taken on one local day: orders and their money moves.
struct Takings {
    std::int64_t orders = 0;
    Money money;
};
Takings takingsBetween(Connection& connection, Instant from, Instant to);

// Customers whose name has a word beginning so, or whose phone number contains it, by name.
std::vector<Customer> findCustomers(Connection& connection, std::string_view search, int limit);

struct MoneyMove {
    Instant at;
    Money amount;
    MoneyKind kind = MoneyKind::Payment;
    PaidHow how = PaidHow::Cash;
};
// Oldest first; what cannot be read is left out.
std::vector<MoneyMove> moneyOf(Connection& connection, OrderId order);
// Notes the moves of all orders that cannot be read.
void noteUnreadMoney(Connection& connection, UnreadFacts& unread);

} // namespace holdfast::db
