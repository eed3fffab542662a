// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
// The due days of open orders in a file for any calendar, in the words of the window's language.

#include "core/orders/due_days.h"
#include "core/trade/dates.h"
#include "core/trade/result.h"
#include "db/journal/shop.h"

#include <cstddef>
#include <filesystem>

namespace holdfast::app {

struct DueDaysWritten {
    std::size_t days = 0;
    bool isWhole = true; // false: rows of the shop file cannot be read, and their orders are not in it
};

// Readable by its owner only. A calendar that was written so before is replaced; any other name that is taken
// is refused, and nothing is written. For any thread that has a shop of its own.
Result<DueDaysWritten> writeDueDays(db::Shop& shop, const std::filesystem::path& target, const Now& now,
                                    Names names);

} // namespace holdfast::app
