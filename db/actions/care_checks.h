// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
// What the forms of blank styles and films have in common.

#include "core/facts/care_limits.h"
#include "core/trade/dates.h"
#include "core/trade/money.h"
#include "core/trade/result.h"

#include <string>
#include <string_view>

namespace holdfast::db {

// Washing 0–95 °C and ironing 0–230 °C, 0 for not at all.
Result<Done> checkCare(const CareLimits& care);

// 0 or more and below a million units of the currency.
Result<Done> checkCost(Money cost, std::string_view field, const Currency& currency);

// Who something is bought from; empty: not written down.
Result<std::string> supplierOf(const std::string& typed);

// Between 2000 and today, wherever in the world today is.
Result<Done> checkDay(LocalDate day, std::string_view field, Phrase what, Instant now);

} // namespace holdfast::db
