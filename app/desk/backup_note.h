// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
// When this laptop last copied its shop, and where to: a note of its own, separate from the shop's facts.

#include "core/trade/dates.h"
#include "db/journal/shop.h"

#include <filesystem>
#include <optional>

namespace holdfast::app {

struct LastBackup {
    Instant at{};
    std::filesystem::path path;
};

void keepBackup(db::Shop& shop, const LastBackup& backup);
std::optional<LastBackup> keptBackup(db::Shop& shop);

} // namespace holdfast::app
