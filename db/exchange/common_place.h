// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
// Up to where the line of a news file and the line here are the same.

#include "db/exchange/news_file.h"
#include "db/journal/line.h"

#include <optional>

namespace holdfast::db {

class Connection;

// The last place that both have in common; nothing where the news begins after it. The workshop counts its
// own entries that have no place yet as if they had theirs already. Throws where the news does not hold the
// line that it says it holds.
std::optional<PlaceInLine> commonPlace(Connection& connection, NewsReader& news);

} // namespace holdfast::db
