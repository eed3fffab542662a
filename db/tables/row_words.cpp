// SPDX-License-Identifier: GPL-3.0-or-later
#include "db/tables/row_words.h"

#include "core/trade/paper_numbers.h"
#include "core/trade/unit_words.h"
#include "db/sqlite/connection.h"
#include "db/tables/column_words.h"
#include "db/tables/kept_words.h"
#include "db/tables/settings_rows.h"

#include <algorithm>
#include <array>
#include <string_view>

namespace holdfast::db {

namespace {

constexpr std::string_view kGarment = "garment";
constexpr std::string_view kRoll = "roll";

// What a row is called: a phrase with up to two places, and a query for what stands in them of the row of key
// ?1. Or the number that papers have, made of the query's columns.
struct NamedBy {
    Phrase words;
    std::string_view sql;
    std::string_view first;
    std::string_view second{};
};

struct TableWords {
    std::string_view table;
    Phrase one;      // "an order"
    NamedBy named{}; // "order 426"
};

constexpr std::array kTableWords{
    TableWords{"shop_order",
               phrase("an order"),
               {phrase("order {number}"), "SELECT number FROM shop_order WHERE id = ?1", "number"}},
    TableWords{"customer",
               phrase("a customer"),
               {phrase("the customer {name}"), "SELECT name FROM customer WHERE id = ?1", "name"}},
    TableWords{"garment",
               phrase("a garment"),
               {phrase("garment {garment}"),
                "SELECT number, position FROM garment JOIN shop_order ON shop_order.id = order_id "
                "WHERE garment.id = ?1 AND position > 0",
                kGarment}},
    TableWords{"decal",
               phrase("a decal"),
               {phrase("the decal “{decal}” of order {number}"),
                "SELECT COALESCE(wording, artwork), number FROM decal "
                "JOIN garment ON garment.id = garment_id JOIN shop_order ON shop_order.id = order_id "
                "WHERE decal.id = ?1",
                "decal", "number"}},
    TableWords{"film",
               phrase("a film"),
               {phrase("the film {finish}, {shade}"), "SELECT finish, shade FROM film WHERE id = ?1",
                "finish", "shade"}},
    TableWords{"film_roll",
               phrase("a roll"),
               {phrase("roll {roll}"), "SELECT number FROM film_roll WHERE id = ?1", kRoll}},
    TableWords{"blank_style",
               phrase("a blank style"),
               {phrase("the style {name}"), "SELECT name FROM blank_style WHERE id = ?1", "name"}},
    TableWords{"blank_lot",
               phrase("a lot of blanks"),
               {phrase("a lot of {style}, {size}"),
                "SELECT blank_style.name, size FROM blank_lot "
                "JOIN blank_style ON blank_style.id = style_id WHERE blank_lot.id = ?1",
                "style", "size"}},
    TableWords{"wash_load", phrase("a wash load")},
    TableWords{"press",
               phrase("a press"),
               {phrase("the press {name}"), "SELECT name FROM press WHERE id = ?1", "name"}},
    TableWords{"press_step",
               phrase("a step at the press"),
               {phrase("a step of garment {garment}"),
                "SELECT number, position FROM press_step "
                "JOIN garment ON garment.id = garment_id JOIN shop_order ON shop_order.id = order_id "
                "WHERE press_step.id = ?1 AND position > 0",
                kGarment}},
    TableWords{"storage_place",
               phrase("a storage place"),
               {phrase("the storage place {name}"), "SELECT name FROM storage_place WHERE id = ?1", "name"}},
    TableWords{"climate_reading", phrase("a reading")},
    TableWords{"money_move", phrase("money")},
    TableWords{"lot_move", phrase("a move of blanks")},
    TableWords{"roll_move", phrase("a move of film")},
    TableWords{"style_size", phrase("a size")},
    TableWords{"style_colour",
               phrase("a colour"),
               {phrase("the colour {name}"), "SELECT name FROM style_colour WHERE id = ?1", "name"}},
    TableWords{"style_fibre", phrase("the fibres of a style")},
    TableWords{"style_obstacle", phrase("a way round an obstacle")},
    TableWords{"setting", phrase("a setting")},
    TableWords{"bill_line", phrase("a line of a bill")},
    TableWords{"invoice",
               phrase("an invoice"),
               {phrase("the invoice {number}"), "SELECT series || '-' || number FROM invoice WHERE id = ?1",
                "number"}},
    TableWords{"invoice_row", phrase("a row of an invoice")},
    TableWords{"style_price", phrase("the price of a style")},
    TableWords{"decal_price", phrase("the price of a decal")},
    TableWords{"order_file", phrase("the file of a web shop")},
    TableWords{"order_file_column", phrase("a column of a web shop’s file")},
    TableWords{"order_file_item", phrase("an item of a web shop")},
    TableWords{"order_reference", phrase("the reference of an order")},
    TableWords{"till_count", phrase("a count of the till")},
    TableWords{"closed_day", phrase("a closed day")},
    TableWords{"other_hours", phrase("the hours of a day")},
    TableWords{
        "fair", phrase("a fair"), {phrase("the fair {name}"), "SELECT name FROM fair WHERE id = ?1", "name"}},
    TableWords{"claim", phrase("what came back")},
};

const TableWords* tableWordsOf(std::string_view table) {
    const auto found = std::ranges::find(kTableWords, table, &TableWords::table);
    return found == kTableWords.end() ? nullptr : &*found;
}

std::vector<NamedValue> valuesOf(const NamedBy& named, const Query& row) {
    if (named.first == kGarment)
        return {{"garment", garmentLabel(row.integer(0), row.integer(1))}};
    if (named.first == kRoll)
        return {{"roll", rollLabel(row.integer(0))}};
    std::vector<NamedValue> values{{std::string{named.first}, row.text(0)}};
    if (!named.second.empty())
        values.push_back({std::string{named.second}, row.text(1)});
    return values;
}

std::string spaced(std::string name) {
    std::ranges::replace(name, '_', ' ');
    return name;
}

Sentence wordsOf(const std::vector<std::string>& columns) {
    std::vector<Sentence> words;
    for (const std::string& column : columns)
        if (Sentence each = columnNamed(column); std::ranges::find(words, each) == words.end())
            words.push_back(std::move(each));
    return listed(std::move(words));
}

// Where the columns are in their table.
std::vector<std::size_t> placesOf(Connection& connection, const std::string& table,
                                  const std::vector<std::string>& columns) {
    std::vector<std::size_t> places;
    Query rows = connection.query("SELECT name, cid FROM pragma_table_info(?1)", table);
    while (rows.step())
        if (std::ranges::find(columns, rows.text(0)) != columns.end())
            places.push_back(static_cast<std::size_t>(rows.integer(1)));
    return places;
}

} // namespace

Sentence rowWords(Connection& connection, const std::string& table, const std::string& key) {
    const TableWords* words = tableWordsOf(table);
    if (words == nullptr)
        return said("a row of {table}", {{"table", spaced(table)}});
    if (table == "setting")
        return said("the setting “{setting}”", {{"setting", settingLabel(key)}});
    if (const NamedBy& by = words->named; !by.words.empty())
        if (Query row = connection.query(by.sql, key); row.step() && !row.isNull(0))
            return said(by.words.english, valuesOf(by, row));
    return words->one;
}

std::optional<Sentence> whoseDoing(Connection& connection, const std::string& table, const std::string& key,
                                   std::int64_t seat, const std::vector<std::string>& columns) {
    const auto places = placesOf(connection, table, columns);
    const auto touches = [&](const RowChange& change) {
        return change.table == table && change.key == key &&
               (places.empty() || std::ranges::any_of(places, [&](std::size_t place) {
                    return place < change.isChanged.size() && change.isChanged[place];
                }));
    };
    Query entries = connection.query("SELECT title, seat.name, changeset, said FROM journal_entry "
                                     "JOIN seat ON seat.id = seat_id WHERE seat_id <> ?1 "
                                     "ORDER BY journal_entry.id DESC LIMIT 5000",
                                     seat);
    while (entries.step()) {
        bool found = false;
        forEachChange(entries.bytes(2), [&](const RowChange& change) {
            found = touches(change);
            return !found;
        });
        if (found)
            return said("“{title}” ({laptop})", {{"title", asAlone(keptWords(entries, 0, 3).sentence())},
                                                 {"laptop", entries.text(1)}});
    }
    return std::nullopt;
}

Sentence differenceWords(Connection& connection, const RowDifference& difference, std::int64_t seat) {
    const Sentence row = rowWords(connection, difference.table, difference.key);
    const bool isOfColumns = difference.kind == RowDifference::Kind::ColumnsStand;
    const auto other = whoseDoing(connection, difference.table, difference.key, seat,
                                  isOfColumns ? difference.columns : std::vector<std::string>{});
    switch (difference.kind) {
    case RowDifference::Kind::ColumnsStand:
        return said(
            "{row}: its {columns} stays as {other} left it.|{row}: its {columns} stay as {other} left "
            "them.",
            {{"row", row},
             {"columns", wordsOf(difference.columns)},
             {"other", other.value_or(phrase("somebody else"))},
             {"n", difference.columns.size()}});
    case RowDifference::Kind::RowGone:
        return other
                   ? said("{row}, which it changes, was deleted: {other}.", {{"row", row}, {"other", *other}})
                   : said("{row}, which it changes, was deleted.", {{"row", row}});
    case RowDifference::Kind::RowStands:
        return other ? said("{row} stays: it is still needed, or was changed: {other}.",
                            {{"row", row}, {"other", *other}})
                     : said("{row} stays: it is still needed, or was changed.", {{"row", row}});
    case RowDifference::Kind::RowThere:
        return said("{row} was entered on both laptops: what was there first stays.", {{"row", row}});
    case RowDifference::Kind::Renumbered:
        return said("{row} had the number {number} on the laptop where it was entered, which another has. "
                    "Write the new one on it.",
                    {{"row", row}, {"number", difference.columns.front()}});
    case RowDifference::Kind::Refused:
        break;
    }
    return said("{row} could not be entered as it was: it would break a rule of the shop.", {{"row", row}});
}

} // namespace holdfast::db
