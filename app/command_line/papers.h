// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
// papers DIR: everything the shop prints for the day, into one folder.

#include "app/command_line/arguments.h"
#include "app/desk/clock.h"

namespace holdfast::app {

// Each family as one PDF, each paper as SVG: the day sheet, claim tickets and bag tags of open orders, care
// cards of pressed garments, labels of rolls on the shelf, and the cut sheets. The folder is made if missing.
// A file of the same name is replaced; what is in the way and is not a file is left, and named in one line.
// Opens the shop for reading only. Needs a QGuiApplication. What it returns is for standard output.
Result<std::string> papers(const Arguments& arguments, const Clock& clock);

} // namespace holdfast::app
