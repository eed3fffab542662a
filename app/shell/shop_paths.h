// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
// Where shop files are on this machine.

#include "core/trade/dates.h"
#include "core/trade/result.h"
#include "db/journal/shop.h"

#include <filesystem>
#include <memory>

namespace holdfast::app {

// $XDG_DATA_HOME/holdfast/shop.holdfast, mostly ~/.local/share/holdfast/shop.holdfast.
std::filesystem::path defaultShopPath();
// A name next to it that is free: shop.holdfast, shop-2.holdfast …
std::filesystem::path freeShopPath();

// A new shop of this name. Makes the folder where it is missing; leaves no file behind when it fails.
Result<std::unique_ptr<db::Shop>> startShop(const std::filesystem::path& path, const std::string& name,
                                            const Currency& currency, const db::Clock& clock);

// The time of day at which the demo's shop is in mid-walk.
inline constexpr std::chrono::minutes kDemoTime{9 * 60 + 40};

// The demo's shop for a day, in the folder for what can be made again ($XDG_CACHE_HOME/holdfast); made when
// it is missing or was made by another version. For reading: a window opens a copy of its own.
Result<std::filesystem::path> demoShop(LocalDate on);
// Whether a file is one of those: it is made again each day.
bool isDemoShop(const std::filesystem::path& shop);
// The copy of it that a window works in.
std::filesystem::path demoToWorkIn();
// Makes that copy and opens it. Refused where another window has the demo open.
Result<std::unique_ptr<db::Shop>> openDemoToWorkIn(LocalDate on, const db::Clock& clock);

} // namespace holdfast::app
