// SPDX-License-Identifier: GPL-3.0-or-later
#include "db/tables/facts.h"

#include "core/facts/whole_facts.h"
#include "core/film/usual_use.h"
#include "db/sqlite/changeset.h"
#include "db/tables/fact_readers.h"
#include "db/tables/fact_row.h"

#include <algorithm>
#include <string>
#include <utility>

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

// Some milliseconds' worth.
constexpr std::int64_t kReadingsBetween = 10'000;

// More of an entry is not worth looking through.
constexpr std::size_t kFewBytes = 100'000;

struct AddedReading {
    PlaceId place;
    Instant at;
};

// The readings that a changeset adds; none where it does anything else to readings.
std::optional<std::vector<AddedReading>> readingsAdded(ChangesetView changeset) {
    std::optional<std::vector<AddedReading>> added{std::in_place};
    forEachChange(changeset, [&](const RowChange& change) {
        if (change.table != "climate_reading")
            return true;
        if (change.kind != ChangeKind::Insert) {
            added.reset();
            return false;
        }
        // Its key is the place and the moment, as keyText joins them.
        const std::size_t joint = change.key.find('\x1f');
        added->push_back({PlaceId{std::stoll(change.key.substr(0, joint))},
                          Instant{std::chrono::seconds{std::stoll(change.key.substr(joint + 1))}}});
        return true;
    });
    return added;
}

// Its storage place comes first.
ClimateReading readingIn(const FactRow& row) {
    const Instant at = row.instant(1);
    const Celsius temperature = row.temperature(2);
    if (row.isNull(3))
        return readingOf(at, temperature, std::nullopt);
    return {at, temperature, row.humidity(3)};
}

void addReadings(Query& rows, UnreadFacts& unread, ClimateSeries& series) {
    readFacts(
        rows, unread, "climate_reading", [&](const FactRow& row) { series.push_back(readingIn(row)); },
        [](const Query&) {}, 2);
}

} // namespace

namespace {

ShopFacts holdFacts(Connection& connection, UnreadFacts& unread, const std::string& wanted,
                    Stock stock = Stock::Left) {
    ShopFacts facts;
    facts.settings = loadSettings(connection, unread);

    OrderFacts found = readOrders(connection, unread, wanted);
    facts.customers = Roster{std::move(found.customers)};
    facts.orders = Roster{std::move(found.orders)};
    facts.garments = Roster{std::move(found.garments)};
    facts.steps = std::move(found.steps);
    facts.waivers = std::move(found.waivers);
    facts.spoils = std::move(found.spoils);

    std::vector<BlankLot> lots = readLots(connection, unread, wanted, stock);
    facts.loads = Roster{readLoads(connection, unread, lots)};
    facts.lots = Roster{std::move(lots)};
    facts.styles = Roster{readStyles(connection, unread)};

    facts.films = Roster{readFilms(connection, unread)};
    facts.rolls = Roster{readRolls(connection, unread, wanted, stock)};
    facts.places = Roster{readPlaces(connection, unread)};
    facts.presses = Roster{readPresses(connection, unread)};
    facts.pressChecks = readLastChecks(connection, unread);
    return facts;
}

// What was found amiss takes away what needs it.
void leaveOutUnread(Connection& connection, ShopFacts& facts, const UnreadFacts& unread) {
    if (!unread.empty())
        facts.unread = unread.named(connection);
    leaveOutIncomplete(facts, unread.orders());
}

ShopFacts factsOf(Connection& connection, std::span<const OrderId> orders, Stock stock) {
    UnreadFacts unread;
    ShopFacts facts = holdFacts(connection, unread, jsonList(orders), stock);
    facts.fairs = Roster{readFairs(connection, unread)};
    facts.cutting = readCutting(connection);
    leaveOutUnread(connection, facts, unread);
    return facts;
}

} // namespace

ShopFacts loadHoldFacts(Connection& connection, std::span<const OrderId> orders) {
    UnreadFacts unread;
    ShopFacts facts = holdFacts(connection, unread, jsonList(orders));
    leaveOutUnread(connection, facts, unread);
    return facts;
}

ShopFacts loadFactsOf(Connection& connection, std::span<const OrderId> orders) {
    return factsOf(connection, orders, Stock::Left);
}

std::vector<UnreadRow> unreadOf(Connection& connection, OrderId order) {
    UnreadFacts unread;
    const OrderFacts found = readOrders(connection, unread, jsonList(std::span{&order, 1}));
    if (!found.orders.empty() && found.customers.empty())
        unread.add("shop_order", std::to_string(order.value), UnreadValue{"customer_id", ""});
    return unread.empty() ? std::vector<UnreadRow>{} : unread.named(connection);
}

ShopFacts loadOpenFacts(Connection& connection) {
    return loadFactsOf(connection, openOrders(connection));
}

ShopFacts loadOpenFactsWithAllStock(Connection& connection) {
    return factsOf(connection, openOrders(connection), Stock::All);
}

