// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
// Makes a filling better for as long as the budget lasts: where the strip ends, by the earliest pieces that
// are not laid yet; then shorter.

#include "core/cutting/strip_search.h"

namespace holdfast {

using ImprovedFilling = std::function<void(const Filling&)>;

// REQUIRES: a filling of the plan, of the task.
void improveFilling(const StripTask& task, const StripPlan& plan, Filling filling, const StripSearch& search,
                    const ImprovedFilling& improved);

} // namespace holdfast
