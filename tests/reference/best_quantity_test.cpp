// SPDX-License-Identifier: GPL-3.0-or-later
// How many to bring: the newsvendor's quantity and its expected shortage, against published and computed
// figures (references.md §8), and against what a search over every quantity finds.
#include "core/stock/demand.h"
#include "core/trade/unit_normal.h"

#include <gtest/gtest.h>

#include <cmath>
#include <vector>

namespace holdfast {
namespace {

TEST(BestQuantity, NormalDemandAsComputedWithSciPy) {
    // Normal(1000, 200), 30 lost by one too few and 20 by one too many; SciPy 1.10 [C].
    const Demand demand{1000, 200.0 * 200.0};
    EXPECT_DOUBLE_EQ(criticalRatio(30, 20), 0.6);
    EXPECT_NEAR(unitNormalQuantile(0.6), 0.2533471031357997, 1e-12);
    const double quantity = normalQuantity(demand, 0.6);
    EXPECT_NEAR(quantity, 1050.66942062716, 1e-9);
    const double shortage = normalShortage(demand, quantity);
    EXPECT_NEAR(shortage, 57.00073844850812, 1e-9);
    EXPECT_NEAR(expectedProfit(demand, shortage, quantity - 1000 + shortage, 30, 20), 26136.574665031392,
                1e-8);
    // Whole garments: the least that is enough.
    const Brought brought = bestQuantity(demand, 30, 20);
    EXPECT_EQ(brought.quantity, 1051);
    EXPECT_NEAR(brought.leftover - brought.shortage, 51, 1e-9);
}

TEST(BestQuantity, PoissonShortageAsInATextbook) {
    // Poisson 1.25: F(2) = .868468; L(0) … L(3) [R, a textbook's appendix].
    const Demand demand{1.25, 1.25};
    const double known[] = {1.25, 0.53650, 0.18114, 0.04961};
    for (std::int64_t quantity = 0; quantity < 4; ++quantity)
        EXPECT_NEAR(broughtOf(demand, quantity).shortage, known[quantity], 5e-6) << quantity;
    EXPECT_EQ(bestQuantity(demand, 0.868467, 1 - 0.868467).quantity, 2);
    EXPECT_EQ(bestQuantity(demand, 0.868469, 1 - 0.868469).quantity, 3);
}

TEST(BestQuantity, PoissonTenIsThirteenAtFourInFive) {
    // F(12) = .79156 falls short of .8 [C, SciPy 1.10].
    const Demand demand{10, 10};
    EXPECT_EQ(bestQuantity(demand, 4, 1).quantity, 13);
    EXPECT_EQ(bestQuantity(demand, 0.7915, 1 - 0.7915).quantity, 12);
}

TEST(BestQuantity, NegativeBinomialOfSizeOneIsGeometric) {
    // Of a geometric count with mean m, m·(m/(1 + m))^q are short of q on the average: a sum in closed form.
    const double mean = 3;
    const Demand demand{mean, mean + mean * mean};
    for (std::int64_t quantity = 0; quantity < 30; ++quantity)
        EXPECT_NEAR(broughtOf(demand, quantity).shortage,
                    mean * std::pow(mean / (1 + mean), static_cast<double>(quantity)), 1e-9)
            << quantity;
    // The least q with 1 − (3/4)^(q + 1) ≥ .9 is 8.
    EXPECT_EQ(bestQuantity(demand, 9, 1).quantity, 8);
}

// Probability of a count, not one after the other as the program has it.
double probabilityOf(const Demand& demand, int count) {
    if (demand.variance <= demand.mean)
        return std::exp(count * std::log(demand.mean) - demand.mean - std::lgamma(count + 1.0));
    const double size = demand.mean * demand.mean / (demand.variance - demand.mean);
    return std::exp(std::lgamma(size + count) - std::lgamma(size) - std::lgamma(count + 1.0) +
                    size * std::log(size / (size + demand.mean)) +
                    count * std::log(demand.mean / (size + demand.mean)));
}

TEST(BestQuantity, NoOtherQuantityEarnsMore) {
    for (const double mean : {0.3, 1.0, 2.5, 7.0, 20.0}) {
        for (const double wider : {1.0, 1.5, 4.0}) {
            for (const double over : {0.2, 1.0, 3.0, 20.0}) {
                const Demand demand{mean, mean * wider};
                const double under = 10;
                std::vector<double> profits;
                for (int quantity = 0; quantity < 120; ++quantity) {
                    double profit = 0;
                    for (int asked = 0; asked < 900; ++asked)
                        profit += probabilityOf(demand, asked) *
                                  (under * std::min(asked, quantity) - over * std::max(0, quantity - asked));
                    profits.push_back(profit);
                }
                const Brought best = bestQuantity(demand, under, over);
                const double most = *std::ranges::max_element(profits);
                EXPECT_NEAR(profits.at(static_cast<std::size_t>(best.quantity)), most, 1e-7)
                    << mean << " × " << wider << ", " << over;
                EXPECT_NEAR(expectedProfit(demand, best.shortage, best.leftover, under, over), most, 1e-7);
            }
        }
    }
}

TEST(BestQuantity, NothingIsBroughtForNothing) {
    EXPECT_EQ(bestQuantity({5, 5}, 0, 1).quantity, 0);
    EXPECT_EQ(bestQuantity({5, 5}, -3, 1).quantity, 0);
    EXPECT_EQ(bestQuantity({0, 0}, 3, 1).quantity, 0);
    // What costs nothing when it comes home is brought until it is enough 995 of 1,000 times, no more.
    EXPECT_EQ(bestQuantity({5, 5}, 3, 0).quantity, bestQuantity({5, 5}, 0.995, 0.005).quantity);
}

TEST(SpreadOfCounts, QuantilesOfChiSquaredAsInTheTables) {
    // The .95 quantiles of any printed table [M].
    const std::pair<std::int64_t, double> known[] = {{1, 3.841}, {5, 11.070}, {10, 18.307}, {30, 43.773}};
    for (const auto& [degrees, quantile] : known)
        EXPECT_NEAR(chiSquared95(degrees) / quantile, 1, degrees == 1 ? 0.03 : 0.004) << degrees;
}

struct Frequencies {
    std::vector<int> of; // 0, 1, 2 …
    std::int64_t count = 0;
    double mean = 0, variance = 0;

