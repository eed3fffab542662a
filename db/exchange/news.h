// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
// Whether a news file may be taken in here.

#include "core/trade/result.h"
#include "db/exchange/news_file.h"

namespace holdfast::db {

class Connection;

// Of this shop, of the same form of the shop file, for this laptop, and joining on to the line here: up to
// which place both have the same. In words what is wrong otherwise.
Result<PlaceInLine> joinOf(Connection& connection, NewsReader& news);

} // namespace holdfast::db
