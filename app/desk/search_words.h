// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
// Words of a search that mean something, in the window's language: "owing", "late", "unconfirmed", "today",
// "thursday", "this week", "26 nov", "2026-11-26".

#include "db/tables/order_search.h"

#include <QString>

namespace holdfast::app {

db::TypedSearch searchIn(const QString& typed, const Now& now);

} // namespace holdfast::app
