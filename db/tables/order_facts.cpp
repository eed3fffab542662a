// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/holds/finding.h"
#include "db/tables/fact_readers.h"
#include "db/tables/fact_row.h"
#include "db/tables/order_rows.h"

#include <algorithm>
#include <map>

namespace holdfast::db {

namespace {

using Orders = std::string; // a JSON list of their ids

std::vector<Customer> readCustomers(Connection& connection, UnreadFacts& unread, const Orders& orders) {
    std::vector<Customer> customers;
    Query rows =
        connection.query("SELECT id, name, phone FROM customer WHERE id IN "
                         "(SELECT customer_id FROM shop_order WHERE id IN (SELECT value FROM json_each(?1)))",
                         orders);
    readFacts(rows, unread, "customer", [&](const FactRow& row) {
        customers.push_back({row.id<CustomerId>(0), row.text(1), row.text(2)});
    });
    return customers;
}

// To orders by id, in the order they were written.
void addBillLines(Connection& connection, UnreadFacts& unread, const Orders& ids,
                  std::vector<Order>& orders) {
    Query rows = connection.query(
        std::string{"SELECT "} + kBillLineColumns +
            "FROM bill_line WHERE order_id IN (SELECT value FROM json_each(?1)) ORDER BY bill_line.id",
        ids);
    const auto read = [&](const FactRow& row) {
        BillLine line = billLineFrom(row);
        const auto order = std::ranges::lower_bound(orders, row.id<OrderId>(1), {}, &Order::id);
        if (order != orders.end() && order->id == row.id<OrderId>(1))
            order->lines.push_back(std::move(line));
    };
    readFacts(rows, unread, "bill_line", read,
              [&](const Query& row) { unread.addOrder(row.id<OrderId>(1)); });
}

std::vector<Order> readOrderRows(Connection& connection, UnreadFacts& unread, const Orders& orders) {
    std::vector<Order> found;
    Query rows = connection.query(
        std::string{"SELECT "} + kOrderColumns +
            "FROM shop_order LEFT JOIN order_card ON order_card.id = shop_order.id "
            "WHERE shop_order.id IN (SELECT value FROM json_each(?1)) ORDER BY shop_order.id",
        orders);
    const auto read = [&](const FactRow& row) { found.push_back(orderFrom(row)); };
    readFacts(rows, unread, "shop_order", read,
              [&](const Query& row) { unread.addOrder(row.id<OrderId>(0)); });
    addBillLines(connection, unread, orders, found);
    return found;
}

// The order of a row that is left out must be left out too: it is in the row's last column.
auto leavesOutOrder(UnreadFacts& unread, int column) {
    return [&unread, column](const Query& row) { unread.addOrder(row.id<OrderId>(column)); };
}

std::map<GarmentId, std::vector<Decal>> readDecals(Connection& connection, UnreadFacts& unread,
                                                   const Orders& orders) {
    std::map<GarmentId, std::vector<Decal>> decals;
    Query rows = connection.query(std::string{"SELECT "} + kDecalColumns + kOutline +
                                      ", order_id FROM decal JOIN garment ON garment.id = decal.garment_id "
                                      "WHERE garment.order_id IN (SELECT value FROM json_each(?1)) "
                                      "AND garment.cancelled_at IS NULL ORDER BY "
                                      "garment_id, layer, decal.id",
                                  orders);
    const auto read = [&](const FactRow& row) {
        Decal decal = decalFrom(row);
        decals[decal.garment].push_back(std::move(decal));
    };
    readFacts(rows, unread, "decal", read, leavesOutOrder(unread, kDecalColumnCount));
    return decals;
}

std::vector<Garment> readGarments(Connection& connection, UnreadFacts& unread, const Orders& orders) {
    auto decals = readDecals(connection, unread, orders);
    std::vector<Garment> garments;
    Query rows = connection.query(
        std::string{"SELECT "} + kGarmentColumns +
            "FROM garment WHERE order_id IN (SELECT value FROM json_each(?1)) AND cancelled_at IS NULL "
            "ORDER BY garment.id",
        orders);
    const auto read = [&](const FactRow& row) {
        Garment garment = garmentFrom(row);
        if (const auto own = decals.find(garment.id); own != decals.end())
            garment.decals = std::move(own->second);
        garments.push_back(std::move(garment));
    };
    readFacts(rows, unread, "garment", read, leavesOutOrder(unread, 1));
    return garments;
}

std::vector<StepRecord> readSteps(Connection& connection, UnreadFacts& unread, const Orders& orders) {
    std::vector<StepRecord> steps;
    Query rows = connection.query(
        "SELECT press_step.id, garment_id, press_step.attempt, step_key, press_id, started_at, finished_at, "
        "order_id FROM press_step JOIN garment ON garment.id = press_step.garment_id "
        "WHERE garment.order_id IN (SELECT value FROM json_each(?1)) "
        "AND garment.cancelled_at IS NULL "
        "ORDER BY garment_id, press_step.attempt, press_step.id",
        orders);
    const auto read = [&](const FactRow& row) {
        steps.push_back({row.id<GarmentId>(1), row.count(2), row.text(3), row.optionalId<PressId>(4),
                         row.instant(5), row.optionalInstant(6)});
    };
    readFacts(rows, unread, "press_step", read, leavesOutOrder(unread, 7));
    return steps;
}

std::vector<Waiver> readWaivers(Connection& connection, UnreadFacts& unread, const Orders& orders) {
    std::vector<Waiver> waivers;
    Query rows = connection.query("SELECT waiver.id, garment_id, waiver.attempt, rule, reason, at, order_id "
                                  "FROM waiver JOIN garment ON garment.id = waiver.garment_id "
                                  "WHERE garment.order_id IN (SELECT value FROM json_each(?1)) "
                                  "AND garment.cancelled_at IS NULL "
                                  "ORDER BY garment_id, waiver.id",
                                  orders);
    const auto read = [&](const FactRow& row) {
        // A rule this version does not know waives nothing here.
        if (const auto rule = ruleFromCode(row.text(3)))
            waivers.push_back({row.id<GarmentId>(1), row.count(2), *rule, row.text(4), row.instant(5)});
    };
    readFacts(rows, unread, "waiver", read, leavesOutOrder(unread, 6));
    return waivers;
}

std::vector<Spoil> readSpoils(Connection& connection, UnreadFacts& unread, const Orders& orders) {
    std::vector<Spoil> spoils;
    Query rows = connection.query("SELECT spoil.id, garment_id, spoil.attempt, at, cause, order_id "
                                  "FROM spoil JOIN garment ON garment.id = spoil.garment_id "
                                  "WHERE garment.order_id IN (SELECT value FROM json_each(?1)) "
                                  "AND garment.cancelled_at IS NULL "
                                  "ORDER BY garment_id, spoil.id",
                                  orders);
    const auto read = [&](const FactRow& row) {
        spoils.push_back({row.id<GarmentId>(1), row.count(2), row.instant(3), row.text(4)});
    };
    readFacts(rows, unread, "spoil", read, leavesOutOrder(unread, 5));
    return spoils;
}

} // namespace

OrderFacts readOrders(Connection& connection, UnreadFacts& unread, const std::string& orders) {
    return {readCustomers(connection, unread, orders), readOrderRows(connection, unread, orders),
            readGarments(connection, unread, orders),  readSteps(connection, unread, orders),
            readWaivers(connection, unread, orders),   readSpoils(connection, unread, orders)};
}

} // namespace holdfast::db
