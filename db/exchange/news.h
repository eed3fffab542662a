#pragma once
// Whether a news file may be taken in here.

#include "core/trade/result.h"
#include "db/exchange/news_file.h"

namespace holdfast::db {

class Connection;

// Of this shop, of the same form of the shop file, for this laptop, and joining on to the line as it is known
// here. In words what is wrong otherwise.
Result<Done> mayBeTakenIn(Connection& connection, const NewsLabel& label);

} // namespace holdfast::db
