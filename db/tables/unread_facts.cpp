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

constexpr Phrase kOrderLeftOut = phrase("The order is left out.");
constexpr Phrase kRollLeftOut = phrase("The roll is left out.");
constexpr Phrase kStyleLeftOut =
    phrase("The style is left out, with its blanks and the orders that need it.");
constexpr Phrase kNotSummed = phrase("The sums are made without it.");

constexpr Phrase kNotOnList = phrase("The price list is without it.");

struct Why {
    Phrase reads;
    Phrase isMissing;
};
constexpr Why kIts{phrase("Its {column} reads “{value}”."), phrase("Its {column} is missing.")};
constexpr Why kOfNeeded{
    phrase("A row that this needs cannot be read. Its {column} reads “{value}”. Nothing was changed."),
    phrase("A row that this needs cannot be read. Its {column} is missing. Nothing was changed.")};

struct TableOfFacts {
    std::string_view table;
    Why why; // whose value it is, and what it is
    Phrase leftOut;
    std::string_view orderOf; // a query for the order that the row of key ?1 belongs to
};

constexpr std::array kTables{
    TableOfFacts{"shop_order", kIts, kOrderLeftOut, "SELECT id FROM shop_order WHERE id = ?1"},
    TableOfFacts{"customer", kIts, phrase("The customer’s orders are left out."), ""},
    TableOfFacts{
        "garment",
        {phrase("A garment’s {column} reads “{value}”."), phrase("A garment’s {column} is missing.")},
        kOrderLeftOut,
        "SELECT order_id FROM garment WHERE id = ?1"},
    TableOfFacts{"decal",
                 {phrase("A decal’s {column} reads “{value}”."), phrase("A decal’s {column} is missing.")},
                 kOrderLeftOut,
                 "SELECT order_id FROM decal JOIN garment ON garment.id = garment_id WHERE decal.id = ?1"},
    TableOfFacts{"press_step",
                 {phrase("A pressing step’s {column} reads “{value}”."),
                  phrase("A pressing step’s {column} is missing.")},
                 kOrderLeftOut,
                 "SELECT order_id FROM press_step JOIN garment ON garment.id = garment_id "
                 "WHERE press_step.id = ?1"},
    TableOfFacts{"waiver",
                 {phrase("A waiver’s {column} reads “{value}”."), phrase("A waiver’s {column} is missing.")},
                 kOrderLeftOut,
                 "SELECT order_id FROM waiver JOIN garment ON garment.id = garment_id WHERE waiver.id = ?1"},
    TableOfFacts{"spoil",
                 {phrase("A spoiled garment’s {column} reads “{value}”."),
                  phrase("A spoiled garment’s {column} is missing.")},
                 kOrderLeftOut,
                 "SELECT order_id FROM spoil JOIN garment ON garment.id = garment_id WHERE spoil.id = ?1"},
    TableOfFacts{"claim",
                 {phrase("What came back: the {column} reads “{value}”."),
                  phrase("What came back: the {column} is missing.")},
                 phrase("What came back is left out."),
                 "SELECT order_id FROM claim JOIN garment ON garment.id = garment_id WHERE claim.id = ?1"},
    TableOfFacts{
        "money_move",
        {phrase("A payment’s {column} reads “{value}”."), phrase("A payment’s {column} is missing.")},
        kNotSummed,
        "SELECT order_id FROM money_move WHERE id = ?1"},
    TableOfFacts{"bill_line",
                 {phrase("A line of the bill: the {column} reads “{value}”."),
                  phrase("A line of the bill: the {column} is missing.")},
                 kOrderLeftOut,
                 "SELECT order_id FROM bill_line WHERE id = ?1"},
    TableOfFacts{
        "invoice",
        {phrase("An invoice’s {column} reads “{value}”."), phrase("An invoice’s {column} is missing.")},
        phrase("The invoice is left out."),
        "SELECT order_id FROM invoice WHERE id = ?1"},
    TableOfFacts{"invoice_row",
                 {phrase("A row of an invoice: the {column} reads “{value}”."),
                  phrase("A row of an invoice: the {column} is missing.")},
                 phrase("The row is left out."),
                 "SELECT order_id FROM invoice_row JOIN invoice ON invoice.id = invoice_id "
                 "WHERE invoice_row.id = ?1"},
    TableOfFacts{"style_price", kIts, kNotOnList, ""},
    TableOfFacts{"decal_price", kIts, kNotOnList, ""},
    TableOfFacts{"film", kIts, phrase("The film is left out, with its rolls and the orders that need it."),
                 ""},
    TableOfFacts{"film_not_for",
                 {phrase("Its list of unsuited cloths: the {column} reads “{value}”."),
                  phrase("Its list of unsuited cloths: the {column} is missing.")},
                 phrase("The film is left out."),
                 ""},
    TableOfFacts{"film_roll", kIts, kRollLeftOut, ""},
    TableOfFacts{"roll_stay",
                 {phrase("A stay of a roll: the {column} reads “{value}”."),
                  phrase("A stay of a roll: the {column} is missing.")},
                 kRollLeftOut,
                 ""},
    TableOfFacts{
        "test_strip",
        {phrase("A test strip’s {column} reads “{value}”."), phrase("A test strip’s {column} is missing.")},
        kRollLeftOut,
        ""},
    TableOfFacts{"roll_move",
                 {phrase("A length of film: the {column} reads “{value}”."),
                  phrase("A length of film: the {column} is missing.")},
                 kNotSummed,
                 ""},
    TableOfFacts{"lot_move",
                 {phrase("A move of blanks: the {column} reads “{value}”."),
                  phrase("A move of blanks: the {column} is missing.")},
                 kNotSummed,
                 ""},
    TableOfFacts{"blank_style", kIts, kStyleLeftOut, ""},
    TableOfFacts{"style_size",
                 {phrase("A size of it: the {column} reads “{value}”."),
                  phrase("A size of it: the {column} is missing.")},
                 kStyleLeftOut,
                 ""},
    TableOfFacts{"style_colour", kIts, kStyleLeftOut, ""},
    TableOfFacts{"style_fibre",
                 {phrase("A fibre of its label: the {column} reads “{value}”."),
                  phrase("A fibre of its label: the {column} is missing.")},
                 kStyleLeftOut,
                 ""},
    TableOfFacts{"style_obstacle",
                 {phrase("An obstacle on it: the {column} reads “{value}”."),
                  phrase("An obstacle on it: the {column} is missing.")},
                 kStyleLeftOut,
                 ""},
    TableOfFacts{"blank_lot", kIts,
                 phrase("The lot is left out, with the orders that a blank of it is reserved for."), ""},
    TableOfFacts{"wash_load", kIts,
                 phrase("The load’s blanks are left out, with the orders they are reserved for."), ""},
    TableOfFacts{"storage_place", kIts, phrase("The storage place is left out."), ""},
    TableOfFacts{"climate_reading", kIts, phrase("The reading is left out."), ""},
    TableOfFacts{"press", kIts, phrase("The press is left out, with the orders that were on it."), ""},
    TableOfFacts{"press_check",
                 {phrase("A check’s {column} reads “{value}”."), phrase("A check’s {column} is missing.")},
                 phrase("The check is left out: the press counts as not checked."),
                 ""},
    TableOfFacts{"fair", kIts, phrase("The fair is left out."), ""},
    TableOfFacts{"till_count", kIts, phrase("The count of the till is left out."), ""},
    TableOfFacts{"setting", kIts, phrase("The usual value is used."), ""},
    TableOfFacts{"closed_day", kIts, phrase("The shop counts as open on it."), ""},
    TableOfFacts{"other_hours", kIts, phrase("The usual hours of the weekday count."), ""},
    TableOfFacts{"order_card",
                 {phrase("Its line in the order book: the {column} reads “{value}”."),
                  phrase("Its line in the order book: the {column} is missing.")},
                 phrase("It is left out of the order book."),
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

Sentence whyWords(const Why& why, const std::string& column, const std::string& value) {
    return value.empty()
               ? said(why.isMissing.english, {{"column", columnNamed(column)}})
               : said(why.reads.english, {{"column", columnNamed(column)}, {"value", inBrief(value)}});
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
    : SqliteFailure(inWords(whyWords(kOfNeeded, column, value)))
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
        row.why = whyWords(table != nullptr ? table->why : kIts, noted.column, noted.value);
        row.leftOut = table != nullptr ? table->leftOut : phrase("It is left out.");
    }
    if (m_more > 0)
        rows.push_back({"", "", said("And {n} row more|And {n} rows more", {{"n", m_more}}),
                        said("They cannot be read either."), said("They are left out too.")});
    return rows;
}

Sentence orderWords(Connection& connection, OrderId order) {
    Query found = connection.query("SELECT shop_order.number, customer.name FROM shop_order "
                                   "LEFT JOIN customer ON customer.id = customer_id WHERE shop_order.id = ?1",
                                   order);
    if (!found.step())
        return said("An order");
    return found.text(1).empty() ? said("Order {number}", {{"number", found.text(0)}})
                                 : said("Order {number} of {customer}",
                                        {{"number", found.text(0)}, {"customer", found.text(1)}});
}

} // namespace holdfast::db
