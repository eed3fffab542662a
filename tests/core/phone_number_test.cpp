// SPDX-License-Identifier: GPL-3.0-or-later
// Phone numbers of 07700 900000 to 900999 are set apart for fiction by the United Kingdom's Ofcom (from
// memory), +1 … 555-0100 to 0199 by the North American numbering plan, and how a number is written with and
// without its country is ITU-T E.123's example "+22 607 123 4567" and "(0607) 123 4567" (from memory).
#include "core/trade/phone_number.h"

#include <gtest/gtest.h>

#include <algorithm>

namespace holdfast {
namespace {

bool isPart(std::string_view typed, std::string_view kept) {
    return isPartOfPhone(readPhone(typed), readPhone(kept));
}

TEST(PhoneNumber, IsReadWithItsCountryOrWithout) {
    for (const char* written :
         {"+44 7700 900421", "0044 7700 900421", "+44 (0)7700-900.421", "(+44) 7700/900421"}) {
        EXPECT_EQ(readPhone(written).country, "44") << written;
        EXPECT_EQ(readPhone(written).national, "7700900421") << written;
    }
    EXPECT_EQ(readPhone("07700 900421").country, "");
    EXPECT_EQ(readPhone("07700 900421").national, "7700900421");
    EXPECT_EQ(readPhone("+1 212 555 0123").country, "1");
    EXPECT_EQ(readPhone("+358 40 1234567").country, "358");
    EXPECT_EQ(readPhone("").digits, "");
    EXPECT_EQ(readPhone("ring at +").country, "");
}

TEST(PhoneNumber, EveryFormFindsEveryOther) {
    for (const char* kept : {"07700 900421", "07700-900-421", "+44 7700 900421", "+44 (0)7700 900421",
                             "0044 7700 900421", "447700900421"})
        for (const char* typed : {"07700900421", "07700 900 421", "+447700900421", "+44 (0) 7700 900421",
                                  "0044-7700-900421", "447700900421", "7700900421", "900421", "421", "00900"})
            EXPECT_TRUE(isPart(typed, kept)) << typed << " in " << kept;
    EXPECT_TRUE(isPart("+22 607 123 4567", "(0607) 123 4567"));
    EXPECT_TRUE(isPart("(0607) 123 4567", "+22 607 123 4567"));
}

TEST(PhoneNumber, IsFoundWhileItIsTyped) {
    const std::string_view typed = "+44 7700 900421";
    for (std::size_t length = 7; length <= typed.size(); ++length)
        EXPECT_TRUE(isPart(typed.substr(0, length), "07700 900421")) << typed.substr(0, length);
    EXPECT_TRUE(isPart("0770", "+44 7700 900421"));
}

TEST(PhoneNumber, AnotherNumberIsNotFound) {
    for (const char* typed : {"+46 7700 900421", "07700 900422", "+44 7700 900422", "0046 7700 900421", "42",
                              "", "0042", "467700900421", "+"})
        EXPECT_FALSE(isPart(typed, "+44 7700 900421")) << typed;
    EXPECT_FALSE(isPart("421", ""));
    EXPECT_FALSE(isPart("07700900421", ""));
}

} // namespace
} // namespace holdfast
