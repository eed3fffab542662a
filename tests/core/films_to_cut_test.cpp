// SPDX-License-Identifier: GPL-3.0-or-later
#include "tests/core/cutting_builders.h"

#include <gtest/gtest.h>

namespace holdfast::test {
namespace {

using Labels = std::vector<std::string>;

// "R-09", "not R-10" of one that may not be used.
Labels labelsOf(const CuttingBench& bench) {
    Labels labels;
    for (const RollOffer& offer : bench.toCut().rolls)
        labels.push_back((offer.mayBeUsed ? "" : "not ") +
                         aRoll(static_cast<int>(offer.roll.value - 100)).label());
    return labels;
}

std::string reasonFor(const CuttingBench& bench, int number) {
    for (const RollOffer& offer : bench.toCut().rolls)
        if (offer.roll == aRoll(number).id)
            return offer.reason.english();
    return "not offered";
}

TEST(FilmsToCut, RollsStandByUseByWithTheirReason) {
    CuttingBench bench; // today is Wed 11 Nov
    bench.roll(9, 5000_mm, nov(29));
    bench.roll(10, 5000_mm, nov(20));
    bench.roll(11, 5000_mm);
    bench.waiting.decal(100_mm, 100_mm);
    EXPECT_EQ(labelsOf(bench), (Labels{"R-10", "R-09", "R-11"}));
    EXPECT_EQ(reasonFor(bench, 10), "Use-by Fri 20 Nov, 9 days left.");
    EXPECT_EQ(reasonFor(bench, 11), "No age limit is given.");
}

TEST(FilmsToCut, AUseByFromWarmthIsSaidToBeAnEstimate) {
    CuttingBench bench; // today is Wed 11 Nov
    bench.roll(9, 5000_mm, nov(9));
    bench.roll(10, 5000_mm, nov(20));
    for (const int number : {9, 10})
        bench.condition(number).useByIsEstimate = true;
    bench.condition(10).useByRange = DaySpan{nov(17), nov(25)};
    bench.waiting.decal(100_mm, 100_mm);
    EXPECT_EQ(reasonFor(bench, 10), "Estimated use-by Fri 20 Nov, 9 days left (17–25 Nov 2026).");
    EXPECT_EQ(reasonFor(bench, 9), "Past its estimated use-by by 2 days: press a test strip first.");
}

TEST(FilmsToCut, SpoiledRollsStandLastAndSayWhy) {
    CuttingBench bench;
    bench.roll(9, 5000_mm, nov(9));
    bench.roll(10, 5000_mm, nov(20));
    bench.roll(11, 5000_mm, nov(25));
    bench.condition(11).humidityHoursOutside = 100;
    bench.waiting.decal(100_mm, 100_mm);
    EXPECT_EQ(labelsOf(bench), (Labels{"R-10", "not R-09", "not R-11"}));
    EXPECT_EQ(reasonFor(bench, 9), "Past its use-by by 2 days: press a test strip first.");
    EXPECT_EQ(reasonFor(bench, 11), "Stored outside its limits: press a test strip first.");
    EXPECT_EQ(bench.usual().rolls, std::vector{aRoll(10).id});
}

TEST(FilmsToCut, ARollThatSpoilsBeforeTheNextPressDayIsNotOffered) {
    CuttingBench bench;
    bench.settings.week.fill(std::nullopt);
    bench.settings.week[5] = OpeningHours{}; // Fridays
    bench.roll(9, 5000_mm, nov(12));
    bench.roll(10, 5000_mm, nov(13));
    bench.waiting.decal(100_mm, 100_mm);
    EXPECT_EQ(labelsOf(bench), (Labels{"R-10", "not R-09"}));
    EXPECT_EQ(reasonFor(bench, 9), "Its use-by, Thu 12 Nov, comes before the next press day, Fri 13 Nov.");
}

TEST(FilmsToCut, AnOffcutGoesBeforeAFreshRollWhereThatTakesNoMoreFilm) {
    CuttingBench bench;
    bench.film.hasGrain = true;
    bench.roll(9, 5000_mm, nov(20));
    FilmRoll& offcut = bench.roll(10, 320_mm, nov(29));
    offcut.width = 220_mm;
    bench.waiting.decal(200_mm, 300_mm);
    EXPECT_EQ(labelsOf(bench), (Labels{"R-10", "R-09"}));
    EXPECT_EQ(reasonFor(bench, 10),
              "Offcut, 320 mm of 220 mm width. Use-by Sun 29 Nov, 18 days left. Cutting it "
              "first takes no more film.");
    EXPECT_EQ(bench.nests().nests.front().roll, offcut.id);
}

TEST(FilmsToCut, AnOffcutThatWouldWasteMoreWaits) {
    CuttingBench bench;
    bench.film.hasGrain = true;
    bench.roll(9, 5000_mm, nov(20));
    bench.roll(10, 400_mm, nov(29)).width = 400_mm;
    bench.waiting.decal(230_mm, 300_mm); // both lie side by side on the fresh roll, in 308 mm
    bench.waiting.decal(230_mm, 300_mm);
    EXPECT_EQ(labelsOf(bench), (Labels{"R-09", "R-10"}));
}

TEST(FilmsToCut, FilmsStandByTheirEarliestPromise) {
    CuttingBench bench;
    EXPECT_TRUE(filmsToCut(bench.shop()).empty());
    bench.roll(9, 5000_mm);
    const DecalId early = bench.waiting.decal(100_mm, 100_mm);
    const DecalId late = bench.waiting.decal(100_mm, 100_mm);
    bench.waiting.decal(100_mm, 100_mm, FilmId{77}); // of a film the facts do not have
    bench.waiting.decal(100_mm, 100_mm);
    bench.waiting.lastOrder().state = OrderState::Quoted;
    bench.waiting.decal(100_mm, 100_mm);
    bench.waiting.lastDecal().cutAt = bench.now.instant;
    bench.waiting.lastDecal().cutFrom = aRoll(9).id;
    const std::vector<FilmToCut> films = filmsToCut(bench.shop());
    ASSERT_EQ(films.size(), 1U);
    EXPECT_EQ(films.front().waiting, (std::vector{early, late}));
    EXPECT_EQ(decalsToCut(bench.shop()), 2U);
}

TEST(FilmsToCut, TenThousandDecalsGetAPartialAnswer) {
    CuttingBench bench;
    bench.roll(9, 600'000_mm);
    for (std::size_t count = 0; count < kMostPieces + 2; ++count)
        bench.waiting.decal(40_mm, 30_mm);
    const FilmNests made = bench.nests();
    ASSERT_EQ(made.nests.size(), 1U);
    EXPECT_EQ(made.nests.front().decals.size() + made.lack.size(), kMostPieces + 2);
    EXPECT_EQ(made.lack.rbegin()->second, "Only 10000 decals are nested at once: cut those first.");
    EXPECT_GT(made.nests.front().decals.size(), 9'000U);
}

} // namespace
} // namespace holdfast::test
