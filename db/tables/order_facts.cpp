#include "core/holds/finding.h"
#include "db/tables/fact_readers.h"
#include "db/tables/fact_row.h"

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

std::vector<Order> readOrderRows(Connection& connection, UnreadFacts& unread, const Orders& orders) {
    std::vector<Order> found;
    Query rows = connection.query(
        "SELECT shop_order.id, shop_order.number, customer_id, shop_order.state, taken_at, taken_at_place, "
        "shop_order.promised, handed_over_at, note, total_minor, paid_minor "
        "FROM shop_order LEFT JOIN order_card ON order_card.id = shop_order.id "
        "WHERE shop_order.id IN (SELECT value FROM json_each(?1)) ORDER BY shop_order.id",
        orders);
    const auto read = [&](const FactRow& row) {
        Order order;
        order.id = row.id<OrderId>(0);
        order.number = row.number(1, 1, kMostCount);
        order.customer = row.id<CustomerId>(2);
        order.state = row.choice<OrderState>(3);
        order.takenAt = row.instant(4);
        order.takenAtPlace = row.text(5);
        order.promised = row.localTime(6);
        order.handedOverAt = row.optionalInstant(7);
        order.note = row.text(8);
        order.total = row.money(9);
        order.paid = row.money(10);
        found.push_back(std::move(order));
    };
    readFacts(rows, unread, "shop_order", read,
              [&](const Query& row) { unread.addOrder(row.id<OrderId>(0)); });
    return found;
}

// The order of a row that is left out must be left out too: it stands in the row's last column.
auto leavesOutOrder(UnreadFacts& unread, int column) {
    return [&unread, column](const Query& row) { unread.addOrder(row.id<OrderId>(column)); };
}

Decal decalFrom(const FactRow& row) {
    Decal decal;
    decal.id = row.id<DecalId>(0);
    decal.garment = row.id<GarmentId>(1);
    decal.film = row.id<FilmId>(2);
    if (row.isNull(4))
        decal.content = Artwork{row.text(3)};
    else
        decal.content = Wording{row.text(4), row.choice<Face>(5), row.text(15)};
    decal.placement = row.choice<Placement>(6);
    decal.below = row.length(7);
    decal.aside = row.length(8);
    decal.width = row.extent(9);
    decal.height = row.extent(10);
    decal.layer = row.count(11);
    decal.confirmedBy = row.text(12);
    decal.cutFrom = row.optionalId<RollId>(13);
    decal.cutAt = row.optionalInstant(14);
    return decal;
}

std::map<GarmentId, std::vector<Decal>> readDecals(Connection& connection, UnreadFacts& unread,
                                                   const Orders& orders) {
    std::map<GarmentId, std::vector<Decal>> decals;
    Query rows = connection.query(
        "SELECT decal.id, garment_id, film_id, artwork, wording, face, placement, below_mm, aside_mm, "
        "width_mm, height_mm, layer, confirmed_by, cut_roll_id, cut_at, COALESCE(outline, '') AS outline, "
        "order_id FROM decal JOIN garment ON garment.id = decal.garment_id "
        "WHERE garment.order_id IN (SELECT value FROM json_each(?1)) ORDER BY garment_id, layer, decal.id",
        orders);
    const auto read = [&](const FactRow& row) {
        Decal decal = decalFrom(row);
        decals[decal.garment].push_back(std::move(decal));
    };
    readFacts(rows, unread, "decal", read, leavesOutOrder(unread, 16));
    return decals;
}

std::vector<Garment> readGarments(Connection& connection, UnreadFacts& unread, const Orders& orders) {
    auto decals = readDecals(connection, unread, orders);
    std::vector<Garment> garments;
    Query rows =
        connection.query("SELECT id, order_id, position, style_id, size, colour_id, lot_id, price_minor, "
                         "attempt, handed_over_at "
                         "FROM garment WHERE order_id IN (SELECT value FROM json_each(?1)) ORDER BY id",
                         orders);
    const auto read = [&](const FactRow& row) {
        Garment garment;
        garment.id = row.id<GarmentId>(0);
        garment.order = row.id<OrderId>(1);
        garment.position = static_cast<int>(row.number(2, 1, kMostCount));
        garment.style = row.id<BlankStyleId>(3);
        garment.size = row.text(4);
        garment.colour = row.id<ColourId>(5);
        garment.lot = row.optionalId<BlankLotId>(6);
        garment.price = row.money(7);
        garment.attempt = row.count(8);
        garment.handedOverAt = row.optionalInstant(9);
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
