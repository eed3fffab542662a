// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
// Whether the day that was promised may be told to the customer while something holds the work.
//
// A promise takes the time to wash and dry blanks, to buy blanks or film, to press a test strip and to have
// the press checked. Holds that only need this leave its day true. It takes no time for what somebody has to
// decide or to bring: another film, a label to be read, a recipe, a way round a zip, a deposit. Until that is
// done its day is not settled: no screen and no paper shows it as if it were.

#include "core/holds/finding.h"
#include "core/shop/reckoned_shop.h"

#include <span>
#include <string>

namespace holdfast {

bool leavesDayTrue(Rule rule);

// The first hold that leaves the day open; none: the day is settled. Waived holds and cautions leave it as it
// is.
const Finding* whatUnsettlesDay(std::span<const Finding> findings);

// The same over the garments of a confirmed order; a quotation promises nothing, and what is handed over or
// cancelled waits for nothing.
const Finding* whatUnsettlesDay(const ReckonedShop& shop, const Order& order);

// What is wrong and what is needed first: "Stretches more than the film: choose another film first."
Sentence unsettledWords(const Finding& finding);

} // namespace holdfast
