// SPDX-License-Identifier: GPL-3.0-or-later
#include "db/tables/row_words.h"

#include "core/trade/paper_numbers.h"
#include "core/trade/unit_words.h"
#include "db/sqlite/connection.h"
#include "db/tables/column_words.h"
#include "db/tables/settings_rows.h"

#include <algorithm>
#include <array>
#include <string_view>

namespace holdfast::db {

namespace {

// What follows the words that a query gives for a row: nothing, or a number as it is written on papers.
enum class Numbered { No, Roll, Garment };

struct TableWords {
    std::string_view table;
    std::string_view one;   // "an order"
    std::string_view named; // a query for what the row of key ?1 is called, and for its numbers; or empty
    Numbered numbered = Numbered::No;
};

constexpr std::array kTableWords{
    TableWords{"shop_order", "an order", "SELECT 'order ' || number FROM shop_order WHERE id = ?1"},
    TableWords{"customer", "a customer", "SELECT 'the customer ' || name FROM customer WHERE id = ?1"},
    TableWords{"garment", "a garment",
               "SELECT 'garment ', number, position FROM garment "
               "JOIN shop_order ON shop_order.id = order_id WHERE garment.id = ?1 AND position > 0",
               Numbered::Garment},
    TableWords{"decal", "a decal",
               "SELECT 'the decal “' || COALESCE(wording, artwork) || '” of order ' || number FROM decal "
               "JOIN garment ON garment.id = garment_id JOIN shop_order ON shop_order.id = order_id "
               "WHERE decal.id = ?1"},
    TableWords{"film", "a film", "SELECT 'the film ' || finish || ', ' || shade FROM film WHERE id = ?1"},
    TableWords{"film_roll", "a roll", "SELECT 'roll ', number FROM film_roll WHERE id = ?1", Numbered::Roll},
    TableWords{"blank_style", "a blank style", "SELECT 'the style ' || name FROM blank_style WHERE id = ?1"},
    TableWords{"blank_lot", "a lot of blanks",
               "SELECT 'a lot of ' || blank_style.name || ', ' || size FROM blank_lot "
               "JOIN blank_style ON blank_style.id = style_id WHERE blank_lot.id = ?1"},
    TableWords{"wash_load", "a wash load", ""},
    TableWords{"press", "a press", "SELECT 'the press ' || name FROM press WHERE id = ?1"},
    TableWords{"press_step", "a step at the press",
               "SELECT 'a step of garment ', number, position FROM press_step "
               "JOIN garment ON garment.id = garment_id JOIN shop_order ON shop_order.id = order_id "
               "WHERE press_step.id = ?1 AND position > 0",
               Numbered::Garment},
    TableWords{"storage_place", "a storage place",
               "SELECT 'the storage place ' || name FROM storage_place WHERE id = ?1"},
    TableWords{"climate_reading", "a reading", ""},
    TableWords{"money_move", "money", ""},
    TableWords{"lot_move", "a move of blanks", ""},
    TableWords{"roll_move", "a move of film", ""},
    TableWords{"style_size", "a size", ""},
    TableWords{"style_colour", "a colour", "SELECT 'the colour ' || name FROM style_colour WHERE id = ?1"},
    TableWords{"style_fibre", "the fibres of a style", ""},
    TableWords{"style_obstacle", "a way round an obstacle", ""},
    TableWords{"setting", "a setting", ""},
    TableWords{"closed_day", "a closed day", ""},
    TableWords{"fair", "a fair", "SELECT 'the fair ' || name FROM fair WHERE id = ?1"},
    TableWords{"claim", "what came back", ""},
};

const TableWords* tableWordsOf(std::string_view table) {
    const auto found = std::ranges::find(kTableWords, table, &TableWords::table);
    return found == kTableWords.end() ? nullptr : &*found;
}

std::string numberOf(const Query& row, Numbered numbered) {
    switch (numbered) {
    case Numbered::No:
        break;
    case Numbered::Roll:
        return rollLabel(row.integer(1));
    case Numbered::Garment:
        return garmentLabel(row.integer(1), row.integer(2));
    }
    return {};
}

std::string spaced(std::string name) {
    std::ranges::replace(name, '_', ' ');
    return name;
}

std::string listed(const std::vector<std::string>& columns) {
    std::vector<std::string> words;
    for (const std::string& column : columns)
        if (auto each = std::string{columnWords(column).value_or("entry")};
            std::ranges::find(words, each) == words.end())
            words.push_back(std::move(each));
    std::string list;
    for (std::size_t at = 0; at < words.size(); ++at)
        list += (at == 0 ? "" : at + 1 == words.size() ? " and " : ", ") + words[at];
    return list;
}

// Where the columns stand in their table.
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

std::string rowWords(Connection& connection, const std::string& table, const std::string& key) {
    const TableWords* words = tableWordsOf(table);
    if (words == nullptr)
        return "a row of " + spaced(table);
    if (table == "setting")
        return "the setting “" + settingLabel(key) + "”";
    if (!words->named.empty())
        if (Query named = connection.query(words->named, key); named.step() && !named.isNull(0))
            return named.text(0) + numberOf(named, words->numbered);
    return std::string{words->one};
}

std::optional<std::string> whoseDoing(Connection& connection, const std::string& table,
                                      const std::string& key, std::int64_t seat,
                                      const std::vector<std::string>& columns) {
    const auto places = placesOf(connection, table, columns);
    const auto touches = [&](const RowChange& change) {
        return change.table == table && change.key == key &&
               (places.empty() || std::ranges::any_of(places, [&](std::size_t place) {
                    return place < change.isChanged.size() && change.isChanged[place];
                }));
    };
    Query entries = connection.query("SELECT title, seat.name, changeset FROM journal_entry "
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
            return "“" + entries.text(0) + "” (" + entries.text(1) + ")";
    }
    return std::nullopt;
}

std::string differenceWords(Connection& connection, const RowDifference& difference, std::int64_t seat) {
    const std::string row = withCapital(rowWords(connection, difference.table, difference.key));
    const bool isOfColumns = difference.kind == RowDifference::Kind::ColumnsStand;
    const auto other = whoseDoing(connection, difference.table, difference.key, seat,
                                  isOfColumns ? difference.columns : std::vector<std::string>{});
    switch (difference.kind) {
    case RowDifference::Kind::ColumnsStand: {
        const bool isOne = difference.columns.size() == 1;
        return row + ": its " + listed(difference.columns) + (isOne ? " stays as " : " stay as ") +
               other.value_or("somebody else") + (isOne ? " left it." : " left them.");
    }
    case RowDifference::Kind::RowGone:
        return row + ", which it changes, was deleted" + (other ? ": " + *other + "." : ".");
    case RowDifference::Kind::RowStands:
        return row + " stays: it is still needed, or was changed" + (other ? ": " + *other + "." : ".");
    case RowDifference::Kind::RowThere:
        return row + " was entered on both laptops: what was there first stays.";
    case RowDifference::Kind::Renumbered:
        return row + " had the number " + difference.columns.front() +
               " on the laptop where it was entered, which another has. Write the new one on it.";
    case RowDifference::Kind::Refused:
        break;
    }
    return row + " could not be entered as it was: it would break a rule of the shop.";
}

} // namespace holdfast::db
