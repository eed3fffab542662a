// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
// Who is meant by a name, a phone number or the number of an order, where nobody can be asked.

#include "core/facts/order.h"
#include "db/sqlite/connection.h"

#include <string>
#include <string_view>
#include <vector>

namespace holdfast::db {

struct CustomerCalled {
    Customer customer;
    std::vector<std::int64_t> orders; // numbers, lowest first
};

// Those whose name is this one but for capitals and accents, whose phone number has just these digits, or who
// have the order of this number. Nobody who was forgotten.
std::vector<CustomerCalled> customersCalled(Connection& connection, std::string_view who);

} // namespace holdfast::db
