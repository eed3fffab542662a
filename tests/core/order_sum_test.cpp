// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/orders/order_sum.h"

#include <gtest/gtest.h>

#include <numeric>
#include <random>

namespace holdfast {
namespace {

using Prices = std::vector<Money>;

TaxRule included(std::int64_t hundredths) {
    return {TaxKind::Included, {hundredths}, TaxedBy::Total, Rounding::HalfUp};
}

TaxRule added(std::int64_t hundredths, TaxedBy by = TaxedBy::Total, Rounding rounding = Rounding::HalfUp) {
    return {TaxKind::Added, {hundredths}, by, rounding};
}

BillLine share(BillLineKind kind, std::int64_t hundredths) {
    return {kind, {}, Percentage{hundredths}};
}

BillLine amount(BillLineKind kind, std::int64_t minor, std::string words = {}) {
    return {kind, std::move(words), Money{minor}};
}

// The VAT fraction of HM Revenue and Customs' VAT guide (Notice 700), rate / (100 + rate): 1/6 at 20 %, 7/47
// at 17.5 %, 1/21 at 5 %. Values from memory; the fractions follow from their definition.
TEST(OrderSum, TaxIncludedIsTheVatFractionOfThePrice) {
    EXPECT_EQ(sumOf(Prices{{240'00}}, {}, included(20'00)).tax, Money{40'00});
    EXPECT_EQ(sumOf(Prices{{235'00}}, {}, included(17'50)).tax, Money{35'00});
    EXPECT_EQ(sumOf(Prices{{105'00}}, {}, included(5'00)).tax, Money{5'00});
    EXPECT_EQ(sumOf(Prices{{240'00}}, {}, included(20'00)).total, Money{240'00});
    EXPECT_EQ(sumOf(Prices{{240'00}}, {}, included(20'00)).withoutTax(), Money{200'00});
    EXPECT_EQ(sumOf(Prices{{9'99}}, {}, included(20'00)).tax, Money{1'67}); // 1.665, a half away from 0
}

// EN 16931-1, rules BR-CO-13 to BR-CO-17: the taxable amount is the sum of the lines less allowances plus
// charges, the tax is that by the rate, rounded to two decimals, and the total is both. Numbers here: three
// lines of 12.34, an allowance of 300 and a charge of 20 % of 1,000, each at 25 %.
TEST(OrderSum, TaxAddedIsOfTheSumAfterAllowancesAndCharges) {
    const OrderSum lines = sumOf(Prices{{12'34}, {12'34}, {12'34}}, {}, added(25'00));
    EXPECT_EQ(lines.tax, Money{9'26}); // 9.255
    EXPECT_EQ(lines.total, Money{46'28});
    const std::vector<BillLine> both{amount(BillLineKind::Discount, -300'00, "production error"),
                                     share(BillLineKind::Rush, 20'00)};
    const OrderSum sum = sumOf(Prices{{1'000'00}}, both, added(25'00));
    EXPECT_EQ(sum.lines, (Prices{{-300'00}, {200'00}}));
    EXPECT_EQ(sum.tax, Money{225'00});
    EXPECT_EQ(sum.total, Money{1'125'00});
}

// By line each is rounded, so three of 0.03 at 17.5 % (0.00525 each) bring 3 × 0.01, their total of 0.09
// brings 0.02 (0.01575): the worked difference that accounting texts warn of; the arithmetic is by hand.
TEST(OrderSum, TaxByLineAndByTotalMayDifferByWhatIsRounded) {
    const Prices three{{3}, {3}, {3}};
    EXPECT_EQ(sumOf(three, {}, added(17'50, TaxedBy::Line)).tax, Money{3});
    EXPECT_EQ(sumOf(three, {}, added(17'50)).tax, Money{2});
}

// Halves: 2.5 and 3.5 go to 3 and 4 half up, to 2 and 4 half even (IEEE 754's ties to even).
TEST(OrderSum, HalvesGoAsTheShopRounds) {
    const auto taxOf = [](std::int64_t minor, Rounding rounding) {
        return sumOf(Prices{{minor}}, {}, added(10'00, TaxedBy::Total, rounding)).tax.minor;
    };
    EXPECT_EQ(taxOf(25, Rounding::HalfUp), 3);
    EXPECT_EQ(taxOf(35, Rounding::HalfUp), 4);
    EXPECT_EQ(taxOf(25, Rounding::HalfEven), 2);
    EXPECT_EQ(taxOf(35, Rounding::HalfEven), 4);
}

TEST(OrderSum, PercentagesAreOfTheGarmentsAlone) {
    const std::vector<BillLine> lines{amount(BillLineKind::Extra, 2'50, "Gift wrap"),
                                      share(BillLineKind::Discount, -10'00)};
    const OrderSum sum = sumOf(Prices{{12'35}, {12'30}}, lines, {});
    EXPECT_EQ(sum.garments, Money{24'65});
    EXPECT_EQ(sum.lines.back(), Money{-2'47}); // 2.465, away from 0
    EXPECT_EQ(sum.total, Money{24'68});
    EXPECT_EQ(sum.tax, Money{});
}

TEST(OrderSum, ManyCostLess) {
    const std::vector<PriceForMany> rules{{12, {5'00}}, {24, {10'00}}};
    EXPECT_EQ(lessForMany(rules, 11), Percentage{});
    EXPECT_EQ(lessForMany(rules, 12), Percentage{5'00});
    EXPECT_EQ(lessForMany(rules, 23), Percentage{5'00});
    EXPECT_EQ(lessForMany(rules, 200), Percentage{10'00});
    EXPECT_EQ(lessForMany({}, 200), Percentage{});
}

// Largest remainder (Hamilton's method): 100 over three equal ones is 34, 33, 33, the first first; over 1, 2,
// 3 17, 33, 50.
TEST(OrderSum, SharesMeetTheirTotalAndTiesGoToTheEarlier) {
    EXPECT_EQ(sharedOut({100}, Prices{{1}, {1}, {1}}), (Prices{{34}, {33}, {33}}));
    EXPECT_EQ(sharedOut({100}, Prices{{1}, {2}, {3}}), (Prices{{17}, {33}, {50}}));
    EXPECT_EQ(sharedOut({-100}, Prices{{1}, {1}, {1}}), (Prices{{-34}, {-33}, {-33}}));
    EXPECT_EQ(sharedOut({5}, Prices{{0}, {0}}), (Prices{{3}, {2}}));
}

// An order as a shop might take it: up to 12 garments and 4 lines, any tax.
class RandomOrders {
public:
    struct Drawn {
        Prices prices;
        std::vector<BillLine> lines;
        TaxRule tax;
    };

    Drawn next() {
        Drawn drawn;
        const int garments = from(1, 12);
        for (int count = 0; count < garments; ++count)
            drawn.prices.push_back({from(0, 30'000)});
        const int lines = from(0, 4);
        for (int count = 0; count < lines; ++count)
            drawn.lines.push_back(line());
        drawn.tax = {static_cast<TaxKind>(from(0, 2)),
                     {from(0, 3'000)},
                     static_cast<TaxedBy>(from(0, 1)),
                     static_cast<Rounding>(from(0, 1))};
        return drawn;
    }

private:
    int from(int low, int high) { return std::uniform_int_distribution<int>{low, high}(m_random); }
    BillLine line() {
        const auto kind = static_cast<BillLineKind>(from(0, 3));
        return from(0, 1) == 0 ? amount(kind, from(-5'000, 5'000)) : share(kind, from(-10'000, 10'000));
    }

    std::mt19937 m_random{20261130};
};

// Tax once more, in wider numbers and by another road: doubled, so that no half is lost.
std::int64_t taxAgain(std::int64_t minor, const TaxRule& tax) {
    if (tax.kind == TaxKind::None)
        return 0;
    const std::int64_t whole = tax.kind == TaxKind::Added ? 10'000 : 10'000 + tax.rate.hundredths;
    const std::int64_t product = std::abs(minor) * tax.rate.hundredths;
    std::int64_t rounded = (2 * product + whole) / (2 * whole);
    const bool isHalf = (2 * product) % (2 * whole) == whole;
    if (isHalf && tax.rounding == Rounding::HalfEven && rounded % 2 == 1)
        --rounded;
    return minor < 0 ? -rounded : rounded;
}

TEST(OrderSum, LinesTaxAndSharesMeetTheTotalOfAMillionOrders) {
    RandomOrders random;
    for (int round = 0; round < 1'000'000; ++round) {
        const auto [prices, lines, tax] = random.next();
        const OrderSum sum = sumOf(prices, lines, tax);
        Money all = sum.garments;
        std::int64_t taxed = 0;
        for (const Money price : prices)
            taxed += taxAgain(price.minor, tax);
        for (const Money line : sum.lines) {
            all += line;
            taxed += taxAgain(line.minor, tax);
        }
        const std::int64_t expected = tax.by == TaxedBy::Line ? taxed : taxAgain(all.minor, tax);
        ASSERT_EQ(sum.tax.minor, expected) << round;
        ASSERT_EQ(sum.total, tax.kind == TaxKind::Added ? all + sum.tax : all) << round;
        const auto earned = earnedBy(prices, sum);
        ASSERT_EQ(std::accumulate(earned.begin(), earned.end(), Money{}), sum.withoutTax()) << round;
    }
}

} // namespace
} // namespace holdfast
