// SPDX-License-Identifier: GPL-3.0-or-later
#include "db/tables/promises_given.h"

#include "db/tables/fact_row.h"

#include <algorithm>
#include <string>

namespace holdfast::db {

PromisesGiven::PromisesGiven(Connection& connection, LocalDate from, const Now& now, UnreadFacts& unread)
    : m_now(now)
    , m_unread(unread) {
    Query rows = connection.query("SELECT id, promised FROM shop_order "
                                  "WHERE state IN ('confirmed', 'handed-over') AND promised >= ?1 "
                                  "AND promised <= ?2 ORDER BY id",
                                  LocalTime{from}, now.local());
    readFacts(rows, unread, "shop_order",
              [this](const FactRow& row) { m_given.push_back({row.id<OrderId>(0), row.localTime(1)}); });
}

void PromisesGiven::add(const GarmentsInTurn& garment) {
    const auto order = garment.row().id<OrderId>(1);
    const auto given = std::ranges::lower_bound(m_given, order, {}, &Given::order);
    if (given == m_given.end() || given->order != order)
        return;
    given->hasGarments = true;
    const auto& card = garment.card();
    if (!card || !card->pressedAt) {
        given->isPressed = false;
        return;
    }
    given->pressedAt = std::max(given->pressedAt, *card->pressedAt);
    if (!isInstant(*card->pressedAt) && !given->isUnread) {
        given->isUnread = true;
        m_unread.add("shop_order", std::to_string(order.value),
                     UnreadValue{"pressed_at", std::to_string(*card->pressedAt)});
    }
}

std::vector<PromiseGiven> PromisesGiven::promises() const {
    std::vector<PromiseGiven> promises;
    for (const Given& given : m_given) {
        if (!given.hasGarments || (given.isUnread && given.isPressed))
            continue;
        PromiseGiven& promise = promises.emplace_back(PromiseGiven{given.promised, std::nullopt});
        if (given.isPressed)
            promise.pressedAt = m_now.toLocal(Instant{std::chrono::seconds{given.pressedAt}});
    }
    std::ranges::stable_sort(promises, {}, &PromiseGiven::promised);
    return promises;
}

} // namespace holdfast::db
