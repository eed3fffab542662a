// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
// What can be said of a file before SQLite opens it, so that opening never touches what is no shop.

#include "core/trade/result.h"

#include <cstdint>
#include <filesystem>

namespace holdfast::db {

inline constexpr std::int32_t kShopApplicationId = 0x486F6C64; // "Hold"

// A file that exists, can be read and is neither empty nor a folder. Reads no byte of it.
Result<Done> probeFile(const std::filesystem::path& path);

// Its first bytes: a shop file, not newer than `newestStep`.
// REQUIRES: no connection to the file is open in this program, for closing the file lets go of SQLite's
// locks.
Result<Done> probeHeader(const std::filesystem::path& path, int newestStep);

// Whether others on this computer may read or write it; false where it is not there.
bool isReadByOthers(const std::filesystem::path& path);

// The file and its folder may be written to.
Result<Done> probeWritable(const std::filesystem::path& path);

Error notAShop(const std::filesystem::path& path);
Error fromNewerVersion(const std::filesystem::path& path);
Error damagedShop(const std::filesystem::path& path);

} // namespace holdfast::db
