// SPDX-License-Identifier: GPL-3.0-or-later
#include "tests/core/made_garments.h"

#include <gtest/gtest.h>

#include <algorithm>
#include <random>

namespace holdfast {
namespace {
using test::daysWithoutFault;
using test::faultsByMonth;
using test::faultsOfAll;
using test::faultTables;
using test::MadeGarment;

const LocalDate kFiguresDay = localDate(2026, 11, 25);

MadeGarment aTee(const std::string& film, std::optional<int> faultAfter = {}, int daysAgo = 100) {
    MadeGarment garment;
    garment.on = kFiguresDay - Days{daysAgo};
    garment.style = "Tee";
    garment.washing = "washed";
    garment.films = {film};
    garment.presses = {"Big press"};
    if (faultAfter)
        garment.fault = FirstFault{garment.on + Days{*faultAfter}, Fault::Cracked};
    return garment;
}

std::vector<MadeGarment> teesOf(const std::string& film, int garments, int faults) {
    std::vector<MadeGarment> tees(static_cast<std::size_t>(garments), aTee(film));
    std::fill_n(tees.begin(), faults, aTee(film, 30));
    return tees;
}

std::vector<MadeGarment> together(std::initializer_list<std::vector<MadeGarment>> parts) {
    std::vector<MadeGarment> all;
    for (const auto& part : parts)
        all.insert(all.end(), part.begin(), part.end());
    return all;
}

TEST(Figures, SharesOfFaultsByFilmTheLargestFirst) {
    const auto tees = together({teesOf("Dusk", 40, 1), teesOf("Moss", 30, 6)});
    const auto shares = faultTables(tees).at(FaultsBy::Film);
    ASSERT_EQ(shares.size(), 2U);
    EXPECT_EQ(shares[0].name, "Moss");
    EXPECT_EQ(shares[0].faults, 6);
    EXPECT_EQ(shares[0].garments, 30);
    EXPECT_DOUBLE_EQ(shares[0].interval.share, 0.2);
    EXPECT_LT(shares[0].interval.low, 0.2);
    EXPECT_GT(shares[0].interval.high, 0.2);
    EXPECT_EQ(faultsOfAll(tees).faults, 7);
    EXPECT_EQ(faultsOfAll(tees).garments, 70);
}

TEST(Figures, MoreThanChanceIsSaidOnlyWhereItIsAndNumbersAllow) {
    // 6 of 30 against 1 of 200: no chance. 6 of 30 against 5 of 30: quite possible.
    const auto clear =
        faultTables(together({teesOf("Dusk", 200, 1), teesOf("Moss", 30, 6)})).at(FaultsBy::Film);
    EXPECT_TRUE(clear[0].isMoreThanChance);
    EXPECT_LT(clear[0].chance, 0.001);
    EXPECT_FALSE(clear[1].isMoreThanChance);
    const auto alike =
        faultTables(together({teesOf("Dusk", 30, 5), teesOf("Moss", 30, 6)})).at(FaultsBy::Film);
    EXPECT_FALSE(alike[0].isMoreThanChance);
    // All ten came back, but ten are too few to say.
    const auto few =
        faultTables(together({teesOf("Dusk", 200, 1), teesOf("Moss", 10, 10)})).at(FaultsBy::Film);
    EXPECT_EQ(few[0].name, "Moss");
    EXPECT_FALSE(few[0].isMoreThanChance);
    EXPECT_FALSE(few[0].isJudged);
    EXPECT_TRUE(clear[0].isJudged);
}

// Holm 1979: the second need only be unlikely by one comparison fewer. Fisher's exact chances by binomial
// coefficients: 0.004926 and 0.021525 of three; 0.017119 is more than a third of one in twenty.
TEST(Figures, TheSecondIsJudgedByOneComparisonFewer) {
    const auto two =
        faultTables(together({teesOf("Dusk", 40, 8), teesOf("Moss", 40, 7), teesOf("Chalk", 120, 1)}))
            .at(FaultsBy::Film);
    EXPECT_EQ(two[0].name, "Dusk");
    EXPECT_NEAR(two[0].chance, 0.00492615258613571, 1e-12);
    EXPECT_NEAR(two[1].chance, 0.021524809503623184, 1e-12);
    EXPECT_TRUE(two[0].isMoreThanChance);
    EXPECT_TRUE(two[1].isMoreThanChance);
    const auto none =
        faultTables(together({teesOf("Dusk", 40, 5), teesOf("Moss", 40, 1), teesOf("Chalk", 120, 3)}))
            .at(FaultsBy::Film);
    EXPECT_NEAR(none[0].chance, 0.01711949663812381, 1e-12);
    EXPECT_FALSE(none[0].isMoreThanChance);
}

// What the page says of shops in which nothing is wrong: 19 of 20 are told of nothing, whichever table is
// looked at. The share may be off by three standard errors of its own, 0.029 for 500 shops.
TEST(Figures, OverAllTablesFewAlikeShopsAreToldOfAny) {
    std::mt19937 random{17};
    std::bernoulli_distribution cameBack{0.08};
    const auto oneOf = [&](const std::string& what, unsigned kinds) {
        return what + std::to_string(random() % kinds);
    };
    constexpr int kShops = 500;
    int told = 0;
    for (int shop = 0; shop < kShops; ++shop) {
        std::vector<MadeGarment> garments;
        for (int garment = 0; garment < 300; ++garment) {
            MadeGarment& each = garments.emplace_back(
                aTee(oneOf("Film ", 5), cameBack(random) ? std::optional{30} : std::nullopt));
            each.rolls = {oneOf("R-", 8)};
            each.presses = {oneOf("Press ", 2)};
            each.style = oneOf("Style ", 5);
            each.washing = oneOf("Washing ", 3);
        }
        const FaultTables tables = faultTables(garments);
        told += std::ranges::any_of(tables, [](const auto& table) {
            return std::ranges::any_of(table.second, &FaultShare::isMoreThanChance);
        });
    }
    EXPECT_LE(told, kShops * (0.05 + 0.029));
    EXPECT_GT(told, 0) << "else nothing was compared";
}

// Where all garments are alike, one of many films is called worse in no more than one of twenty shops.
TEST(Figures, AmongManyAlikeFilmsFewAreCalledWorse) {
    std::mt19937 random{7};
    std::bernoulli_distribution cameBack{0.08};
    int shopsWithAWorseFilm = 0;
    constexpr int kShops = 400;
    for (int shop = 0; shop < kShops; ++shop) {
        std::vector<MadeGarment> tees;
        for (int film = 0; film < 12; ++film) {
            for (int tee = 0; tee < 30; ++tee)
                tees.push_back(aTee("Film " + std::to_string(film),
                                    cameBack(random) ? std::optional{30} : std::nullopt));
        }
        const auto shares = faultTables(tees).at(FaultsBy::Film);
        shopsWithAWorseFilm += std::ranges::any_of(shares, &FaultShare::isMoreThanChance);
    }
    EXPECT_LE(shopsWithAWorseFilm, kShops / 20);
}

TEST(Figures, AGarmentWithTwoFilmsCountsForEach) {
    MadeGarment both = aTee("Dusk", 10);
    both.films.push_back("Moss");
    const auto shares = faultTables(std::vector{both, aTee("Dusk")}).at(FaultsBy::Film);
    ASSERT_EQ(shares.size(), 2U);
    EXPECT_EQ(shares[0].name, "Moss");
    EXPECT_EQ(shares[0].garments, 1);
    EXPECT_EQ(shares[1].garments, 2);
}

TEST(Figures, WithoutFaultUntilTodayWasOnlyWatched) {
    const std::vector<MadeGarment> tees{aTee("Dusk", 10), aTee("Dusk", {}, 5), aTee("Dusk", {}, 50)};
    const Survival survival = daysWithoutFault(tees, kFiguresDay);
    ASSERT_EQ(survival.steps.size(), 1U);
    EXPECT_EQ(survival.steps[0].at, 10);
    EXPECT_EQ(survival.steps[0].watched, 2U) << "the one of five days ago was watched for five";
    EXPECT_DOUBLE_EQ(survival.at(30).share, 0.5);
    EXPECT_EQ(survival.at(9).share, 1);
    EXPECT_EQ(survival.watchedUntil, 50);
}

TEST(Figures, MonthsStandInOrderAndOneStandsOut) {
    std::vector<MadeGarment> tees;
    for (int month = 0; month < 6; ++month) {
        for (int tee = 0; tee < 50; ++tee) {
            MadeGarment garment = aTee("Dusk");
            garment.on = localDate(2026, static_cast<unsigned>(month + 5), 10);
            if (tee < (month == 3 ? 14 : 2))
                garment.fault = FirstFault{garment.on + Days{20}, Fault::EdgeLifts};
            tees.push_back(garment);
        }
    }
    const FaultMonths months = faultsByMonth(tees);
    ASSERT_EQ(months.months.size(), 6U);
    EXPECT_EQ(months.months.front(), std::chrono::year{2026} / std::chrono::May);
    for (std::size_t month = 0; month < 6; ++month)
        EXPECT_EQ(months.chart.samples[month].isOut(), month == 3) << month;
}

TEST(Figures, PromisesAreKeptByTheTimeTheyNamed) {
    const LocalTime three = LocalTime{kFiguresDay} + Hours{15};
    const std::vector<PromiseGiven> promises{{three, three}, {three, three + Minutes{1}}, {three, {}}};
    const PromisesKept kept = promisesKept(promises);
    EXPECT_EQ(kept.given, 3);
    EXPECT_EQ(kept.kept, 1);
    EXPECT_NEAR(kept.interval->share, 1.0 / 3, 1e-12);
    EXPECT_FALSE(promisesKept({}).interval);
}

TEST(Figures, NothingHandedOverIsNoFigure) {
    EXPECT_EQ(faultsOfAll({}).garments, 0);
    EXPECT_TRUE(faultTables({}).at(FaultsBy::Film).empty());
    EXPECT_TRUE(daysWithoutFault({}, kFiguresDay).steps.empty());
    EXPECT_TRUE(faultsByMonth({}).chart.samples.empty());
}

} // namespace
} // namespace holdfast
