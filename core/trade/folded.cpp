// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/trade/folded.h"

#include <array>
#include <cstdint>

namespace holdfast {

namespace {

constexpr char32_t kFirstMarked = 0xC0;
constexpr char32_t kLastMarked = 0x17F;

// What U+00C0 to U+017F become, 16 a line; '.': as small letter of its own (ø, ł, þ …), see below.
constexpr std::string_view kWithoutMarks = "aaaaaa.ceeeeiiii"
                                           ".nooooo..uuuuy.."
                                           "aaaaaa.ceeeeiiii"
                                           ".nooooo..uuuuy.y"
                                           "aaaaaaccccccccdd"
                                           "..eeeeeeeeeegggg"
                                           "gggghh..iiiiiiii"
                                           "i...jjkk.llllll."
                                           "...nnnnnn...oooo"
                                           "oo..rrrrrrssssss"
                                           "sstttt..uuuuuuuu"
                                           "uuuuwwyyyzzzzzzs";

// Greek capitals with a stress, which are apart from the others, and the sigma at the end of a word.
char32_t smallGreek(char32_t letter) {
    switch (letter) {
    case 0x386:
        return 0x3AC;
    case 0x388:
    case 0x389:
    case 0x38A:
        return letter + 0x25;
    case 0x38C:
        return 0x3CC;
    case 0x38E:
    case 0x38F:
        return letter + 0x3F;
    case 0x3C2:
        return 0x3C3;
    default:
        return letter >= 0x391 && letter <= 0x3AB && letter != 0x3A2 ? letter + 0x20 : letter;
    }
}

char32_t small(char32_t letter) {
    const bool isLatin = letter >= 0xC0 && letter <= 0xDE && letter != 0xD7;
    const bool isCyrillic = letter >= 0x410 && letter <= 0x42F;
    if (isLatin || isCyrillic)
        return letter + 0x20;
    if (letter >= 0x386 && letter <= 0x3CE)
        return smallGreek(letter);
    if (letter >= 0x400 && letter <= 0x40F)
        return letter + 0x50;
    // Pairs of large and small: the large ones have even numbers here, odd ones from Ĺ to Ň and from Ź on.
    const bool isOddPair = (letter >= 0x139 && letter <= 0x148) || (letter >= 0x179 && letter <= 0x17E);
    const bool isEvenPair = letter >= 0x100 && letter <= 0x177 && !isOddPair && letter != 0x130 &&
                            letter != 0x131 && letter != 0x138;
    if ((isEvenPair && letter % 2 == 0) || (isOddPair && letter % 2 == 1))
        return letter + 1;
    return letter;
}

char32_t foldedLetter(char32_t letter) {
    if (letter >= kFirstMarked && letter <= kLastMarked && letter != 0xD7 && letter != 0xF7)
        if (const char plain = kWithoutMarks[letter - kFirstMarked]; plain != '.')
            return static_cast<char32_t>(plain);
    return small(letter);
}

} // namespace

std::string folded(std::string_view text) {
    std::string result;
    result.reserve(text.size());
    for (std::size_t at = 0; at < text.size(); ++at) {
        const auto byte = static_cast<unsigned char>(text[at]);
        if (byte < 0x80) {
            result += byte >= 'A' && byte <= 'Z' ? static_cast<char>(byte + 0x20) : text[at];
            continue;
        }
        // Two bytes are all that these alphabets take.
        const bool isTwo = byte >= 0xC2 && byte <= 0xDF && at + 1 < text.size() &&
                           (static_cast<unsigned char>(text[at + 1]) & 0xC0) == 0x80;
        if (!isTwo) {
            result += text[at];
            continue;
        }
        const char32_t letter = foldedLetter((static_cast<char32_t>(byte & 0x1F) << 6) |
                                             (static_cast<unsigned char>(text[++at]) & 0x3F));
        if (letter < 0x80) {
            result += static_cast<char>(letter);
        } else {
            result += static_cast<char>(0xC0 | (letter >> 6));
            result += static_cast<char>(0x80 | (letter & 0x3F));
        }
    }
    return result;
}

} // namespace holdfast
