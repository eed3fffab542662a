// SPDX-License-Identifier: GPL-3.0-or-later
#include "db/tables/order_file_rows.h"

#include "core/csv/csv.h"
#include "core/trade/paper_code.h"
#include "core/trade/paper_numbers.h"
#include "db/tables/codes.h"

namespace holdfast::db {

std::optional<OrderFileNaming> namingOf(Connection& connection, const std::vector<std::string>& headings) {
    Query file = connection.query(
        "SELECT id, shop FROM order_file WHERE headings = ?1 ORDER BY id DESC LIMIT 1", joinedList(headings));
    if (!file.step())
        return std::nullopt;
    OrderFileNaming naming{file.text(1), headings, {}, {}};
    Query columns = connection.query("SELECT meaning, heading FROM order_file_column WHERE file_id = ?1",
                                     file.integer(0));
    while (columns.step())
        if (const auto column = knownCode<OrderColumn>(columns.text(0)))
            naming.columns[*column] = columns.text(1);
    Query items = connection.query("SELECT item, like_id FROM order_file_item "
                                   "JOIN garment ON garment.id = like_id WHERE file_id = ?1 ORDER BY "
                                   "order_file_item.id",
                                   file.integer(0));
    while (items.step())
        naming.items[items.text(0)] = items.id<GarmentId>(1);
    return naming;
}

std::vector<std::string> otherWebShops(Connection& connection, const std::vector<std::string>& headings) {
    std::vector<std::string> names;
    Query rows = connection.query("SELECT DISTINCT shop FROM order_file WHERE headings <> ?1 ORDER BY shop",
                                  joinedList(headings));
    while (rows.step())
        names.push_back(rows.text(0));
    return names;
}

std::map<std::string, std::int64_t> referencesOf(Connection& connection, const std::string& shop) {
    std::map<std::string, std::int64_t> known;
    Query rows =
        connection.query("SELECT reference, number FROM order_reference "
                         "JOIN shop_order ON shop_order.id = order_id WHERE shop = ?1 ORDER BY order_id",
                         shop);
    while (rows.step())
        known[rows.text(0)] = rows.integer(1);
    return known;
}

std::optional<GarmentId> garmentLabelled(Connection& connection, std::string_view label) {
    const auto code = readPaperCode(label);
    if (!code || code->kind == ScannedCode::Kind::Roll)
        return std::nullopt;
    // An order of one garment is named by its number alone.
    Query garments = connection.query("SELECT garment.id, position, (SELECT COUNT(*) FROM garment AS other "
                                      "WHERE other.order_id = shop_order.id) FROM garment "
                                      "JOIN shop_order ON shop_order.id = order_id WHERE number = ?1",
                                      code->number);
    while (garments.step())
        if (code->letter.empty() ? garments.integer(2) == 1
                                 : garmentLetter(garments.integer(1)) == code->letter)
            return garments.id<GarmentId>(0);
    return std::nullopt;
}

std::string labelOf(Connection& connection, GarmentId garment) {
    Query row = connection.query("SELECT number, position, (SELECT COUNT(*) FROM garment AS other "
                                 "WHERE other.order_id = shop_order.id) FROM garment "
                                 "JOIN shop_order ON shop_order.id = order_id WHERE garment.id = ?1",
                                 garment);
    if (!row.step())
        return {};
    const std::string number = std::to_string(row.integer(0));
    return row.integer(2) == 1 ? number : number + "-" + garmentLetter(row.integer(1));
}

std::optional<OrderId> orderOfGarment(Connection& connection, GarmentId garment) {
    Query row = connection.query("SELECT order_id FROM garment WHERE id = ?1", garment);
    return row.step() ? std::optional{row.id<OrderId>(0)} : std::nullopt;
}

} // namespace holdfast::db
