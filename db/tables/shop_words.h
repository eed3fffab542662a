// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
// Every word that the search knows, read once and kept with the connection until the search learns others:
// reading them counts each place where they occur, which takes longer than a key that is typed may.

#include "db/sqlite/connection.h"

#include <memory>
#include <string>
#include <vector>

namespace holdfast::db {

struct ShopWords {
    std::vector<std::string> words;   // with a letter in them
    std::vector<std::string> numbers; // nothing but digits
};

std::shared_ptr<const ShopWords> wordsOfShop(Connection& connection);

} // namespace holdfast::db
