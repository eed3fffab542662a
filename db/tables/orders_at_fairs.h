// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
// Orders that were taken at fairs, as figures count them. Throws SqliteFailure.

#include "core/facts/shop_facts.h"
#include "core/fairs/fair_sales.h"
#include "core/shop/garment_cost.h"
#include "db/tables/garments_in_turn.h"
#include "db/tables/unread_facts.h"

#include <map>
#include <set>
#include <vector>

namespace holdfast::db {

// Takes one garment after the other. Those of open orders are in the facts; of the others no more is kept
// than what each is sold for and costs.
class OrdersAtFairs {
public:
    // Taken on `from` or later. REQUIRES: the facts have every lot and roll, and outlive this.
    OrdersAtFairs(Connection& connection, const ShopFacts& facts, LocalDate from, const Now& now);

    void add(const GarmentsInTurn& garment);

    struct Found {
        std::vector<FairOrder> orders; // the earliest id first
        std::vector<UnreadRow> unread; // of orders that are left out for them
    };
    Found found();

private:
    void readOrders();
    void readBillLines();
    FairOrder* orderOf(OrderId order);
    void addWhole(FairOrder& order, const GarmentsInTurn& inTurn);
    bool isWhole(const Garment& garment, const std::vector<PressId>& presses) const;

    Connection& m_connection;
    const ShopFacts& m_facts;
    GarmentCosts m_costs;
    LocalDate m_from;
    Now m_now;
    std::map<OrderId, FairOrder> m_orders;
    std::map<OrderId, FairOrder>::iterator m_last; // garments of an order mostly follow each other
    std::set<OrderId> m_odd;                       // of which anything cannot be read
};

} // namespace holdfast::db
