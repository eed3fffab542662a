// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
// A web shop's file of orders, read into orders that can be taken; nothing is written.
//
// Lines with the same reference are one order, in the order of the file. Of an order's lines only the first
// need say who the customer is; what others say of customer, phone, payment and day must be the same. An
// order that was taken for the reference before is known, and is not read again. Each order is promised after
// those above it, for the day it asks for where that can be kept, else for the earliest.

#include "core/orders/order_file.h"
#include "core/shop/reckoned_shop.h"
#include "core/trade/result.h"
#include "db/sqlite/connection.h"

#include <functional>
#include <string>
#include <string_view>
#include <vector>

namespace holdfast::db {

// The first line, and each text that is in the column of that heading, once.
Result<std::vector<std::string>> headingsOfOrders(std::string_view text);
Result<std::vector<std::string>> itemsOfOrders(std::string_view text, const std::string& heading);

// A decal with another wording, laid and sized as it will be cut, with its outline; or why it cannot be.
using Letter = std::function<Result<DecalDraft>(const DecalDraft& like, const GarmentDraft& on,
                                                const std::string& wording)>;

// An error where the text cannot be split into fields, or the naming is wrong; what is wrong with a line is
// said at the line. `shop` is the shop as it is reckoned now. `goesOn` is asked with the share done; false:
// stopped.
Result<OrderFileRead> readOrders(Connection& connection, std::string_view text, const OrderFileNaming& naming,
                                 const ReckonedShop& shop, const Letter& letter,
                                 const std::function<bool(double share)>& goesOn = {});

} // namespace holdfast::db
