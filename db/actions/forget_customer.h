// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
// Forgetting a customer: the orders, their garments and the money stay in the shop, and nothing in the file
// says any more whose they were. There is no undo.

#include "core/facts/order.h"
#include "core/trade/money.h"
#include "core/trade/result.h"
#include "db/journal/shop.h"

#include <cstdint>
#include <string>
#include <vector>

namespace holdfast::db {

class Connection;

// What goes, for saying it before it is done.
struct ToBeForgotten {
    CustomerId id;                // who is kept, where they were joined with others
    std::vector<CustomerId> rows; // all of theirs
    std::string name;
    std::string phone;
    std::vector<std::int64_t> orders;    // numbers, lowest first; also cancelled ones
    std::vector<std::int64_t> open;      // of those, which are not handed over or cancelled yet
    Money owed;                          // on those that are not cancelled
    std::vector<std::string> invoices{}; // that bear the name and stay as they are
    bool isForgotten = false;            // already
};
// An error where the shop has no such customer. Throws SqliteFailure.
Result<ToBeForgotten> toBeForgotten(Connection& connection, CustomerId customer);

// Refused in words while an order of theirs is open. Reads the whole journal: some seconds in a large shop.
// Stopped, nothing was changed. What the file held is written over, and its log is emptied.
Result<Done> forgetCustomer(Shop& shop, CustomerId customer, const TellProgress& progress = {});

} // namespace holdfast::db
