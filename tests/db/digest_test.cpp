// SPDX-License-Identifier: GPL-3.0-or-later
// Hashes against the examples of the standard (FIPS 180-4, "SHA256.pdf" of NIST's example values, from
// memory).
#include "db/disk/digest.h"

#include <gtest/gtest.h>

#include <set>
#include <string>

namespace holdfast::db {
namespace {

Hash hashOf(std::string_view text) {
    Digest digest;
    digest.add(std::as_bytes(std::span{text}));
    return digest.value();
}

TEST(Digests, AreTheFirstHalfOfSha256) {
    EXPECT_EQ(hex(hashOf("abc")), "ba7816bf8f01cfea414140de5dae2223");
    EXPECT_EQ(hex(hashOf("abcdbcdecdefdefgefghfghighijhijkijkljklmklmnlmnomnopnopq")),
              "248d6a61d20638b8e5c026930c3e6039");
    EXPECT_EQ(hex(hashOf("")), "e3b0c44298fc1c149afbf4c8996fb924");
}

// What is added in other parts is another content.
TEST(Digests, TellWhereATextEnds) {
    const auto ofTwo = [](std::string_view one, std::string_view other) {
        Digest digest;
        digest.add(one);
        digest.add(other);
        return digest.value();
    };
    EXPECT_NE(ofTwo("ab", "c"), ofTwo("a", "bc"));
    EXPECT_NE(ofTwo("abc", ""), ofTwo("", "abc"));
}

TEST(Digests, ChanceIsDifferentEachTimeAndWithinItsBound) {
    std::set<Salt> salts;
    std::set<std::int64_t> numbers;
    for (int count = 0; count < 1000; ++count) {
        salts.insert(randomSalt());
        const std::int64_t number = randomNumber(3);
        EXPECT_TRUE(number >= 0 && number < 3);
        numbers.insert(number);
    }
    EXPECT_EQ(salts.size(), 1000U);
    EXPECT_EQ(numbers.size(), 3U);
}

} // namespace
} // namespace holdfast::db
