// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
// The phone number of every order, for looking for some of its digits however it is written: taking the signs
// out of each takes SQLite many times as long.

#include "core/trade/ids.h"
#include "core/trade/phone_number.h"
#include "db/sqlite/connection.h"

#include <cstddef>
#include <memory>
#include <vector>

namespace holdfast::db {

struct ShopPhones {
    struct OfOrder {
        OrderId order;
        std::size_t phone = 0; // in `numbers`
    };
    std::vector<OfOrder> orders;      // all, the lowest id first
    std::vector<PhoneNumber> numbers; // each once; nothing where there is none
};

// Kept with the connection until the search learns others.
std::shared_ptr<const ShopPhones> phonesOfShop(Connection& connection);

} // namespace holdfast::db
