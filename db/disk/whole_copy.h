// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
// A copy of a shop file that is read again before anybody trusts it.

#include "core/trade/result.h"
#include "db/sqlite/online_copy.h"

#include <cstdint>
#include <filesystem>

namespace holdfast::db {

class Connection;

// How long the file is, in bytes. Throws SqliteFailure.
std::uintmax_t bytesOf(Connection& connection);

// False: it was stopped. An error where the copy cannot be read. Throws SqliteFailure.
Result<bool> copyWhole(Connection& from, const std::filesystem::path& to, const CopyProgress& progress = {});

// The same of a file that may be damaged: it is kept as it is and not read. False: it was stopped.
bool copyAsItIs(Connection& from, const std::filesystem::path& to, const CopyProgress& progress = {});

} // namespace holdfast::db
