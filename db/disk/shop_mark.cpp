// SPDX-License-Identifier: GPL-3.0-or-later
#include "db/disk/shop_mark.h"

#include "db/disk/file_probe.h"
#include "db/sqlite/connection.h"

namespace holdfast::db {

namespace {

bool hasColumn(Connection& connection, std::string_view table, std::string_view column) {
    return connection.number("SELECT COUNT(*) FROM pragma_table_info(?1) WHERE name = ?2", table, column) > 0;
}

} // namespace

bool ShopMark::isOfTheShopOf(const ShopMark& other) const {
    if (shop != 0 && other.shop != 0)
        return shop == other.shop;
    return !firstEntry.empty() && firstEntry == other.firstEntry;
}

ShopMark markIn(Connection& connection) {
    ShopMark mark;
    mark.seat = connection.number("SELECT seat_id FROM seat_here");
    if (hasColumn(connection, "journal_shop", "shop"))
        mark.shop = connection.number("SELECT shop FROM journal_shop");
    if (hasColumn(connection, "seat_here", "incarnation"))
        mark.wasOpened = connection.number("SELECT incarnation FROM seat_here") != 0;
    if (hasColumn(connection, "shop_order", "id"))
        mark.orders = connection.number("SELECT COUNT(*) FROM shop_order");
    Query first = connection.query("SELECT id, at, title FROM journal_entry ORDER BY id LIMIT 1");
    if (first.step())
        mark.firstEntry = first.text(0) + " " + first.text(1) + " " + first.text(2);
    return mark;
}

std::optional<ShopMark> markOfFile(const std::filesystem::path& path) {
    try {
        Connection connection = Connection::open(path, Access::Untrusted);
        if (connection.number("PRAGMA application_id") != kShopApplicationId)
            return std::nullopt;
        return markIn(connection);
    } catch (const SqliteFailure&) {
        return std::nullopt;
    }
}

} // namespace holdfast::db
