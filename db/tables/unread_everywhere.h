// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
// What of the whole shop cannot be read.

#include "core/facts/unread_row.h"

#include <functional>
#include <vector>

namespace holdfast::db {

class Connection;

// Every fact of every order, and all stock, films, presses, readings, money and claims, as the window reads
// them; no more than 2,000 orders are in memory at once. `told` gets the share done; who wants to stop stops
// the connection. Throws SqliteFailure.
std::vector<UnreadRow> unreadEverywhere(Connection& connection, const std::function<bool(double)>& told);

} // namespace holdfast::db
