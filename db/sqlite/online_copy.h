// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
// Copies one open file into another while both may be read, some pages at a time.

#include <functional>

namespace holdfast::db {

class Connection;

// Called after each step with how many pages are done and how many there are; false stops the copying.
using CopyProgress = std::function<bool(int pagesDone, int pagesInAll)>;

// False when `progress` stopped it; `to` is then half-filled and of no use. Throws SqliteFailure.
bool copyOnline(Connection& from, Connection& to, const CopyProgress& progress = {});

} // namespace holdfast::db
