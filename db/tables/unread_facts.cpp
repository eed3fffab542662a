// SPDX-License-Identifier: GPL-3.0-or-later
#include "db/tables/unread_facts.h"

#include "core/trade/unit_words.h"
#include "db/sqlite/changeset.h"
#include "db/sqlite/connection.h"
#include "db/tables/column_words.h"
#include "db/tables/row_words.h"

#include <algorithm>
#include <array>
#include <optional>

namespace holdfast::db {

namespace {

constexpr std::size_t kLongestValue = 60;

constexpr std::string_view kOrderLeftOut = "The order is left out.";
constexpr std::string_view kRollLeftOut = "The roll is left out.";
constexpr std::string_view kStyleLeftOut =
    "The style is left out, with its blanks and the orders that need it.";
constexpr std::string_view kNotSummed = "The sums are made without it.";

struct TableOfFacts {
    std::string_view table;
    std::string_view whose; // whose field it is, as a sentence begins
    std::string_view leftOut;
    std::string_view orderOf; // a query for the order that the row of key ?1 belongs to
};

constexpr std::array kTables{
    TableOfFacts{"shop_order", "Its", kOrderLeftOut, "SELECT id FROM shop_order WHERE id = ?1"},
    TableOfFacts{"customer", "Its", "The customer’s orders are left out.", ""},
    TableOfFacts{"garment", "A garment’s", kOrderLeftOut, "SELECT order_id FROM garment WHERE id = ?1"},
    TableOfFacts{"decal", "A decal’s", kOrderLeftOut,
                 "SELECT order_id FROM decal JOIN garment ON garment.id = garment_id WHERE decal.id = ?1"},
    TableOfFacts{"press_step", "A pressing step’s", kOrderLeftOut,
                 "SELECT order_id FROM press_step JOIN garment ON garment.id = garment_id "
                 "WHERE press_step.id = ?1"},
    TableOfFacts{"waiver", "A waiver’s", kOrderLeftOut,
                 "SELECT order_id FROM waiver JOIN garment ON garment.id = garment_id WHERE waiver.id = ?1"},
    TableOfFacts{"spoil", "A spoiled garment’s", kOrderLeftOut,
                 "SELECT order_id FROM spoil JOIN garment ON garment.id = garment_id WHERE spoil.id = ?1"},
    TableOfFacts{"claim", "A claim’s", "The claim is left out.",
                 "SELECT order_id FROM claim JOIN garment ON garment.id = garment_id WHERE claim.id = ?1"},
    TableOfFacts{"money_move", "A payment’s", kNotSummed, "SELECT order_id FROM money_move WHERE id = ?1"},
    TableOfFacts{"film", "Its", "The film is left out, with its rolls and the orders that need it.", ""},
    TableOfFacts{"film_not_for", "Its list of unsuited cloths: the", "The film is left out.", ""},
    TableOfFacts{"film_roll", "Its", kRollLeftOut, ""},
    TableOfFacts{"roll_stay", "A stay of a roll: the", kRollLeftOut, ""},
    TableOfFacts{"test_strip", "A test strip’s", kRollLeftOut, ""},
    TableOfFacts{"roll_move", "A length of film: the", kNotSummed, ""},
    TableOfFacts{"lot_move", "A move of blanks: the", kNotSummed, ""},
    TableOfFacts{"blank_style", "Its", kStyleLeftOut, ""},
    TableOfFacts{"style_size", "A size of it: the", kStyleLeftOut, ""},
    TableOfFacts{"style_colour", "Its", kStyleLeftOut, ""},
    TableOfFacts{"style_fibre", "A fibre of its label: the", kStyleLeftOut, ""},
    TableOfFacts{"style_obstacle", "An obstacle on it: the", kStyleLeftOut, ""},
    TableOfFacts{"blank_lot", "Its",
                 "The lot is left out, with the orders that a blank of it is reserved for.", ""},
    TableOfFacts{"wash_load", "Its", "The load’s blanks are left out, with the orders they are reserved for.",
                 ""},
    TableOfFacts{"storage_place", "Its", "The storage place is left out.", ""},
    TableOfFacts{"climate_reading", "Its", "The reading is left out.", ""},
    TableOfFacts{"press", "Its", "The press is left out, with the orders that were on it.", ""},
    TableOfFacts{"press_check", "A check’s", "The check is left out: the press counts as not checked.", ""},
    TableOfFacts{"fair", "Its", "The fair is left out.", ""},
    TableOfFacts{"setting", "Its", "The usual value is used.", ""},
    TableOfFacts{"closed_day", "Its", "The shop counts as open on it.", ""},
    TableOfFacts{"order_card", "Its line in the order book: the", "It is left out of the order book.",
                 "SELECT ?1"},
};

const TableOfFacts* tableOf(std::string_view table) {
    const auto found = std::ranges::find(kTables, table, &TableOfFacts::table);
    return found == kTables.end() ? nullptr : &*found;
}

std::string inBrief(std::string value) {
    if (value.size() <= kLongestValue)
        return value;
    std::size_t end = kLongestValue;
    while (end > 0 && (static_cast<unsigned char>(value[end]) & 0xC0) == 0x80)
        --end; // inside a letter of several bytes
    return value.substr(0, end) + "…";
}

std::string whyWords(std::string_view whose, const std::string& column, const std::string& value) {
    std::string words{whose};
    words += " " + std::string{columnWords(column).value_or("entry")};
    return words + (value.empty() ? " is missing." : " reads “" + inBrief(value) + "”.");
}

std::optional<OrderId> orderOf(Connection& connection, const TableOfFacts& table, const std::string& key) {
    if (table.orderOf.empty())
        return std::nullopt;
    Query found = connection.query(table.orderOf, key);
    const std::int64_t order = found.step() ? found.integer(0) : 0;
    return order > 0 ? std::optional{OrderId{order}} : std::nullopt;
}

} // namespace

UnreadValue::UnreadValue(std::string column, std::string value)
    : SqliteFailure(inWords(whyWords("A row that this needs cannot be read. Its", column, value) +
                            " Nothing was changed."))
    , m_column(std::move(column))
    , m_value(std::move(value)) {}

void UnreadFacts::add(std::string_view table, const Query& row, int keyColumns, const UnreadValue& value) {
    std::vector<std::string> key;
    for (int column = 0; column < keyColumns; ++column)
        key.push_back(row.text(column));
    add(table, keyText(key), value);
}

void UnreadFacts::add(std::string_view table, std::string key, const UnreadValue& value) {
    if (m_noted.size() < kMostNamed)
        m_noted.push_back({std::string{table}, std::move(key), value.column(), value.value()});
    else
        ++m_more;
}

std::vector<UnreadRow> UnreadFacts::named(Connection& connection) const {
    std::vector<UnreadRow> rows;
    for (const Noted& noted : m_noted) {
        UnreadRow& row = rows.emplace_back();
        row.table = noted.table;
        row.key = noted.key;
        const TableOfFacts* table = tableOf(noted.table);
        row.order = table != nullptr ? orderOf(connection, *table, noted.key) : std::nullopt;
        row.what = row.order ? orderWords(connection, *row.order)
                             : withCapital(rowWords(connection, noted.table, noted.key));
        row.why = whyWords(table != nullptr ? table->whose : "Its", noted.column, noted.value);
        row.leftOut = table != nullptr ? std::string{table->leftOut} : "It is left out.";
    }
    if (m_more > 0)
        rows.push_back({"", "", "And " + std::to_string(m_more) + (m_more == 1 ? " row more" : " rows more"),
                        "They cannot be read either.", "They are left out too."});
    return rows;
}

std::string orderWords(Connection& connection, OrderId order) {
    Query found = connection.query("SELECT shop_order.number, customer.name FROM shop_order "
                                   "LEFT JOIN customer ON customer.id = customer_id WHERE shop_order.id = ?1",
                                   order);
    if (!found.step())
        return "An order";
    return "Order " + found.text(0) + (found.text(1).empty() ? "" : " of " + found.text(1));
}

} // namespace holdfast::db
