#include "db/tables/figures.h"

#include "core/facts/film_roll.h"
#include "db/tables/claims.h"
#include "db/tables/fact_row.h"
#include "db/tables/facts.h"

#include <algorithm>
#include <map>

namespace holdfast::db {

namespace {

using Garments = std::map<GarmentId, HandedOver>;

Garments readHandedOver(Connection& connection, Instant from, const Now& now) {
    Garments garments;
    Query rows = connection.query(
        "SELECT garment.id, garment.handed_over_at, blank_style.name, "
        "CASE WHEN wash_load.id IS NULL THEN 'not washed' "
        "WHEN wash_load.softener OR wash_load.dryer_sheet THEN 'washed with softener' ELSE 'washed' END "
        "FROM garment JOIN blank_style ON blank_style.id = garment.style_id "
        "LEFT JOIN blank_lot ON blank_lot.id = garment.lot_id "
        "LEFT JOIN wash_load ON wash_load.id = blank_lot.last_load_id "
        "WHERE garment.handed_over_at >= ?1 AND garment.handed_over_at <= ?2",
        from, now.instant);
    while (rows.step()) {
        HandedOver& garment = garments[rows.id<GarmentId>(0)];
        garment.on = dateOf(now.toLocal(rows.instant(1)));
        garment.style = rows.text(2);
        garment.washing = rows.text(3);
    }
    return garments;
}

void addOnce(std::vector<std::string>& names, std::string name) {
    if (std::ranges::find(names, name) == names.end())
        names.push_back(std::move(name));
}

void readFilms(Connection& connection, Instant from, Garments& garments) {
    Query rows = connection.query("SELECT garment_id, film.finish || ', ' || film.shade, film_roll.number "
                                  "FROM decal JOIN garment ON garment.id = garment_id "
                                  "JOIN film ON film.id = decal.film_id "
                                  "LEFT JOIN film_roll ON film_roll.id = cut_roll_id "
                                  "WHERE garment.handed_over_at >= ?1 ORDER BY decal.id",
                                  from);
    while (rows.step()) {
        const auto garment = garments.find(rows.id<GarmentId>(0));
        if (garment == garments.end())
            continue;
        addOnce(garment->second.films, rows.text(1));
        if (rows.isNull(2))
            continue;
        FilmRoll roll;
        roll.number = static_cast<int>(rows.integer(2));
        addOnce(garment->second.rolls, roll.label());
    }
}

void readPresses(Connection& connection, Instant from, Garments& garments) {
    Query rows = connection.query("SELECT DISTINCT garment.id, press.name FROM press_step "
                                  "JOIN garment ON garment.id = garment_id "
                                  "AND garment.attempt = press_step.attempt "
                                  "JOIN press ON press.id = press_id WHERE garment.handed_over_at >= ?1",
                                  from);
    while (rows.step()) {
        if (const auto garment = garments.find(rows.id<GarmentId>(0)); garment != garments.end())
            addOnce(garment->second.presses, rows.text(1));
    }
}

void readFaults(Connection& connection, Instant from, Garments& garments, UnreadFacts& unread) {
    Query rows =
        connection.query("SELECT claim.id, garment_id, told_on, fault FROM claim "
                         "JOIN garment ON garment.id = garment_id WHERE garment.handed_over_at >= ?1 "
                         "ORDER BY told_on DESC",
                         from);
    readFacts(rows, unread, "claim", [&](const FactRow& row) {
        const auto fault = row.choice<Fault>(3);
        const LocalDate toldOn = row.date(2);
        const auto garment = garments.find(row.id<GarmentId>(1));
        if (garment != garments.end() && isOfPressing(fault))
            garment->second.fault = FirstFault{toldOn, fault};
    });
}

std::vector<std::pair<Fault, std::int64_t>> readFaultCounts(Connection& connection, LocalDate from) {
    std::vector<std::pair<Fault, std::int64_t>> counts;
    Query rows = connection.query("SELECT fault, COUNT(*) FROM claim WHERE told_on >= ?1 GROUP BY fault "
                                  "ORDER BY COUNT(*) DESC, fault",
                                  from);
    while (rows.step())
        if (const auto fault = knownCode<Fault>(rows.view(0))) // the others are named by noteUnreadClaims
            counts.emplace_back(*fault, rows.integer(1));
    return counts;
}

// An order is as ready as its last garment.
std::vector<PromiseGiven> readPromises(Connection& connection, LocalDate from, const Now& now,
                                       UnreadFacts& unread) {
    std::vector<PromiseGiven> promises;
    Query rows = connection.query(
        "SELECT order_id, promised, MAX(pressed_at), SUM(pressed_at IS NULL) FROM ("
        "SELECT shop_order.id AS order_id, promised, (SELECT CASE WHEN SUM(finished_at IS NULL) = 0 "
        "THEN MAX(finished_at) END FROM press_step WHERE garment_id = garment.id "
        "AND press_step.attempt = garment.attempt) AS pressed_at "
        "FROM shop_order JOIN garment ON garment.order_id = shop_order.id "
        "WHERE state IN ('confirmed', 'handed-over') AND promised >= ?1 AND promised <= ?2) "
        "GROUP BY order_id ORDER BY promised, order_id",
        LocalTime{from}, now.local());
    readFacts(rows, unread, "shop_order", [&](const FactRow& row) {
        PromiseGiven given{row.localTime(1), std::nullopt};
        if (row.count(3) == 0)
            given.pressedAt = now.toLocal(row.instant(2));
        promises.push_back(given);
    });
    return promises;
}

// An offcut that is kept is a correction on either roll, and nothing in sum.
std::vector<FilmUse> readFilmUse(Connection& connection, Instant from) {
    std::vector<FilmUse> films;
    Query rows = connection.query(
        "SELECT film.finish || ', ' || film.shade, "
        "SUM(CASE WHEN kind = 'received' THEN mm ELSE 0 END), "
        "-SUM(CASE WHEN kind = 'cut' THEN mm ELSE 0 END) AS cut, "
        "-SUM(CASE WHEN kind = 'test-strip' THEN mm ELSE 0 END), "
        "MAX(0, -SUM(CASE WHEN kind IN ('used-up', 'correction') THEN mm ELSE 0 END)) "
        "FROM roll_move JOIN film_roll ON film_roll.id = roll_id JOIN film ON film.id = film_id "
        "WHERE at >= ?1 AND mm BETWEEN -?2 AND ?2 GROUP BY film.id ORDER BY cut DESC, film.id",
        from, kMostMillimetres);
    while (rows.step())
        films.push_back({rows.text(0), Millimetres{rows.integer(1)}, Millimetres{rows.integer(2)},
                         Millimetres{rows.integer(3)}, Millimetres{rows.integer(4)}});
    return films;
}

// Orders taken at fairs, and with them the open ones, whose garments keep blanks of the rail.
std::vector<OrderId> ordersForFairs(Connection& connection, Instant from) {
    std::vector<OrderId> orders;
    Query rows =
        connection.query("SELECT id FROM shop_order WHERE state IN ('quoted', 'confirmed') UNION "
                         "SELECT id FROM shop_order WHERE taken_at >= ?1 AND taken_at_place <> 'workshop' "
                         "AND state = 'handed-over'",
                         from);
    while (rows.step())
        orders.push_back(rows.id<OrderId>(0));
    return orders;
}

void readFairFigures(Connection& connection, ShopFigures& figures, const Now& now) {
    const Instant since = now.toInstant(LocalTime{figures.from});
    const ShopFacts facts = loadFactsOf(connection, ordersForFairs(connection, since));
    const LocalDate today = now.today();
    const std::vector<FairOrder> orders = fairOrders(facts, figures.from, now);
    figures.earned = earnedAtFairs(orders, facts.fairs, figures.from, today);
    std::int64_t days = 1;
    if (const Fair* next = nextFair(facts.fairs, today)) {
        figures.nextFair = *next;
        days = (next->lastDay - std::max(next->firstDay, today)).count() + 1;
    }
    figures.unread = facts.unread;
    figures.bring = whatToBring(fairDemand(orders, facts.fairs, figures.from, today), facts, days);
}

std::vector<PlaceTakings> readTakings(Connection& connection, Instant from, const Now& now) {
    std::vector<PlaceTakings> places;
    Query rows = connection.query(
        "SELECT taken_at_place, COUNT(DISTINCT (taken_at + ?2) / 86400), COUNT(*), SUM(garments), "
        "SUM(total_minor) AS ordered, SUM(paid_minor) "
        "FROM shop_order JOIN order_card ON order_card.id = shop_order.id "
        "WHERE taken_at >= ?1 AND shop_order.state IN ('confirmed', 'handed-over') "
        "AND total_minor BETWEEN -?3 AND ?3 AND paid_minor BETWEEN -?3 AND ?3 "
        "GROUP BY taken_at_place ORDER BY ordered DESC, taken_at_place",
        from, now.offset, kMostMinor);
    while (rows.step())
        places.push_back({rows.text(0), rows.integer(1), rows.integer(2), rows.integer(3),
                          Money{rows.integer(4)}, Money{rows.integer(5)}});
    return places;
}

} // namespace

ShopFigures loadFigures(Connection& connection, LocalDate from, const Now& now) {
    const Instant since = now.toInstant(LocalTime{from});
    Garments garments = readHandedOver(connection, since, now);
    readFilms(connection, since, garments);
    readPresses(connection, since, garments);
    UnreadFacts unread;
    readFaults(connection, since, garments, unread);
    ShopFigures figures;
    figures.from = from;
    figures.handedOver.reserve(garments.size());
    for (auto& [id, garment] : garments)
        figures.handedOver.push_back(std::move(garment));
    figures.compared = faultTables(figures.handedOver);
    figures.promises = readPromises(connection, from, now, unread);
    figures.films = readFilmUse(connection, since);
    figures.places = readTakings(connection, since, now);
    readFairFigures(connection, figures, now);
    figures.faults = readFaultCounts(connection, from);
    for (UnreadRow& row : unread.named(connection))
        if (std::ranges::find(figures.unread, row) == figures.unread.end())
            figures.unread.push_back(std::move(row));
    figures.unanswered = std::ssize(openClaims(connection));
    return figures;
}

LocalDate firstDay(Connection& connection, const Now& now) {
    Query rows{connection, "SELECT MIN(at) FROM (SELECT MIN(taken_at) AS at FROM shop_order UNION ALL SELECT "
                           "MIN(at) FROM roll_move)"};
    return rows.step() && !rows.isNull(0) ? dateOf(now.toLocal(rows.instant(0))) : now.today();
}

} // namespace holdfast::db
