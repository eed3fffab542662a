// SPDX-License-Identifier: GPL-3.0-or-later
// One log in every shape in which loggers write it: the readings are the same, or the file is asked about.
#include "core/film/climate_log.h"

#include "tests/core/shelf_builders.h"

#include <gtest/gtest.h>

#include <iconv.h>

#include <array>
#include <chrono>
#include <cstdio>
#include <string>

namespace holdfast::test {
namespace {

using Written = std::string (*)(std::chrono::year_month_day);

std::string numbers(const char* form, std::chrono::year_month_day date, bool monthFirst) {
    std::array<char, 16> text{};
    const auto day = static_cast<unsigned>(date.day());
    const auto month = static_cast<unsigned>(date.month());
    std::snprintf(text.data(), text.size(), form, monthFirst ? month : day, monthFirst ? day : month,
                  static_cast<int>(date.year()));
    return text.data();
}

std::string isoDay(std::chrono::year_month_day date) {
    return isoDate(LocalDate{date});
}
std::string dayFirst(std::chrono::year_month_day date) {
    return numbers("%02u/%02u/%d", date, false);
}
std::string dayFirstWithDots(std::chrono::year_month_day date) {
    return numbers("%02u.%02u.%d", date, false);
}
std::string monthFirst(std::chrono::year_month_day date) {
    return numbers("%02u/%02u/%d", date, true);
}
std::string monthFirstShort(std::chrono::year_month_day date) {
    return numbers("%u-%u-%d", date, true);
}
std::string monthByName(std::chrono::year_month_day date) {
    constexpr std::array kNames{"Jan", "Feb", "Mar", "Apr", "May", "Jun",
                                "Jul", "Aug", "Sep", "Oct", "Nov", "Dec"};
    return std::to_string(static_cast<unsigned>(date.day())) + "-" +
           kNames[static_cast<unsigned>(date.month()) - 1] + "-" +
           std::to_string(static_cast<int>(date.year()));
}

// Every half hour for some days from 1 March on.
std::string logOver(int days, Written written, const char* separator = ",") {
    std::string text = std::string("Time") + separator + "Temp" + separator + "RH\n";
    for (int line = 0; line < days * 48; ++line) {
        const LocalTime time = LocalTime{localDate(2026, 3, 1)} + Minutes{30 * line};
        text += written(std::chrono::year_month_day{dateOf(time)}) + " " + clockTime(time) + separator +
                std::to_string(18 + line % 5) + separator + std::to_string(40 + line % 7) + "\n";
    }
    return text;
}

Result<ClimateLog> read(std::string_view text, std::optional<DateOrder> order = {}) {
    return readClimateLog(text, alwaysAhead(Seconds{0}), {}, order);
}

ClimateSeries readingsOf(std::string_view text, std::optional<DateOrder> order = {}) {
    const auto log = read(text, order);
    EXPECT_TRUE(log.ok()) << (log.ok() ? "" : log.error().message.english());
    return log.ok() ? log->readings : ClimateSeries{};
}

// What the C library makes of a text in another code.
std::string inCode(const char* code, std::string text) {
    const iconv_t converter = iconv_open(code, "UTF-8");
    EXPECT_NE(converter, reinterpret_cast<iconv_t>(-1)) << code;
    std::string converted(text.size() * 4 + 8, '\0');
    char* from = text.data();
    char* to = converted.data();
    std::size_t fromLeft = text.size();
    std::size_t toLeft = converted.size();
    EXPECT_EQ(iconv(converter, &from, &fromLeft, &to, &toLeft), 0u) << code;
    iconv_close(converter);
    converted.resize(converted.size() - toLeft);
    return converted;
}

TEST(ClimateLogShapes, TheMonthFirstIsKnownByTheEvenStep) {
    // Ten days of March: no day above 12, so each date exists both ways.
    const ClimateSeries expected = readingsOf(logOver(10, isoDay));
    ASSERT_EQ(expected.size(), 480u);
    EXPECT_EQ(expected.back().at, at(localDate(2026, 3, 10), 23, 30));
    for (const Written written : {dayFirst, dayFirstWithDots, monthFirst, monthFirstShort, monthByName})
        EXPECT_EQ(readingsOf(logOver(10, written)), expected)
            << written(std::chrono::year_month_day{localDate(2026, 3, 2)});
    EXPECT_EQ(read(logOver(10, monthFirst))->dateOrder, DateOrder::MonthFirst);
    EXPECT_EQ(read(logOver(10, dayFirst))->dateOrder, DateOrder::DayFirst);
    EXPECT_TRUE(read(logOver(10, monthFirst))->doubtfulDate) << "likely, and can be chosen otherwise";
    EXPECT_FALSE(read(logOver(20, monthFirst))->doubtfulDate) << "certain";
    EXPECT_EQ(read(logOver(10, isoDay))->dateOrder, std::nullopt);
    EXPECT_EQ(read(logOver(10, monthByName))->dateOrder, std::nullopt);
}

TEST(ClimateLogShapes, ADayAboveTwelveDecidesAlsoForTheLinesAboveIt) {
    const ClimateSeries expected = readingsOf(logOver(20, isoDay));
    EXPECT_EQ(readingsOf(logOver(20, monthFirst)), expected);
    EXPECT_EQ(readingsOf(logOver(20, dayFirst)), expected);
    EXPECT_EQ(readingsOf("Time,Temp,RH\n11/05/2026 09:30,20,40\n11/25/2026 09:30,20,40\n").front().at,
              at(localDate(2026, 11, 5), 9, 30));
}

TEST(ClimateLogShapes, OneReadingADayTells) {
    const std::string text = "01/03/2026 06:00,20,40\n01/04/2026 06:00,20,40\n01/05/2026 06:00,20,40\n"
                             "01/06/2026 06:00,20,40\n";
    EXPECT_EQ(readingsOf(text).back().at, at(localDate(2026, 1, 6), 6));
}

TEST(ClimateLogShapes, OneGapAndALateSecondDoNotMislead) {
    std::string text = logOver(6, monthFirst);
    text.erase(text.find("03/03/2026 10:00"), text.find("03/04/2026 15:00") - text.find("03/03/2026 10:00"));
    const std::string second = "03/02/2026 11:30";
    text.replace(text.find(second), second.size(), second + ":01");
    EXPECT_EQ(readingsOf(text).back().at, at(localDate(2026, 3, 6), 23, 30));
}

TEST(ClimateLogShapes, ADayAndNoMoreIsAskedAbout) {
    const auto log = read(logOver(1, monthFirst));
    ASSERT_TRUE(log.ok());
    ASSERT_TRUE(log->mustBeAsked());
    EXPECT_EQ(log->doubtfulDate->written, "03/01/2026");
    EXPECT_EQ(log->doubtfulDate->dayFirst, localDate(2026, 1, 3));
    EXPECT_EQ(log->doubtfulDate->monthFirst, localDate(2026, 3, 1));
    EXPECT_TRUE(log->readings.empty());
    EXPECT_EQ(readingsOf(logOver(1, monthFirst), DateOrder::MonthFirst), readingsOf(logOver(1, isoDay)));
    EXPECT_EQ(readingsOf(logOver(1, monthFirst), DateOrder::DayFirst).front().at, at(localDate(2026, 1, 3)));
    // What is asked about is a date that has two meanings: 1 January has one.
    const auto fromNewYear = read("01/01/2026 09:10,20,40\n01/02/2026 17:45,20,40\n01/04/2026 08:02,20,40\n");
    ASSERT_TRUE(fromNewYear->mustBeAsked());
    EXPECT_EQ(fromNewYear->doubtfulDate->written, "01/02/2026");
    // With dots the day is first, and 3 March is the same either way.
    EXPECT_EQ(readingsOf(logOver(1, dayFirstWithDots)), readingsOf(logOver(1, isoDay)));
    EXPECT_EQ(readingsOf("03/03/2026 09:30,20,40\n").front().at, at(localDate(2026, 3, 3), 9, 30));
}

TEST(ClimateLogShapes, NotesAtNoEvenStepAreAskedAbout) {
    const std::string text = "03/01/2026 09:10,20,40\n03/02/2026 17:45,20,40\n03/04/2026 08:02,20,40\n"
                             "03/08/2026 12:31,20,40\n";
    EXPECT_TRUE(read(text)->mustBeAsked());
}

TEST(ClimateLogShapes, BothOrdersInOneLogAreRefusedByLine) {
    const auto log = read("Time,Temp,RH\n25/11/2026 09:30,20,40\n11/26/2026 09:30,20,40\n");
    ASSERT_FALSE(log.ok());
    EXPECT_EQ(log.error().message.english(),
              "Line 3: “11/26/2026 09:30” has the month before the day, unlike the lines above it.");
    const auto other = read("Time,Temp,RH\n11/25/2026 09:30,20,40\n26/11/2026 09:30,20,40\n");
    ASSERT_FALSE(other.ok());
    EXPECT_EQ(other.error().message.english(),
              "Line 3: “26/11/2026 09:30” has the day before the month, unlike the lines above it.");
}

TEST(ClimateLogShapes, AMonthMayBeNamed) {
    const Instant expected = at(localDate(2026, 11, 1), 9, 30);
    for (const char* time : {"01-Nov-2026 09:30", "1-NOV-2026 09:30:00", "1 Nov 2026 9:30 AM",
                             "01/Nov/2026 09:30", "1 November 2026 09:30", "01-Nov-26 09:30",
                             "Nov 1 2026 09:30", "\"Nov 1, 2026 09:30\"", "\"November 1, 2026, 09:30\""})
        EXPECT_EQ(readingsOf(std::string(time) + ",20,40\n").at(0).at, expected) << time;
    EXPECT_EQ(readingsOf("Date,Time,Temp,RH\n01-Nov-2026,09:30,20,40\n").at(0).at, expected);
    for (const char* time : {"01-Nvo-2026 09:30", "31-Nov-2026 09:30", "Nov 2026 09:30", "May 09:30"})
        EXPECT_FALSE(read(std::string(time) + ",20,40\n").ok()) << time;
}

TEST(ClimateLogShapes, TemperatureAloneIsReadAndTheHumidityIsNotZero) {
    const Instant first = at(localDate(2026, 11, 25), 9, 30);
    for (const char* text :
         {"Time,Temperature (°C)\n2026-11-25 09:30,21.5\n2026-11-25 10:00,22\n",
          "Logger 3; serial 0042\nStart: 25.11.2026\n\nDatum/Uhrzeit;Temperatur (°C)\n25.11.2026 09:30;21,5\n"
          "25.11.2026 10:00;22,0\n",
          "2026-11-25 09:30\t21.5\n2026-11-25 10:00\t22\n", "25/11/2026,09:30,21.5\n25/11/2026,10:00,22\n",
          "Date,Time,Temp F\n25-Nov-2026,09:30,70.7\n25-Nov-2026,10:00,71.6\n"}) {
        const auto log = read(text);
        ASSERT_TRUE(log.ok()) << text << log.error().message.english();
        ASSERT_EQ(log->readings.size(), 2u) << text;
        EXPECT_EQ(log->withoutHumidity, 2u) << text;
        EXPECT_EQ(log->readings[0].at, first) << text;
        EXPECT_NEAR(log->readings[0].temperature.value, 21.5, 1e-9) << text;
        EXPECT_EQ(log->readings[0].knownHumidity(), std::nullopt) << text;
    }
}

TEST(ClimateLogShapes, ARemarkThatNamesATemperatureIsNoHeader) {
    EXPECT_EQ(
        readingsOf("Time of readout,Temperature logger\nTime,Temp,RH\n2026-11-25 09:30,21.5,44\n").at(0),
        (ClimateReading{at(localDate(2026, 11, 25), 9, 30), {21.5}, {44}}));
}

TEST(ClimateLogShapes, AHumidityLeftOpenIsNotKnown) {
    const auto readings = readingsOf("Time,Temp,RH\n2026-11-25 09:30,20,\n2026-11-25 10:00,20,45\n");
    ASSERT_EQ(readings.size(), 2u);
    EXPECT_FALSE(readings[0].hasHumidity);
    EXPECT_TRUE(readings[1].hasHumidity);
}

TEST(ClimateLogShapes, Utf16IsReadInEitherByteOrder) {
    const std::string text = "Logger “Søndag 𝄞”\n" + logOver(3, isoDay, ";");
    const ClimateSeries expected = readingsOf(text);
    ASSERT_EQ(expected.size(), 144u);
    for (const char* code : {"UTF-16LE", "UTF-16BE"}) {
        const std::string plain = inCode(code, text);
        EXPECT_EQ(readingsOf(plain), expected) << code;
        EXPECT_EQ(readingsOf(inCode(code, "\uFEFF" + text)), expected) << code << " with its mark";
        EXPECT_EQ(readingsOf(plain + plain.substr(0, 1)), expected) << code << ", cut in a letter";
    }
    EXPECT_EQ(readingsOf(inCode("ISO-8859-1", logOver(3, isoDay, "\t"))), expected);
}

TEST(ClimateLogShapes, WordsInUtf16ComeOutAsTheCLibraryPutsThem) {
    const std::string text = "Time,Temp,RH\n“𝄞é漢ø”,20,40\n2026-11-25 09:30,21.5,44\n";
    EXPECT_EQ(read(inCode("UTF-16LE", text))->skipped.at(0), "Line 2: ““𝄞é漢ø”” is not a time.");
    EXPECT_EQ(read(inCode("UTF-16BE", "\uFEFF" + text))->skipped.at(0), "Line 2: ““𝄞é漢ø”” is not a time.");
    // Half a pair is no letter, at the end of the log too.
    const std::string halves = inCode("UTF-16BE", "\uFEFFTime,Temp,RH\n") +
                               std::string{"\0a\xDC\0\0b\xD8\0\0c", 10} +
                               inCode("UTF-16BE", ",20,40\n2026-11-25 09:30,21.5,44\n") + "\xD8\x34";
    EXPECT_EQ(read(halves)->skipped.at(0), "Line 2: “a\uFFFDb\uFFFDc” is not a time.");
    // The first and last letters of two, three and four bytes.
    const std::string edges = "\u0080\u07FF\u0800\uFFFD\U00010000\U0010FFFD";
    const std::string edgesLine = "Time,Temp,RH\n“" + edges + "”,20,40\n2026-11-25 09:30,21.5,44\n";
    EXPECT_EQ(read(inCode("UTF-16LE", "\uFEFF" + edgesLine))->skipped.at(0),
              "Line 2: ““" + edges + "”” is not a time.");
}

} // namespace
} // namespace holdfast::test
