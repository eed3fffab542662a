// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
// The verbs that need no window: reports, check, backup.

#include "app/command_line/arguments.h"
#include "app/desk/clock.h"
#include "core/quality/shop_figures.h"
#include "core/shop/reckoned_shop.h"
#include "db/journal/shop.h"

#include <memory>
#include <string>

namespace holdfast::app {

// The clock that goes with the arguments: the system's; from 09:00 of --on; the demo's own hour.
Clock clockFor(const Arguments& arguments);
// The same, standing still at its first moment: for pictures.
Clock standingClock(const Clock& clock);

// The file that is meant: --shop, the demo (made where it is missing), or the usual one.
Result<std::filesystem::path> shopPath(const Arguments& arguments, const Clock& clock);

// The shop reckoned as it is; opens it for reading only. The plan is searched to its end.
Result<std::shared_ptr<const ReckonedShop>> reckonedShop(const Arguments& arguments, const Clock& clock);

// The same, with the figures since the beginning.
struct ShopAndFigures {
    std::shared_ptr<const ReckonedShop> shop;
    ShopFigures figures;
};
Result<ShopAndFigures> shopAndFigures(const Arguments& arguments, const Clock& clock);

// What to write to standard output. Opens the shop for reading only, so a window may have it open.
Result<std::string> report(const Arguments& arguments, const Clock& clock);
// "The shop file is whole …" or, as an error, everything that is wrong, a line each.
Result<std::string> check(const Arguments& arguments, const Clock& clock);
// Writes to the shop: refused while a window has it open.
Result<std::string> mend(const Arguments& arguments, const Clock& clock);
Result<std::string> saveWhatCanBe(const Arguments& arguments, const Clock& clock);
// Those made by themselves, in the folder next to the shop and in the second one of this computer.
Result<std::string> listBackups(const Arguments& arguments, const Clock& clock);
// With --yes; else an error that says what would be lost.
Result<std::string> putBack(const Arguments& arguments, const Clock& clock);
// The customer that is named by target. Writes to the shop: refused while a window has it open.
Result<std::string> forget(const Arguments& arguments, const Clock& clock);
Result<std::string> backUp(const Arguments& arguments, const Clock& clock);

} // namespace holdfast::app
