// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
// The parts that facts.cpp puts together, one subject a file. `orders` is a JSON list of order ids. Rows that
// cannot be read are left out and noted in `unread`.

#include "core/facts/cutting_history.h"
#include "core/facts/shop_facts.h"
#include "db/sqlite/connection.h"
#include "db/tables/unread_facts.h"

#include <string>
#include <vector>

namespace holdfast::db {

struct OrderFacts {
    std::vector<Customer> customers;
    std::vector<Order> orders;
    std::vector<Garment> garments;
    std::vector<StepRecord> steps;
    std::vector<Waiver> waivers;
    std::vector<Spoil> spoils;
};
OrderFacts readOrders(Connection& connection, UnreadFacts& unread, const std::string& orders);

// Lots and rolls: those that are left or belong to the orders, or all there ever were.
enum class Stock { Left, All };

std::vector<BlankStyle> readStyles(Connection& connection, UnreadFacts& unread);
std::vector<BlankLot> readLots(Connection& connection, UnreadFacts& unread, const std::string& orders,
                               Stock stock);
std::vector<WashLoad> readLoads(Connection& connection, UnreadFacts& unread,
                                const std::vector<BlankLot>& lots);

std::vector<Film> readFilms(Connection& connection, UnreadFacts& unread);
std::vector<FilmRoll> readRolls(Connection& connection, UnreadFacts& unread, const std::string& orders,
                                Stock stock);
std::vector<StoragePlace> readPlaces(Connection& connection, UnreadFacts& unread);

// Areas of the latest cuts, and of the decals that were cut since.
CuttingHistory readCutting(Connection& connection);

std::vector<Fair> readFairs(Connection& connection, UnreadFacts& unread);

std::vector<Press> readPresses(Connection& connection, UnreadFacts& unread);
std::vector<PressCheck> readLastChecks(Connection& connection, UnreadFacts& unread);

} // namespace holdfast::db
