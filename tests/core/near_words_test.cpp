// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/trade/near_words.h"

#include <gtest/gtest.h>

#include <algorithm>
#include <array>
#include <random>
#include <string>
#include <vector>

namespace holdfast {
namespace {

TEST(NearWords, OneLetterIsForgiven) {
    EXPECT_TRUE(isNearlyBeginningOf("lindkvist", "lindqvist")) << "another letter";
    EXPECT_TRUE(isNearlyBeginningOf("farant", "farrant")) << "one missing";
    EXPECT_TRUE(isNearlyBeginningOf("farrrant", "farrant")) << "one too many";
    EXPECT_TRUE(isNearlyBeginningOf("frarant", "farrant")) << "two that changed places";
    EXPECT_TRUE(isNearlyBeginningOf("lindk", "lindqvist")) << "while it is typed";
    EXPECT_TRUE(isNearlyBeginningOf("lindqvist", "lindqvist"));
}

TEST(NearWords, TwoLettersAreAnotherWord) {
    EXPECT_FALSE(isNearlyBeginningOf("lindkwist", "lindqvist"));
    EXPECT_FALSE(isNearlyBeginningOf("farantx", "farrant"));
    EXPECT_FALSE(isNearlyBeginningOf("mast", "most")) << "too short to be sure";
    EXPECT_FALSE(isNearlyBeginningOf("farrant", "far"));
    EXPECT_FALSE(isNearlyBeginningOf("", ""));
}

TEST(NearWords, FourLettersAreAWholeWordOrNone) {
    EXPECT_TRUE(isNearly("read", "reed"));
    EXPECT_TRUE(isNearly("anan", "anna"));
    EXPECT_TRUE(isNearly("anna", "ana"));
    EXPECT_FALSE(isNearly("read", "reeds")) << "a beginning";
    EXPECT_FALSE(isNearly("ann", "ana")) << "too short to be sure";
}

TEST(NearWords, LettersAreCountedAndNotBytes) {
    EXPECT_TRUE(isNearlyBeginningOf("ольго", "ольга"));
    EXPECT_TRUE(isNearlyBeginningOf("олгьа", "ольга")) << "two that changed places";
    EXPECT_TRUE(isNearly("ольг", "ольга"));
    EXPECT_FALSE(isNearlyBeginningOf("ульго", "ольга"));
}

// The recurrence of optimal string alignment, as it is published: Levenshtein (1966) with the exchange of
// neighbours by Damerau (1964), no part of the text edited twice.
int alignment(const std::string& one, const std::string& two) {
    std::vector<std::vector<int>> least(one.size() + 1, std::vector<int>(two.size() + 1));
    for (std::size_t a = 0; a <= one.size(); ++a)
        for (std::size_t b = 0; b <= two.size(); ++b) {
            if (a == 0 || b == 0) {
                least[a][b] = static_cast<int>(a + b);
                continue;
            }
            least[a][b] = std::min({least[a - 1][b] + 1, least[a][b - 1] + 1,
                                    least[a - 1][b - 1] + (one[a - 1] == two[b - 1] ? 0 : 1)});
            if (a > 1 && b > 1 && one[a - 1] == two[b - 2] && one[a - 2] == two[b - 1])
                least[a][b] = std::min(least[a][b], least[a - 2][b - 2] + 1);
        }
    return least[one.size()][two.size()];
}

// The examples that textbooks give, from memory: Levenshtein's distance of kitten and sitting, saturday and
// sunday; and "ca", "abc", which are 3 apart in optimal string alignment, 2 in Damerau–Levenshtein.
TEST(NearWords, TheDistanceIsThePublishedOne) {
    EXPECT_EQ(alignment("kitten", "sitting"), 3);
    EXPECT_EQ(alignment("saturday", "sunday"), 3);
    EXPECT_EQ(alignment("ca", "abc"), 3);
    EXPECT_EQ(alignment("ca", "ac"), 1);
    EXPECT_FALSE(isNearly("kitten", "sitting"));
    EXPECT_TRUE(isNearly("kitten", "sitten"));
    EXPECT_TRUE(isNearly("sitten", "sittin"));
    EXPECT_TRUE(isNearly("sittin", "sitting"));
}

TEST(NearWords, AreWhatTheDistanceSays) {
    std::mt19937 chance{20'261'130};
    const auto aWord = [&] {
        std::string word(chance() % 8, 'a');
        std::ranges::generate(word, [&] { return static_cast<char>('a' + chance() % 3); });
        return word;
    };
    std::array<int, 2> near{};
    for (int each = 0; each < 20'000; ++each) {
        const std::string typed = aWord();
        const std::string word = aWord();
        int least = alignment(typed, "");
        for (std::size_t length = 0; length <= word.size(); ++length)
            least = std::min(least, alignment(typed, word.substr(0, length)));
        ASSERT_EQ(isNearly(typed, word), typed.size() >= 4 && alignment(typed, word) <= 1)
            << typed << ' ' << word;
        ASSERT_EQ(isNearlyBeginningOf(typed, word), typed.size() >= 5 && least <= 1) << typed << ' ' << word;
        near[0] += isNearly(typed, word) ? 1 : 0;
        near[1] += isNearlyBeginningOf(typed, word) ? 1 : 0;
    }
    EXPECT_GT(near[0], 100);
    EXPECT_GT(near[1], 100);
}

// Every word that one slip of the hand makes of another is near it.
TEST(NearWords, EverySlipOfTheHand) {
    const std::string word = "saltmarsh";
    for (std::size_t at = 0; at < word.size(); ++at) {
        std::string slipped = word;
        slipped[at] = 'x';
        EXPECT_TRUE(isNearlyBeginningOf(slipped, word)) << slipped;
        slipped = word;
        slipped.erase(at, 1);
        EXPECT_TRUE(isNearlyBeginningOf(slipped, word)) << slipped;
        slipped = word;
        slipped.insert(at, 1, 'x');
        EXPECT_TRUE(isNearlyBeginningOf(slipped, word)) << slipped;
        if (at + 1 == word.size())
            continue;
        slipped = word;
        std::swap(slipped[at], slipped[at + 1]);
        EXPECT_TRUE(isNearlyBeginningOf(slipped, word)) << slipped;
    }
}

} // namespace
} // namespace holdfast
