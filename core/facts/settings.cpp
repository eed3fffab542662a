// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/facts/settings.h"

#include <algorithm>

namespace holdfast {

// Monday to Friday; fairs fall on weekends.
ShopSettings::ShopSettings() {
    for (std::size_t weekday = 1; weekday <= 5; ++weekday)
        week[weekday] = OpeningHours{};
}

bool ShopSettings::isOpenOn(LocalDate date) const {
    return hoursOn(date).has_value();
}

std::optional<OpeningHours> ShopSettings::hoursOn(LocalDate date) const {
    if (std::ranges::find(closedDays, date) != closedDays.end())
        return std::nullopt;
    const auto other = otherHours.find(date);
    const auto hours = other == otherHours.end() ? week[std::chrono::weekday{date}.c_encoding()]
                                                 : std::optional{other->second};
    // Hours that end before they begin are no hours.
    if (!hours || hours->closes <= hours->opens)
        return std::nullopt;
    return hours;
}

} // namespace holdfast
