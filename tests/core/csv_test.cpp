// SPDX-License-Identifier: GPL-3.0-or-later
// Comma-separated values: the examples of RFC 4180, section 2 [M], and what goes beyond it.
#include "core/csv/csv.h"

#include <gtest/gtest.h>

#include <cstdio>
#include <cstdlib>
#include <random>

namespace holdfast {
namespace {

using Fields = std::vector<std::string>;

std::vector<Fields> readAll(std::string_view text) {
    CsvReader reader{text};
    std::vector<Fields> records;
    for (;;) {
        auto record = reader.next();
        if (!record) {
            records.push_back({"error: " + record.error().message.english()});
            return records;
        }
        if (!*record)
            return records;
        records.push_back((*record)->fields);
    }
}

std::string errorOf(std::string_view text) {
    const auto records = readAll(text);
    return records.empty() || records.back().empty() ? "" : records.back().front();
}

// RFC 4180, section 2, rules 1 to 7 [M].
TEST(CsvRfc4180, LinesEndWithCrLfAndTheLastNeedNot) {
    const std::vector<Fields> both{{"aaa", "bbb", "ccc"}, {"zzz", "yyy", "xxx"}};
    EXPECT_EQ(readAll("aaa,bbb,ccc\r\nzzz,yyy,xxx\r\n"), both);
    EXPECT_EQ(readAll("aaa,bbb,ccc\r\nzzz,yyy,xxx"), both);
    EXPECT_EQ(readAll("aaa,bbb,ccc\nzzz,yyy,xxx\n"), both);
}

TEST(CsvRfc4180, FieldsMayBeQuoted) {
    EXPECT_EQ(readAll("\"aaa\",\"bbb\",\"ccc\"\r\nzzz,yyy,xxx"),
              (std::vector<Fields>{{"aaa", "bbb", "ccc"}, {"zzz", "yyy", "xxx"}}));
}

TEST(CsvRfc4180, LineBreaksQuotesAndCommasStandInQuotes) {
    EXPECT_EQ(readAll("\"aaa\",\"b\r\nbb\",\"ccc\"\r\nzzz,yyy,xxx"),
              (std::vector<Fields>{{"aaa", "b\r\nbb", "ccc"}, {"zzz", "yyy", "xxx"}}));
    EXPECT_EQ(readAll("\"aaa\",\"b\"\"bb\",\"c,cc\""), (std::vector<Fields>{{"aaa", "b\"bb", "c,cc"}}));
}

TEST(CsvRfc4180, SpacesBelongToTheField) {
    EXPECT_EQ(readAll(" aaa , bbb,ccc"), (std::vector<Fields>{{" aaa ", " bbb", "ccc"}}));
}

TEST(Csv, EmptyFieldsAreFieldsAndEmptyLinesAreNone) {
    EXPECT_EQ(readAll("a,,\r\n\r\n,b,\"\"\r\n"), (std::vector<Fields>{{"a", "", ""}, {"", "b", ""}}));
    EXPECT_TRUE(readAll("").empty());
    EXPECT_TRUE(readAll("\r\n\n").empty());
}

TEST(Csv, AByteOrderMarkSemicolonsAndTabsAreUnderstood) {
    EXPECT_EQ(readAll("\xEF\xBB\xBF"
                      "a;b;c\n1,5;2;\"x;y\""),
              (std::vector<Fields>{{"a", "b", "c"}, {"1,5", "2", "x;y"}}));
    EXPECT_EQ(readAll("a\tb\n1,5\t2"), (std::vector<Fields>{{"a", "b"}, {"1,5", "2"}}));
    EXPECT_EQ(readAll("\"a;b;c\",d\n1,2"), (std::vector<Fields>{{"a;b;c", "d"}, {"1", "2"}}));
}

TEST(Csv, WhatCouldMeanTwoThingsIsRefusedByItsLine) {
    EXPECT_EQ(errorOf("a,b\r\nc,d\"e\r\n").substr(0, 14), "error: Line 2:");
    EXPECT_EQ(errorOf("a,b\r\n\"x\ny\"z,d\r\n").substr(0, 14), "error: Line 3:");
    EXPECT_EQ(errorOf("a,b\r\nc,d\r\ne,\"f\r\ng,h\r\n").substr(0, 14), "error: Line 3:")
        << "where it was opened";
    EXPECT_NE(errorOf("a,Zo\xEB\r\n").find("not UTF-8"), std::string::npos);
}

TEST(Csv, ARecordSaysWhereItBegins) {
    CsvReader reader{"a\r\n\"b\r\nb\"\r\n\r\nc"};
    EXPECT_EQ((*reader.next())->line, 1U);
    EXPECT_EQ((*reader.next())->line, 2U);
    EXPECT_EQ((*reader.next())->line, 5U);
}

TEST(Csv, WhatIsWrittenIsWhatRfc4180Writes) {
    CsvLine line;
    EXPECT_EQ(line.plain("aaa").plain("b\"bb").plain("c,cc").plain("d\r\nd").empty().end(),
              "aaa,\"b\"\"bb\",\"c,cc\",\"d\r\nd\",\r\n");
    EXPECT_EQ(line.plain("next").end(), "next\r\n");
}

// A cell beginning with = + - @, tab or carriage return may be run as a formula; an apostrophe before it
// keeps a spreadsheet from it (OWASP, "CSV Injection" [M]).
TEST(Csv, NoTextOfAPersonsBecomesAFormulaAndAllComeBack) {
    for (const std::string text : {"=SUM(A1)", "+44 7700 900111", "-5", "@home", "\tx", "'quoted'", "'=x",
                                   "plain", "", "O'Neill", "'"}) {
        CsvLine line;
        const std::string written = line.text(text).plain("end").end();
        const auto records = readAll(written);
        ASSERT_EQ(records.size(), 1U) << text;
        const std::string cell = records[0][0];
        EXPECT_EQ(std::string{"=+-@\t\r"}.find(cell.empty() ? 'x' : cell.front()), std::string::npos) << cell;
        EXPECT_EQ(unguarded(cell), text);
    }
    CsvLine line;
    EXPECT_EQ(line.plain("-3.50").end(), "-3.50\r\n") << "a number stays one";
}

TEST(Csv, DecimalsAreAllOfOneKind) {
    CsvNumbers commas;
    EXPECT_EQ(*commas.plain("3,5"), "3.5");
    EXPECT_EQ(*commas.plain("12"), "12");
    EXPECT_EQ(*commas.plain("-0,25"), "-0.25");
    EXPECT_NE(commas.plain("3.5").error().message.english().find("decimal point"), std::string::npos);
    CsvNumbers points;
    EXPECT_EQ(*points.plain(" +3.5 "), "3.5");
    EXPECT_EQ(*points.plain("\xE2\x88\x92"
                            "4.0"),
              "-4.0");
    EXPECT_EQ(*points.plain(""), "");
    for (const char* wrong : {"1,234.5", "1 234", "x", "-", ".", "1e5", "0x10", "--1"})
        EXPECT_FALSE(points.plain(wrong).ok()) << wrong;
}

TEST(Csv, ListsComeBackAsTheyWere) {
    for (const Fields& parts : {Fields{"S", "M", "L"}, Fields{"a|b", "c\\d", "\\|"}, Fields{"one"}, Fields{}})
        EXPECT_EQ(splitList(joinedList(parts)), parts);
    EXPECT_EQ(joinedList({"S", "M"}), "S | M");
    EXPECT_EQ(splitList("S|M |  L "), (Fields{"S", "M", "L"}));
}

// Whatever stands in the fields, it is read as it was written.
TEST(Csv, TellsHowMuchOfItIsRead) {
    CsvReader reader{"12345\n6789\n"};
    EXPECT_EQ(reader.share(), 0.0);
    (void)reader.next();
    EXPECT_NEAR(reader.share(), 6.0 / 11, 1e-12);
    (void)reader.next();
    EXPECT_EQ(reader.share(), 1.0);
    EXPECT_EQ(CsvReader{""}.share(), 1.0);
}

TEST(Csv, AnyTextGoesThereAndBack) {
    std::mt19937 chance{7};
    const std::string_view letters = "ab\"\",;\r\n\t'=|\\ \xC3\xAB";
    for (int round = 0; round < 500; ++round) {
        Fields fields;
        CsvLine line;
        for (int field = 0; field < 4; ++field) {
            std::string text;
            for (std::size_t length = chance() % 8; length > 0; --length) {
                const char letter = letters[chance() % (letters.size() - 2)];
                text += letter;
            }
            if (chance() % 3 == 0)
                text += "\xC3\xAB";
            fields.push_back(text);
            line.text(text);
        }
        line.plain("end");
        const std::string written = "h1,h2,h3,h4,h5\r\n" + line.end();
        auto records = readAll(written);
        ASSERT_EQ(records.size(), 2U);
        for (std::size_t field = 0; field < fields.size(); ++field)
            EXPECT_EQ(unguarded(records[1][field]), fields[field]);
    }
}

} // namespace
} // namespace holdfast
