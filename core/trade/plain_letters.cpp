// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/trade/plain_letters.h"

#include <algorithm>
#include <array>
#include <utility>

namespace holdfast {

namespace {

// Common practice of passports and library catalogues, from memory; the i without a dot has its capital from
// every other language: "Işık" is kept with one dot, and typed in small letters it has none.
constexpr std::array<std::pair<std::string_view, std::string_view>, 11> kPlain{{{"ı", "i"},
                                                                                {"ø", "o"},
                                                                                {"ł", "l"},
                                                                                {"đ", "d"},
                                                                                {"ð", "d"},
                                                                                {"ħ", "h"},
                                                                                {"ŧ", "t"},
                                                                                {"þ", "th"},
                                                                                {"ß", "ss"},
                                                                                {"æ", "ae"},
                                                                                {"œ", "oe"}}};

bool isOutsideAscii(char each) {
    return static_cast<unsigned char>(each) >= 0x80;
}

} // namespace

std::string withPlainLetters(std::string text) {
    if (std::ranges::none_of(text, isOutsideAscii))
        return text;
    for (const auto& [letter, plain] : kPlain)
        for (std::size_t at = text.find(letter); at != std::string::npos; at = text.find(letter, at))
            text.replace(at, letter.size(), plain);
    return text;
}

} // namespace holdfast
