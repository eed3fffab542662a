// SPDX-License-Identifier: GPL-3.0-or-later
// Many garments cost what each of them costs by itself, though a route is laid out once for all that are
// alike.
#include "core/orders/film_waste.h"
#include "core/shop/garment_cost.h"
#include "tests/core/builders.h"
#include "tests/core/drawn_sum.h"

#include <gtest/gtest.h>

#include <array>

namespace holdfast::test {
namespace {

struct DrawnShop {
    ShopFacts facts;

    explicit DrawnShop(Draw& draw) {
        BlankStyle tee = aTee(), bag = aTee();
        bag.id = BlankStyleId{2};
        bag.notPrewashedBecause = "canvas";
        if (draw.oneIn(2))
            bag.obstacles = {{Obstacle::Zip, draw.oneIn(2) ? WayRound::SmallPlaten : WayRound::Pillow}};
        facts.styles = Roster{std::vector{tee, bag}};
        Film thick = aFilm(kOtherFilm), bare = aFilm(FilmId{3});
        thick.recipe->temperature = Celsius{draw.oneIn(2) ? 155.0 : 165.0};
        thick.recipe->peel = draw.oneIn(2) ? Peel::Hot : Peel::Warm;
        thick.recipe->dwell = Seconds{draw.between(10, 20)};
        bare.recipe.reset();
        facts.films = Roster{std::vector{aFilm(), thick, bare}};
        for (std::int64_t press = draw.between(0, 3); press > 0; --press) {
            Press one = aPress();
            one.id = PressId{press};
            one.platenWidth = {draw.between(60, 400)};
            one.platenHeight = {draw.between(60, 500)};
            one.hasSmallPlaten = draw.oneIn(3);
            facts.presses.add(one);
        }
        facts.cutting = {draw.oneIn(2) ? kFewestCuts : 0, 3'000'000, 2'000'000};
    }

    Garment drawn(Draw& draw, std::int64_t id) const {
        Garment garment;
        garment.id = GarmentId{id};
        garment.style = BlankStyleId{draw.between(1, 2)};
        garment.size = draw.oneIn(2) ? "S" : "M";
        garment.colour = kMoss;
        for (std::int64_t count = draw.between(0, 3); count > 0; --count) {
            Decal decal;
            decal.id = DecalId{id * 10 + count};
            decal.film = FilmId{draw.between(1, 3)};
            decal.content = draw.oneIn(3) ? DecalContent{Wording{"Juno", Face::Plain, {}}} : Artwork{"tern"};
            decal.placement = draw.oneIn(3) ? Placement::Back : Placement::Chest;
            decal.below = {draw.between(0, 3) * 60};
            decal.aside = {draw.between(-1, 1) * 40};
            decal.width = {draw.between(1, 6) * 60};
            decal.height = {draw.between(1, 6) * 60};
            decal.layer = static_cast<int>(draw.between(1, 2));
            garment.decals.push_back(decal);
        }
        std::ranges::stable_sort(garment.decals, {}, &Decal::layer);
        return garment;
    }
};

TEST(GarmentCosts, OfManyAreThoseOfEach) {
    Draw draw{91};
    std::int64_t several = 0;
    for (int shop = 0; shop < 60; ++shop) {
        DrawnShop drawn{draw};
        GarmentCosts costs{drawn.facts};
        for (std::int64_t id = 1; id <= 120; ++id) {
            const Garment garment = drawn.drawn(draw, id);
            std::optional<PressId> begunOn;
            if (draw.oneIn(2))
                begunOn = PressId{draw.between(1, 4)}; // the last is sold by now
            ShopFacts alone = drawn.facts;
            if (begunOn)
                alone.steps = {{garment.id, 1, "press-1", begunOn, theMoment().instant, std::nullopt}};
            const Cost one = garmentCost(alone, garment, routeOf(alone, garment));
            const Cost ofMany = costs.of(garment, begunOn);
            ASSERT_EQ(ofMany.work, one.work) << shop << " " << id;
            ASSERT_EQ(ofMany.film, one.film);
            ASSERT_EQ(ofMany.blank, one.blank);
            ASSERT_EQ(ofMany.overhead, one.overhead);
            several += garment.decals.size() > 1;
        }
    }
    EXPECT_GT(several, 1000);
}

// Where all presses take them whole, what they cost to press does not depend on their measures.
TEST(GarmentCosts, OfSmallDecalsDifferOnlyByFilmAndWeeding) {
    ShopFacts facts;
    facts.styles = Roster{std::vector{aTee()}};
    facts.films = Roster{std::vector{aFilm()}};
    facts.presses = Roster{std::vector{aPress()}};
    GarmentCosts costs{facts};
    Garment garment;
    garment.id = GarmentId{1};
    garment.style = kTee;
    Decal decal;
    decal.film = kFilm;
    decal.content = Artwork{"heron"};
    decal.width = decal.height = {380};
    garment.decals = {decal};
    const Cost whole = costs.of(garment, {});
    garment.decals[0].width = {381};
    EXPECT_GT(costs.of(garment, {}).work, whole.work) << "in two pieces";
    garment.decals[0].width = {100};
    const Cost small = costs.of(garment, {});
    EXPECT_LT(small.film, whole.film);
    EXPECT_LE(small.work, whole.work);
}

} // namespace
} // namespace holdfast::test
