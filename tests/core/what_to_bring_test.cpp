// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/stock/what_to_bring.h"

#include "tests/core/builders.h"

#include <gtest/gtest.h>

#include <cmath>
#include <numeric>

namespace holdfast {
namespace {

const LocalDate kToday = test::theMoment().today();
constexpr ColourId kChalk{2};

// A tee in S, M and L, Moss and Chalk, that costs 400; none are on the rail.
struct Stall {
    ShopFacts facts;
    std::vector<FairOrder> orders;
    std::vector<Fair> fairs;

    Stall() {
        BlankStyle tee = test::aTee();
        tee.sizes = {"S", "M", "L"};
        tee.colours = {{test::kMoss, "Moss", 0}, {kChalk, "Chalk", 0}};
        tee.cost = Money{400};
        facts.styles = Roster{std::vector{tee}};
        facts.settings.keepingPercent = 5; // 20 for each that comes home
    }

    void sell(int day, int count, const std::string& size = "M", ColourId colour = test::kMoss,
              Money price = {2400}) {
        FairOrder order{"Creek Fair", kToday + Days{day}, {}, {}};
        for (int garment = 0; garment < count; ++garment)
            order.garments.push_back({test::kTee, size, colour, price, Cost{{400}, {200}, {800}, {20}}});
        orders.push_back(order);
    }

    void addLot(std::int64_t units, bool isWashed, bool isDry = true) {
        BlankLot lot;
        lot.id = BlankLotId{static_cast<std::int64_t>(facts.lots.size()) + 1};
        lot.style = test::kTee;
        lot.size = "M";
        lot.colour = test::kMoss;
        lot.unitsLeft = units;
        if (isWashed) {
            WashLoad load;
            load.id = WashLoadId{lot.id.value};
            if (isDry)
                load.dryAt = test::daysAgo(1);
            facts.loads.add(load);
            lot.lastLoad = load.id;
        }
        facts.lots.add(lot);
    }

