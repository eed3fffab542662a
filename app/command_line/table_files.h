// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
// The verbs that write the shop as comma-separated values or its due days as a calendar, and read a file in.

#include "app/command_line/arguments.h"
#include "app/desk/clock.h"
#include "core/trade/result.h"

#include <string>

namespace holdfast::app {

// What to write to standard output. The shop is opened for reading only, so a window may have it open.
Result<std::string> exportTables(const Arguments& arguments, const Clock& clock);

// Writes to the shop: refused while a window has it open. A shop that is not there is not made.
Result<std::string> importTable(const Arguments& arguments, const Clock& clock);

// Says what the orders of a web shop’s file would be; with --yes it takes them all. Letters are measured.
Result<std::string> takeOrders(const Arguments& arguments, const Clock& clock);

// As exportTables.
Result<std::string> saveDueDays(const Arguments& arguments, const Clock& clock);

} // namespace holdfast::app
