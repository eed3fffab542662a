// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/trade/currencies.h"

#include <gtest/gtest.h>

namespace holdfast {
namespace {

// ISO 4217, list one: minor units of the yen, the Kuwaiti dinar, the pound, the euro and the króna. From
// memory.
TEST(Currencies, HaveTheDecimalsOfTheStandard) {
    EXPECT_EQ(currencyExponent("JPY"), 0);
    EXPECT_EQ(currencyExponent("ISK"), 0);
    EXPECT_EQ(currencyExponent("KWD"), 3);
    EXPECT_EQ(currencyExponent("GBP"), 2);
    EXPECT_EQ(currencyExponent("EUR"), 2);
    EXPECT_EQ(currencyExponent("?"), 2);
}

} // namespace
} // namespace holdfast
