// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/trade/day_span.h"

namespace holdfast {

namespace {

// "28 Dec 2026" without its last word, or without its last two.
std::string withoutYear(LocalDate date) {
    const std::string whole = spokenDate(date);
    return whole.substr(0, whole.rfind(' '));
}

std::string dayOfMonth(LocalDate date) {
    const std::string whole = spokenDate(date);
    return whole.substr(0, whole.find(' '));
}

} // namespace

std::string spokenSpan(const DaySpan& span) {
    const std::chrono::year_month_day first{span.first};
    const std::chrono::year_month_day last{span.last};
    const std::string ends = spokenDate(span.last);
    if (span.first == span.last)
        return ends;
    if (first.year() != last.year())
        return spokenDate(span.first) + " – " + ends;
    if (first.month() != last.month())
        return withoutYear(span.first) + " – " + ends;
    return dayOfMonth(span.first) + "–" + ends;
}

std::string nearSpan(const DaySpan& span) {
    const std::chrono::year_month_day first{span.first};
    const std::chrono::year_month_day last{span.last};
    const std::string ends = withoutYear(span.last);
    if (span.first == span.last)
        return ends;
    if (first.year() != last.year() || first.month() != last.month())
        return withoutYear(span.first) + " – " + ends;
    return dayOfMonth(span.first) + "–" + ends;
}

} // namespace holdfast
