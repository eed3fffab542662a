// SPDX-License-Identifier: GPL-3.0-or-later
#include "db/disk/staying.h"

#include <algorithm>
#include <map>
#include <numeric>

namespace holdfast::db {

namespace {

constexpr std::size_t kAlwaysKept = 2;
constexpr Hours kNoon{12};
// No backup outlives a year and the month in which it was made.
constexpr int kLongest = 400;

int dayNumber(LocalTime at) {
    return static_cast<int>(dateOf(at).time_since_epoch().count());
}

// Weeks since the one that began on Monday, 29 December 1969.
int weekNumber(LocalTime at) {
    constexpr int kThursdayFirst = 3;
    const int day = dayNumber(at) + kThursdayFirst;
    return day >= 0 ? day / 7 : (day - 6) / 7;
}

int monthNumber(LocalTime at) {
    const std::chrono::year_month_day date{dateOf(at)};
    return static_cast<int>(date.year()) * 12 + static_cast<int>(static_cast<unsigned>(date.month())) - 1;
}

using Numbered = int (*)(LocalTime);

// The newest of each of the last spans. `newestFirst` are places among the times.
void keepNewestOfEach(std::span<const LocalTime> times, std::span<const std::size_t> newestFirst,
                      Numbered number, int firstSpan, std::vector<bool>& stays) {
    std::map<int, std::size_t> newest;
    for (const std::size_t at : newestFirst)
        if (const int span = number(times[at]); span >= firstSpan)
            newest.emplace(span, at);
    for (const auto& [span, at] : newest)
        stays[at] = true;
}

} // namespace

std::vector<bool> whichStay(std::span<const LocalTime> times, LocalTime now) {
    std::vector<bool> stays(times.size(), false);
    std::vector<std::size_t> newestFirst;
    for (std::size_t at = 0; at < times.size(); ++at) {
        if (times[at] > now)
            stays[at] = true;
        else
            newestFirst.push_back(at);
    }
    std::ranges::sort(newestFirst, [&](std::size_t one, std::size_t other) {
        return times[one] != times[other] ? times[one] > times[other] : one < other;
    });
    for (std::size_t at = 0; at < newestFirst.size(); ++at) {
        const std::size_t place = newestFirst[at];
        if (at < kAlwaysKept || dayNumber(times[place]) > dayNumber(now) - kDaysKept)
            stays[place] = true;
    }
    keepNewestOfEach(times, newestFirst, weekNumber, weekNumber(now) - kWeeksKept + 1, stays);
    keepNewestOfEach(times, newestFirst, monthNumber, monthNumber(now) - kMonthsKept + 1, stays);
    return stays;
}

LocalDate lastDayOf(std::span<const LocalTime> times, std::size_t which, LocalTime now) {
    std::vector<LocalTime> made(times.begin(), times.end());
    LocalTime day = std::max(now, LocalTime{dateOf(times[which])} + kNoon);
    for (int passed = 0; passed < kLongest; ++passed) {
        day = LocalTime{dateOf(day) + Days{1}} + kNoon;
        made.push_back(day);
        if (!whichStay(made, day)[which])
            break;
    }
    return dateOf(day) - Days{1};
}

} // namespace holdfast::db
