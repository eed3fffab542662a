#include "core/holds/finding.h"
#include "db/tables/codes.h"
#include "db/tables/fact_readers.h"

#include <map>

namespace holdfast::db {

namespace {

std::vector<Customer> readCustomers(Connection& connection, const std::string& orders) {
    std::vector<Customer> customers;
    Query rows =
        connection.query("SELECT id, name, phone FROM customer WHERE id IN "
                         "(SELECT customer_id FROM shop_order WHERE id IN (SELECT value FROM json_each(?1)))",
                         orders);
    while (rows.step())
        customers.push_back({rows.id<CustomerId>(0), rows.text(1), rows.text(2)});
    return customers;
}

std::vector<Order> readOrderRows(Connection& connection, const std::string& orders) {
    std::vector<Order> found;
    Query rows = connection.query(
        "SELECT shop_order.id, shop_order.number, customer_id, shop_order.state, taken_at, taken_at_place, "
        "shop_order.promised, handed_over_at, note, total_minor, paid_minor "
        "FROM shop_order JOIN order_card ON order_card.id = shop_order.id "
        "WHERE shop_order.id IN (SELECT value FROM json_each(?1)) ORDER BY shop_order.id",
        orders);
    while (rows.step()) {
        Order order;
        order.id = rows.id<OrderId>(0);
        order.number = rows.integer(1);
        order.customer = rows.id<CustomerId>(2);
        order.state = fromCode<OrderState>(rows.view(3));
        order.takenAt = rows.instant(4);
        order.takenAtPlace = rows.text(5);
        order.promised = rows.localTime(6);
        order.handedOverAt = rows.optionalInstant(7);
        order.note = rows.text(8);
        order.total = Money{rows.integer(9)};
        order.paid = Money{rows.integer(10)};
        found.push_back(std::move(order));
    }
    return found;
}

std::map<GarmentId, std::vector<Decal>> readDecals(Connection& connection, const std::string& orders) {
    std::map<GarmentId, std::vector<Decal>> decals;
    Query rows = connection.query(
        "SELECT decal.id, garment_id, film_id, artwork, wording, face, placement, below_mm, aside_mm, "
        "width_mm, "
        "height_mm, layer, confirmed_by, cut_roll_id, cut_at, COALESCE(outline, '') "
        "FROM decal JOIN garment ON garment.id = decal.garment_id "
        "WHERE garment.order_id IN (SELECT value FROM json_each(?1)) ORDER BY garment_id, layer, decal.id",
        orders);
    while (rows.step()) {
        Decal decal;
        decal.id = rows.id<DecalId>(0);
        decal.garment = rows.id<GarmentId>(1);
        decal.film = rows.id<FilmId>(2);
        if (rows.isNull(4))
            decal.content = Artwork{rows.text(3)};
        else
            decal.content = Wording{rows.text(4), fromCode<Face>(rows.view(5)), rows.text(15)};
        decal.placement = fromCode<Placement>(rows.view(6));
        decal.below = Millimetres{rows.integer(7)};
        decal.aside = Millimetres{rows.integer(8)};
        decal.width = Millimetres{rows.integer(9)};
        decal.height = Millimetres{rows.integer(10)};
        decal.layer = static_cast<int>(rows.integer(11));
        decal.confirmedBy = rows.text(12);
        decal.cutFrom = rows.optionalId<RollId>(13);
        decal.cutAt = rows.optionalInstant(14);
        decals[decal.garment].push_back(std::move(decal));
    }
    return decals;
}

std::vector<Garment> readGarments(Connection& connection, const std::string& orders) {
    auto decals = readDecals(connection, orders);
    std::vector<Garment> garments;
    Query rows =
        connection.query("SELECT id, order_id, position, style_id, size, colour_id, lot_id, price_minor, "
                         "attempt, handed_over_at "
                         "FROM garment WHERE order_id IN (SELECT value FROM json_each(?1)) ORDER BY id",
                         orders);
    while (rows.step()) {
        Garment garment;
        garment.id = rows.id<GarmentId>(0);
        garment.order = rows.id<OrderId>(1);
        garment.position = static_cast<int>(rows.integer(2));
        garment.style = rows.id<BlankStyleId>(3);
        garment.size = rows.text(4);
        garment.colour = rows.id<ColourId>(5);
        garment.lot = rows.optionalId<BlankLotId>(6);
        garment.price = Money{rows.integer(7)};
        garment.attempt = static_cast<int>(rows.integer(8));
        garment.handedOverAt = rows.optionalInstant(9);
        if (const auto own = decals.find(garment.id); own != decals.end())
            garment.decals = std::move(own->second);
        garments.push_back(std::move(garment));
    }
    return garments;
}

std::vector<StepRecord> readSteps(Connection& connection, const std::string& orders) {
    std::vector<StepRecord> steps;
    Query rows =
        connection.query("SELECT garment_id, press_step.attempt, step_key, press_id, started_at, finished_at "
                         "FROM press_step JOIN garment ON garment.id = press_step.garment_id "
                         "WHERE garment.order_id IN (SELECT value FROM json_each(?1)) "
                         "ORDER BY garment_id, press_step.attempt, press_step.id",
                         orders);
    while (rows.step())
        steps.push_back({rows.id<GarmentId>(0), static_cast<int>(rows.integer(1)), rows.text(2),
                         rows.optionalId<PressId>(3), rows.instant(4), rows.optionalInstant(5)});
    return steps;
}

std::vector<Waiver> readWaivers(Connection& connection, const std::string& orders) {
    std::vector<Waiver> waivers;
    Query rows = connection.query("SELECT garment_id, waiver.attempt, rule, reason, at "
                                  "FROM waiver JOIN garment ON garment.id = waiver.garment_id "
                                  "WHERE garment.order_id IN (SELECT value FROM json_each(?1)) "
                                  "ORDER BY garment_id, waiver.id",
                                  orders);
    while (rows.step()) {
        // A rule this version does not know waives nothing here.
        if (const auto rule = ruleFromCode(rows.view(2)))
            waivers.push_back({rows.id<GarmentId>(0), static_cast<int>(rows.integer(1)), *rule, rows.text(3),
                               rows.instant(4)});
    }
    return waivers;
}

std::vector<Spoil> readSpoils(Connection& connection, const std::string& orders) {
    std::vector<Spoil> spoils;
    Query rows = connection.query("SELECT garment_id, spoil.attempt, at, cause "
                                  "FROM spoil JOIN garment ON garment.id = spoil.garment_id "
                                  "WHERE garment.order_id IN (SELECT value FROM json_each(?1)) "
                                  "ORDER BY garment_id, spoil.id",
                                  orders);
    while (rows.step())
        spoils.push_back(
            {rows.id<GarmentId>(0), static_cast<int>(rows.integer(1)), rows.instant(2), rows.text(3)});
    return spoils;
}

} // namespace

OrderFacts readOrders(Connection& connection, const std::string& orders) {
    return {readCustomers(connection, orders), readOrderRows(connection, orders),
            readGarments(connection, orders),  readSteps(connection, orders),
            readWaivers(connection, orders),   readSpoils(connection, orders)};
}

} // namespace holdfast::db
