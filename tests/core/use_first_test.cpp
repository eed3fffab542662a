// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/cutting/cut_length.h"
#include "core/film/use_first.h"

#include "core/film/usual_use.h"

#include "tests/core/shelf_builders.h"

#include <gtest/gtest.h>

#include <algorithm>
#include <random>

namespace holdfast::test {
namespace {

// A shelf, and what is asked of it here.
class RankedShelf : public ShelfOfOneFilm {
public:
    std::string rollOf(DecalId decal) const {
        const Allotment made = allotment();
        const auto found = made.rollOf.find(decal);
        EXPECT_NE(made.rollOf.contains(decal), made.lack.contains(decal)) << "either a roll or a reason";
        return found == made.rollOf.end() ? "" : aRoll(static_cast<int>(found->second.value - 100)).label();
    }
    std::vector<std::string> ranking() const {
        std::vector<std::string> labels;
        for (const RollForecast& forecast : allotment().useFirst)
            labels.push_back(aRoll(static_cast<int>(forecast.roll.value - 100)).label());
        return labels;
    }
};

using Labels = std::vector<std::string>;

std::vector<Millimetres> everyWeek(Millimetres length) {
    return std::vector<Millimetres>(kUseWeeks, length);
}

Decal decalOf(Millimetres width, Millimetres height) {
    Decal decal;
    decal.width = width;
    decal.height = height;
    return decal;
}

TEST(CutLength, OneDecalTakesItsHeightAndAGap) {
    const ShopSettings settings; // gap 8, margins 6
    Film film = aShelfFilm();
    film.hasGrain = true;
    EXPECT_EQ(lengthFor(decalOf(200_mm, 300_mm), film, 500_mm, settings), 308_mm);
    EXPECT_EQ(lengthFor(decalOf(488_mm, 300_mm), film, 500_mm, settings), 308_mm);
    EXPECT_FALSE(lengthFor(decalOf(489_mm, 300_mm), film, 500_mm, settings));
}

TEST(CutLength, AFilmWithoutGrainMayBeTurned) {
    const ShopSettings settings;
    const Film film = aShelfFilm();
    EXPECT_EQ(lengthFor(decalOf(200_mm, 300_mm), film, 500_mm, settings), 208_mm);
    EXPECT_EQ(lengthFor(decalOf(600_mm, 300_mm), film, 500_mm, settings), 608_mm);
    EXPECT_FALSE(lengthFor(decalOf(600_mm, 490_mm), film, 500_mm, settings));
}

TEST(CutLength, SmallDecalsStandSideBySide) {
    const ShopSettings settings;
    Film film = aShelfFilm();
    film.hasGrain = true;
    const Decal name = decalOf(120_mm, 40_mm);
    // Four of 120 with three gaps of 8 need 504 of 488: three in a row.
    const std::vector<const Decal*> four{&name, &name, &name, &name};
    EXPECT_EQ(lengthInRows(four, film, 500_mm, settings), 96_mm);
    EXPECT_EQ(lengthInRows(std::span{four}.first(3), film, 500_mm, settings), 48_mm);
    EXPECT_EQ(lengthInRows({}, film, 500_mm, settings), 0_mm);
    EXPECT_EQ(lengthInRows(four, film, 516_mm, settings), 48_mm);
}

TEST(CutLength, RowsAreNeverLongerThanOneAfterTheOtherNorShorterThanTheArea) {
    std::mt19937 random{29};
    const ShopSettings settings;
    for (int turn = 0; turn < 300; ++turn) {
        Film film = aShelfFilm();
        film.hasGrain = turn % 2 == 0;
        std::vector<Decal> decals(1 + random() % 30);
        std::vector<const Decal*> all;
        Millimetres sum;
        std::int64_t area = 0;
        for (Decal& decal : decals) {
            decal = decalOf({10 + static_cast<std::int64_t>(random() % 450)},
                            {10 + static_cast<std::int64_t>(random() % 450)});
            all.push_back(&decal);
            sum += *lengthFor(decal, film, 500_mm, settings);
            area += (decal.width.value + 8) * (decal.height.value + 8);
        }
        const Millimetres rows = lengthInRows(all, film, 500_mm, settings);
        EXPECT_LE(rows, sum);
        EXPECT_GE(rows.value * (488 + 8), area);
    }
}

TEST(UseFirst, ADecalGoesToTheRollThatGoesOffFirst) {
    RankedShelf shelf;
    shelf.roll(12, 3000_mm, nov(30));
    shelf.roll(9, 3000_mm, nov(20));
    shelf.roll(15, 3000_mm, std::nullopt);
    EXPECT_EQ(shelf.rollOf(shelf.waiting.decal(200_mm, 200_mm)), "R-09");
}

TEST(UseFirst, TheOffcutGoesFirstWhereBothGoOffTogether) {
    RankedShelf shelf;
    shelf.roll(9, 3000_mm, nov(30));
    shelf.roll(12, 400_mm, nov(30));
    EXPECT_EQ(shelf.rollOf(shelf.waiting.decal(200_mm, 200_mm)), "R-12");
}

TEST(UseFirst, EarliestPromiseIsServedFirst) {
    RankedShelf shelf;
    shelf.roll(9, 250_mm, nov(20));
    const DecalId later = shelf.waiting.decal(400_mm, 200_mm);
    const DecalId sooner = shelf.waiting.decal(400_mm, 200_mm);
    shelf.waiting.lastOrder().promised = LocalTime{nov(12)};
    EXPECT_EQ(shelf.rollOf(sooner), "R-09");
    EXPECT_EQ(shelf.rollOf(later), "");
}

TEST(UseFirst, RollsPutAwayOrUsedUpAreNotLookedAt) {
    RankedShelf shelf;
    shelf.roll(9, 3000_mm, nov(20)).state = RollState::PutAway;
    shelf.roll(12, 3000_mm, nov(21)).state = RollState::UsedUp;
    const DecalId decal = shelf.waiting.decal(200_mm, 200_mm);
    EXPECT_EQ(shelf.allotment().lack.at(decal), "No roll of Marram Soft, Dusk on the shelf.");
    EXPECT_TRUE(shelf.allotment().useFirst.empty());
}

TEST(UseFirst, OnlyConfirmedWorkThatIsNotCutWaits) {
    RankedShelf shelf;
    shelf.roll(9, 3000_mm, nov(20));
    shelf.waiting.decal(200_mm, 200_mm);
    shelf.waiting.lastOrder().state = OrderState::Quoted;
    shelf.waiting.decal(200_mm, 200_mm);
    shelf.waiting.lastOrder().state = OrderState::Cancelled;
    shelf.waiting.decal(200_mm, 200_mm);
    shelf.waiting.lastDecal().cutAt = at(nov(10));
    shelf.waiting.decal(200_mm, 200_mm);
    shelf.waiting.lastGarment().handedOverAt = at(nov(10));
    EXPECT_TRUE(shelf.allotment().rollOf.empty());
    EXPECT_TRUE(shelf.allotment().lack.empty());
    EXPECT_EQ(shelf.allotment().useFirst.front().allotted, 0_mm);
}

TEST(UseFirst, AQuotationIsShownItsRollButTakesNothingOffIt) {
    RankedShelf shelf;
    shelf.roll(9, 450_mm, nov(20));
    shelf.waiting.decal(400_mm, 200_mm); // confirmed: takes 208 mm
    const DecalId one = shelf.waiting.decal(400_mm, 200_mm);
    shelf.waiting.lastOrder().state = OrderState::Quoted;
    const DecalId other = shelf.waiting.decal(400_mm, 200_mm);
    shelf.waiting.lastOrder().state = OrderState::Quoted;
    const DecalId tooLong = shelf.waiting.decal(400_mm, 300_mm);
    shelf.waiting.lastOrder().state = OrderState::Quoted;
    const Allotment made = shelf.allotment();
    EXPECT_FALSE(made.rollOf.contains(one));
    // Each is looked at as if the other were not there.
    EXPECT_EQ(made.rollFor(one), RollId{109});
    EXPECT_EQ(made.rollFor(other), RollId{109});
    EXPECT_EQ(made.useFirst.front().allotted, 208_mm);
    EXPECT_FALSE(made.rollFor(tooLong));
    ASSERT_NE(made.lackOf(tooLong), nullptr);
    EXPECT_EQ(*made.lackOf(tooLong),
              "Marram Soft, Dusk: decal of 400 × 300 mm needs 0.31 m, R-09 has 0.24 m left "
              "after what is promised.");
}

TEST(UseFirst, ALackNamesTheWidthThatIsWanted) {
    RankedShelf shelf;
    shelf.film.hasGrain = true;
    shelf.roll(9, 3000_mm, nov(20)).width = 150_mm;
    const DecalId decal = shelf.waiting.decal(180_mm, 100_mm);
    EXPECT_EQ(shelf.allotment().lack.at(decal),
              "Marram Soft, Dusk: 180 mm decal needs 192 mm of width, the widest roll is 150 mm.");
}

TEST(UseFirst, ALackOfWidthNamesTheShorterSideOfADecalThatMayBeTurned) {
    RankedShelf shelf;
    shelf.roll(9, 3000_mm, nov(20)).width = 150_mm;
    const DecalId decal = shelf.waiting.decal(180_mm, 160_mm);
    EXPECT_EQ(shelf.allotment().lack.at(decal),
              "Marram Soft, Dusk: 160 mm decal needs 172 mm of width, the widest roll is 150 mm.");
}

TEST(UseFirst, ALackNamesTheLengthThatIsLeftAfterWhatIsPromised) {
    RankedShelf shelf;
    shelf.roll(9, 310_mm, nov(20));
    shelf.roll(12, 50_mm, nov(20));
    const DecalId first = shelf.waiting.decal(400_mm, 200_mm);
    const DecalId second = shelf.waiting.decal(400_mm, 232_mm);
    EXPECT_EQ(shelf.rollOf(first), "R-09");
    EXPECT_EQ(shelf.allotment().lack.at(second),
              "Marram Soft, Dusk: decal of 400 × 232 mm needs 0.24 m, R-09 has "
              "0.10 m left after what is promised.");
}

TEST(UseFirst, WhereNoGoodRollTakesItABadOneIsNamed) {
    RankedShelf shelf;
    shelf.roll(17, 3000_mm, nov(5)); // six days past
    shelf.roll(9, 100_mm, nov(30));
    const DecalId decal = shelf.waiting.decal(400_mm, 200_mm);
    EXPECT_EQ(shelf.rollOf(decal), "R-17");
    EXPECT_FALSE(shelf.allotment().forecast(aRoll(17).id)->mayBeUsed);
}

TEST(UseFirst, ADampRollIsBetterThanOnePastItsAgeAndAShortOneIsNone) {
    RankedShelf shelf;
    shelf.roll(17, 3000_mm, nov(5));
    shelf.roll(18, 3000_mm, nov(9));
    shelf.roll(21, 3000_mm, nov(30));
    shelf.condition(21).humidityOutsideNow = true;
    const DecalId decal = shelf.waiting.decal(400_mm, 200_mm);
    EXPECT_EQ(shelf.rollOf(decal), "R-21");
    const DecalId longer = shelf.waiting.decal(480_mm, 3400_mm);
    EXPECT_EQ(shelf.rollOf(longer), "");
}

TEST(UseFirst, ARollThatFailedItsStripIsPassedOver) {
    RankedShelf shelf;
    shelf.roll(9, 3000_mm, nov(20));
    shelf.roll(12, 3000_mm, nov(30));
    shelf.condition(9).stripFailed = true;
    const DecalId decal = shelf.waiting.decal(400_mm, 200_mm);
    EXPECT_EQ(shelf.rollOf(decal), "R-12");
    EXPECT_FALSE(shelf.allotment().forecast(aRoll(9).id)->mayBeUsed);
}

TEST(UseFirst, OfRollsPastTheirAgeTheFresherIsTaken) {
    RankedShelf shelf;
    shelf.roll(17, 3000_mm, nov(5));
    shelf.roll(18, 3000_mm, nov(9));
    EXPECT_EQ(shelf.rollOf(shelf.waiting.decal(400_mm, 200_mm)), "R-18");
}

TEST(UseFirst, ALackOnABadRollSaysBoth) {
    RankedShelf shelf;
    shelf.roll(17, 150_mm, nov(5));
    const DecalId decal = shelf.waiting.decal(400_mm, 200_mm);
    EXPECT_EQ(shelf.allotment().lack.at(decal),
              "Marram Soft, Dusk: decal of 400 × 200 mm needs 0.21 m, R-17 has "
              "0.15 m left, and R-17 is past its use-by (6 days); press a test "
              "strip.");
}

TEST(UseFirst, SmallDecalsAreLaidInRowsBeforeARollIsCalledTooShort) {
    RankedShelf shelf;
    shelf.roll(9, 100_mm, nov(30));
    std::vector<DecalId> names;
    for (int name = 0; name < 6; ++name)
        names.push_back(shelf.waiting.decal(120_mm, 40_mm)); // 48 mm each one after the other
    for (const DecalId name : names)
        EXPECT_EQ(shelf.rollOf(name), "R-09");
    EXPECT_LE(shelf.allotment().forecast(aRoll(9).id)->allotted, 100_mm);
}

TEST(UseFirst, AWideRollIsNotBlockedByWhatANarrowOneTakes) {
    RankedShelf shelf;
    shelf.film.hasGrain = true;
    shelf.roll(9, 300_mm, nov(20)); // wide
    shelf.roll(12, 300_mm, nov(30)).width = 150_mm;
    const DecalId narrow = shelf.waiting.decal(100_mm, 200_mm); // promised first, would go to R-09
    const DecalId wide = shelf.waiting.decal(400_mm, 200_mm);
    EXPECT_EQ(shelf.rollOf(wide), "R-09");
    EXPECT_EQ(shelf.rollOf(narrow), "R-12");
}

TEST(UseFirst, NoRollIsPromisedMoreThanItHas) {
    std::mt19937 random{31};
    for (int turn = 0; turn < 150; ++turn) {
        RankedShelf shelf;
        shelf.film.hasGrain = turn % 2 == 0;
        const auto rolls = static_cast<int>(1 + random() % 4);
        for (int number = 1; number <= rolls; ++number) {
            FilmRoll& roll = shelf.roll(number, Millimetres{static_cast<std::int64_t>(random() % 1500)},
                                        nov(1) + Days{static_cast<int>(random() % 40)});
            roll.width = {100 + static_cast<std::int64_t>(random() % 400)};
        }
        std::map<DecalId, Decal> decals;
        for (int decal = 0; decal < 25; ++decal) {
            const DecalId id = shelf.waiting.decal({20 + static_cast<std::int64_t>(random() % 300)},
                                                   {20 + static_cast<std::int64_t>(random() % 300)});
            decals[id] = shelf.waiting.lastDecal();
        }
        const Allotment made = shelf.allotment();
        EXPECT_EQ(made.rollOf.size() + made.lack.size(), decals.size());
        std::size_t placed = 0;
        for (const RollForecast& forecast : made.useFirst) {
            EXPECT_LE(forecast.allotted, forecast.left);
            EXPECT_GE(forecast.expectedWaste, 0_mm);
            EXPECT_GE(forecast.usualUse, 0_mm);
            EXPECT_LE(forecast.allotted + forecast.usualUse + forecast.expectedWaste, forecast.left);
            EXPECT_TRUE(std::ranges::is_sorted(forecast.decals)); // by promise, as they were ordered
            for (const DecalId decal : forecast.decals)
                EXPECT_EQ(made.rollOf.at(decal), forecast.roll);
            placed += forecast.decals.size();
        }
        EXPECT_EQ(placed, made.rollOf.size());
    }
}

TEST(UseFirst, RecentUseIsTakenOffWhatWouldBeWasted) {
    RankedShelf shelf;
    shelf.roll(9, 3000_mm, nov(11) + Days{30});
    shelf.recentUse[kShelfFilm] = everyWeek(350_mm); // 1.5 m in thirty days, and it never varied
    shelf.waiting.decal(400_mm, 392_mm);
    const RollForecast forecast = shelf.allotment().useFirst.front();
    EXPECT_EQ(forecast.daysLeft, Days{30});
    EXPECT_EQ(forecast.allotted, 400_mm);
    EXPECT_EQ(forecast.usualUse, 1100_mm); // 1.5 m, of which 0.4 m is allotted already
    EXPECT_EQ(forecast.expectedWaste, 1500_mm);
}

TEST(UseFirst, UseIsNotCountedTwiceForTwoRollsOfAFilm) {
    RankedShelf shelf;
    shelf.roll(9, 1000_mm, nov(11) + Days{30});
    shelf.roll(12, 3000_mm, nov(11) + Days{60});
    shelf.recentUse[kShelfFilm] = everyWeek(350_mm);
    const Allotment made = shelf.allotment();
    EXPECT_EQ(made.forecast(aRoll(9).id)->usualUse, 1000_mm);
    EXPECT_EQ(made.forecast(aRoll(9).id)->expectedWaste, 0_mm);
    EXPECT_EQ(made.forecast(aRoll(12).id)->usualUse, 2000_mm); // three metres in sixty days, one from R-09
    EXPECT_EQ(made.forecast(aRoll(12).id)->expectedWaste, 1000_mm);
}

TEST(UseFirst, AFilmWithoutALimitIsNeverWasted) {
    RankedShelf shelf;
    shelf.roll(9, 3000_mm, std::nullopt);
    EXPECT_EQ(shelf.allotment().useFirst.front().expectedWaste, 0_mm);
    EXPECT_FALSE(shelf.allotment().useFirst.front().daysLeft);
}

TEST(UseFirst, RanksByUseByThenWasteThenLength) {
    RankedShelf shelf;
    shelf.roll(1, 4000_mm, nov(5));               // past its age: it needs a strip before all others
    shelf.roll(2, 2000_mm, nov(20));              // wastes two metres
    shelf.roll(3, 5000_mm, nov(30));              // wastes five
    shelf.roll(4, 2000_mm, nov(15));              // wastes two, sooner
    shelf.roll(5, 3000_mm, std::nullopt);         // no limit
    shelf.roll(6, 1000_mm, std::nullopt);         // nor this, and less is left
    shelf.roll(7, 9000_mm, nov(30));              // badly kept, and more to lose
    shelf.condition(7).humidityHoursOutside = 73; // more than the 72 allowed
    EXPECT_EQ(shelf.ranking(), (Labels{"R-01", "R-04", "R-02", "R-07", "R-03", "R-06", "R-05"}));
}

TEST(UseFirst, ARollThatMayNotBeUsedWastesAllThatIsNotAllotted) {
    RankedShelf shelf;
    shelf.roll(17, 3000_mm, nov(5));
    shelf.recentUse[kShelfFilm] = everyWeek(700_mm);
    EXPECT_EQ(shelf.allotment().useFirst.front().expectedWaste, 3000_mm);
    EXPECT_EQ(shelf.allotment().useFirst.front().usualUse, 0_mm);
    EXPECT_EQ(shelf.allotment().useFirst.front().daysLeft, Days{-6});
}

TEST(UseFirst, UseThatVariesLeavesSomeOfALongRollAndSometimesAllOfAShortOne) {
    RankedShelf shelf;
    shelf.roll(9, 1500_mm, nov(11) + Days{28});
    std::vector<Millimetres>& weeks = shelf.recentUse[kShelfFilm];
    for (int week = 0; week < kUseWeeks; ++week)
        weeks.push_back(week % 2 == 0 ? 700_mm : 50_mm); // on the average 400 mm a week
    const RollForecast forecast = shelf.allotment().useFirst.front();
    // 1.6 m in four weeks are usual, so the roll would be used up if use never varied.
    EXPECT_GT(forecast.expectedWaste, 100_mm);
    EXPECT_LT(forecast.expectedWaste, 600_mm);
    EXPECT_EQ(forecast.wasteLow, 0_mm);
    EXPECT_GT(forecast.wasteHigh, 600_mm);
    EXPECT_EQ(forecast.usualUse + forecast.expectedWaste, 1500_mm);
}

TEST(UseFirst, WorkPromisedForAfterTheUseByIsToBePressedEarly) {
    RankedShelf shelf;
    shelf.settings.restBeforeWash = Hours{24};
    shelf.roll(9, 3000_mm, nov(20));
    const DecalId inTime = shelf.waiting.decal(200_mm, 200_mm);
    shelf.waiting.lastOrder().promised = LocalTime{nov(21)} + Hours{15}; // pressed by the 20th
    const DecalId after = shelf.waiting.decal(200_mm, 200_mm);
    shelf.waiting.lastOrder().promised = LocalTime{nov(22)} + Hours{15};
    const RollForecast forecast = shelf.allotment().useFirst.front();
    EXPECT_EQ(forecast.decals, (std::vector{inTime, after}));
    EXPECT_EQ(forecast.pressEarly, std::vector{after});
}

TEST(UseFirst, WhatDoesNotFitInRowsIsNestedBeforeARollIsCalledTooShort) {
    RankedShelf shelf;
    shelf.film.hasGrain = true;
    // Rows by falling height: 300 beside 150, then a second 150 in a row of its own, 308 + 158 mm; nested the
    // two small ones lie beside the large one.
    shelf.roll(9, 320_mm, nov(30));
    const DecalId large = shelf.waiting.decal(320_mm, 300_mm);
    const DecalId one = shelf.waiting.decal(150_mm, 140_mm);
    const DecalId other = shelf.waiting.decal(150_mm, 140_mm);
    for (const DecalId decal : {large, one, other})
        EXPECT_EQ(shelf.rollOf(decal), "R-09");
    EXPECT_LE(shelf.allotment().forecast(aRoll(9).id)->allotted, 320_mm);
}

} // namespace
} // namespace holdfast::test
