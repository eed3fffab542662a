// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/trade/dates.h"

#include "core/trade/clock_changes.h"

#include <array>
#include <charconv>
#include <cstdio>

namespace holdfast {

namespace {

constexpr std::array kMonths{"Jan", "Feb", "Mar", "Apr", "May", "Jun",
                             "Jul", "Aug", "Sep", "Oct", "Nov", "Dec"};
constexpr std::array kWeekdays{"Sun", "Mon", "Tue", "Wed", "Thu", "Fri", "Sat"};

std::chrono::year_month_day calendar(LocalDate date) {
    return std::chrono::year_month_day{date};
}

template <class... Values>
std::string formatted(const char* pattern, Values... values) {
    std::array<char, 48> text{};
    const int length = std::snprintf(text.data(), text.size(), pattern, values...);
    return std::string(text.data(), static_cast<std::size_t>(length));
}

template <class Number>
bool readNumber(std::string_view text, Number& number) {
    const auto [end, error] = std::from_chars(text.data(), text.data() + text.size(), number);
    return error == std::errc{} && end == text.data() + text.size();
}

const char* monthName(LocalDate date) {
    return kMonths[static_cast<unsigned>(calendar(date).month()) - 1];
}

} // namespace

LocalTime Now::toChangedLocal(Instant when) const {
    return changes->toLocal(when);
}

Instant Now::toChangedInstant(LocalTime when) const {
    return changes->toInstant(when);
}

std::string isoDate(LocalDate date) {
    const auto day = calendar(date);
    return formatted("%04d-%02u-%02u", static_cast<int>(day.year()), static_cast<unsigned>(day.month()),
                     static_cast<unsigned>(day.day()));
}

std::optional<LocalDate> parseIsoDate(std::string_view text) {
    if (text.size() != 10 || text[4] != '-' || text[7] != '-')
        return std::nullopt;
    unsigned year = 0, month = 0, day = 0;
    if (!readNumber(text.substr(0, 4), year) || !readNumber(text.substr(5, 2), month) ||
        !readNumber(text.substr(8, 2), day))
        return std::nullopt;
    const auto date =
        std::chrono::year{static_cast<int>(year)} / std::chrono::month{month} / std::chrono::day{day};
    if (!date.ok())
        return std::nullopt;
    return LocalDate{date};
}

std::optional<LocalTime> parseIsoMinute(std::string_view text) {
    const auto day = text.size() == 16 ? parseIsoDate(text.substr(0, 10)) : std::nullopt;
    unsigned hours = 0, minutes = 0;
    if (!day || text[10] != 'T' || text[13] != ':' || !readNumber(text.substr(11, 2), hours) ||
        !readNumber(text.substr(14, 2), minutes) || hours > 23 || minutes > 59)
        return std::nullopt;
    return LocalTime{*day} + Hours{hours} + Minutes{minutes};
}

std::string clockTime(LocalTime time) {
    const auto sinceMidnight = time - LocalTime{dateOf(time)};
    const auto minutes = std::chrono::floor<Minutes>(sinceMidnight).count();
    return formatted("%02d:%02d", static_cast<int>(minutes / 60), static_cast<int>(minutes % 60));
}

std::string isoInstant(Instant instant) {
    const LocalTime asIfLocal{instant.time_since_epoch()};
    const auto second = (asIfLocal - std::chrono::floor<Minutes>(asIfLocal)).count();
    return isoLocalMinute(asIfLocal) + formatted(":%02dZ", static_cast<int>(second));
}

std::string isoLocalMinute(LocalTime time) {
    return isoDate(dateOf(time)) + "T" + clockTime(time);
}

std::string spokenDay(LocalDate date) {
    const auto weekday = std::chrono::weekday{date}.c_encoding();
    return formatted("%s %u %s", kWeekdays[weekday], static_cast<unsigned>(calendar(date).day()),
                     monthName(date));
}

std::string spokenDate(LocalDate date) {
    return formatted("%u %s %d", static_cast<unsigned>(calendar(date).day()), monthName(date),
                     static_cast<int>(calendar(date).year()));
}

} // namespace holdfast
