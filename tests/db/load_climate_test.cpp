// SPDX-License-Identifier: GPL-3.0-or-later
// Loading a long climate log: it is asked meanwhile whether to go on, and stops where it is told to.
#include "tests/db/small_shop.h"

namespace holdfast::db {
namespace {

class LoadClimate : public SmallShop {
protected:
    void readIn(int count) {
        ClimateSeries series;
        for (int back = count; back > 0; --back)
            series.push_back({now().instant - std::chrono::minutes{back}, {20}, {44}});
        ASSERT_TRUE(importReadings(shop(), m_place, series).ok());
    }
};

TEST_F(LoadClimate, IsAskedAfterEveryTenThousand) {
    readIn(25'000);
    std::vector<std::int64_t> asked;
    const ClimateHistory all = loadClimate(connection(), [&](std::int64_t loaded) {
        asked.push_back(loaded);
        return true;
    });
    EXPECT_EQ(asked, (std::vector<std::int64_t>{10'000, 20'000}));
    EXPECT_EQ(all.at(m_place)->size(), 25'000U);
    EXPECT_EQ(*all.at(m_place), *loadClimate(connection()).at(m_place));
}

TEST_F(LoadClimate, StopsWhenNoMoreAreWanted) {
    readIn(25'000);
    EXPECT_EQ(loadClimate(connection(), [](std::int64_t) { return false; }).at(m_place)->size(), 10'000U);
}

TEST_F(LoadClimate, IsLongOnlyBeyondSoManyReadings) {
    EXPECT_EQ(countReadings(connection()), 0);
    EXPECT_FALSE(hasMoreReadingsThan(connection(), 0));
    readIn(20);
    EXPECT_EQ(countReadings(connection()), 20);
    EXPECT_TRUE(hasMoreReadingsThan(connection(), 19));
    EXPECT_FALSE(hasMoreReadingsThan(connection(), 20));
}

} // namespace
} // namespace holdfast::db
