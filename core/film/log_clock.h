// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
// Local times of a log as instants, over the days on which clocks are put forward or back.
//
// Some loggers follow the clocks of the place and some keep the time that they were started with. A log shows
// which: one that follows has no time in the hour that is left out in spring, and has the doubled hour of
// autumn twice.

#include "core/trade/offset_at.h"

#include <optional>
#include <span>
#include <vector>

namespace holdfast {

// The instant of a local time that comes after `previous`. In the doubled hour the first time that it is,
// unless that was before; in the hour left out, as if the clock had not been put forward yet.
Instant instantFollowing(LocalTime local, std::optional<Instant> previous, const OffsetAt& offsetAt);

// For each time, in the order of the log, which may also run backwards.
std::vector<Instant> instantsOfLog(std::span<const LocalTime> times, const OffsetAt& offsetAt);

} // namespace holdfast
