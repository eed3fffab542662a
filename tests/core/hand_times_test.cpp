// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/facts/hand_times.h"

#include <gtest/gtest.h>

namespace holdfast {
namespace {

TEST(HandTimes, EachIsWithinItsLimitsOrNamed) {
    EXPECT_TRUE(checkHandTimes({}).ok());
    for (const HandTime& hand : kAllHandTimes) {
        for (const std::int64_t good : {std::int64_t{1}, std::int64_t{600}}) {
            HandTimes hands;
            hands.*hand.time = Seconds{good};
            EXPECT_TRUE(checkHandTimes(hands).ok()) << hand.field;
        }
        for (const std::int64_t wrong : {std::int64_t{0}, std::int64_t{601}}) {
            HandTimes hands;
            hands.*hand.time = Seconds{wrong};
            const auto checked = checkHandTimes(hands);
            ASSERT_FALSE(checked.ok()) << hand.field;
            EXPECT_EQ(checked.error().field, hand.field);
        }
    }
}

} // namespace
} // namespace holdfast
