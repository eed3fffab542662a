#include "db/tables/facts.h"

#include "db/tables/fact_readers.h"

namespace holdfast::db {

namespace {

std::string jsonList(std::span<const OrderId> orders) {
    std::string list = "[";
    for (const OrderId order : orders)
        list += (list.size() > 1 ? "," : "") + std::to_string(order.value);
    return list + "]";
}

std::vector<OrderId> openOrders(Connection& connection) {
    std::vector<OrderId> orders;
    Query rows{connection, "SELECT id FROM shop_order WHERE state IN ('quoted', 'confirmed')"};
    while (rows.step())
        orders.push_back(rows.id<OrderId>(0));
    return orders;
}

} // namespace

ShopFacts loadFactsOf(Connection& connection, std::span<const OrderId> orders) {
    const std::string wanted = jsonList(orders);
    ShopFacts facts;
    facts.settings = loadSettings(connection);

    OrderFacts found = readOrders(connection, wanted);
    facts.customers = Roster{std::move(found.customers)};
    facts.orders = Roster{std::move(found.orders)};
    facts.garments = Roster{std::move(found.garments)};
    facts.steps = std::move(found.steps);
    facts.waivers = std::move(found.waivers);
    facts.spoils = std::move(found.spoils);

    std::vector<BlankLot> lots = readLots(connection, wanted);
    facts.loads = Roster{readLoads(connection, lots)};
    facts.lots = Roster{std::move(lots)};
    facts.styles = Roster{readStyles(connection)};

    facts.films = Roster{readFilms(connection)};
    facts.rolls = Roster{readRolls(connection, wanted)};
    facts.places = Roster{readPlaces(connection)};
    facts.presses = Roster{readPresses(connection)};
    facts.pressChecks = readLastChecks(connection);
    return facts;
}

ShopFacts loadOpenFacts(Connection& connection) {
    return loadFactsOf(connection, openOrders(connection));
}

ClimateHistory loadClimate(Connection& connection) {
    ClimateHistory history;
    std::shared_ptr<ClimateSeries> series;
    PlaceId place;
    Query rows{connection,
               "SELECT place_id, at, celsius, humidity FROM climate_reading ORDER BY place_id, at"};
    while (rows.step()) {
        if (!series || rows.id<PlaceId>(0) != place) {
            place = rows.id<PlaceId>(0);
            series = std::make_shared<ClimateSeries>();
            history[place] = series;
        }
        series->push_back({rows.instant(1), Celsius{rows.real(2)}, Humidity{rows.real(3)}});
    }
    return history;
}

RecentUse loadRecentUse(Connection& connection, Instant now) {
    RecentUse use;
    Query rows =
        connection.query("SELECT film_id, -SUM(mm) FROM roll_move JOIN film_roll ON film_roll.id = roll_id "
                         "WHERE at >= ?1 AND kind = 'cut' GROUP BY film_id",
                         now - Days{90});
    while (rows.step())
        use[rows.id<FilmId>(0)] = Millimetres{std::max<std::int64_t>(0, rows.integer(1))};
    return use;
}

} // namespace holdfast::db
