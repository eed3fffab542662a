// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/film/log_time.h"

#include "core/trade/units.h"

#include <array>
#include <cstdint>
#include <string>

namespace holdfast {

namespace {

constexpr std::int64_t kEarliestBareSecond =
    100'000'000; // shorter numbers are rather a row's number or a date
constexpr std::int64_t kLatestBareSecond = 7'258'118'400; // 2200-01-01

// Reads from the front of a text.
class Front {
public:
    explicit Front(std::string_view text)
        : m_rest(text) {}

    // Digits, as many as there are; none where there are fewer than `least` or more than `most`.
    std::optional<std::int64_t> number(std::size_t least, std::size_t most) {
        std::size_t count = 0;
        std::int64_t value = 0;
        while (count < m_rest.size() && count <= most && isDigit(m_rest[count]))
            value = value * 10 + (m_rest[count++] - '0');
        if (count < least || count > most)
            return std::nullopt;
        m_rest.remove_prefix(count);
        m_digits = count;
        return value;
    }
    std::size_t digits() const { return m_digits; } // of the last number
    bool take(char wanted) {
        if (m_rest.empty() || m_rest.front() != wanted)
            return false;
        m_rest.remove_prefix(1);
        return true;
    }
    char takeOneOf(std::string_view wanted) {
        if (m_rest.empty() || wanted.find(m_rest.front()) == std::string_view::npos)
            return '\0';
        const char taken = m_rest.front();
        m_rest.remove_prefix(1);
        return taken;
    }
    void skipSpaces() {
        while (take(' ')) {
        }
    }
    // A word in small letters, whatever it was written in; may be empty.
    std::string letters() {
        std::string word;
        while (isAtLetter()) {
            word += static_cast<char>(m_rest.front() | 0x20);
            m_rest.remove_prefix(1);
        }
        return word;
    }
    bool isAtLetter() const {
        return !m_rest.empty() && ((m_rest.front() >= 'a' && m_rest.front() <= 'z') ||
                                   (m_rest.front() >= 'A' && m_rest.front() <= 'Z'));
    }
    bool atEnd() const { return m_rest.empty(); }

private:
    static bool isDigit(char character) { return character >= '0' && character <= '9'; }