    explicit Frequencies(std::vector<int> frequencies)
        : of(std::move(frequencies)) {
        double sum = 0, squares = 0;
        for (std::size_t value = 0; value < of.size(); ++value) {
            count += of[value];
            sum += static_cast<double>(value) * of[value];
            squares += static_cast<double>(value * value) * of[value];
        }
        const auto all = static_cast<double>(count);
        mean = sum / all;
        variance = (squares - sum * mean) / (all - 1);
    }
};

TEST(SpreadOfCounts, HorseKicksAreChanceAndAccidentsAreNot) {
    // Deaths by horse kicks, Bortkiewicz 1898 [M]: the book example of counts by chance.
    const Frequencies kicks{{109, 65, 22, 3, 1}};
    EXPECT_NEAR(kicks.mean, 0.61, 1e-12);
    EXPECT_FALSE(spreadsMoreThanChance(kicks.mean, kicks.variance, kicks.count));
    // Accidents of 647 women, Greenwood & Yule 1920 [M]: mean .4652, variance .692; negative binomial.
    const Frequencies accidents{{447, 132, 42, 21, 3, 2}};
    EXPECT_NEAR(accidents.mean, 0.4652, 1e-4);
    EXPECT_NEAR(accidents.variance, 0.692, 1e-3);
    EXPECT_TRUE(spreadsMoreThanChance(accidents.mean, accidents.variance, accidents.count));
}

TEST(SpreadOfCounts, OneDayTellsNoSpread) {
    // Ten counts, nine degrees: 16.919 (the same table), so a variance of 1.88 times the mean is the least.
    EXPECT_TRUE(spreadsMoreThanChance(5, 5 * 1.89, 10));
    EXPECT_FALSE(spreadsMoreThanChance(5, 5 * 1.87, 10));
    EXPECT_TRUE(spreadsMoreThanChance(5, 5 * 3.9, 2)) << "3.841 with one degree";
    EXPECT_FALSE(spreadsMoreThanChance(7, 0, 1));
    EXPECT_FALSE(spreadsMoreThanChance(0, 0, 20));
}

} // namespace
} // namespace holdfast
