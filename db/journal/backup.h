// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
// Copies the whole shop into a new file while it stays in use.

#include "core/trade/result.h"
#include "db/sqlite/online_copy.h"

#include <filesystem>

namespace holdfast::db {

class Shop;

// The copy appears under `path` only when it is whole; a name that is taken is refused. `progress` is called
// after each step and may return false to stop, which is an error "stopped" with nothing left behind. On a
// worker thread, hand in a shop of its own from openReadOnly.
Result<Done> backup(Shop& shop, const std::filesystem::path& path, const CopyProgress& progress = {});

} // namespace holdfast::db
