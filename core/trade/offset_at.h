// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
// How far local time is ahead of UTC, which changes with the clocks of the place.

#include "core/trade/dates.h"

#include <functional>

namespace holdfast {

using OffsetAt = std::function<std::chrono::seconds(Instant)>;

inline OffsetAt alwaysAhead(std::chrono::seconds offset) {
    return [offset](Instant) { return offset; };
}

} // namespace holdfast