    std::string_view m_rest;
    std::size_t m_digits = 0;
};

// A date as it was written; `at` waits for the clock.
struct DateRead {
    LogTime time;
    LocalDate date{};
};

DateRead noDate() {
    return {};
}

bool exists(std::int64_t year, std::int64_t month, std::int64_t day) {
    if (year < 1970 || year > 2199)
        return false;
    const std::chrono::year_month_day date{std::chrono::year{static_cast<int>(year)},
                                           std::chrono::month{static_cast<unsigned>(month)},
                                           std::chrono::day{static_cast<unsigned>(day)}};
    return date.ok();
}

DateRead dateOn(std::int64_t year, std::int64_t month, std::int64_t day) {
    if (!exists(year, month, day))
        return noDate();
    return {{.kind = LogTimeKind::Read, .at = {}},
            localDate(static_cast<int>(year), static_cast<unsigned>(month), static_cast<unsigned>(day))};
}

// "Nov" or "November"; none where it is no month.
std::optional<std::int64_t> takeMonthName(Front& front) {
    constexpr std::array<std::string_view, 12> kNames{"january",   "february", "march",    "april",
                                                      "may",       "june",     "july",     "august",
                                                      "september", "october",  "november", "december"};
    const std::string word = front.letters();
    for (std::size_t month = 0; month < kNames.size(); ++month) {
        const bool isShort = word == kNames[month].substr(0, 3) || word == "sept";
        if (word == kNames[month] || (isShort && kNames[month].starts_with(word)))
            return static_cast<std::int64_t>(month) + 1;
    }
    return std::nullopt;
}

// Four digits, or two of this century.
std::optional<std::int64_t> takeYear(Front& front) {
    const auto year = front.number(2, 4);
    if (!year || front.digits() == 3)
        return std::nullopt;
    return front.digits() == 2 ? 2000 + *year : *year;
}

// "-Nov-2026", after the day.
DateRead dateFromNamedMonth(Front& front, std::int64_t day) {
    const auto month = takeMonthName(front);
    if (!month || front.takeOneOf("-./ ") == '\0')
        return noDate();
    const auto year = takeYear(front);
    return year ? dateOn(*year, *month, day) : noDate();
}

// "Nov 25, 2026"
DateRead dateThatBeginsWithItsMonth(Front& front) {
    const auto month = takeMonthName(front);
    if (!month || front.takeOneOf("-./ ") == '\0')
        return noDate();
    const auto day = front.number(1, 2);
    const bool hasComma = front.take(',');
    if (!day || (front.takeOneOf("-./ ") == '\0' && !hasComma))
        return noDate();
    const auto year = takeYear(front);
    return year ? dateOn(*year, *month, *day) : noDate();
}

// "/11/2026", after the first number.
DateRead dateOfNumbers(Front& front, std::int64_t first, char separator, DateOrder order) {
    const auto second = front.number(1, 2);
    if (!second || !front.take(separator))
        return noDate();
    const auto year = front.number(4, 4);
    if (!year)
        return noDate();
    const bool dayFirst = order == DateOrder::DayFirst;
    DateRead read = dayFirst ? dateOn(*year, *second, first) : dateOn(*year, first, *second);
    const bool isOther = dayFirst ? exists(*year, first, *second) : exists(*year, *second, first);
    if (read.time.kind == LogTimeKind::NoTime && !isOther)
        return noDate();
    if (read.time.kind == LogTimeKind::NoTime)
        read.time.kind = LogTimeKind::OtherOrder;
    read.time.needsOrder = true;
    read.time.hasDots = separator == '.';
    return read;
}

DateRead takeDate(Front& front, DateOrder order) {
    if (front.isAtLetter())
        return dateThatBeginsWithItsMonth(front);
    const auto first = front.number(1, 4);
    const bool yearFirst = front.digits() == 4;
    const char separator = front.takeOneOf(yearFirst ? "-./" : "-./ ");
    if (!first || separator == '\0')
        return noDate();
    if (!yearFirst && front.isAtLetter())
        return dateFromNamedMonth(front, *first);
    if (!yearFirst)
        return separator == ' ' ? noDate() : dateOfNumbers(front, *first, separator, order);
    const auto month = front.number(1, 2);
    if (!month || !front.take(separator))
        return noDate();
    const auto day = front.number(1, 2);
    return day ? dateOn(*first, *month, *day) : noDate();
}

// "am", "pm", "AM", "PM" after a clock time, or nothing.
std::optional<std::int64_t> halfDayHour(Front& front, std::int64_t hour) {
    const char half = front.takeOneOf("aApP");
    if (half == '\0')
        return hour;
    if (front.takeOneOf("mM") == '\0' || hour < 1 || hour > 12)
        return std::nullopt;
    const bool isAfternoon = half == 'p' || half == 'P';
    return hour % 12 + (isAfternoon ? 12 : 0);
}

std::optional<Seconds> takeClock(Front& front) {
    const auto hour = front.number(1, 2);
    if (!hour || !front.take(':'))
        return std::nullopt;
    const auto minute = front.number(2, 2);
    if (!minute)
        return std::nullopt;
    std::int64_t second = 0;
    if (front.take(':')) {
        const auto read = front.number(2, 2);
        if (!read)
            return std::nullopt;
        second = *read;
        if (front.takeOneOf(".,") != '\0' && !front.number(1, 9))
            return std::nullopt;
    }
    front.skipSpaces();
    const auto fullHour = halfDayHour(front, *hour);
    if (!fullHour || *fullHour > 23 || *minute > 59 || second > 59)
        return std::nullopt;
    return Hours{*fullHour} + Minutes{*minute} + Seconds{second};
}

// The zone's offset from UTC, or the local one where none is written.
std::optional<Seconds> takeZone(Front& front, Seconds localOffset) {
    if (front.atEnd())
        return localOffset;
    if (front.takeOneOf("Zz") != '\0')
        return Seconds{0};
    const char sign = front.takeOneOf("+-");
    if (sign == '\0')
        return std::nullopt;
    auto hours = front.number(2, 4);
    if (!hours || front.digits() == 3)
        return std::nullopt;
    std::int64_t minutes = 0;
    if (front.digits() == 4) {
        minutes = *hours % 100;
        hours = *hours / 100;
    } else if (front.take(':')) {
        const auto read = front.number(2, 2);
        if (!read)
            return std::nullopt;
        minutes = *read;
    }
    if (*hours > 15 || minutes > 59)
        return std::nullopt;
    const Seconds offset = Hours{*hours} + Minutes{minutes};
    return sign == '-' ? -offset : offset;
}

LogTime clockAfter(const DateRead& date, Front& front, Seconds localOffset) {
    const auto clock = takeClock(front);
    if (!clock)
        return {};
    front.skipSpaces();
    const bool hasZone = !front.atEnd();
    const auto offset = takeZone(front, localOffset);
    if (!offset || !front.atEnd())
        return {};
    LogTime time = date.time;
    time.hasZone = hasZone;
    time.at = Instant{(LocalTime{date.date} + *clock - *offset).time_since_epoch()};
    return time;
}

LogTime bareSeconds(std::string_view text) {
    Front front{text};
    const auto seconds = front.number(9, 10);
    if (!seconds || !front.atEnd() || *seconds < kEarliestBareSecond || *seconds > kLatestBareSecond)
        return {};
    return {.kind = LogTimeKind::Read, .at = Instant{Seconds{*seconds}}, .hasZone = true};
}

} // namespace

LogTime readLogTime(std::string_view text, std::chrono::seconds localOffset, DateOrder order) {
    if (const LogTime bare = bareSeconds(text); bare.kind == LogTimeKind::Read)
        return bare;
    Front front{text};
    const DateRead date = takeDate(front, order);
    if (date.time.kind == LogTimeKind::NoTime || front.takeOneOf("Tt ,") == '\0')
        return {};
    front.skipSpaces();
    return clockAfter(date, front, localOffset);
}

LogTime readLogTime(std::string_view date, std::string_view clock, std::chrono::seconds localOffset,
                    DateOrder order) {
    Front dateFront{date};
    const DateRead read = takeDate(dateFront, order);
    if (read.time.kind == LogTimeKind::NoTime || !dateFront.atEnd())
        return {};
    Front clockFront{clock};
    return clockAfter(read, clockFront, localOffset);
}

} // namespace holdfast
