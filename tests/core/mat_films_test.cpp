#include "tests/core/mat_builders.h"

#include <gtest/gtest.h>

namespace holdfast::test {
namespace {

using Labels = std::vector<std::string>;

// "R-09", "not R-10" of one that may not be used.
Labels labelsOf(const Mat& mat) {
    Labels labels;
    for (const RollOffer& offer : mat.toCut().rolls)
        labels.push_back((offer.mayBeUsed ? "" : "not ") +
                         aRoll(static_cast<int>(offer.roll.value - 100)).label());
    return labels;
}

std::string reasonFor(const Mat& mat, int number) {
    for (const RollOffer& offer : mat.toCut().rolls)
        if (offer.roll == aRoll(number).id)
            return offer.reason;
    return "not offered";
}

TEST(MatFilms, RollsStandByUseByWithTheirReason) {
    Mat mat; // today is Wed 11 Nov
    mat.roll(9, 5000_mm, nov(29));
    mat.roll(10, 5000_mm, nov(20));
    mat.roll(11, 5000_mm);
    mat.waiting.decal(100_mm, 100_mm);
    EXPECT_EQ(labelsOf(mat), (Labels{"R-10", "R-09", "R-11"}));
    EXPECT_EQ(reasonFor(mat, 10), "Use-by Fri 20 Nov, 9 days left.");
    EXPECT_EQ(reasonFor(mat, 11), "No age limit is given.");
}

TEST(MatFilms, SpoiledRollsStandLastAndSayWhy) {
    Mat mat;
    mat.roll(9, 5000_mm, nov(9));
    mat.roll(10, 5000_mm, nov(20));
    mat.roll(11, 5000_mm, nov(25));
    mat.condition(11).humidityHoursOutside = 100;
    mat.waiting.decal(100_mm, 100_mm);
    EXPECT_EQ(labelsOf(mat), (Labels{"R-10", "not R-09", "not R-11"}));
    EXPECT_EQ(reasonFor(mat, 9), "Past its use-by by 2 days: press a test strip first.");
    EXPECT_EQ(reasonFor(mat, 11), "Kept outside its storage limits: press a test strip first.");
    EXPECT_EQ(mat.usual().rolls, std::vector{aRoll(10).id});
}

TEST(MatFilms, ARollThatSpoilsBeforeTheNextPressDayIsNotOffered) {
    Mat mat;
    mat.settings.week.fill(std::nullopt);
    mat.settings.week[5] = OpeningHours{}; // Fridays
    mat.roll(9, 5000_mm, nov(12));
    mat.roll(10, 5000_mm, nov(13));
    mat.waiting.decal(100_mm, 100_mm);
    EXPECT_EQ(labelsOf(mat), (Labels{"R-10", "not R-09"}));
    EXPECT_EQ(reasonFor(mat, 9), "Its use-by, Thu 12 Nov, comes before the next press day, Fri 13 Nov.");
}

TEST(MatFilms, AnOffcutGoesBeforeAFreshRollWhereThatTakesNoMoreFilm) {
    Mat mat;
    mat.film.hasGrain = true;
    mat.roll(9, 5000_mm, nov(20));
    FilmRoll& offcut = mat.roll(10, 320_mm, nov(29));
    offcut.width = 220_mm;
    mat.waiting.decal(200_mm, 300_mm);
    EXPECT_EQ(labelsOf(mat), (Labels{"R-10", "R-09"}));
    EXPECT_EQ(reasonFor(mat, 10),
              "Offcut, 320 mm of 220 mm width. Use-by Sun 29 Nov, 18 days left. Cutting it "
              "first takes no more film.");
    EXPECT_EQ(mat.nests().nests.front().roll, offcut.id);
}

TEST(MatFilms, AnOffcutThatWouldWasteMoreWaits) {
    Mat mat;
    mat.film.hasGrain = true;
    mat.roll(9, 5000_mm, nov(20));
    mat.roll(10, 400_mm, nov(29)).width = 400_mm;
    mat.waiting.decal(230_mm, 300_mm); // both lie side by side on the fresh roll, in 308 mm
    mat.waiting.decal(230_mm, 300_mm);
    EXPECT_EQ(labelsOf(mat), (Labels{"R-09", "R-10"}));
}

TEST(MatFilms, FilmsStandByTheirEarliestPromise) {
    Mat mat;
    EXPECT_TRUE(filmsToCut(mat.shop()).empty());
    mat.roll(9, 5000_mm);
    const DecalId early = mat.waiting.decal(100_mm, 100_mm);
    const DecalId late = mat.waiting.decal(100_mm, 100_mm);
    mat.waiting.decal(100_mm, 100_mm, FilmId{77}); // of a film the facts do not have
    mat.waiting.decal(100_mm, 100_mm);
    mat.waiting.lastOrder().state = OrderState::Quoted;
    mat.waiting.decal(100_mm, 100_mm);
    mat.waiting.lastDecal().cutAt = mat.now.instant;
    mat.waiting.lastDecal().cutFrom = aRoll(9).id;
    const std::vector<FilmToCut> films = filmsToCut(mat.shop());
    ASSERT_EQ(films.size(), 1U);
    EXPECT_EQ(films.front().waiting, (std::vector{early, late}));
    EXPECT_EQ(decalsToCut(mat.shop()), 2U);
}

TEST(MatFilms, TenThousandDecalsGetAPartialAnswer) {
    Mat mat;
    mat.roll(9, 600'000_mm);
    for (std::size_t count = 0; count < kMostPieces + 2; ++count)
        mat.waiting.decal(40_mm, 30_mm);
    const FilmNests made = mat.nests();
    ASSERT_EQ(made.nests.size(), 1U);
    EXPECT_EQ(made.nests.front().decals.size() + made.lack.size(), kMostPieces + 2);
    EXPECT_EQ(made.lack.rbegin()->second, "The mat takes 10000 decals at once: cut those first.");
    EXPECT_GT(made.nests.front().decals.size(), 9'000U);
}

} // namespace
} // namespace holdfast::test
