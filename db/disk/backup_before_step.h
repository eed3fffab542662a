// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
// The backup of a shop file that is about to be brought up to date.

#include "core/trade/dates.h"
#include "core/trade/result.h"

#include <filesystem>

namespace holdfast::db {

class Connection;

// Its pages are looked at, for what is in them only an older program reads. It lies where the program keeps
// the backups that it makes by itself. Throws SqliteFailure.
Result<std::filesystem::path> backUpBeforeStep(Connection& connection, const std::filesystem::path& shop,
                                               LocalTime now);

} // namespace holdfast::db
