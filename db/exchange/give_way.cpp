// SPDX-License-Identifier: GPL-3.0-or-later
#include "db/exchange/give_way.h"

#include "core/trade/paper_numbers.h"
#include "db/actions/kept_blanks.h"
#include "db/actions/rows.h"
#include "db/exchange/laptops.h"
#include "db/sqlite/changeset_form.h"
#include "db/sqlite/connection.h"

#include <algorithm>
#include <cstdint>
#include <set>

namespace holdfast::db {

namespace {

constexpr const char* kMoreUsedThanThere = "more was used on two laptops than there was";

// Keys of the rows that the changeset writes to `table`. Looks into it only where it names the table.
std::vector<std::int64_t> writtenRows(ChangesetView changeset, std::string_view table) {
    std::vector<std::int64_t> rows;
    const auto tables = tablesOf(changeset);
    if (std::ranges::find(tables, table, &TableChanges::table) == tables.end())
        return rows;
    forEachChange(changeset, [&](const RowChange& change) {
        if (change.table == table && change.kind != ChangeKind::Delete)
            rows.push_back(std::stoll(change.key));
        return true;
    });
    return rows;
}

struct Lack {
    std::int64_t id = 0;
    std::int64_t missing = 0;
    std::string label;
};

// Of rows of an id and what is missing; `label` names the row.
template <class Label>
std::vector<Lack> lacks(Query rows, const Label& label) {
    std::vector<Lack> found;
    while (rows.step())
        found.push_back({rows.integer(0), rows.integer(1), label(rows)});
    return found;
}

void mendRolls(Connection& connection, Instant at, std::vector<Sentence>& words) {
    for (const Lack& roll :
         lacks(connection.query("SELECT roll_id, -mm, number FROM roll_length "
                                "JOIN film_roll ON film_roll.id = roll_id WHERE mm < 0 ORDER BY roll_id"),
               [](const Query& row) { return rollLabel(row.integer(2)); })) {
        connection.run("INSERT INTO roll_move (id, roll_id, at, mm, reason, kind) "
                       "VALUES (?1, ?2, ?3, ?4, ?5, 'correction')",
                       newIdHere(connection, at), roll.id, at, roll.missing, kMoreUsedThanThere);
        words.push_back(said("From roll {roll}, {length} more were used than there were: it is now at "
                             "0 mm. Measure it.",
                             {{"roll", roll.label}, {"length", Millimetres{roll.missing}}}));
    }
}

void mendLots(Connection& connection, Instant at, std::vector<Sentence>& words) {
    for (const Lack& lot :
         lacks(connection.query(
                   "SELECT lot_id, -units, blank_style.name || ', ' || size FROM lot_units "
                   "JOIN blank_lot ON blank_lot.id = lot_id JOIN blank_style ON blank_style.id = style_id "
                   "WHERE units < 0 ORDER BY lot_id"),
               [](const Query& row) { return row.text(2); })) {
        connection.run("INSERT INTO lot_move (id, lot_id, at, units, reason) VALUES (?1, ?2, ?3, ?4, ?5)",
                       newIdHere(connection, at), lot.id, at, lot.missing, kMoreUsedThanThere);
        words.push_back(said("Of a lot of {lot}, {n} more was used than there were: it is now at 0. "
                             "Count it.|Of a lot of {lot}, {n} more were used than there were: it is now at "
                             "0. Count it.",
                             {{"lot", lot.label}, {"n", lot.missing}}));
    }
}

std::vector<BlankLotId> keptBeyondStock(Connection& connection) {
    std::vector<BlankLotId> lots;
    Query rows = connection.query("SELECT DISTINCT lot_id FROM garment WHERE lot_id IS NOT NULL "
                                  "AND handed_over_at IS NULL AND cancelled_at IS NULL ORDER BY lot_id");
    while (rows.step())
        lots.push_back(rows.id<BlankLotId>(0));
    std::erase_if(lots, [&](BlankLotId lot) { return freeUnits(connection, lot) >= 0; });
    return lots;
}

void releaseBlank(Connection& connection, GarmentId garment, std::vector<Sentence>& words) {
    connection.run("UPDATE garment SET lot_id = NULL WHERE id = ?1", garment);
    const auto row = garmentRow(connection, garment);
    if (!row)
        return;
    const auto other = freeLotFor(connection, {row->style, row->size, row->colour});
    if (other)
        connection.run("UPDATE garment SET lot_id = ?2 WHERE id = ?1", garment, *other);
    words.push_back(
        other
            ? said("The blank of garment {garment} was reserved twice: it now has one from another lot.",
                   {{"garment", row->label()}})
            : said("The blank of garment {garment} was reserved twice: it now waits for one to be received.",
                   {{"garment", row->label()}}));
}

void mendKeeping(Connection& connection, ChangesetView changeset, std::vector<Sentence>& words) {
    const auto ofEntry = writtenRows(changeset, "garment");
    const auto isOfEntry = [&](GarmentId garment) {
        return std::ranges::find(ofEntry, garment.value) != ofEntry.end();
    };
    for (const BlankLotId lot : keptBeyondStock(connection)) {
        auto keepers = keepersOf(connection, lot); // earliest promise first
        std::ranges::stable_partition(keepers, [&](GarmentId garment) { return !isOfEntry(garment); });
        for (; freeUnits(connection, lot) < 0 && !keepers.empty(); keepers.pop_back())
            releaseBlank(connection, keepers.back(), words);
    }
}

// Of orders that the changeset cancels, and garments that it cancels or gives a blank.
std::set<GarmentId> keptByCancelled(Connection& connection, ChangesetView changeset) {
    constexpr const char* kKept =
        "SELECT garment.id FROM garment JOIN shop_order ON shop_order.id = order_id "
        "WHERE (state = 'cancelled' OR garment.cancelled_at IS NOT NULL) "
        "AND lot_id IS NOT NULL AND garment.handed_over_at IS NULL AND NOT EXISTS (SELECT 1 FROM press_step "
        "WHERE garment_id = garment.id AND press_step.attempt = garment.attempt) AND ";
    std::set<GarmentId> kept;
    const auto add = [&](const char* whose, std::int64_t id) {
        Query rows = connection.query(std::string{kKept} + whose + " = ?1", id);
        while (rows.step())
            kept.insert(rows.id<GarmentId>(0));
    };
    for (const std::int64_t order : writtenRows(changeset, "shop_order"))
        add("order_id", order);
    for (const std::int64_t garment : writtenRows(changeset, "garment"))
        add("garment.id", garment);
    return kept;
}

} // namespace

std::optional<Sentence> pressClash(Connection& connection, ChangesetView changeset) {
    const auto clashOf = [&](std::int64_t row, std::string_view sql) -> std::optional<Sentence> {
        Query clash = connection.query(sql, row);
        if (!clash.step())
            return std::nullopt;
        const auto garment = garmentRow(connection, clash.id<GarmentId>(0));
        return garment ? said("Garment {garment}", {{"garment", garment->label()}})
                       : said("A garment that is gone");
    };
    for (const std::int64_t step : writtenRows(changeset, "press_step"))
        if (const auto garment = clashOf(
                step,
                "SELECT garment.id FROM press_step AS one JOIN garment ON garment.id = one.garment_id "
                "WHERE one.id = ?1 AND (one.attempt > garment.attempt "
                "OR (one.finished_at IS NULL AND one.attempt < garment.attempt) "
                "OR EXISTS (SELECT 1 FROM press_step AS other WHERE other.garment_id = one.garment_id "
                "AND other.id <> one.id AND ((other.attempt = one.attempt AND other.step_key = one.step_key) "
                "OR (one.finished_at IS NULL AND other.finished_at IS NULL))))"))
            return said("{garment} was at the press on another laptop meanwhile.", {{"garment", *garment}});
    for (const std::int64_t spoil : writtenRows(changeset, "spoil"))
        if (const auto garment =
                clashOf(spoil, "SELECT one.garment_id FROM spoil AS one JOIN spoil AS other "
                               "ON other.garment_id = one.garment_id AND other.attempt = one.attempt "
                               "AND other.id <> one.id WHERE one.id = ?1"))
            return said("{garment} was marked spoiled on another laptop already.", {{"garment", *garment}});
    return std::nullopt;
}

bool isKeptByCancelled(Connection& connection, ChangesetView changeset) {
    return !keptByCancelled(connection, changeset).empty();
}

std::vector<Sentence> giveBackOfCancelled(Connection& connection, ChangesetView changeset) {
    std::vector<Sentence> words;
    for (const GarmentId garment : keptByCancelled(connection, changeset)) {
        connection.run("UPDATE garment SET lot_id = NULL WHERE id = ?1", garment);
        if (const auto row = garmentRow(connection, garment))
            words.push_back(
                row->isCancelled
                    ? said("Garment {garment} is cancelled: its blank goes back to the rail.",
                           {{"garment", row->label()}})
                    : said(
                          "Order {order} is cancelled: the blank of garment {garment} goes back to the rail.",
                          {{"order", row->order.label()}, {"garment", row->label()}}));
    }
    return words;
}

std::vector<Sentence> mendLedgers(Connection& connection, ChangesetView changeset, Instant at) {
    std::vector<Sentence> words;
    mendRolls(connection, at, words);
    mendLots(connection, at, words);
    mendKeeping(connection, changeset, words);
    return words;
}

} // namespace holdfast::db
