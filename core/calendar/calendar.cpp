// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/calendar/calendar.h"

#include <algorithm>

namespace holdfast {

namespace {

constexpr std::size_t kMostOctets = 75; // of a line, without its end

bool isInsideCharacter(char octet) {
    return (static_cast<unsigned char>(octet) & 0xC0U) == 0x80U;
}

} // namespace

std::string calendarEscaped(std::string_view text) {
    constexpr unsigned char kFirstThatIsPlain = 0x20;
    constexpr unsigned char kDelete = 0x7F;
    std::string escaped;
    for (std::size_t at = 0; at < text.size(); ++at) {
        const char letter = text[at];
        const auto octet = static_cast<unsigned char>(letter);
        if (letter == '\\' || letter == ';' || letter == ',')
            (escaped += '\\') += letter;
        else if (letter == '\n' || (letter == '\r' && !text.substr(at + 1).starts_with('\n')))
            escaped += "\\n";
        else if (letter == '\t' || (octet >= kFirstThatIsPlain && octet != kDelete))
            escaped += letter;
        else if (letter != '\r')
            escaped += ' ';
    }
    return escaped;
}

std::string calendarFolded(std::string_view line) {
    std::string folded;
    std::size_t room = kMostOctets;
    while (line.size() > room) {
        std::size_t end = room;
        while (end > 0 && isInsideCharacter(line[end]))
            --end;
        if (end == 0) // no character is that long: what is not UTF-8 is cut anywhere
            end = room;
        folded.append(line.substr(0, end)) += "\r\n ";
        line.remove_prefix(end);
        room = kMostOctets - 1; // the space counts
    }
    return folded.append(line) += "\r\n";
}

std::string calendarTime(Instant at) {
    std::string time = isoInstant(at);
    std::erase_if(time, [](char letter) { return letter == '-' || letter == ':'; });
    return time;
}

std::string calendarText(std::span<const CalendarEvent> events, Instant written) {
    std::string text;
    const auto line = [&text](std::string_view words) { text += calendarFolded(words); };
    line("BEGIN:VCALENDAR");
    line("VERSION:2.0");
    line("PRODID:-//Holdfast//Due days//EN");
    line("CALSCALE:GREGORIAN");
    for (const CalendarEvent& event : events) {
        line("BEGIN:VEVENT");
        line("UID:" + event.uid);
        line("DTSTAMP:" + calendarTime(written));
        line("DTSTART:" + calendarTime(event.at));
        line("SUMMARY:" + calendarEscaped(event.summary));
        line(event.isTentative ? "STATUS:TENTATIVE" : "STATUS:CONFIRMED");
        line("TRANSP:TRANSPARENT");
        line("END:VEVENT");
    }
    line("END:VCALENDAR");
    return text;
}

} // namespace holdfast
