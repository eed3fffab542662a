// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
// Promises that were to be kept by now, and when each order was ready. Throws SqliteFailure.

#include "core/quality/figures.h"
#include "db/tables/garments_in_turn.h"
#include "db/tables/unread_facts.h"

#include <cstdint>
#include <optional>
#include <unordered_map>
#include <vector>

namespace holdfast::db {

// Takes one garment after the other: an order is as ready as its last.
class PromisesGiven {
public:
    // From that day on until now. Orders of which the promise cannot be read are noted in `unread`.
    PromisesGiven(Connection& connection, LocalDate from, const Now& now, UnreadFacts& unread);

    void add(const GarmentsInTurn& garment);

    std::vector<PromiseGiven> promises() const; // by time, then by order

private:
    struct Given {
        OrderId order;
        LocalTime promised{};
        std::int64_t pressedAt = 0; // the latest so far
        bool isPressed = true;      // all garments so far
        bool hasGarments = false;
        bool isUnread = false;
    };

    Now m_now;
    UnreadFacts& m_unread;
    std::vector<Given> m_given; // by order
};

} // namespace holdfast::db
