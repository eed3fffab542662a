// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/orders/team_list.h"

#include <gtest/gtest.h>

namespace holdfast {
namespace {

const std::vector<std::string> kSizes{"XS", "S", "M", "L", "XL", "2XL"};

std::vector<TeamLine> read(std::string_view text, const std::vector<std::string>& sizes = kSizes) {
    auto lines = readTeamList(text, sizes);
    EXPECT_TRUE(lines.ok()) << (lines.ok() ? std::string{} : lines.error().message.english());
    return lines.ok() ? std::move(lines).value() : std::vector<TeamLine>{};
}

std::string inShort(const TeamLine& line) {
    return line.name + "|" + line.number + "|" + line.size + "|" + line.wrong.english();
}

TEST(TeamList, FieldsMayStandInAnyOrder) {
    const auto lines = read("Juno, 7, M\nL, Wren Ash, 12\n9, XL\nIda,S\n");
    ASSERT_EQ(lines.size(), 4U);
    EXPECT_EQ(inShort(lines[0]), "Juno|7|M|");
    EXPECT_EQ(inShort(lines[1]), "Wren Ash|12|L|");
    EXPECT_EQ(inShort(lines[2]), "|9|XL|");
    EXPECT_EQ(inShort(lines[3]), "Ida||S|");
    EXPECT_EQ(lines[3].line, 4U);
}

TEST(TeamList, TabsOfASpreadsheetSemicolonsAndPlainWordsAreRead) {
    for (const char* text : {"Juno\t7\tM\r\nWren Ash\t12\tL\r\n", "Juno;7;M\nWren Ash;12;L",
                             "Juno 7 M\nWren Ash 12 L\n", "\xEF\xBB\xBFJuno,7,M\n\n\"Wren Ash\",12,L\n"}) {
        const auto lines = read(text);
        ASSERT_EQ(lines.size(), 2U) << text;
        EXPECT_EQ(inShort(lines[0]), "Juno|7|M|") << text;
        EXPECT_EQ(inShort(lines[1]), "Wren Ash|12|L|") << text;
    }
}

TEST(TeamList, HeadingsSayWhichColumnIsWhich) {
    const std::vector<std::string> childrens{"104", "116", "128"};
    const auto lines = read("Size,Number,Name\n116,104,Juno\n128,7,Ida\n", childrens);
    ASSERT_EQ(lines.size(), 2U);
    EXPECT_EQ(inShort(lines[0]), "Juno|104|116|");
    EXPECT_EQ(inShort(lines[1]), "Ida|7|128|");
    EXPECT_EQ(inShort(read("name;size\nM;L\n").at(0)), "M||L|") << "a name may read like a size";
    EXPECT_EQ(inShort(read("Juno,Size\n").at(0)), "Juno Size|||") << "one heading among names is none";
}

TEST(TeamList, SizesAreReadAsPeopleWriteThem) {
    EXPECT_EQ(inShort(read("Juno, xxl").at(0)), "Juno||2XL|");
    EXPECT_EQ(inShort(read("Juno, 2 xl").at(0)), "Juno||2XL|");
    EXPECT_EQ(inShort(read("Juno, m").at(0)), "Juno||M|");
    const std::vector<std::string> long2{"XXL", "M"};
    EXPECT_EQ(inShort(read("Juno, 2XL", long2).at(0)), "Juno||XXL|");
}

TEST(TeamList, WhatIsWrongWithALineIsSaidOfThatLine) {
    const auto lines = read("Juno, 4XL\nM\nIda, 12345, M\n" + std::string(61, 'a') + ", M\nname,size,xxs");
    ASSERT_EQ(lines.size(), 5U);
    EXPECT_EQ(lines[0].wrong, "There is no size “4XL”.");
    EXPECT_EQ(lines[1].wrong, "It has neither a name nor a number.");
    EXPECT_EQ(lines[2].wrong, "A number has up to 4 digits.");
    EXPECT_FALSE(lines[3].wrong.empty());
    EXPECT_EQ(lines[4].wrong, "There is no size “xxs”.");
}

TEST(TeamList, BadTextIsRefusedInWords) {
    EXPECT_TRUE(read("").empty());
    EXPECT_TRUE(read("\n \n\t\n").empty());
    EXPECT_FALSE(readTeamList("\"Juno, M\n", kSizes).ok()) << "a quotation mark that is not closed";
    std::string many;
    for (int line = 0; line < 200; ++line)
        many += "Juno, M\n";
    EXPECT_EQ(read(many).size(), 200U);
    const auto tooMany = readTeamList(many + "Ida, S\n", kSizes);
    ASSERT_FALSE(tooMany.ok());
    EXPECT_EQ(tooMany.error().field, "list");
    EXPECT_EQ(tooMany.error().message, "A list has up to 200 garments.");
}

} // namespace
} // namespace holdfast
