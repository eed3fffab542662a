#pragma once
// An order that is open here may be one of a customer who was forgotten on another laptop, which did not know
// of it. Before that is taken in, such an order gets a customer of its own of the same name.

#include "core/trade/result.h"
#include "db/exchange/news_file.h"
#include "db/journal/shop.h"

namespace holdfast::db {

// One action for all such orders; none where there is none, as nearly always.
Result<Done> keepOrdersOfForgotten(Shop& shop, NewsReader& news);

} // namespace holdfast::db
