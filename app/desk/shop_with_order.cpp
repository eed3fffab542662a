// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/desk/shop_with_order.h"

#include "db/tables/facts.h"

#include <array>

namespace holdfast::app {

namespace {

// Climate has no say in a closed order any more.
std::shared_ptr<const ReckonedShop> readAlone(ShopDesk& desk, OrderId order) {
    const auto facts = desk.file().read([&](db::Connection& connection) {
        const std::array only{order};
        return db::loadFactsOf(connection, only);
    });
    if (!facts.ok() || !facts->orders.find(order))
        return nullptr;
    ClimateReckoner reckoner;
    return reckonShop(*facts, {}, {}, reckoner, desk.now());
}

} // namespace

std::shared_ptr<const ReckonedShop> shopWithOrder(ShopDesk& desk, OrderId order) {
    const auto& open = desk.shop();
    return open->facts.orders.find(order) ? open : readAlone(desk, order);
}

} // namespace holdfast::app
