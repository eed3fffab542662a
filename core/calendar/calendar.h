// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
// A calendar as RFC 5545 (iCalendar) has it: UTF-8, lines that end with CR LF and are folded where they are
// longer than 75 octets, texts escaped. Each event is a moment without length, which takes up nobody's time.

#include "core/trade/dates.h"

#include <span>
#include <string>
#include <string_view>

namespace holdfast {

struct CalendarEvent {
    std::string uid; // the same each time the event is written, and of no other: letters, digits, - . @
    Instant at;
    std::string summary;      // any text
    bool isTentative = false; // it is not sure that it will be
};

// The whole file. `written` is the moment of writing: what a calendar has from an earlier one is replaced.
std::string calendarText(std::span<const CalendarEvent> events, Instant written);

// ── its parts ──
// Section 3.3.11: a backslash before backslashes, semicolons and commas, "\n" for a line break. Control
// characters, which a text must not have, become spaces.
std::string calendarEscaped(std::string_view text);
// Section 3.1: CR LF and a space within a line that is longer than 75 octets, never within a character; CR LF
// at its end.
std::string calendarFolded(std::string_view line);
// Section 3.3.5, form 2: "20261125T150000Z".
std::string calendarTime(Instant at);

} // namespace holdfast
