// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/trade/near_words.h"

#include <algorithm>
#include <string>

namespace holdfast {

namespace {

constexpr std::size_t kLeastLetters = 4;
constexpr std::size_t kLeastBeginning = 5;

bool isAscii(std::string_view text) {
    return std::ranges::none_of(text, [](char each) { return static_cast<unsigned char>(each) >= 0x80; });
}

// A letter each. Bytes that are no UTF-8 are letters of their own.
std::u32string lettersOf(std::string_view text) {
    std::u32string letters;
    for (const char each : text) {
        const auto byte = static_cast<unsigned char>(each);
        if ((byte & 0xC0U) == 0x80U && !letters.empty() && letters.back() >= 0xC0U)
            letters.back() = (letters.back() << 6U) | (byte & 0x3FU);
        else
            letters.push_back(byte);
    }
    return letters;
}

// The rest of both after the letters that they begin with alike.
template <class Text>
void dropAlike(Text& one, Text& two) {
    const auto [a, b] = std::ranges::mismatch(one, two);
    two.remove_prefix(static_cast<std::size_t>(b - two.begin()));
    one.remove_prefix(static_cast<std::size_t>(a - one.begin()));
}

template <class Text>
bool differInOneLetter(Text one, Text two) {
    dropAlike(one, two);
    if (one.empty() || two.empty())
        return one.size() + two.size() <= 1;
    if (one.substr(1) == two.substr(1) || one.substr(1) == two || one == two.substr(1))
        return true;
    return one.size() > 1 && two.size() > 1 && one[0] == two[1] && one[1] == two[0] &&
           one.substr(2) == two.substr(2);
}

template <class Text>
bool isNearlyWhole(Text typed, Text word) {
    return typed.size() >= kLeastLetters && differInOneLetter(typed, word);
}

template <class Text>
bool isNearlyItsBeginning(Text typed, Text word) {
    if (typed.size() < kLeastBeginning)
        return false;
    for (std::size_t length = typed.size() - 1; length <= typed.size() + 1; ++length)
        if (length <= word.size() && differInOneLetter(typed, word.substr(0, length)))
            return true;
    return false;
}

} // namespace

bool isNearly(std::string_view typed, std::string_view word) {
    if (isAscii(typed) && isAscii(word))
        return isNearlyWhole(typed, word);
    return isNearlyWhole<std::u32string_view>(lettersOf(typed), lettersOf(word));
}

bool isNearlyBeginningOf(std::string_view typed, std::string_view word) {
    if (isAscii(typed) && isAscii(word))
        return isNearlyItsBeginning(typed, word);
    return isNearlyItsBeginning<std::u32string_view>(lettersOf(typed), lettersOf(word));
}

} // namespace holdfast
