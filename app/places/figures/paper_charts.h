// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
// The charts of Figures on paper, in black: what is known is a thick line, where the truth may lie thin ones.

#include "app/papers/paper_pages.h"
#include "core/quality/figures.h"

#include <optional>

namespace holdfast::app {

// The share still without a fault, by days since handing over. None where nobody was watched for a day.
std::optional<PageBlock> holdingOnPaper(const Survival& survival);

// A point for each month between its limits; a ring round one that is out of them. None without a month.
std::optional<PageBlock> monthsOnPaper(const FaultMonths& months);

} // namespace holdfast::app
