// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
// What a word that is typed may mean besides being a word of an order: that money is owed, that it is late, a
// day. The window reads such words in its own language.

#include "core/trade/day_span.h"
#include "core/trade/ids.h"
#include "db/sqlite/connection.h"

#include <string>
#include <vector>

namespace holdfast::db {

struct OrderMeaning {
    enum class Kind {
        OnDays,      // promised or taken on one of them
        Owing,       // not paid whole, and not cancelled
        Late,        // open, and the promised day is over
        Unconfirmed, // open, and a quotation or with a wording that nobody agreed to
    };
    Kind kind = Kind::OnDays;
    std::vector<DaySpan> days{}; // of OnDays
};

// What was typed, or a part of it, that has a meaning: "26 nov".
struct MeantWords {
    std::string words;
    OrderMeaning meaning;
};

// Lowest id first.
std::vector<OrderId> ordersMeant(Connection& connection, const OrderMeaning& meaning, const Now& now);

} // namespace holdfast::db
