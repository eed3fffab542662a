// SPDX-License-Identifier: GPL-3.0-or-later
#include "db/check/check_parts.h"
#include "db/sqlite/connection.h"
#include "db/sqlite/transaction.h"

#include <sqlite3.h>

namespace holdfast::db {

namespace {

Sentence isMadeAgain(Sentence fault) {
    return oneAfterTheOther(std::move(fault), said("“Mend the shop file” makes it again."));
}

Sentence isCountedAgain(Sentence fault) {
    return oneAfterTheOther(std::move(fault), said("“Mend the shop file” counts again."));
}

// Full-text tables keep theirs in tables of their own, which are read and written like any other.
constexpr const char* kIndexTables[] = {"order_text_data", "order_text_idx", "order_text_docsize",
                                        "order_text_config"};

std::string columnsOf(Connection& connection, const std::string& table) {
    std::string list;
    Query columns = connection.query("SELECT name FROM pragma_table_info(?1) ORDER BY cid", table);
    while (columns.step())
        list += (list.empty() ? "\"" : ", \"") + columns.text(0) + "\"";
    return list;
}

void copyRows(Connection& from, const std::string& source, Connection& to, const std::string& table) {
    const std::string columns = columnsOf(to, table);
    std::string places;
    int count = 0;
    Query width = to.query("SELECT COUNT(*) FROM pragma_table_info(?1)", table);
    if (width.step())
        count = static_cast<int>(width.integer(0));
    for (int column = 1; column <= count; ++column)
        places += (column == 1 ? "?" : ", ?") + std::to_string(column);
    Query insert{to, "INSERT INTO " + table + " (" + columns + ") VALUES (" + places + ")"};
    Query rows{from, "SELECT " + columns + " FROM " + source};
    RowBytes bytes;
    while (rows.step()) {
        int place = 0;
        for (const ValueBytes value : bytes.of(rows, static_cast<std::size_t>(count)))
            bindValue(insert, ++place, value);
        insert.run();
    }
}

} // namespace

void checkOrderCards(Connection& connection, Findings& findings) {
    constexpr const char* kIsOther =
        "FROM order_card_source AS source LEFT JOIN order_card AS card ON card.id = source.id "
        "WHERE (card.number, card.customer, card.phone, card.words, card.state, card.promised, "
        "card.garments, card.total_minor, card.paid_minor) IS NOT "
        "(source.number, source.customer, source.phone, source.words, source.state, source.promised, "
        "source.garments, source.total_minor, source.paid_minor)";
    std::vector<Sentence> sentences;
    Query other{connection, std::string{"SELECT source.number "} + kIsOther};
    while (other.step())
        sentences.push_back(isMadeAgain(
            said("Order {order} is not in the order book as it is.", {{"order", other.text(0)}})));
    Query gone{connection, "SELECT number FROM order_card WHERE id NOT IN (SELECT id FROM shop_order)"};
    while (gone.step())
        sentences.push_back(
            isMadeAgain(said("The order book has a line {order} of no order.", {{"order", gone.text(0)}})));
    addNamed(findings, sentences,
             phrase("And {n} more line of the order book is not as its order is.|"
                    "And {n} more lines of the order book are not as their orders are."));
}

void checkGarmentCards(Connection& connection, Findings& findings) {
    std::vector<Sentence> sentences;
    Query other{connection, "SELECT number, position FROM garment_card_source AS source "
                            "LEFT JOIN garment_card AS card ON card.id = source.id "
                            "JOIN garment ON garment.id = source.id "
                            "JOIN shop_order ON shop_order.id = garment.order_id "
                            "WHERE (card.id, card.pressed_at, card.presses) IS NOT "
                            "(source.id, source.pressed_at, source.presses)"};
    while (other.step())
        sentences.push_back(
            isCountedAgain(said("The figures count garment {garment} of order {order} wrongly.",
                                {{"garment", other.text(1)}, {"order", other.text(0)}})));
    addNamed(findings, sentences,
             phrase("And {n} more garment is counted wrongly.|And {n} more garments are counted wrongly."));
    const std::int64_t gone = connection.number(
        "SELECT COUNT(*) FROM garment_card WHERE id NOT IN (SELECT id FROM garment_card_source)");
    if (gone > 0)
        findings.push_back(
            isCountedAgain(said("The figures count {n} garment that is not there or was never begun.|"
                                "The figures count {n} garments that are not there or were never begun.",
                                {{"n", gone}})));
}

// Next to the file, in memory: the order book gets the true lines, its index the words of this one. SQLite
// then says whether the two agree, down to the last prefix.
void checkSearch(Connection& connection, Shop::Steps steps, Findings& findings) {
    const Schema& schema = schemaMadeBy(steps);
    Connection copy = Connection::openInMemory();
    copy.script(schema.at("table order_card"));
    copy.script(schema.at("table order_text"));
    // Only here, where nothing is lost: no file lets the tables of an index be written to.
    sqlite3_db_config(copy.handle(), SQLITE_DBCONFIG_DEFENSIVE, 0, nullptr);
    try {
        Transaction transaction{copy};
        copyRows(connection, "order_card_source", copy, "order_card");
        for (const char* table : kIndexTables) {
            copy.run(std::string{"DELETE FROM "} + table);
            copyRows(connection, table, copy, table);
        }
        transaction.commit();
        copy.script("PRAGMA writable_schema = RESET"); // what the index knew of itself is read again
        copy.run("INSERT INTO order_text (order_text, rank) VALUES ('integrity-check', 1)");
    } catch (const SqliteFailure& failure) {
        if (!failure.isDamage())
            throw;
        findings.push_back(isMadeAgain(said("The search does not find orders by the words they have.")));
    }
}

} // namespace holdfast::db
