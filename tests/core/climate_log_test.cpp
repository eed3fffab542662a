// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/film/climate_log.h"

#include "tests/core/shelf_builders.h"

#include <gtest/gtest.h>

#include <chrono>
#include <random>

namespace holdfast::test {
namespace {

constexpr std::chrono::seconds kNoOffset{0};

ClimateLog logOf(std::string_view text, std::chrono::seconds offset = kNoOffset) {
    Result<ClimateLog> log = readClimateLog(text, alwaysAhead(offset));
    EXPECT_TRUE(log.ok()) << (log.ok() ? "" : log.error().message.english());
    return log.ok() ? *log : ClimateLog{};
}

std::string errorOf(std::string_view text) {
    const Result<ClimateLog> log = readClimateLog(text, alwaysAhead(kNoOffset));
    return log.ok() ? "" : log.error().message.english();
}

bool says(std::string_view text, std::string_view part) {
    return text.find(part) != std::string_view::npos;
}

bool says(const Sentence& text, std::string_view part) {
    return says(text.english(), part);
}

const ClimateReading kMorning{at(localDate(2026, 11, 25), 9, 30), {21.5}, {44}};

TEST(ClimateLog, ReadsAHeaderAndItsLines) {
    const ClimateLog log =
        logOf("Time,Temperature (°C),Humidity (%)\n2026-11-25 09:30,21.5,44\n2026-11-25 10:30,22,45\n");
    ASSERT_EQ(log.readings.size(), 2u);
    EXPECT_EQ(log.readings[0], kMorning);
    EXPECT_FALSE(log.wasFahrenheit);
    EXPECT_EQ(log.skippedCount, 0u);
}

TEST(ClimateLog, WithoutAHeaderItIsTimeTemperatureHumidity) {
    const ClimateLog log = logOf("2026-11-25 09:30,21.5,44\n");
    ASSERT_EQ(log.readings.size(), 1u);
    EXPECT_EQ(log.readings[0], kMorning);
}

TEST(ClimateLog, UnderstandsTheTimesThatLoggersWrite) {
    for (const char* time :
         {"2026-11-25T09:30", "2026-11-25T09:30:00", "2026-11-25T09:30:00.000", "2026-11-25T09:30Z",
          "2026-11-25T10:30+01:00", "2026-11-25T10:30:00+0100", "2026-11-25T07:30-02", "2026-11-25 09:30",
          "2026-11-25 09:30:00", "2026/11/25 09:30", "25.11.2026 09:30", "25.11.2026 9:30:00",
          "25/11/2026 09:30", "25-11-2026 09:30", "25/11/2026 9:30 AM", "1795599000"}) {
        const ClimateLog log = logOf(std::string(time) + "\t21.5\t44\n");
        ASSERT_EQ(log.readings.size(), 1u) << time;
        EXPECT_EQ(log.readings[0], kMorning) << time;
    }
    EXPECT_EQ(logOf("25/11/2026 12:05 AM,20,40\n").readings[0].at, at(localDate(2026, 11, 25), 0, 5));
    EXPECT_EQ(logOf("25/11/2026 12:05 pm,20,40\n").readings[0].at, at(localDate(2026, 11, 25), 12, 5));
}

TEST(ClimateLog, ATimeWithoutAZoneIsTheWorkshops) {
    EXPECT_EQ(logOf("2026-11-25 09:30,20,40\n", Hours{1}).readings[0].at, at(localDate(2026, 11, 25), 8, 30));
    EXPECT_EQ(logOf("2026-11-25T09:30Z,20,40\n", Hours{1}).readings[0].at,
              at(localDate(2026, 11, 25), 9, 30));
    EXPECT_EQ(logOf("1795599000,20,40\n", Hours{1}).readings[0].at, kMorning.at);
}

TEST(ClimateLog, DaysThatDoNotExistAreNoTime) {
    const ClimateLog log =
        logOf("2026-02-28 09:30,20,40\n2026-02-30 09:30,20,40\n31.02.2026 09:30,20,40\n"
              "2026-02-28 24:00,20,40\n2026-02-28 09:60,20,40\n2026-02-28,20,40\n26-02-28 09:30,20,40\n"
              "2026-02-28 09:30 CET,20,40\n9.5,20,40\n");
    EXPECT_EQ(log.readings.size(), 1u);
    EXPECT_EQ(log.skippedCount, 8u);
    EXPECT_EQ(log.skipped.front(), "Line 2: “2026-02-30 09:30” is not a time.");
}

TEST(ClimateLog, WhatNoWorkshopIsEverAtIsNotBelievedUpToOneLineInTen) {
    std::string usual;
    for (int day = 10; day < 26; ++day)
        usual += "2026-11-" + std::to_string(day) + " 09:30,20,40\n";
    const std::string edges = "2026-11-26 09:30,80,40\n2026-11-27 09:30,80.1,40\n"
                              "2026-11-28 09:30,-40,40\n2026-11-29 09:30,-40.1,40\n";
    const ClimateLog log = logOf(usual + edges);
    ASSERT_EQ(log.readings.size(), 18u);
    EXPECT_EQ(log.readings[16].temperature, Celsius{80});
    EXPECT_EQ(log.readings[17].temperature, Celsius{-40});
    EXPECT_TRUE(says(errorOf(edges + usual.substr(usual.find('\n') + 1)), "and so do 2 of 19 lines"));
}

TEST(ClimateLog, BytesThatBeginNoLetterAreShownAsQuestionMarks) {
    // 80 and BF go on with a letter, C1 and F5 begin none.
    EXPECT_EQ(logOf("2026-11-25 09:30,20,40\n\x80\xBF\xC1\xF5,20,40\n").skipped.at(0),
              "Line 2: “????” is not a time.");
}

TEST(ClimateLog, EveryMonthIsReadByItsNameInCapitals) {
    unsigned month = 0;
    for (const std::string name :
         {"JAN", "FEB", "MAR", "APR", "MAY", "JUN", "JUL", "AUG", "SEP", "OCT", "NOV", "DEC"}) {
        const Instant day = at(localDate(2026, ++month, 25), 9, 30);
        EXPECT_EQ(logOf("25-" + name + "-2026 09:30,20,40\n").readings.at(0).at, day) << name;
        EXPECT_EQ(logOf(name + " 25 2026 09:30,20,40\n").readings.at(0).at, day) << name;
    }
}

TEST(ClimateLog, YearsRunFrom1970To2199) {
    const ClimateLog log = logOf("1969-12-31 09:30,20,40\n1970-01-01 09:30,20,40\n"
                                 "2199-12-31 09:30,20,40\n2200-01-01 09:30,20,40\n");
    EXPECT_EQ(log.readings.size(), 2u);
    EXPECT_EQ(log.skippedCount, 2u);
}

TEST(ClimateLog, ADecimalCommaStandsBesideSemicolonsAndTabs) {
    EXPECT_EQ(logOf("25.11.2026 09:30;21,5;44,0\n").readings.at(0), kMorning);
    EXPECT_EQ(logOf("25.11.2026 09:30\t21,5\t44,0\n").readings.at(0), kMorning);
    EXPECT_EQ(logOf("25.11.2026 09:30;21.5;44.0\n").readings.at(0), kMorning);
}

TEST(ClimateLog, ColumnsMayStandInAnyOrder) {
    const ClimateLog log = logOf("No.;Feuchte [%];Taupunkt (°C);Datum/Uhrzeit;Temperatur (°C)\n"
                                 "1;44,0;8,7;25.11.2026 09:30;21,5\n");
    EXPECT_EQ(log.readings.at(0), kMorning);
    EXPECT_EQ(logOf("Dew point °C,RH %,°C,Timestamp\n8.7,44,21.5,2026-11-25T09:30\n").readings.at(0),
              kMorning);
}

TEST(ClimateLog, DateAndClockMayStandApart) {
    EXPECT_EQ(logOf("Date,Time,Temp,RH\n25/11/2026,09:30,21.5,44\n").readings.at(0), kMorning);
    EXPECT_EQ(logOf("25/11/2026,09:30,21.5,44\n").readings.at(0), kMorning);
}

TEST(ClimateLog, FahrenheitOfTheHeaderIsTurned) {
    for (const char* name : {"Temperature (°F)",
                             "Temp \xB0"
                             "F",
                             "Temperature [F]", "Temp F", "Fahrenheit", "Temp (℉)", "temp_degF"}) {
        const ClimateLog log = logOf("Time," + std::string(name) + ",Humidity\n2026-11-25 09:30,70.7,44\n");
        ASSERT_EQ(log.readings.size(), 1u) << name;
        EXPECT_NEAR(log.readings[0].temperature.value, 21.5, 1e-9) << name;
        EXPECT_TRUE(log.wasFahrenheit) << name;
    }
    for (const char* name : {"Temperature (°C)",
                             "Temp \xB0"
                             "C",
                             "Temperature", "Temp of film"}) {
        const ClimateLog log = logOf("Time," + std::string(name) + ",Humidity\n2026-11-25 09:30,70.7,44\n");
        ASSERT_EQ(log.readings.size(), 1u) << name;
        EXPECT_FALSE(log.wasFahrenheit) << name;
        EXPECT_DOUBLE_EQ(log.readings[0].temperature.value, 70.7) << name;
    }
}

TEST(ClimateLog, UnitsMayStandBehindTheNumbers) {
    EXPECT_EQ(logOf("2026-11-25 09:30,21.5 °C,44 %\n").readings.at(0), kMorning);
    EXPECT_EQ(logOf("2026-11-25 09:30,21.5\xB0"
                    "C,44%RH\n")
                  .readings.at(0),
              kMorning);
    const ClimateLog log = logOf("2026-11-25 09:30,70.7 °F,44\n");
    EXPECT_NEAR(log.readings.at(0).temperature.value, 21.5, 1e-9);
    EXPECT_TRUE(log.wasFahrenheit);
}

TEST(ClimateLog, QuotesByteOrderMarkAndWindowsLineEnds) {
    EXPECT_EQ(
        logOf("\xEF\xBB\xBF\"Time\",\"Temp, inside\",\"RH\"\r\n\"2026-11-25 09:30\",\"21.5\",\"44\"\r\n")
            .readings.at(0),
        kMorning);
    EXPECT_EQ(logOf("Note \"\"\"x\"\"\",b,c\nTime,Temp,RH\n2026-11-25 09:30,21.5,44").readings.at(0),
              kMorning);
}

TEST(ClimateLog, AQuotedFieldMayRunOverLinesAndTheLineNumbersHold) {
    const ClimateLog log =
        logOf("Time,Temp,RH,Note\n2026-11-25 09:30,21.5,44,\"moved\nto the \"\"left\"\"\"\n"
              "2026-11-25 10:30,n/a,44,\n");
    EXPECT_EQ(log.readings.size(), 1u);
    EXPECT_EQ(log.skipped.at(0), "Line 4: “n/a” is not a temperature.");
}

TEST(ClimateLog, ALooseQuoteDoesNotEatTheLog) {
    const ClimateLog log =
        logOf("Time,Temp,RH,Note\n2026-11-25 09:30,21.5,44,\"open\n2026-11-25 10:30,22,44,x\n"
              "2026-11-25 11:30,22,44,x\n");
    EXPECT_EQ(log.readings.size(), 3u);
}

TEST(ClimateLog, RemarksOfTheLoggerMayStandAboveTheTable) {
    const ClimateLog log =
        logOf("Logger 3; serial 0042\nStart: 25.11.2026\n\nTime;Temp;RH\n25.11.2026 09:30;21,5;44\n");
    EXPECT_EQ(log.readings.at(0), kMorning);
    EXPECT_EQ(log.skippedCount, 0u);
}

TEST(ClimateLog, LinesThatCannotBeReadAreSkippedAndTold) {
    const ClimateLog log =
        logOf("Time,Temp,RH\n2026-11-25 09:30,21.5,44\n2026-11-25 10:30,n/a,44\n"
              "2026-11-25 11:30,21.5,\n2026-11-25 12:30\n\n2026-11-25 13:30,nan,44\n"
              "2026-11-25 14:30,21.5,101\n2026-11-25 15:30,1e3,44\n2026-11-25 16:30,2.1.5,44\n");
    EXPECT_EQ(log.readings.size(), 2u);
    EXPECT_EQ(log.skippedCount, 6u);
    EXPECT_EQ(log.skipped.at(0), "Line 3: “n/a” is not a temperature.");
    EXPECT_FALSE(log.readings.at(1).hasHumidity) << "left open, and not skipped";
    EXPECT_TRUE(says(log.skipped.at(1), "Line 5: ")) << log.skipped.at(1);
    EXPECT_EQ(log.skipped.at(2), "Line 7: “nan” is not a temperature.");
    EXPECT_EQ(log.skipped.at(3), "Line 8: “101” is not a humidity from 0 to 100 %.");
}

TEST(ClimateLog, AtMostTwentySkippedLinesAreSpelledOut) {
    std::string text = "Time,Temp,RH\n2026-11-25 09:30,21.5,44\n";
    for (int line = 0; line < 50; ++line)
        text += "gone,21.5,44\n";
    const ClimateLog log = logOf(text);
    EXPECT_EQ(log.skipped.size(), 20u);
    EXPECT_EQ(log.skippedCount, 50u);
}

TEST(ClimateLog, TheFirstOfTwoReadingsOfAnInstantCounts) {
    const ClimateLog log = logOf("2026-11-25 10:30,23,46\n2026-11-25 09:30,21.5,44\n2026-11-25 10:30,30,1\n"
                                 "2026-11-25 09:30,0,99\n");
    ASSERT_EQ(log.readings.size(), 2u);
    EXPECT_EQ(log.readings[0], kMorning);
    EXPECT_EQ(log.readings[1].temperature, 23_C);
    EXPECT_EQ(log.duplicates, 2u);
    EXPECT_EQ(log.skippedCount, 0u);
}

TEST(ClimateLog, GapsAreCounted) {
    const ClimateLog log = logOf("2026-11-01 00:00,20,40\n2026-11-04 00:00,20,40\n2026-11-07 00:01,20,40\n"
                                 "2026-11-20 00:00,20,40\n");
    EXPECT_EQ(log.gaps, 2u);
}

TEST(ClimateLog, AShareInsteadOfPercentIsAWrongUnit) {
    const std::string error =
        errorOf("Time,Temp,RH\n2026-11-25 09:30,21.5,0.44\n2026-11-25 10:30,21.5,0.47\n");
    EXPECT_TRUE(says(error, "Line 2: “0.44”")) << error;
    EXPECT_TRUE(says(error, "percent, 0 to 100")) << error;
    // Shares of one; above one it is a very dry room.
    EXPECT_TRUE(says(errorOf("2026-11-25 09:30,21.5,0.5\n2026-11-25 10:30,21.5,1\n"), "percent, 0 to 100"));
    EXPECT_EQ(logOf("2026-11-25 09:30,21.5,0.5\n2026-11-25 10:30,21.5,1.5\n").readings.size(), 2u);
    // One dry reading among others is believed.
    EXPECT_EQ(logOf("2026-11-25 09:30,21.5,0.9\n2026-11-25 10:30,21.5,44\n").readings.size(), 2u);
}

TEST(ClimateLog, ATemperatureBeyondBeliefIsSkippedAndTooManyRefuseTheLog) {
    std::string text;
    for (int minute = 10; minute < 29; ++minute)
        text += "2026-11-25 09:" + std::to_string(minute) + ",21,44\n";
    const ClimateLog log = logOf(text + "2026-11-25 10:00,-127,44\n2026-11-25 10:10,20,44\n");
    EXPECT_EQ(log.readings.size(), 20u);
    EXPECT_EQ(log.skipped.at(0), "Line 20: “-127” is outside −40 to 80 °C.");
    const std::string error =
        errorOf(text + "2026-11-25 10:00,-127,44\n2026-11-25 10:10,-127,44\n2026-11-25 10:20,85,44\n");
    EXPECT_TRUE(says(error, "Line 20: “-127”")) << error;
    EXPECT_TRUE(says(error, "3 of 22 lines")) << error;
}

TEST(ClimateLog, AFileWithoutReadingsSaysWhatIsWanted) {
    for (const char* text : {"", "\n\n", "hello", "Time,Temp,RH\n", "a,b,c\nd,e,f\n"})
        EXPECT_TRUE(says(errorOf(text), "No readings found")) << text;
    EXPECT_TRUE(says(errorOf("a,b,c\nd,e,f\n"), "Line 1: “a” is not a time.")) << errorOf("a,b,c\nd,e,f\n");
    EXPECT_TRUE(says(errorOf(std::string_view{"PK\x03\x04\0\0", 6}), "not text"));
}

TEST(ClimateLog, WhatAnErrorQuotesIsShortAndReadable) {
    const std::string garbage = "\xB0\xB0" + std::string(500, 'x');
    const std::string error = errorOf(garbage + ",b,c\n");
    EXPECT_LT(error.size(), 200u);
    EXPECT_TRUE(says(error, "“??xxx")) << error;
}

TEST(ClimateLog, GarbageNeverHarms) {
    std::mt19937 random{37};
    const std::string alphabet = "0123456789.,;\t\"\n\r -:/TZ+%°CFaMe\xB0";
    for (int turn = 0; turn < 3000; ++turn) {
        std::string text = turn % 3 == 0 ? "Time,Temp,RH\n" : "";
        const std::size_t length = random() % 200;
        for (std::size_t at = 0; at < length; ++at)
            text += alphabet[random() % alphabet.size()];
        const Result<ClimateLog> log = readClimateLog(text, alwaysAhead(kNoOffset));
        if (log.ok()) {
            EXPECT_FALSE(log->readings.empty());
            for (const ClimateReading& reading : log->readings) {
                EXPECT_GE(reading.humidity.percent, 0);
                EXPECT_LE(reading.humidity.percent, 100);
            }
        } else {
            EXPECT_FALSE(log.error().message.english().empty());
        }
    }
}

TEST(ClimateLog, TellsHowFarItIsAndStopsWhenAsked) {
    std::string text;
    for (int line = 0; line < 60'000; ++line)
        text += std::to_string(1'700'000'000 + line * 60) + ",21.5,44\n";
    double last = 0;
    const Result<ClimateLog> whole = readClimateLog(text, alwaysAhead(kNoOffset), [&](double share) {
        EXPECT_GT(share, last);
        last = share;
        return true;
    });
    ASSERT_TRUE(whole.ok());
    EXPECT_EQ(whole->readings.size(), 60'000u);
    EXPECT_DOUBLE_EQ(last, 1);
    int asked = 0;
    const Result<ClimateLog> stopped =
        readClimateLog(text, alwaysAhead(kNoOffset), [&](double) { return ++asked < 2; });
    ASSERT_FALSE(stopped.ok());
    EXPECT_EQ(asked, 2);
    EXPECT_TRUE(says(stopped.error().message.english(), "Stopped"));
}

} // namespace
} // namespace holdfast::test
