// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
// Opening a shop file: what is refused and in which words, the lock, the schema brought up to date.
//
// Whatever is refused keeps its bytes: another program's file, a damaged one, one from a newer Holdfast.

#include "core/trade/dates.h"
#include "core/trade/result.h"
#include "db/disk/shop_lock.h"
#include "db/sqlite/connection.h"

#include <cstdint>
#include <filesystem>
#include <span>

namespace holdfast::db {

struct ShopFile {
    ShopLock lock; // declared first: let go of last
    Connection connection;
    std::filesystem::path path;
    bool isReadOnly = false;
    std::int64_t incarnation = 0; // where it is opened for writing under its own lock
};

// `now` is for the name of the backup that is made of an older file before it is brought up to date.
Result<ShopFile> openShopFile(const std::filesystem::path& path, std::span<const char* const> steps,
                              Instant now);
Result<ShopFile> openShopFileReadOnly(const std::filesystem::path& path, std::span<const char* const> steps);
// Under the lock of a program that has it open already: by the same program, for work in the background.
Result<ShopFile> openShopFileBeside(const std::filesystem::path& path);
Result<ShopFile> createShopFile(const std::filesystem::path& path, std::span<const char* const> steps);
ShopFile createShopInMemory(std::span<const char* const> steps);

} // namespace holdfast::db
