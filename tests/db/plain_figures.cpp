// SPDX-License-Identifier: GPL-3.0-or-later
#include "tests/db/plain_figures.h"

#include "core/facts/film_roll.h"
#include "db/tables/fact_row.h"
#include "db/tables/facts.h"
#include "tests/core/made_garments.h"

#include <algorithm>
#include <iomanip>
#include <limits>
#include <map>
#include <set>
#include <sstream>

namespace holdfast::db {

namespace {

using test::MadeGarment;

std::vector<std::string> textsOf(Connection& connection, std::string_view sql, GarmentId garment) {
    std::set<std::string> texts;
    Query rows = connection.query(sql, garment);
    while (rows.step())
        texts.insert(rows.text(0));
    return {texts.begin(), texts.end()};
}

std::vector<std::string> rollsOf(Connection& connection, GarmentId garment) {
    std::vector<std::string> labels;
    for (const std::string& number : textsOf(
             connection,
             "SELECT number FROM decal JOIN film_roll ON film_roll.id = cut_roll_id WHERE garment_id = ?1",
             garment)) {
        FilmRoll roll;
        roll.number = std::stoi(number);
        labels.push_back(roll.label());
    }
    return labels;
}

std::optional<FirstFault> firstFaultOf(Connection& connection, GarmentId garment) {
    std::optional<FirstFault> first;
    Query rows = connection.query("SELECT told_on, fault FROM claim WHERE garment_id = ?1", garment);
    while (rows.step()) {
        const FactRow row{rows};
        const FirstFault fault{row.date(0), row.choice<Fault>(1)};
        if (isOfPressing(fault.fault) && (!first || fault.toldOn < first->toldOn))
            first = fault;
    }
    return first;
}

std::vector<MadeGarment> handedOverSince(Connection& connection, Instant from, const Now& now) {
    std::vector<MadeGarment> garments;
    Query rows = connection.query(
        "SELECT garment.id, handed_over_at, blank_style.name, lot_id FROM garment "
        "JOIN blank_style ON blank_style.id = style_id WHERE handed_over_at BETWEEN ?1 AND ?2",
        from, now.instant);
    while (rows.step()) {
        const auto id = rows.id<GarmentId>(0);
        MadeGarment& garment = garments.emplace_back();
        garment.on = dateOf(now.toLocal(rows.instant(1)));
        garment.style = rows.text(2);
        garment.washing = "not washed";
        Query load = connection.query("SELECT softener OR dryer_sheet FROM wash_load WHERE id = "
                                      "(SELECT last_load_id FROM blank_lot WHERE id = ?1)",
                                      rows.integer(3));
        if (load.step())
            garment.washing = load.truth(0) ? "washed with softener" : "washed";
        garment.films = textsOf(connection,
                                "SELECT finish || ', ' || shade FROM decal JOIN film ON film.id = film_id "
                                "WHERE garment_id = ?1",
                                id);
        garment.rolls = rollsOf(connection, id);
        garment.presses = textsOf(connection,
                                  "SELECT press.name FROM press_step JOIN press ON press.id = press_id "
                                  "JOIN garment ON garment.id = garment_id "
                                  "AND garment.attempt = press_step.attempt WHERE garment_id = ?1",
                                  id);
        garment.fault = firstFaultOf(connection, id);
    }
    return garments;
}

std::vector<PromiseGiven> promisesSince(const ShopFacts& facts, LocalDate from, const Now& now) {
    std::vector<std::pair<LocalTime, PromiseGiven>> promises;
    for (const Order& order : facts.orders) {
        const bool counts = order.state == OrderState::Confirmed || order.state == OrderState::HandedOver;
        const auto garments = facts.garmentsOf(order.id);
        if (!counts || order.promised < LocalTime{from} || order.promised > now.local() || garments.empty())
            continue;
        std::optional<Instant> last{Instant{}};
        for (const Garment* garment : garments) {
            const auto steps = facts.stepsOf(*garment);
            if (steps.empty())
                last.reset();
            for (const StepRecord& step : steps)
                last =
                    last && step.finishedAt ? std::optional{std::max(*last, *step.finishedAt)} : std::nullopt;
        }
        promises.push_back({order.promised, {order.promised, std::nullopt}});
        if (last)
            promises.back().second.pressedAt = now.toLocal(*last);
    }
    std::ranges::stable_sort(promises, {}, [](const auto& each) { return each.first; });
    std::vector<PromiseGiven> given;
    for (const auto& [when, promise] : promises)
        given.push_back(promise);
    return given;
}

} // namespace

ShopFigures plainFigures(Connection& connection, LocalDate from, const Now& now) {
    ShopFigures figures;
    figures.from = from;
    const LocalDate today = now.today();
    const auto handedOver = handedOverSince(connection, now.toInstant(LocalTime{from}), now);
    figures.handedOver = test::faultsOfAll(handedOver);
    figures.compared = test::faultTables(handedOver);
    figures.withoutFault = test::daysWithoutFault(handedOver, today);
    for (const MadeGarment& garment : handedOver)
        figures.watched.push_back((garment.fault ? garment.fault->toldOn : today) - garment.on);
    std::ranges::sort(figures.watched);
    figures.months = test::faultsByMonth(handedOver);

    std::vector<OrderId> all;
    Query rows{connection, "SELECT id FROM shop_order"};
    while (rows.step())
        all.push_back(rows.id<OrderId>(0));
    const ShopFacts facts = loadFactsOf(connection, all);
    figures.unread = facts.unread;
    figures.promises = promisesSince(facts, from, now);
    std::vector<FairOrder> orders;
    for (const auto& [id, order] : fairOrders(facts, from, now))
        orders.push_back(order);
    figures.earned = earnedAtFairs(orders, facts.fairs, from, today);
    std::int64_t days = 1;
    if (const Fair* next = nextFair(facts.fairs, today)) {
        figures.nextFair = *next;
        days = (next->lastDay - std::max(next->firstDay, today)).count() + 1;
    }
    figures.bring = whatToBring(fairDemand(orders, facts.fairs, from, today), facts, days);
    return figures;
}

std::string figureWords(const ShopFigures& figures) {
    std::ostringstream words;
    words << std::setprecision(std::numeric_limits<double>::max_digits10);
    const auto share = [&](const FaultShare& each) {
        words << each.name << ' ' << each.garments << ' ' << each.faults << ' ' << each.interval.low << ' '
              << each.interval.high << ' ' << each.chance << each.isJudged << each.isMoreThanChance << '\n';
    };
    share(figures.handedOver);
    for (const auto& [by, shares] : figures.compared)
        for (const FaultShare& each : shares)
            share(each);
    for (const SurvivalStep& step : figures.withoutFault.steps)
        words << step.at << ' ' << step.watched << ' ' << step.faults << ' ' << step.low << ' ' << step.high
              << '\n';
    for (const Days days : figures.watched)
        words << days.count() << ' ';
    for (const CountSample& month : figures.months.samples)
        words << "month " << month.found << " of " << month.of << '\n';
    for (const PromiseGiven& promise : figures.promises)
        words << isoLocalMinute(promise.promised) << ' '
              << (promise.pressedAt ? isoLocalMinute(*promise.pressedAt) : "not yet") << '\n';
    for (const Earned& earned : figures.earned)
        words << earned.place << ' ' << earned.days << ' ' << earned.orders << ' ' << earned.garments << ' '
              << earned.ordered.minor << ' ' << earned.paid.minor << ' ' << earned.cost.blank.minor << ' '
              << earned.cost.film.minor << ' ' << earned.cost.work.minor << ' ' << earned.stall().minor
              << '\n';
    const WhatToBring& bring = figures.bring;
    words << bring.fairs << ' ' << bring.days << ' ' << bring.comingDays << ' ' << bring.asked << ' '
          << bring.shortage << ' ' << bring.leftover << '\n';
    for (const ToBring& kind : bring.kinds)
        words << kind.name << ' ' << kind.asked.mean << ' ' << kind.asked.variance << ' '
              << kind.brought.quantity << ' ' << kind.ready << ' ' << kind.toWash << '\n';
    return words.str();
}

} // namespace holdfast::db
