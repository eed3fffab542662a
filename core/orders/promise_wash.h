// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
// The washer's evenings: loads that begin when the workshop closes, one after the other until 21:00
// (household hours; common practice, no source), on days the workshop is open. Each holds one full load.

#include "core/orders/promise_hours.h"

#include <cstdint>
#include <optional>
#include <span>
#include <vector>

namespace holdfast {

inline constexpr Seconds kShortestWash{60};

class WashEvenings {
public:
    // `hours` are the shop's, from now on; they and `now` outlive this. A load that runs already keeps the
    // washer until `busyUntil`.
    WashEvenings(const ShopSettings& settings, std::span<const OpenStretch> hours, const Now& now,
                 LocalTime busyUntil);

    // Puts one blank into the first load with room that begins when it is there, and says when that is. A
    // blank heavier than the washer holds is washed alone. None: no evening left.
    std::optional<LocalTime> put(Grams weight, LocalTime there);

private:
    struct Load {
        LocalTime begins{};
        std::int64_t filled = 0; // grams
    };

    bool addLoad();
    std::optional<LocalTime> nextBegin();

    const ShopSettings& m_settings;
    std::span<const OpenStretch> m_hours;
    const Now& m_now;
    LocalTime m_busyUntil;
    Seconds m_takes;
    std::vector<Load> m_loads; // those looked at so far, by beginning
    std::size_t m_day = 0;     // of m_hours: the evening the next load is looked for in
    bool m_looksAtToday = true;
};

} // namespace holdfast
