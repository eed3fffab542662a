// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
// The till of a day: money by way of payment, and the cash counted against what should be there, which is the
// float at the start, plus cash that came in, less cash that went out.

#include "core/orders/order_draft.h"
#include "core/trade/dates.h"
#include "core/trade/ids.h"
#include "core/trade/money.h"
#include "core/trade/sentence.h"

#include <array>

namespace holdfast {

using TillCountId = Id<struct TillCountKind>;

inline constexpr std::size_t kWaysToPay = 3;    // PaidHow
inline constexpr std::size_t kKindsOfMoney = 3; // MoneyKind

// What moved on one day. Refunds are below zero.
struct DayMoney {
    std::array<std::array<Money, kKindsOfMoney>, kWaysToPay> by; // way, then kind

    void add(PaidHow how, MoneyKind kind, Money amount);
    Money of(PaidHow how) const;
    Money in(PaidHow how) const;  // deposits and payments
    Money out(PaidHow how) const; // paid back, as a positive amount
};

struct TillCount {
    TillCountId id;
    LocalDate day{};
    Instant at; // when it was counted last
    Money floatAtStart;
    Money cash; // in less out on that day, as it was known then
    Money counted;

    Money expected() const { return floatAtStart + cash; }
    Money difference() const { return counted - expected(); } // above zero: too much
};

// "£2.50 too much", "£1.00 is missing", "as it should be"
Sentence tillDifferenceWords(Money difference, const Currency& currency);

} // namespace holdfast
