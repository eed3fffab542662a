// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
// What the shop's rules for prices may be.

#include "core/facts/price_rules.h"
#include "core/trade/result.h"

namespace holdfast {

// Names the field of what is wrong: mark-up 0 to 1,000 %; up to 10 prices for many, 2 to 200 garments, each
// more garments and more off than the one before, below 100 %; up to 20 usual extras of 1 to 60 characters;
// rush within 0 to 365 days for 0 to 100 % more; tax of 0 to 100 %, and above 0 where there is any; prices 0
// or more and below a million units; decals up to 2,000 mm, each longer than the one before.
Result<Done> checkPriceRules(const PriceRules& rules, const Currency& currency);

} // namespace holdfast
