// SPDX-License-Identifier: GPL-3.0-or-later
#include "db/tables/shop_phones.h"

#include "db/sqlite/query.h"
#include "db/tables/kept_with_search.h"

#include <string>
#include <unordered_map>

namespace holdfast::db {

namespace {

ShopPhones readPhones(Connection& connection) {
    ShopPhones read;
    std::unordered_map<std::string, std::size_t> known; // by how it is written
    Query rows{connection, "SELECT id, phone FROM order_card ORDER BY id"};
    while (rows.step()) {
        const std::string_view written = rows.view(1);
        const auto [phone, isNew] = known.try_emplace(std::string(written), read.numbers.size());
        if (isNew)
            read.numbers.push_back(readPhone(written));
        read.orders.push_back({rows.id<OrderId>(0), phone->second});
    }
    return read;
}

} // namespace

std::shared_ptr<const ShopPhones> phonesOfShop(Connection& connection) {
    return keptWithSearch(connection, readPhones);
}

} // namespace holdfast::db
