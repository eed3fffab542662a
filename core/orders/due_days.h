// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
// When each open order is due: what a calendar shows of it.

#include "core/calendar/calendar.h"
#include "core/facts/shop_facts.h"
#include "core/trade/dates.h"
#include "core/trade/sentence.h"

#include <cstdint>
#include <functional>
#include <vector>

namespace holdfast {

struct DueDay {
    OrderId order;
    Instant at;
    Sentence summary; // "428 Juno Marsh, 3 garments"; without the name "428, 3 garments"
    bool isQuotation = false;
};

enum class Names { Shown, LeftOut };

// Of quotations too, the earliest first.
std::vector<DueDay> dueDays(const ShopFacts& facts, const Now& now, Names names);

// The same as a calendar file. `shop` is the shop's number: with it an order has the same uid in each file
// and on each laptop, and no order of another shop has it.
std::string dueDaysCalendar(const std::vector<DueDay>& days, std::int64_t shop, Instant written,
                            const std::function<std::string(const Sentence&)>& inWords);

} // namespace holdfast
