// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
// The tour: every place, the slips, the command finder and the empty shop, drawn to PNG by day and in the
// evening as a person would see them at 1366 × 768.

#include "app/command_line/arguments.h"
#include "app/desk/clock.h"

#include <string>

namespace holdfast::app {

// Draws into arguments.target, which is made where it is missing; says how many pictures. Works on a copy of
// the shop, so nothing of it is touched and a window may have it open. REQUIRES: a QApplication.
Result<std::string> tour(const Arguments& arguments, const Clock& clock);

} // namespace holdfast::app
