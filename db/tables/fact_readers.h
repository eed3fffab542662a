#pragma once
// The parts that facts.cpp puts together, one subject a file. `orders` is a JSON list of order ids.

#include "core/shop/shop_facts.h"
#include "db/sqlite/connection.h"

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
OrderFacts readOrders(Connection& connection, const std::string& orders);

std::vector<BlankStyle> readStyles(Connection& connection);
std::vector<BlankLot> readLots(Connection& connection, const std::string& orders);
std::vector<WashLoad> readLoads(Connection& connection, const std::vector<BlankLot>& lots);

std::vector<Film> readFilms(Connection& connection);
std::vector<FilmRoll> readRolls(Connection& connection, const std::string& orders);
std::vector<StoragePlace> readPlaces(Connection& connection);

// Areas of the latest cuts, and of the decals that were cut since.
CuttingHistory readCutting(Connection& connection);

std::vector<Fair> readFairs(Connection& connection);

std::vector<Press> readPresses(Connection& connection);
std::vector<PressCheck> readLastChecks(Connection& connection);

} // namespace holdfast::db
