// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
// The tour's pictures of what is printed: papers do not change with the light and are drawn once.

#include "app/desk/clock.h"
#include "core/trade/result.h"

#include <filesystem>

namespace holdfast::app {

// A few of each kind, "papers-claim-ticket.png", at this scale; returns how many. Reads the shop only.
Result<int> drawPaperPictures(const std::filesystem::path& shop, const Clock& clock,
                              const std::filesystem::path& folder, int scale);

} // namespace holdfast::app