ClimateHistory loadClimate(Connection& connection, const ReadingsGoOn& goesOn, UnreadFacts* unread) {
    UnreadFacts nobodyAsks;
    UnreadFacts& noted = unread != nullptr ? *unread : nobodyAsks;
    ClimateHistory history;
    std::int64_t loaded = 0;
    std::shared_ptr<ClimateSeries> series;
    PlaceId place;
    Query rows{connection,
               "SELECT place_id, at, celsius, humidity FROM climate_reading ORDER BY place_id, at"};
    while (rows.step()) {
        try {
            const FactRow row{rows};
            const ClimateReading reading = readingIn(row);
            if (!series || row.id<PlaceId>(0) != place) {
                place = row.id<PlaceId>(0);
                series = std::make_shared<ClimateSeries>();
                history[place] = series;
            }
            series->push_back(reading);
        } catch (const UnreadValue& value) {
            noted.add("climate_reading", rows, 2, value);
        }
        if (++loaded % kReadingsBetween == 0 && goesOn && !goesOn(loaded))
            break;
    }
    return history;
}

void noteUnreadReadings(Connection& connection, UnreadFacts& unread) {
    Query rows{connection, "SELECT place_id, at, celsius, humidity FROM climate_reading"};
    readFacts(
        rows, unread, "climate_reading", [](const FactRow& row) { (void)readingIn(row); },
        [](const Query&) {}, 2);
}

ClimateHistory loadClimateOf(Connection& connection, std::span<const PlaceId> places) {
    ClimateHistory history;
    UnreadFacts nobodyAsks;
    for (const PlaceId place : places) {
        auto series = std::make_shared<ClimateSeries>();
        Query rows = connection.query("SELECT place_id, at, celsius, humidity FROM climate_reading "
                                      "WHERE place_id = ?1 ORDER BY at",
                                      place);
        addReadings(rows, nobodyAsks, *series);
        if (!series->empty())
            history[place] = std::move(series);
    }
    return history;
}

std::int64_t countReadings(Connection& connection) {
    return connection.number("SELECT COUNT(*) FROM climate_reading");
}

bool hasMoreReadingsThan(Connection& connection, std::int64_t count) {
    return connection.query("SELECT 1 FROM climate_reading LIMIT 1 OFFSET ?1", count).step();
}

std::optional<ClimateHistory> climateGoneOn(Connection& connection, const ClimateHistory& known) {
    Query newest{connection, "SELECT changeset FROM journal_entry ORDER BY id DESC LIMIT 1"};
    if (!newest.step() || newest.bytes(0).size() > kFewBytes)
        return std::nullopt;
    const auto added = readingsAdded(newest.bytes(0));
    if (!added)
        return std::nullopt;
    std::map<PlaceId, std::shared_ptr<ClimateSeries>> longer;
    for (const AddedReading& reading : *added) {
        const auto before = known.find(reading.place);
        const bool isKnown = before != known.end() && !before->second->empty();
        if (isKnown && reading.at <= before->second->back().at)
            return std::nullopt;
        longer[reading.place] = std::make_shared<ClimateSeries>(isKnown ? *before->second : ClimateSeries{});
    }
    ClimateHistory history = known;
    for (const auto& [place, series] : longer) {
        const Instant last = series->empty() ? Instant::min() : series->back().at;
        Query rows = connection.query("SELECT place_id, at, celsius, humidity FROM climate_reading "
                                      "WHERE place_id = ?1 AND at > ?2 ORDER BY at",
                                      place, last);
        UnreadFacts nobodyAsks;
        addReadings(rows, nobodyAsks, *series);
        history[place] = series;
    }
    return history;
}

RecentUse loadRecentUse(Connection& connection, Instant now) {
    constexpr Days kWeek{7};
    RecentUse use;
    UnreadFacts namedWithTheRolls;
    {
        Query films{connection, "SELECT film_id, MIN(received_on) FROM film_roll GROUP BY film_id"};
        readFacts(films, namedWithTheRolls, "film_roll", [&](const FactRow& row) {
            const Instant came{row.date(1).time_since_epoch()};
            const auto weeks = (now - came) / std::chrono::seconds{kWeek} + 1;
            use[row.id<FilmId>(0)].resize(
                static_cast<std::size_t>(std::clamp<std::int64_t>(weeks, 1, kUseWeeks)));
        });
    }
    Query rows = connection.query(
        "SELECT film_id, (?1 - at) / ?2, -SUM(mm) FROM roll_move JOIN film_roll ON film_roll.id = roll_id "
        "WHERE at > ?3 AND at <= ?1 AND kind = 'cut' AND mm BETWEEN -?4 AND ?4 GROUP BY 1, 2",
        now, std::chrono::seconds{kWeek}, now - kWeek * kUseWeeks, kMostMillimetres);
    while (rows.step()) {
        std::vector<Millimetres>& weeks = use[rows.id<FilmId>(0)];
        const auto week = static_cast<std::size_t>(rows.integer(1));
        weeks.resize(std::max(weeks.size(), week + 1));
        weeks[week] = Millimetres{std::max<std::int64_t>(0, rows.integer(2))};
    }
    return use;
}

} // namespace holdfast::db
