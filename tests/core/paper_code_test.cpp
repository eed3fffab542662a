// SPDX-License-Identifier: GPL-3.0-or-later
// The codes on papers: read back whole, and told from halves, misreadings and those of other shops.

#include "core/trade/paper_code.h"

#include <gtest/gtest.h>

#include <random>
#include <set>

namespace holdfast {
namespace {

constexpr std::int64_t kId = 0x0123'4567'89AB'CDEF;

std::string partsRead(std::string_view typed) {
    const auto code = readPaperCode(typed);
    if (!code)
        return "none";
    return code->label() + "|" + code->check;
}

TEST(PaperCode, IsTheNumberAndFourCheckLetters) {
    const std::string code = paperCode("418-b", kId);
    ASSERT_EQ(code.size(), 10u);
    EXPECT_EQ(code.substr(0, 6), "418-b.");
    EXPECT_TRUE(readPaperCode(code)->fits(kId));
    EXPECT_TRUE(readPaperCode(paperCode("418", kId))->fits(kId));
    EXPECT_TRUE(readPaperCode(paperCode("R-09", kId))->fits(kId));
    EXPECT_EQ(readPaperCode(code)->kind, ScannedCode::Kind::Garment);
    EXPECT_EQ(readPaperCode(paperCode("418", kId))->kind, ScannedCode::Kind::Order);
    EXPECT_EQ(readPaperCode(paperCode("R-09", kId))->kind, ScannedCode::Kind::Roll);
}

TEST(PaperCode, ANumberHasNineDigitsAtMost) {
    EXPECT_EQ(partsRead("123456789"), "123456789|");
    EXPECT_EQ(partsRead("1234567890"), "none");
}

TEST(PaperCode, OtherShopsAndOtherNumbersDoNotFit) {
    EXPECT_FALSE(readPaperCode(paperCode("418-b", kId))->fits(kId + 1));
    auto swapped = *readPaperCode(paperCode("418-b", kId));
    swapped.number = 481;
    EXPECT_FALSE(swapped.fits(kId));
    swapped = *readPaperCode(paperCode("418-b", kId));
    swapped.letter = "c";
    EXPECT_FALSE(swapped.fits(kId));
}

TEST(PaperCode, KeyboardLayoutsAndCapitalsMakeNoDifference) {
    const std::string check = paperCode("418-b", kId).substr(6);
    // As typed on a German, a French and a Danish layout by a scanner set to another, and with Caps Lock.
    for (const std::string& typed :
         {"418ß"
          "b." +
              check,
          "418)b:" + check, "418+b." + check, "418-B." + check, "418/b." + check}) {
        ASSERT_TRUE(readPaperCode(typed).has_value()) << typed;
        EXPECT_TRUE(readPaperCode(typed)->fits(kId)) << typed;
    }
}

TEST(PaperCode, AGarmentOfEveryLetterIsReadInCapitalsToo) {
    for (char letter = 'a'; letter <= 'z'; ++letter) {
        const std::string typed = std::string("418-") + static_cast<char>(letter - 'a' + 'A');
        EXPECT_EQ(partsRead(typed + ".KHTR"), std::string("418-") + letter + "|KHTR");
    }
}

TEST(PaperCode, HalvesHaveNoShapeOrNoCheck) {
    EXPECT_EQ(partsRead("418-"), "none");
    EXPECT_EQ(partsRead("418-b."), "none");
    EXPECT_EQ(partsRead("418-b.KH"), "none");
    EXPECT_EQ(partsRead("418-b.KHT"), "none");
    EXPECT_EQ(partsRead("-b.KHTR"), "none");
    EXPECT_EQ(partsRead(".KHTR"), "none");
    EXPECT_EQ(partsRead("R-"), "none");
    EXPECT_EQ(partsRead(""), "none");
    EXPECT_EQ(partsRead("418"), "418|");
    EXPECT_EQ(partsRead("R-09"), "R-09|");
    EXPECT_EQ(partsRead("418-b"), "418-b|");
}

TEST(PaperCode, WhatIsNoneOfOursIsRefused) {
    for (const char* typed : {"5012345678900", "hello", "418-abc", "418-b-c", "X-09", "4 1 8", "418..KHTR",
                              "12345678901234567890.KHTR", "ß", "R", "b-418"})
        EXPECT_EQ(partsRead(typed), "none") << typed;
}

TEST(PaperCode, MisreadLettersAreFound) {
    // Every code with one sign replaced by another of the same kind is refused, but for a chance of 1 in
    // 104,976.
    std::mt19937 random(20'261'129);
    int taken = 0;
    int tried = 0;
    for (int order = 1; order <= 500; ++order) {
        const std::int64_t id = static_cast<std::int64_t>(random()) << 20;
        const std::string code = paperCode(std::to_string(order) + "-a", id);
        for (std::size_t at = 0; at < code.size(); ++at) {
            std::string misread = code;
            misread[at] = static_cast<char>('0' + random() % 10);
            if (misread == code)
                continue;
            const auto read = readPaperCode(misread);
            taken += read && !read->check.empty() && read->fits(id) ? 1 : 0;
            ++tried;
        }
    }
    EXPECT_GT(tried, 3'000);
    EXPECT_LE(taken, 1);
}

TEST(PaperCode, CheckLettersSpread) {
    std::set<std::string> seen;
    for (int order = 1; order <= 2'000; ++order)
        seen.insert(paperCode(std::to_string(order), kId).substr(std::to_string(order).size()));
    // Of 2,000 drawn at random from 104,976, about 1,981 differ.
    EXPECT_GT(seen.size(), 1'950u);
}

} // namespace
} // namespace holdfast
