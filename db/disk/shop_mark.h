// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
// Whether two files are of one shop. A file whose name looks like one of ours may still be another shop's, or
// a backup that somebody has worked in since.

#include "core/trade/result.h"

#include <cstdint>
#include <filesystem>
#include <optional>
#include <string>

namespace holdfast::db {

class Connection;

struct ShopMark {
    std::int64_t shop = 0;   // the same in every laptop's copy; 0 before step 9
    std::int64_t seat = 0;   // 0: whichever
    std::string firstEntry;  // its id, time and title; empty in a shop where nothing was done yet
    bool wasOpened = false;  // for work, since it was copied
    std::int64_t orders = 0; // in it

    bool isOfTheShopOf(const ShopMark& other) const;
};

// Throws SqliteFailure.
ShopMark markIn(Connection& connection);

// Nothing in the file is run. None where it cannot be read.
std::optional<ShopMark> markOfFile(const std::filesystem::path& path);

} // namespace holdfast::db
