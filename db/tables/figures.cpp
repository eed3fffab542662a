// SPDX-License-Identifier: GPL-3.0-or-later
#include "db/tables/figures.h"

#include "db/tables/claims.h"
#include "db/tables/fact_row.h"
#include "db/tables/facts.h"
#include "db/tables/handed_over.h"
#include "db/tables/orders_at_fairs.h"
#include "db/tables/promises_given.h"
#include "db/tables/till.h"

#include <algorithm>

namespace holdfast::db {

namespace {

void addOnce(std::vector<UnreadRow>& all, std::vector<UnreadRow> more) {
    for (UnreadRow& row : more)
        if (std::ranges::find(all, row) == all.end())
            all.push_back(std::move(row));
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

// An offcut that is kept is a correction on either roll, and nothing in sum. All moves are read in their
// order: by time each would have to be looked up.
std::vector<FilmUse> readFilmUse(Connection& connection, Instant from) {
    std::vector<FilmUse> films;
    Query rows = connection.query(
        "SELECT film.finish || ', ' || film.shade, SUM(received), SUM(cut) AS cut, SUM(strips), "
        "MAX(0, SUM(wasted)) FROM (SELECT roll_id, "
        "SUM(CASE WHEN kind = 'received' THEN mm ELSE 0 END) AS received, "
        "-SUM(CASE WHEN kind = 'cut' THEN mm ELSE 0 END) AS cut, "
        "-SUM(CASE WHEN kind = 'test-strip' THEN mm ELSE 0 END) AS strips, "
        "-SUM(CASE WHEN kind IN ('used-up', 'correction') THEN mm ELSE 0 END) AS wasted "
        "FROM roll_move WHERE +at >= ?1 AND mm BETWEEN -?2 AND ?2 GROUP BY roll_id) "
        "JOIN film_roll ON film_roll.id = roll_id JOIN film ON film.id = film_id "
        "GROUP BY film.id ORDER BY cut DESC, film.id",
        from, kMostMillimetres);
    while (rows.step())
        films.push_back({rows.text(0), Millimetres{rows.integer(1)}, Millimetres{rows.integer(2)},
                         Millimetres{rows.integer(3)}, Millimetres{rows.integer(4)}});
    return films;
}

void sumUpFairs(const ShopFacts& facts, const std::vector<FairOrder>& orders, ShopFigures& figures,
                LocalDate today) {
    figures.earned = earnedAtFairs(orders, facts.fairs, figures.from, today);
    std::int64_t days = 1;
    if (const Fair* next = nextFair(facts.fairs, today)) {
        figures.nextFair = *next;
        days = (next->lastDay - std::max(next->firstDay, today)).count() + 1;
    }
    figures.bring = whatToBring(fairDemand(orders, facts.fairs, figures.from, today), facts, days);
}

// As many weeks as the shop has taken orders, the present one counted; by the latest seven days first.
BlankUse readBlankUse(Connection& connection, const Now& now) {
    constexpr std::chrono::seconds kWeek{Days{7}};
    BlankUse use;
    const auto first = firstDay(connection, now);
    use.weeks = std::clamp<std::int64_t>((now.today() - first).count() / 7 + 1, 1, kUseWeeks);
    Query rows = connection.query(
        "SELECT style_id, size, colour_id, (?1 - taken_at) / ?2 AS week, SUM(attempt) FROM garment "
        "JOIN shop_order ON shop_order.id = order_id WHERE state IN ('confirmed', 'handed-over') "
        "AND cancelled_at IS NULL AND taken_at > ?3 AND taken_at <= ?1 AND attempt BETWEEN 1 AND ?4 "
        "GROUP BY style_id, size, colour_id, week",
        now.instant, kWeek, now.instant - kWeek * use.weeks, kMostCount);
    while (rows.step()) {
        const auto style = rows.id<BlankStyleId>(0);
        use.sold[{style, rows.text(1), rows.id<ColourId>(2)}] += rows.integer(4);
        auto& aWeek = use.soldAWeek[style];
        aWeek.resize(static_cast<std::size_t>(use.weeks));
        aWeek[static_cast<std::size_t>(rows.integer(3))] += rows.integer(4);
    }
    return use;
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

void sumUpHandedOver(const HandedOverCounts& read, ShopFigures& figures, LocalDate today) {
    figures.handedOver = faultsOfAll(read.garments());
    figures.compared = read.counts().tables(figures.handedOver);
    figures.withoutFault = daysWithoutFault(read.garments(), today);
    figures.watched = daysWatched(read.garments(), today);
    figures.months = faultsByMonth(read.garments());
}

// All that is reckoned from garments, each of which is read once.
void readGarments(Connection& connection, ShopFigures& figures, const Now& now, UnreadFacts& unread) {
    ShopFacts facts = loadOpenFactsWithAllStock(connection);
    HandedOverCounts handedOver{connection, now.toInstant(LocalTime{figures.from}), now, unread};
    PromisesGiven promises{connection, figures.from, now, unread};
    OrdersAtFairs atFairs{connection, facts, figures.from, now};
    for (GarmentsInTurn garment{connection}; garment.next();) {
        handedOver.add(garment);
        promises.add(garment);
        atFairs.add(garment);
    }
    sumUpHandedOver(handedOver, figures, now.today());
    figures.promises = promises.promises();
    OrdersAtFairs::Found sold = atFairs.found();
    sumUpFairs(facts, sold.orders, figures, now.today());
    addOnce(figures.unread, std::move(facts.unread));
    addOnce(figures.unread, std::move(sold.unread));
}

} // namespace

ShopFigures loadFigures(Connection& connection, LocalDate from, const Now& now) {
    const Instant since = now.toInstant(LocalTime{from});
    UnreadFacts unread;
    ShopFigures figures;
    figures.from = from;
    readGarments(connection, figures, now, unread);
    figures.films = readFilmUse(connection, since);
    figures.places = readTakings(connection, since, now);
    figures.blankUse = readBlankUse(connection, now);
    figures.faults = readFaultCounts(connection, from);
    figures.tillCounts = readTillCounts(connection, unread);
    std::erase_if(figures.tillCounts, [&](const TillCount& count) { return count.day < from; });
    addOnce(figures.unread, unread.named(connection));
    figures.unanswered = std::ssize(openClaims(connection));
    return figures;
}

LocalDate firstDay(Connection& connection, const Now& now) {
    Query rows{connection, "SELECT MIN(at) FROM (SELECT MIN(taken_at) AS at FROM shop_order UNION ALL SELECT "
                           "MIN(at) FROM roll_move)"};
    return rows.step() && !rows.isNull(0) ? dateOf(now.toLocal(rows.instant(0))) : now.today();
}

} // namespace holdfast::db
