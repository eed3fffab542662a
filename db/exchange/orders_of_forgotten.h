// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
// An order that is open here may be one of a customer who was forgotten on another laptop, which did not know
// of it. Such an order gets a customer of its own of the same name, as an entry of this laptop, when the
// news that forgets the customer is taken in.

#include "core/trade/dates.h"
#include "core/trade/ids.h"
#include "db/forgetting/forgotten_people.h"

#include <cstdint>
#include <map>
#include <optional>
#include <string>

namespace holdfast::db {

class Connection;

class OrdersOfForgotten {
public:
    // REQUIRES: a transaction in which writing is allowed, for as long as it lives.
    explicit OrdersOfForgotten(Connection& connection);

    // Before they are forgotten here.
    void remember(const ForgottenPeople& people);

    // Once all of the news is taken in: the entry, written to the journal; nothing where no order is open.
    std::optional<EntryId> keepOpenOnes(Instant now);

private:
    struct Person {
        std::string name;
        std::string phone;
    };

    Connection& m_connection;
    std::map<std::int64_t, Person> m_people; // by their customer's id
};

} // namespace holdfast::db
