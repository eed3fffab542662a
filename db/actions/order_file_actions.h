// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
// Orders of a web shop's file, taken at once.

#include "core/orders/order_file.h"
#include "core/trade/result.h"
#include "db/journal/shop.h"

#include <cstdint>

namespace holdfast::db {

struct OrdersOfFile {
    std::int64_t taken = 0;
    std::int64_t known = 0; // were taken before, and stay as they are
    std::int64_t garments = 0;
};

// One action: how the file is named, and all its orders, each with its reference. Refused where a line is
// wrong, or where somebody took one of them meanwhile; then nothing is written. `progress` as in
// TellProgress.
Result<OrdersOfFile> takeOrdersOfFile(Shop& shop, const OrderFileRead& file, const Now& now,
                                      const TellProgress& progress = {});

} // namespace holdfast::db
