// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
// What the shop knows of the files of web shops. All throw SqliteFailure; Shop::read is their door.

#include "core/orders/order_file.h"
#include "db/sqlite/connection.h"

#include <map>
#include <optional>
#include <string>
#include <vector>

namespace holdfast::db {

// As files with these headings were named last; items whose garment is no longer there are left out. None:
// no such file was named.
std::optional<OrderFileNaming> namingOf(Connection& connection, const std::vector<std::string>& headings);

// The names of web shops whose files have other headings.
std::vector<std::string> otherWebShops(Connection& connection, const std::vector<std::string>& headings);

// The number of the order that was taken for each reference of a web shop, also of those cancelled since.
std::map<std::string, std::int64_t> referencesOf(Connection& connection, const std::string& shop);

// The garment of a label such as "421-a", of any order that is not undone; none: there is none.
std::optional<GarmentId> garmentLabelled(Connection& connection, std::string_view label);

// What its label says; empty: it is not there.
std::string labelOf(Connection& connection, GarmentId garment);

// Its order.
std::optional<OrderId> orderOfGarment(Connection& connection, GarmentId garment);

} // namespace holdfast::db
