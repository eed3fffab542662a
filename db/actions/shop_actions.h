// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
// What a person changes of the shop itself.

#include "core/facts/settings.h"
#include "core/trade/result.h"
#include "db/journal/shop.h"

namespace holdfast::db {

// Names the first setting that is out of its range.
Result<Done> changeSettings(Shop& shop, const ShopSettings& settings);

} // namespace holdfast::db
