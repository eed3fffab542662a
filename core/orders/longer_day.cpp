// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/orders/longer_day.h"

#include <algorithm>

namespace holdfast {

namespace {

// A day's hours with so many more in the evening. None: it is closed, over, or would end too late.
std::optional<OpeningHours> lengthened(const ShopSettings& settings, LocalDate day, Hours more,
                                       const Now& now) {
    auto hours = settings.hoursOn(day);
    if (!hours || now.local() >= LocalTime{day} + hours->closes || hours->closes + more > kLatestPress)
        return std::nullopt;
    hours->closes += more;
    return hours;
}

} // namespace

std::optional<LongerDay> longerDayFor(std::span<const AskedGarment> asked, const ShopFacts& facts,
                                      const Promised& promised, const Now& now, LocalDate wanted) {
    // What is pressed later than this has not rested when it is wanted.
    const LocalDate rested = dateOf(LocalTime{wanted + Days{1}} - facts.settings.restBeforeWash);
    const LocalDate last = std::min(rested, now.today() + kLongerDaysTried);
    for (Hours more{1}; more <= kLongestMore; ++more)
        for (LocalDate day = now.today(); day <= last; day += Days{1}) {
            const auto hours = lengthened(facts.settings, day, more, now);
            if (!hours)
                continue;
            ShopSettings longer = facts.settings;
            longer.otherHours[day] = *hours;
            const auto promise = promiseFor(asked, facts, longer, promised, now);
            if (promise.ok() && dateOf(promise->readyAt) <= wanted)
                return LongerDay{day, *hours, more, promise->readyAt};
        }
    return std::nullopt;
}

} // namespace holdfast
