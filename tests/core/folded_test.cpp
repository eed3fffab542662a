// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/trade/folded.h"

#include <gtest/gtest.h>

#include <clocale>
#include <cwctype>
#include <string>

namespace holdfast {
namespace {

std::string utf8(char32_t letter) {
    if (letter < 0x80)
        return {static_cast<char>(letter)};
    if (letter < 0x800)
        return {static_cast<char>(0xC0 | (letter >> 6)), static_cast<char>(0x80 | (letter & 0x3F))};
    return {static_cast<char>(0xE0 | (letter >> 12)), static_cast<char>(0x80 | ((letter >> 6) & 0x3F)),
            static_cast<char>(0x80 | (letter & 0x3F))};
}

bool isLetterOfOurs(char32_t letter) {
    return letter < 0x180 || (letter >= 0x386 && letter <= 0x3CE) || (letter >= 0x400 && letter <= 0x45F);
}

// What the C library, out of Unicode's tables, calls the small letter: both are found by either. İ has none
// of one letter, and ı is found by i.
TEST(Folded, LargeAndSmallLettersAreOneAsInUnicode) {
    ASSERT_NE(setlocale(LC_CTYPE, "C.UTF-8"), nullptr);
    for (char32_t letter = 0x41; letter < 0x500; ++letter) {
        if (!isLetterOfOurs(letter) || letter == 0x130 || letter == 0x131)
            continue;
        const auto small = static_cast<char32_t>(std::towlower(static_cast<wint_t>(letter)));
        EXPECT_EQ(folded(utf8(letter)), folded(utf8(small)))
            << std::hex << static_cast<std::uint32_t>(letter);
    }
    setlocale(LC_CTYPE, "C");
}

// Arithmetic signs, marks and letters of other scripts are nobody's capital.
TEST(Folded, WhatIsNoLetterOfTheseAlphabetsStays) {
    for (const char32_t letter : {0xD7, 0xF7, 0x7FF, 0x7C0, 0x5D0, 0x387, 0x20AC, 0x5C71})
        EXPECT_EQ(folded(utf8(letter)), utf8(letter)) << std::hex << static_cast<std::uint32_t>(letter);
}

TEST(Folded, BytesThatAreNoTextStayAsTheyAre) {
    for (const std::string bytes : {"\xC3", "\xC3(", "\xC1\x81", "a\xFF", "\x80\x80"})
        EXPECT_EQ(folded(bytes), bytes);
}

} // namespace
} // namespace holdfast
