// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
// The hours in which a shop works, and what is left of them after work that is already promised.

#include "core/facts/settings.h"
#include "core/orders/promise.h"
#include "core/trade/dates.h"

#include <optional>
#include <span>
#include <vector>

namespace holdfast {

struct OpenStretch {
    LocalTime begins{};
    LocalTime ends{};

    Seconds length() const { return ends - begins; }
};

// Opening hours from a moment on, in the order of time; hours beyond midnight are cut off there.
std::vector<OpenStretch> openHours(const ShopSettings& settings, LocalTime from, Days ahead);
// From now on, without what the clock leaves out when it is put forward.
std::vector<OpenStretch> openHours(const ShopSettings& settings, const Now& now, Days ahead);

// How much of the time from now to a moment lies outside opening hours.
Seconds outsideHours(const ShopSettings& settings, const Now& now, Instant until);

// The first open moment at or after a time. None: beyond the hours.
std::optional<LocalTime> nextOpen(std::span<const OpenStretch> hours, LocalTime from);

// What the hours leave when each piece of work is done in the last hours before it is due, the earliest due
// first; work that does not fit before it is due takes the first hours left over.
std::vector<OpenStretch> hoursLeft(std::span<const OpenStretch> hours, std::span<const PromisedWork> load);

// When that much work is done if it begins at a time and takes the first hours from there. None: beyond the
// hours. REQUIRES: work above zero.
std::optional<LocalTime> doneBy(std::span<const OpenStretch> hours, LocalTime from, Seconds work);

} // namespace holdfast
