// SPDX-License-Identifier: GPL-3.0-or-later
// Words, numbers and codes as they are read and written, of drawn text: one number for all that comes of it
// (see same_results_test.cpp). The letters are those on which something turns: signs, quotation marks, ends
// of lines, spaces of every kind, bytes that are no letter.

#include "core/csv/csv.h"
#include "core/film/climate_log.h"
#include "core/trade/dates.h"
#include "core/trade/day_span.h"
#include "core/trade/folded.h"
#include "core/trade/limits.h"
#include "core/trade/money.h"
#include "core/trade/near_words.h"
#include "core/trade/paper_code.h"
#include "core/trade/unit_words.h"
#include "tests/core/drawn_sum.h"

#include <gtest/gtest.h>

#include <array>
#include <span>
#include <string>

namespace holdfast::test {
namespace {

std::string drawnFrom(Draw& draw, std::span<const std::string_view> letters, std::int64_t most) {
    std::string text;
    for (std::int64_t letter = draw.between(0, most); letter > 0; --letter)
        text += letters[static_cast<std::size_t>(draw.between(0, std::ssize(letters) - 1))];
    return text;
}

std::string utf8Of(unsigned letter) {
    if (letter < 0x80)
        return {static_cast<char>(letter)};
    if (letter < 0x800)
        return {static_cast<char>(0xC0 | (letter >> 6)), static_cast<char>(0x80 | (letter & 0x3F))};
    return {static_cast<char>(0xE0 | (letter >> 12)), static_cast<char>(0x80 | ((letter >> 6) & 0x3F)),
            static_cast<char>(0x80 | (letter & 0x3F))};
}

// ── letters ──

std::uint64_t sumOfLetters() {
    DrawnSum sum;
    for (unsigned letter = 0; letter < 0x3100; ++letter) {
        sum << folded(utf8Of(letter)) << folded("a" + utf8Of(letter) + "Ä") << trimmed(utf8Of(letter) + "b")
            << characterCount(utf8Of(letter)).value_or(99);
        const auto typed = typedText("a" + utf8Of(letter) + "b", {.field = "name", .what = "The name"});
        sum << (typed.ok() ? *typed : typed.error().message.english());
    }
    for (int first = 0; first < 256; ++first)
        for (const int second : {0x00, 0x41, 0x7F, 0x80, 0x9F, 0xA0, 0xBF, 0xC0, 0xFF}) {
            const std::string two{static_cast<char>(first), static_cast<char>(second)};
            sum << folded(two) << characterCount(two).value_or(99)
                << characterCount(two + "\x80").value_or(99) << characterCount(two + "\x80\x80").value_or(99);
        }
    return sum.value();
}

TEST(SameWords, EveryLetterFoldedAndCounted) {
    EXPECT_EQ(sumOfLetters(), 2488167974375749742u);
}

std::uint64_t sumOfNearWords() {
    constexpr std::array<std::string_view, 4> kLetters{"a", "b", "c", "ö"};
    Draw draw{51};
    DrawnSum sum;
    for (int pair = 0; pair < 3000; ++pair) {
        const std::string word = drawnFrom(draw, kLetters, 8);
        std::string typed = draw.oneIn(4) ? drawnFrom(draw, kLetters, 8) : word;
        if (draw.oneIn(3) && !typed.empty())
            typed.erase(static_cast<std::size_t>(draw.between(0, std::ssize(typed) - 1)), 1);
        if (draw.oneIn(3))
            typed.insert(static_cast<std::size_t>(draw.between(0, std::ssize(typed))), "b");
        if (draw.oneIn(4) && typed.size() > 1)
            std::swap(typed[0], typed[1]);
        sum << isNearlyBeginningOf(typed, word);
    }
    return sum.value();
}

TEST(SameWords, WordsNearlyTyped) {
    EXPECT_EQ(sumOfNearWords(), 3234611994998876997u);
}

// ── files ──

std::uint64_t sumOfTables() {
    constexpr std::array<std::string_view, 16> kLetters{
        "a",  "b",  ",",     ";",    "\t", "\"", "\"\"",         "\r\n",
        "\n", "\r", "\"a\"", "\"\n", " ",  "7",  "\xEF\xBB\xBF", "é"};
    Draw draw{52};
    DrawnSum sum;
    for (int file = 0; file < 3000; ++file) {
        const std::string text = drawnFrom(draw, kLetters, 24);
        CsvReader reader{text};
        for (;;) {
            const auto record = reader.next();
            sum << static_cast<int>(reader.separator()) << reader.share();
            if (!record.ok()) {
                sum << record.error().message.english();
                break;
            }
            if (!*record)
                break;
            sum << (*record)->line;
            for (const std::string& field : (*record)->fields)
                sum << field;
        }
    }
    return sum.value();
}

TEST(SameWords, TablesOfManyForms) {
    EXPECT_EQ(sumOfTables(), 151375487668751910u);
}

std::uint64_t sumOfFields() {
    constexpr std::array<std::string_view, 14> kLetters{"a", "'",  "=", "+", "-",  "@",  "\t",
                                                        "|", "\\", " ", ",", "\"", "\n", "ß"};
    Draw draw{53};
    DrawnSum sum;
    for (int field = 0; field < 2000; ++field) {
        const std::string text = drawnFrom(draw, kLetters, 5);
        CsvLine line;
        sum << line.text(text).plain(text).empty().end() << unguarded(text);
        for (const std::string& part : splitList(text))
            sum << part;
        sum << joinedList({text, "a", text});
    }
    return sum.value();
}

TEST(SameWords, FieldsWrittenAndReadAgain) {
    EXPECT_EQ(sumOfFields(), 8549417344960871612u);
}

// ── numbers ──

std::uint64_t sumOfNumbers() {
    constexpr std::array<std::string_view, 15> kLetters{"0", "1", "5", "9", "12",     "345", ".", ",",
                                                        " ", "-", "+", "£", "\u00A0", "e",   "00"};
    Draw draw{54};
    DrawnSum sum;
    for (int text = 0; text < 4000; ++text) {
        CsvNumbers numbers;
        for (int number = 0; number < 3; ++number) {
            const std::string typed = drawnFrom(draw, kLetters, 6);
            const auto plain = numbers.plain(typed);
            sum << (plain.ok() ? *plain : plain.error().message.english());
            for (const int exponent : {0, 2, 3}) {
                const auto amount = parseAmount(typed, {"GBP", "£", exponent});
                sum << (amount ? amount->minor : -999);
            }
        }
    }
    for (int amount = 0; amount < 600; ++amount) {
        const Money money{draw.oneIn(3)   ? draw.between(-9, 9) * 1000
                          : draw.oneIn(2) ? draw.between(-1200, 1200)
                                          : draw.between(-99'999'999, 99'999'999)};
        for (const int exponent : {0, 2, 3}) {
            const Currency currency{"GBP", "£", exponent};
            sum << plainAmount(money, currency) << groupedAmount(money, currency)
                << spokenAmount(money, currency);
        }
        for (const Rounding rounding : {Rounding::HalfUp, Rounding::HalfEven})
            sum << divided(money, draw.between(-20, 20), draw.between(1, 20), rounding).minor
                << divided(money, 1, 2, rounding).minor;
        sum << groupedNumber(money.minor) << numberWords(static_cast<double>(money.minor) / 20)
            << countWords(money.minor, "day")
            << decimalNumber(static_cast<double>(money.minor) / 8, static_cast<int>(draw.between(0, 3)));
    }
    return sum.value();
}

TEST(SameWords, NumbersAndMoneyReadAndWritten) {
    EXPECT_EQ(sumOfNumbers(), 16862353864917520561u);
}

std::uint64_t sumOfDays() {
    Draw draw{55};
    DrawnSum sum;
    LocalDate day = localDate(2023, 12, 20);
    for (int at = 0; at < 1600; ++at, day += Days{1}) {
        const DaySpan span{day, day + Days{draw.oneIn(3) ? 0 : draw.between(1, 60)}};
        sum << isoDate(day) << spokenDay(day) << spokenDate(day) << spokenSpan(span) << nearSpan(span);
        const LocalTime time = LocalTime{day} + Minutes{draw.between(0, 24 * 60 - 1)};
        sum << clockTime(time) << isoLocalMinute(time)
            << isoInstant(Instant{time.time_since_epoch()} + Seconds{draw.between(0, 59)});
    }
    constexpr std::array<std::string_view, 8> kParts{"2026", "-", "02", "29", "00", "13", "12", "31"};
    for (int text = 0; text < 4000; ++text) {
        std::string typed = draw.oneIn(2) ? drawnFrom(draw, kParts, 6)
                                          : std::to_string(draw.between(2023, 2028)) + "-0" +
                                                std::to_string(draw.between(0, 9)) + "-" +
                                                std::to_string(draw.between(27, 33));
        const auto date = parseIsoDate(typed);
        sum << (date ? isoDate(*date) : std::string{"-"});
    }
    return sum.value();
}

TEST(SameWords, DaysAndHours) {
    EXPECT_EQ(sumOfDays(), 15083647338145773861u);
}

// ── logs ──

// A log of lines whose times, measures or headers are put together of drawn parts, as no logger would.
void addReadLog(DrawnSum& sum, const std::string& text) {
    const auto log = readClimateLog(text, alwaysAhead(Hours{1}));
    if (!log.ok()) {
        sum << log.error().message.english();
        return;
    }
    for (const ClimateReading& reading : log->readings)
        sum << reading.at.time_since_epoch().count() << reading.temperature.value
            << (reading.hasHumidity ? reading.humidity.percent : -1.0);
    for (const Sentence& words : log->skipped)
        sum << words;
    sum << log->wasFahrenheit << log->withoutHumidity << log->skippedCount;
}

std::uint64_t sumOfLogTimes() {
    constexpr std::array<std::string_view, 30> kParts{
        "APR", "Aug",   "Nov",      "november", "Feb", "25", "2026", "26",     "9", "02",
        "29",  "31",    "-",        "-",        "/",   "/",  " ",    " ",      ",", ".",
        "T",   "09:30", "12:59:59", "24:00",    " PM", "am", "Z",    "+01:00", ":", "x"};
    Draw draw{58};
    DrawnSum sum;
    for (int log = 0; log < 2500; ++log) {
        std::string text = "Time;Temp;RH\n2026-11-25 09:30;20;40\n";
        for (int line = 0; line < 3; ++line) {
            std::string time = drawnFrom(draw, kParts, 8);
            switch (draw.between(0, 4)) {
            case 0:
                time = "25 Nov" + drawnFrom(draw, kParts, 4);
                break;
            case 1:
                time = "Nov 25" + drawnFrom(draw, kParts, 4);
                break;
            case 2:
                time = "2026-11-25" + drawnFrom(draw, kParts, 3);
                break;
            case 3:
                time = "25/11/2026 " + drawnFrom(draw, kParts, 3);
                break;
            default:
                if (draw.oneIn(3))
                    time = std::to_string(draw.oneIn(2) ? draw.between(99'999'998, 100'000'002)
                                                        : draw.between(7'258'118'398, 7'258'118'402)) +
                           (draw.oneIn(4) ? "x" : "");
                break;
            }
            text += time + ";20;40\n";
        }
        addReadLog(sum, text);
    }
    return sum.value();
}

TEST(SameWords, TimesOfLogs) {
    EXPECT_EQ(sumOfLogTimes(), 7322928125242551692u);
}

std::uint64_t sumOfLogMeasures() {
    constexpr std::array<std::string_view, 24> kParts{"1",
                                                      "20",
                                                      "4",
                                                      "0",
                                                      "-",
                                                      "+",
                                                      ".",
                                                      ",",
                                                      " ",
                                                      "C",
                                                      "°C",
                                                      "°F",
                                                      " F",
                                                      "%",
                                                      "% RH",
                                                      "\xB0",
                                                      "º",
                                                      "rh",
                                                      "nan",
                                                      "inf",
                                                      "e3",
                                                      "99999999999999999999",
                                                      "00000000000000000000000000000000",
                                                      "x"};
    const std::string longWord(39, 'a');
    Draw draw{59};
    DrawnSum sum;
    for (int log = 0; log < 2500; ++log) {
        std::string text = draw.oneIn(2) ? "Time;Temp;RH\n" : "Time;Temp °F;RH %\n";
        for (int line = 0; line < 12; ++line)
            text += "2026-11-" + std::to_string(10 + line) + " 09:30;20;40\n";
        text += "2026-11-25 09:30;" + (draw.oneIn(2) ? "20" : drawnFrom(draw, kParts, 4)) + ";" +
                drawnFrom(draw, kParts, 4) + "\n";
        text += "2026-11-26 09:30;" + longWord + drawnFrom(draw, kParts, 3) + ";40\n";
        addReadLog(sum, text);
    }
    return sum.value();
}

TEST(SameWords, MeasuresOfLogs) {
    EXPECT_EQ(sumOfLogMeasures(), 12505649452007368140u);
}

std::uint64_t sumOfLogHeaders() {
    constexpr std::array<std::string_view, 22> kNames{
        "Time",      "Date",      "Clock",      "Temp",        "Temperature °C",
        "Temp (°F)", "RH",        "Humidity %", "Feuchte [%]", "Dew point °C",
        "No.",       "",          "°C",         "%RH",         "Battery",
        "Timestamp", "Date/Time", "Temp 2",     "Uhrzeit",     "Datum",
        "Ch 1",      "\"Temp\""};
    constexpr std::array<std::string_view, 8> kFields{
        "2026-11-25 09:30", "2026-11-25", "09:30", "20.5", "44", "7", "", "1795599000"};
    Draw draw{60};
    DrawnSum sum;
    for (int log = 0; log < 2500; ++log) {
        const std::int64_t columns = draw.between(1, 5);
        std::string text = draw.oneIn(4) ? "Logger 7\n" : "";
        for (int line = 0; line < 4; ++line) {
            for (std::int64_t column = 0; column < columns; ++column) {
                const auto& parts = line == 0 ? std::span<const std::string_view>{kNames}
                                              : std::span<const std::string_view>{kFields};
                text += std::string{column > 0 ? "," : ""} +
                        std::string{
                            line > 0 && column < 2
                                ? kFields[static_cast<std::size_t>(3 * column)]
                                : parts[static_cast<std::size_t>(draw.between(0, std::ssize(parts) - 1))]};
            }
            text += "\n";
        }
        addReadLog(sum, text);
    }
    return sum.value();
}

TEST(SameWords, HeadersOfLogs) {
    EXPECT_EQ(sumOfLogHeaders(), 4638478322370388327u);
}

// ── codes ──

std::uint64_t sumOfCodes() {
    constexpr std::array<std::string_view, 16> kLetters{"4",  "18", "0",  "-",  ".",  ":", "b", "z",
                                                        "aa", "R",  "R-", "KH", "TR", " ", "ö", "7"};
    Draw draw{56};
    DrawnSum sum;
    for (int code = 0; code < 4000; ++code) {
        const std::string number =
            std::array<std::string, 3>{"418", "418-b", "R-09"}[static_cast<std::size_t>(draw.between(0, 2))];
        const std::int64_t id = draw.between(1, 100'000);
        std::string typed = draw.oneIn(3) ? paperCode(number, id) : drawnFrom(draw, kLetters, 7);
        if (draw.oneIn(5) && !typed.empty())
            typed[static_cast<std::size_t>(draw.between(0, std::ssize(typed) - 1))] = 'F';
        const auto read = readPaperCode(typed);
        sum << paperCode(number, id) << read.has_value();
        if (read)
            sum << static_cast<int>(read->kind) << read->number << read->letter << read->check
                << read->label() << read->fits(id);
    }
    return sum.value();
}

TEST(SameWords, CodesOfPapers) {
    EXPECT_EQ(sumOfCodes(), 17227429481662778056u);
}

// ── limits ──

std::uint64_t sumOfLimits() {
    Draw draw{57};
    DrawnSum sum;
    const auto add = [&](const auto& checked) {
        sum << (checked.ok() ? "" : checked.error().message.english());
    };
    for (int round = 0; round < 1500; ++round) {
        const std::int64_t least = draw.between(-3, 3);
        const NumberLimits limits{"width", phrase("The width"), least, least + draw.between(0, 3), " mm"};
        add(within(draw.between(-4, 7), limits));
        add(measuredWithin(static_cast<double>(draw.between(-16, 28)) / 4, limits));
        TextLimits text{.field = "note", .what = "The note"};
        text.least = static_cast<std::size_t>(draw.between(0, 2));
        text.most = text.least + static_cast<std::size_t>(draw.between(0, 3));
        text.mayBreakLines = draw.oneIn(2);
        constexpr std::array<std::string_view, 7> kLetters{"a", "é", " ", "\n", "\x7F", "\x1F", "\xFF"};
        add(typedText(drawnFrom(draw, kLetters, 6), text));
    }
    return sum.value();
}

TEST(SameWords, LimitsMetExactly) {
    EXPECT_EQ(sumOfLimits(), 9350364178235563891u);
}

} // namespace
} // namespace holdfast::test
