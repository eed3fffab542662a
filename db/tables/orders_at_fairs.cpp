// SPDX-License-Identifier: GPL-3.0-or-later
#include "db/tables/orders_at_fairs.h"

#include "core/facts/whole_facts.h"
#include "db/tables/facts.h"
#include "db/tables/order_rows.h"

#include <algorithm>
#include <string>

namespace holdfast::db {

OrdersAtFairs::OrdersAtFairs(Connection& connection, const ShopFacts& facts, LocalDate from, const Now& now)
    : m_connection(connection)
    , m_facts(facts)
    , m_costs(facts)
    , m_from(from)
    , m_now(now) {
    readOrders();
    m_last = m_orders.end();
    readBillLines();
}

// Those that are handed over: the open ones are in the facts.
void OrdersAtFairs::readOrders() {
    Query rows = m_connection.query(
        std::string{"SELECT "} + kOrderColumns +
            ", customer.id, customer.name, customer.phone FROM shop_order "
            "LEFT JOIN order_card ON order_card.id = shop_order.id "
            "LEFT JOIN customer ON customer.id = customer_id "
            "WHERE shop_order.state = 'handed-over' AND taken_at >= ?1 AND taken_at_place <> ?2 "
            "ORDER BY shop_order.id",
        m_now.toInstant(LocalTime{m_from}), kAtNoFair);
    UnreadFacts namedBelow;
    const auto read = [&](const FactRow& row) {
        Order order = orderFrom(row);
        (void)row.id<CustomerId>(kOrderColumnCount);
        (void)row.text(kOrderColumnCount + 1);
        (void)row.text(kOrderColumnCount + 2);
        m_orders.emplace_hint(m_orders.end(), order.id,
                              FairOrder{std::move(order.takenAtPlace),
                                        dateOf(m_now.toLocal(order.takenAt)),
                                        order.paid,
                                        {},
                                        {},
                                        order.tax});
    };
    readFacts(rows, namedBelow, "shop_order", read,
              [&](const Query& row) { m_odd.insert(row.id<OrderId>(0)); });
}

void OrdersAtFairs::readBillLines() {
    Query rows = m_connection.query(std::string{"SELECT "} + kBillLineColumns +
                                    "FROM bill_line ORDER BY bill_line.id");
    UnreadFacts namedBelow;
    readFacts(
        rows, namedBelow, "bill_line",
        [&](const FactRow& row) {
            BillLine line = billLineFrom(row);
            if (FairOrder* order = orderOf(row.id<OrderId>(1)))
                order->lines.push_back(std::move(line));
        },
        [&](const Query& row) { m_odd.insert(row.id<OrderId>(1)); });
}

FairOrder* OrdersAtFairs::orderOf(OrderId order) {
    if (m_last == m_orders.end() || m_last->first != order)
        m_last = m_orders.find(order);
    return m_last == m_orders.end() ? nullptr : &m_last->second;
}

void OrdersAtFairs::add(const GarmentsInTurn& garment) {
    const auto id = garment.row().id<OrderId>(1);
    FairOrder* order = orderOf(id);
    if (order == nullptr)
        return;
    if (garment.hasUnreadDecals()) {
        m_odd.insert(id);
        return;
    }
    try {
        addWhole(*order, garment);
    } catch (const UnreadValue&) {
        m_odd.insert(id);
    }
}

void OrdersAtFairs::addWhole(FairOrder& order, const GarmentsInTurn& inTurn) {
    Garment garment = garmentFrom(FactRow{inTurn.row()});
    for (const DecalInTurn& decal : inTurn.decals())
        garment.decals.push_back(decal.asDecal());
    const auto presses = inTurn.card() ? inTurn.card()->pressIds() : std::vector<PressId>{};
    if (!isWhole(garment, presses)) {
        m_odd.insert(garment.order);
        return;
    }
    const auto begunOn = presses.empty() ? std::nullopt : std::optional{presses.back()};
    const Cost cost = m_costs.of(garment, begunOn);
    order.garments.push_back({garment.style, std::move(garment.size), garment.colour, garment.price, cost});
}

bool OrdersAtFairs::isWhole(const Garment& garment, const std::vector<PressId>& presses) const {
    return whatIsMissingOf(m_facts, garment).empty() && std::ranges::all_of(presses, [this](PressId press) {
               return m_facts.presses.find(press) != nullptr;
           });
}

OrdersAtFairs::Found OrdersAtFairs::found() {
    Found found;
    for (const OrderId order : m_odd)
        m_orders.erase(order);
    for (auto& [id, order] : m_orders)
        priceAsEarned(order);
    m_orders.merge(fairOrders(m_facts, m_from, m_now));
    if (!m_odd.empty()) { // what is left of them, and the words for what is not, as everywhere
        ShopFacts odd = loadFactsOf(m_connection, std::vector<OrderId>{m_odd.begin(), m_odd.end()});
        m_orders.merge(fairOrders(odd, m_from, m_now));
        found.unread = std::move(odd.unread);
    }
    found.orders.reserve(m_orders.size());
    for (auto& [id, order] : m_orders)
        found.orders.push_back(std::move(order));
    return found;
}

} // namespace holdfast::db
