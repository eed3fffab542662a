// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
// The facts of the shop out of its file, one query a table; no query runs per row of another.
// All functions throw SqliteFailure; Shop::read is their door. A row that cannot be read is left out with
// what cannot be shown without it, and named in ShopFacts::unread.

#include "core/facts/climate.h"
#include "core/facts/shop_facts.h"
#include "core/film/use_first.h"
#include "db/sqlite/connection.h"
#include "db/tables/unread_facts.h"

#include <cstdint>
#include <functional>
#include <span>
#include <string>
#include <vector>

namespace holdfast::db {

// Stock, films, presses, settings, and every open order with its garments.
ShopFacts loadOpenFacts(Connection& connection);
// With the lots and rolls that are used up too, which orders that are done were made of.
ShopFacts loadOpenFactsWithAllStock(Connection& connection);

// The same with just these orders, open or not: what a screen needs to show one order whole.
ShopFacts loadFactsOf(Connection& connection, std::span<const OrderId> orders);

// Of that, only what the holds over the garments of these orders look at.
ShopFacts loadHoldFacts(Connection& connection, std::span<const OrderId> orders);

// What has no value that can be read is at its usual one, and noted.
ShopSettings loadSettings(Connection& connection);
ShopSettings loadSettings(Connection& connection, UnreadFacts& unread);

// Of one order, rows of its own alone: empty where nothing of it is amiss.
std::vector<UnreadRow> unreadOf(Connection& connection, OrderId order);

// Every place's readings, oldest first. `goesOn` is asked after every 10,000 of them with how many came;
// false: no more are wanted. May be empty.
using ReadingsGoOn = std::function<bool(std::int64_t loaded)>;
// A reading that cannot be read is left out, and noted where somebody asks.
ClimateHistory loadClimate(Connection& connection, const ReadingsGoOn& goesOn = {},
                           UnreadFacts* unread = nullptr);
void noteUnreadReadings(Connection& connection, UnreadFacts& unread);
// Of these places alone.
ClimateHistory loadClimateOf(Connection& connection, std::span<const PlaceId> places);
std::int64_t countReadings(Connection& connection);
// Looks at no more of them.
bool hasMoreReadingsThan(Connection& connection, std::int64_t count);
// The same after one action more than those known, where it only added some readings after the last of their
// places: what is known need not be loaded again. None: all must be loaded.
std::optional<ClimateHistory> climateGoneOn(Connection& connection, const ClimateHistory& known);

// Length cut of each film in the weeks before `now`, from the week in which its first roll came.
RecentUse loadRecentUse(Connection& connection, Instant now);

} // namespace holdfast::db
