// SPDX-License-Identifier: GPL-3.0-or-later
// Calendars: what RFC 5545 gives as examples [M], and what libical, a reader of calendars that is not ours
// (Debian's libical-dev), makes of a whole file.
#include "core/calendar/calendar.h"

#include <gtest/gtest.h>

#include <libical/ical.h>

#include <memory>
#include <string>
#include <vector>

namespace holdfast {
namespace {

using namespace std::chrono_literals;

constexpr Instant kWritten = std::chrono::sys_days{std::chrono::year{2026} / 11 / 25} + 9h + 40min;
constexpr Instant kDue = std::chrono::sys_days{std::chrono::year{2026} / 11 / 27} + 14h;

std::string unfolded(std::string text) {
    for (std::size_t at = text.find("\r\n "); at != std::string::npos; at = text.find("\r\n ", at))
        text.erase(at, 3);
    return text;
}

std::vector<std::string> linesOf(const std::string& text) {
    std::vector<std::string> lines;
    std::size_t begin = 0;
    for (std::size_t end = text.find("\r\n"); end != std::string::npos; end = text.find("\r\n", begin)) {
        lines.push_back(text.substr(begin, end - begin));
        begin = end + 2;
    }
    EXPECT_EQ(begin, text.size()) << "each line ends with CR LF";
    return lines;
}

// Section 3.3.11: the value "Project XYZ Final Review / Conference Room - 3B / Come Prepared." as it is
// written there.
TEST(CalendarRfc5545, TextIsEscapedAsInItsExample) {
    EXPECT_EQ(calendarEscaped("Project XYZ Final Review\nConference Room - 3B\nCome Prepared."),
              "Project XYZ Final Review\\nConference Room - 3B\\nCome Prepared.");
    EXPECT_EQ(calendarEscaped("a;b,c\\d"), "a\\;b\\,c\\\\d");
    EXPECT_EQ(calendarEscaped("a:b \"c\""), "a:b \"c\"") << "a colon and quotation marks stay";
    EXPECT_EQ(calendarEscaped("a\r\nb\rc"), "a\\nb\\nc");
    EXPECT_EQ(calendarEscaped(std::string("a\x01") + "b\tc\x7F"), "a b\tc ");
}

// Section 3.1: "Lines of text SHOULD NOT be longer than 75 octets, excluding the line break", and any line
// may be folded with CR LF and one space, as its example of a DESCRIPTION is.
TEST(CalendarRfc5545, ALongLineIsFoldedAndUnfoldsToItself) {
    const std::string line = "DESCRIPTION:This is a long description that exists on a long line, which is "
                             "longer than it may be, and even longer than twice what it may be.";
    const auto lines = linesOf(calendarFolded(line));
    ASSERT_EQ(lines.size(), 2U);
    EXPECT_EQ(lines[0].size(), 75U);
    EXPECT_EQ(lines[1].front(), ' ');
    EXPECT_EQ(unfolded(calendarFolded(line)), line + "\r\n");
    EXPECT_EQ(calendarFolded(std::string(75, 'x')), std::string(75, 'x') + "\r\n");
    EXPECT_EQ(calendarFolded(std::string(76, 'x')), std::string(75, 'x') + "\r\n x\r\n");
    EXPECT_EQ(linesOf(calendarFolded(std::string(75 + 74 + 1, 'x')))[1].size(), 75U);
}

TEST(CalendarRfc5545, NoLineIsFoldedWithinACharacter) {
    for (const std::string letter : {"ü", "€", "𝄞"})
        for (std::size_t before = 0; before < 8; ++before) {
            std::string line(before, 'x');
            for (int at = 0; at < 100; ++at)
                line += letter;
            for (const std::string& each : linesOf(calendarFolded(line))) {
                EXPECT_LE(each.size(), 75U);
                EXPECT_NE(static_cast<unsigned char>(each[each.front() == ' ' ? 1 : 0]) & 0xC0U, 0x80U);
            }
            EXPECT_EQ(unfolded(calendarFolded(line)), line + "\r\n");
        }
}

TEST(CalendarRfc5545, WhatIsNotUtf8IsFoldedAllTheSame) {
    const std::string line(200, '\x80');
    EXPECT_EQ(unfolded(calendarFolded(line)), line + "\r\n");
}

// Section 3.3.5, form 2: "19980119T070000Z".
TEST(CalendarRfc5545, ATimeIsUtc) {
    EXPECT_EQ(calendarTime(std::chrono::sys_days{std::chrono::year{1998} / 1 / 19} + 7h), "19980119T070000Z");
}

struct EndCalendar {
    void operator()(icalcomponent* component) const { icalcomponent_free(component); }
};
using ReadCalendar = std::unique_ptr<icalcomponent, EndCalendar>;

ReadCalendar readByOther(const std::string& text) {
    ReadCalendar calendar{icalparser_parse_string(text.c_str())};
    if (calendar != nullptr) {
        // Adds an error to each part that is against the standard.
        icalrestriction_check(calendar.get());
        EXPECT_EQ(icalcomponent_count_errors(calendar.get()), 0) << text;
    }
    return calendar;
}

TEST(CalendarAsOthersReadIt, EachEventComesOutAsItWasPutIn) {
    const std::vector<CalendarEvent> events{
        {"order-1@shop-7", kDue, "428 Jürgen Groß-Müller; \"the elder\", 3 garments \\ none", false},
        {"order-2@shop-7", kDue + 24h,
         "429 " + std::string(70, 'x') + " Þórdís Ævarsdóttir of the long name, 1 garment\nsecond line",
         true},
    };
    const ReadCalendar calendar = readByOther(calendarText(events, kWritten));
    ASSERT_NE(calendar, nullptr);
    EXPECT_EQ(icalcomponent_isa(calendar.get()), ICAL_VCALENDAR_COMPONENT);
    ASSERT_EQ(icalcomponent_count_components(calendar.get(), ICAL_VEVENT_COMPONENT), 2);
    icalcomponent* each = icalcomponent_get_first_component(calendar.get(), ICAL_VEVENT_COMPONENT);
    for (const CalendarEvent& event : events) {
        EXPECT_EQ(icalcomponent_get_uid(each), event.uid);
        EXPECT_EQ(icalcomponent_get_summary(each), event.summary);
        const icaltimetype at = icalcomponent_get_dtstart(each);
        EXPECT_TRUE(icaltime_is_utc(at));
        EXPECT_EQ(icaltime_as_timet(at), event.at.time_since_epoch().count());
        EXPECT_EQ(icaltime_as_timet(icalcomponent_get_dtstamp(each)), kWritten.time_since_epoch().count());
        EXPECT_EQ(icalcomponent_get_status(each),
                  event.isTentative ? ICAL_STATUS_TENTATIVE : ICAL_STATUS_CONFIRMED);
        each = icalcomponent_get_next_component(calendar.get(), ICAL_VEVENT_COMPONENT);
    }
}

TEST(CalendarAsOthersReadIt, ACalendarOfNothingIsNotWrong) {
    const ReadCalendar empty{icalparser_parse_string(calendarText({}, kWritten).c_str())};
    EXPECT_NE(empty, nullptr);
}

} // namespace
} // namespace holdfast