    FairDemand demand() const { return fairDemand(orders, fairs, kToday - Days{365}, kToday); }
    WhatToBring bring(std::int64_t days = 1) const { return whatToBring(demand(), facts, days); }
};

TEST(WhatToBring, IsTheQuantityAtTheCriticalRatioOfWhatWasSoldADay) {
    Stall stall;
    for (int day = 1; day <= 8; ++day)
        stall.sell(-7 * day, day % 2 == 0 ? 3 : 5); // four a day, no more apart than chance has it
    const WhatToBring what = stall.bring();
    EXPECT_EQ(what.days, 8);
    EXPECT_EQ(what.fairs, 8);
    EXPECT_FALSE(what.isFromFew());
    ASSERT_EQ(what.kinds.size(), 1U);
    EXPECT_NEAR(what.kinds[0].asked.mean, 4, 1e-12);
    // 2,400 less 1,420 is lost by a missing one, 20 by one that comes home: Poisson 4 at 980/1,000, where
    // F(8) = .97864 falls short and F(9) = .99187 does not [M, Poisson tables].
    EXPECT_EQ(what.kinds[0].brought.quantity, 9);
    EXPECT_NEAR(what.kinds[0].brought.leftover - what.kinds[0].brought.shortage, 5, 1e-9);
}

TEST(WhatToBring, IsForAllDaysOfTheComingFair) {
    Stall stall;
    for (int day = 1; day <= 8; ++day)
        stall.sell(-7 * day, 4);
    const WhatToBring what = stall.bring(3);
    EXPECT_EQ(what.comingDays, 3);
    EXPECT_NEAR(what.kinds.at(0).asked.mean, 12, 1e-12);
    EXPECT_EQ(what.kinds[0].brought.quantity, bestQuantity({12, 12}, 980, 20).quantity);
}

TEST(WhatToBring, AStallWithoutASaleIsADayToo) {
    Stall stall;
    stall.sell(-7, 4);
    Fair fair;
    fair.name = "Ropewalk Market";
    fair.firstDay = kToday - Days{20};
    fair.lastDay = kToday - Days{18};
    stall.fairs = {fair};
    const FairDemand demand = stall.demand();
    EXPECT_EQ(demand.days, 4);
    EXPECT_EQ(demand.fairs, 2);
    EXPECT_NEAR(stall.bring().kinds.at(0).asked.mean, 1, 1e-12);
    EXPECT_TRUE(stall.bring().isFromFew());
}

TEST(WhatToBring, TodayIsNotOverAndDoesNotCount) {
    Stall stall;
    stall.sell(-7, 4);
    stall.sell(0, 9);
    EXPECT_EQ(stall.demand().days, 1);
    EXPECT_NEAR(stall.bring().kinds.at(0).asked.mean, 4, 1e-12);
}

TEST(WhatToBring, WhereDaysSpreadMoreThanChanceMoreIsBrought) {
    Stall even, wild;
    for (int day = 1; day <= 10; ++day) {
        even.sell(-7 * day, 6);
        wild.sell(-7 * day, day % 2 == 0 ? 1 : 11);
    }
    const ToBring calm = even.bring().kinds.at(0);
    const ToBring broad = wild.bring().kinds.at(0);
    EXPECT_NEAR(calm.asked.mean, broad.asked.mean, 1e-12);
    EXPECT_NEAR(calm.asked.variance, calm.asked.mean, 1e-12);
    // The sample variance of 1 and 11, five times each: 250/9.
    EXPECT_NEAR(broad.asked.variance, 250.0 / 9, 1e-9);
    EXPECT_GT(broad.brought.quantity, calm.brought.quantity);
    EXPECT_GT(broad.brought.leftover, calm.brought.leftover);
}

// The sample variance of 2 and 22 is 200: two days are enough to tell that they differ.
TEST(WhatToBring, TwoDaysHaveASpread) {
    Stall stall;
    stall.sell(-7, 2);
    stall.sell(-14, 22);
    EXPECT_NEAR(stall.bring().kinds.at(0).asked.variance, 200, 1e-9);
}

// Days are independent: over three of them the mean and the variance are three times those of one.
TEST(WhatToBring, OverSeveralDaysTheSpreadIsThatOfTheirSum) {
    Stall wild;
    for (int day = 1; day <= 10; ++day)
        wild.sell(-7 * day, day % 2 == 0 ? 1 : 11);
    const ToBring broad = wild.bring(3).kinds.at(0);
    EXPECT_NEAR(broad.asked.mean, 18, 1e-9);
    EXPECT_NEAR(broad.asked.variance, 3 * 250.0 / 9, 1e-9);
}

// The least that is enough with the probability of the ratio: none, where none is asked for as often.
TEST(WhatToBring, AQuantityThatIsJustEnoughIsEnough) {
    const double mean = std::log(2.0);
    ASSERT_EQ(std::exp(-mean), 0.5);
    EXPECT_EQ(bestQuantity({mean, mean}, 1, 1).quantity, 0);
    EXPECT_EQ(bestQuantity({mean, mean}, 1.001, 1).quantity, 1);
}

TEST(WhatToBring, AWidelySpreadStyleStaysSoInItsParts) {
    Stall stall;
    for (int day = 1; day <= 10; ++day) {
        stall.sell(-7 * day, day % 2 == 0 ? 1 : 11, "M");
        stall.sell(-7 * day, day % 2 == 0 ? 1 : 11, "L");
    }
    const auto kinds = stall.bring().kinds;
    ASSERT_EQ(kinds.size(), 2U);
    // A share of a negative binomial count is one of the same size: (s² − x̄)/x̄² does not change.
    const double whole = (1000.0 / 9 - 12) / (12.0 * 12);
    for (const ToBring& kind : kinds)
        EXPECT_NEAR((kind.asked.variance - kind.asked.mean) / (kind.asked.mean * kind.asked.mean), whole,
                    1e-9);
}

TEST(WhatToBring, StandsBesideWhatIsFreeOnTheRail) {
    Stall stall;
    for (int day = 1; day <= 8; ++day)
        stall.sell(-7 * day, 4);
    stall.addLot(3, true);
    stall.addLot(2, false);
    stall.addLot(1, true, false);
    const ToBring tee = stall.bring().kinds.at(0);
    EXPECT_EQ(tee.name, "Tee, M, Moss");
    EXPECT_EQ(tee.ready, 4) << "what is in the wash today will be dry by then";
    EXPECT_EQ(tee.toWash, 2);
    EXPECT_EQ(tee.missing(), tee.brought.quantity - 6);
    stall.addLot(50, true);
    EXPECT_EQ(stall.bring().kinds.at(0).missing(), 0);
}

TEST(WhatToBring, WhatEarnsNothingStaysAtHome) {
    Stall stall;
    for (int day = 1; day <= 8; ++day)
        stall.sell(-7 * day, 4, "M", test::kMoss, Money{1400});
    EXPECT_TRUE(stall.bring().kinds.empty()) << "it costs 1,420 to make";
    EXPECT_NEAR(stall.bring().asked, 4, 1e-12);
    EXPECT_NEAR(stall.bring().shortage, 4, 1e-12) << "all that is asked for is then not there";
    EXPECT_NEAR(stall.bring().leftover, 0, 1e-12);
}

TEST(WhatToBring, NothingIsKnownOfAShopWithoutFairs) {
    Stall stall;
    const WhatToBring what = stall.bring();
    EXPECT_EQ(what.days, 0);
    EXPECT_TRUE(what.kinds.empty());
    EXPECT_TRUE(what.isFromFew());
}

TEST(DrawnTogether, LeavesWhatSizesAndColoursTellAlone) {
    const auto shares = drawnTogether({{4, 2}, {2, 1}});
    EXPECT_NEAR(shares[0][0], 4.0 / 9, 1e-12);
    EXPECT_NEAR(shares[1][1], 1.0 / 9, 1e-12);
    EXPECT_EQ(drawnTogether({{0, 0}})[0][0], 0);
}

TEST(DrawnTogether, DrawsThinCellsByTheirWeight) {
    // By hand, after the formula (Fienberg & Holland 1973 [M]): N = 8, λ = ¼ each, K = (64 − 32)/16 = 2, so
    // (4 + ½)/10 and (0 + ½)/10.
    const auto shares = drawnTogether({{4, 0}, {0, 4}});
    EXPECT_NEAR(shares[0][0], 0.45, 1e-12);
    EXPECT_NEAR(shares[0][1], 0.05, 1e-12);
}

TEST(DrawnTogether, SharesAddToOneAndLieBetweenWhatWasSeenAndExpected) {
    const std::vector<std::vector<std::int64_t>> sold{{5, 0, 1}, {9, 2, 0}, {3, 1, 1}, {0, 0, 2}};
    const auto shares = drawnTogether(sold);
    double all = 0;
    for (const auto& row : shares)
        all = std::accumulate(row.begin(), row.end(), all);
    EXPECT_NEAR(all, 1, 1e-12);
    // The second row has 11 of 24, the first column 17.
    const double seen = 9.0 / 24, expected = 11.0 * 17 / (24 * 24);
    EXPECT_GT(shares[1][0], std::min(seen, expected));
    EXPECT_LT(shares[1][0], std::max(seen, expected));
    EXPECT_GT(shares[1][2], 0) << "none was sold, but both its size and its colour were";
}

} // namespace
} // namespace holdfast
