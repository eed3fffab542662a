// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
// What a person does with a customer. Each is one journaled action; bad input comes back as an Error that
// names the field, and nothing is written. Forgetting is in forget_customer.h.

#include "core/trade/ids.h"
#include "core/trade/result.h"
#include "db/journal/shop.h"

#include <optional>
#include <string>

namespace holdfast::db {

// Without a note it stays as it is; of up to 500 characters.
Result<Done> changeCustomer(Shop& shop, CustomerId customer, const std::string& name,
                            const std::string& phone, const std::optional<std::string>& note = {});

// Two who are one: all orders of the other go over to this one, who keeps name and phone number; where there
// is none, the other's is taken, and notes go one below the other. The other's row stays, for what still
// comes in for it from another laptop, and leads here (db/tables/joined_customers.h). Refused where both are
// one already, where one of them is forgotten, and where both notes have no room in one.
Result<Done> joinCustomers(Shop& shop, CustomerId customer, CustomerId other);

} // namespace holdfast::db
