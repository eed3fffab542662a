// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/press/route.h"

#include "core/press/layers.h"
#include "tests/core/builders.h"

#include <gtest/gtest.h>

#include <set>

namespace holdfast::test {
namespace {

// "key | title | detail", one a step.
std::vector<std::string> written(const Route& route) {
    std::vector<std::string> lines;
    for (const RouteStep& step : route.steps)
        lines.push_back(step.key + " | " + step.title.english() +
                        (step.detail.empty() ? "" : " | " + step.detail.english()));
    return lines;
}

using Lines = std::vector<std::string>;

std::vector<std::string> keysOf(const Route& route) {
    std::vector<std::string> keys;
    for (const RouteStep& step : route.steps)
        keys.push_back(step.key);
    return keys;
}

const RouteStep& stepOf(const Route& route, std::string_view key) {
    const auto found = std::ranges::find(route.steps, key, &RouteStep::key);
    if (found == route.steps.end())
        throw std::out_of_range(std::string(key));
    return *found;
}

bool hasStep(const Route& route, std::string_view key) {
    return std::ranges::find(route.steps, key, &RouteStep::key) != route.steps.end();
}

TEST(Route, ZipHoodieReadsAsTheMakerWalksIt) {
    const auto shop =
        aShop()
            .with(aGarment().onZipHoodie(WayRound::Pillow).decal([](Decal& decal) { decal.below = 70_mm; }))
            .build();
    EXPECT_EQ(written(shop.route()), (Lines{
                                         "read-tag-1 | Read the tag | 80 % cotton, 20 % polyester",
                                         "lint-roll-1 | Lint roll | front",
                                         "way-round-1 | Pillow under the zip | size M",
                                         "preheat-1 | Preheat | 15 s",
                                         "place-1 | Place decal | 70 mm below the seam",
                                         "press-1 | Press | 150 °C · 12 s · medium",
                                         "cool-1 | Cool | to warm, about 40 s",
                                         "peel-1 | Peel warm, one motion",
                                         "finish-front-1 | Cover sheet, front | 5 s",
                                         "finish-back-1 | Cover sheet, back | 5 s",
                                         "look-1 | Look for fabric texture",
                                     }));
}

TEST(Route, TimesAreApartByHandsPlatenAndWaiting) {
    const auto shop = aShop().with(aGarment()).build();
    const Route route = shop.route();
    const auto timesOf = [&](std::string_view key) {
        const RouteStep& step = stepOf(route, key);
        return std::tuple(step.attended.count(), step.platen.count(), step.waiting.count());
    };
    EXPECT_EQ(timesOf("read-tag-1"), std::tuple(5, 0, 0));
    EXPECT_EQ(timesOf("lint-roll-1"), std::tuple(15, 0, 0));
    EXPECT_EQ(timesOf("preheat-1"), std::tuple(10, 15, 0));
    EXPECT_EQ(timesOf("place-1"), std::tuple(25, 0, 0));
    EXPECT_EQ(timesOf("press-1"), std::tuple(10, 12, 0));
    EXPECT_EQ(timesOf("cool-1"), std::tuple(0, 0, 40));
    EXPECT_EQ(timesOf("peel-1"), std::tuple(10, 0, 0));
    EXPECT_EQ(timesOf("finish-front-1"), std::tuple(15, 5, 0));
    EXPECT_EQ(timesOf("finish-back-1"), std::tuple(25, 5, 0));
    EXPECT_EQ(timesOf("look-1"), std::tuple(10, 0, 0));
    EXPECT_EQ(route.total(), Seconds{5 + 15 + 25 + 25 + 22 + 40 + 10 + 20 + 30 + 10});
    EXPECT_EQ(route.firstTemperature(), 150_C);
    EXPECT_EQ(route.restAfter, Hours{24});
    EXPECT_EQ(route.press, kBench);
}

TEST(Route, HeatIsAskedForOnlyWhereThePlatenCloses) {
    const auto shop = aShop().with(aGarment()).build();
    for (const RouteStep& step : shop.route().steps)
        EXPECT_EQ(step.temperature.has_value(), step.platen.count() > 0) << step.key;
}

TEST(Route, HotPeelHasNoCooling) {
    const auto shop = aShop()
                          .with(aGarment().recipe([](Recipe& recipe) {
                              recipe.peel = Peel::Hot;
                              recipe.coolBeforePeel = Seconds{40};
                          }))
                          .build();
    EXPECT_FALSE(hasStep(shop.route(), "cool-1"));
    EXPECT_EQ(stepOf(shop.route(), "peel-1").title, "Peel hot, one motion");
}

TEST(Route, CoolPeelWaitsUntilCool) {
    const auto shop = aShop()
                          .with(aGarment().recipe([](Recipe& recipe) {
                              recipe.peel = Peel::Cool;
                              recipe.coolBeforePeel = Seconds{90};
                          }))
                          .build();
    EXPECT_EQ(stepOf(shop.route(), "cool-1").detail, "until cool, about 90 s");
    EXPECT_TRUE(stepOf(shop.route(), "cool-1").isWaiting());
}

TEST(Route, TimesOfNoughtLeaveTheirStepsOut) {
    const auto shop = aShop()
                          .with(aGarment().recipe([](Recipe& recipe) {
                              recipe.preheat = Seconds{0};
                              recipe.finishBack = Seconds{0};
                          }))
                          .build();
    EXPECT_FALSE(hasStep(shop.route(), "preheat-1"));
    EXPECT_TRUE(hasStep(shop.route(), "finish-front-1"));
    EXPECT_FALSE(hasStep(shop.route(), "finish-back-1"));
}

TEST(Route, FilmWithoutRecipeHasNoPressSteps) {
    const auto shop = aShop().with(aGarment().film([](Film& film) { film.recipe.reset(); })).build();
    EXPECT_EQ(keysOf(shop.route()), (Lines{"read-tag-1", "lint-roll-1", "look-1"}));
    EXPECT_EQ(shop.route().firstTemperature(), std::nullopt);
}

TEST(Route, UnreadTagIsSaid) {
    const auto shop = aShop().with(aGarment().onUnreadLabel()).build();
    EXPECT_EQ(stepOf(shop.route(), "read-tag-1").detail, "not read yet");
}

TEST(Route, ObstacleWithoutAWayAddsNoStep) {
    const auto shop = aShop().with(aGarment().onZipHoodie(std::nullopt)).build();
    EXPECT_FALSE(hasStep(shop.route(), "way-round-1"));
}

TEST(Route, EachObstacleHasItsStep) {
    const auto shop = aShop()
                          .with(aGarment().style([](BlankStyle& style) {
                              style.obstacles = {{Obstacle::Seams, WayRound::Turn},
                                                 {Obstacle::Buttons, WayRound::SmallPlaten}};
                          }))
                          .build();
    EXPECT_EQ(stepOf(shop.route(), "way-round-1").title, "Turn clear of the seams");
    EXPECT_EQ(stepOf(shop.route(), "way-round-2").title, "Small platen, clear of the buttons");
}

TEST(Route, DecalsOfOneRecipeSideBySideShareAPass) {
    // A name 10 mm under the heron.
    const auto name = [](Decal& decal) {
        decal.layer = 1;
        decal.content = Wording{"Juno", Face::BookSerif};
        decal.below = 365_mm;
        decal.height = 40_mm;
        decal.aside = -20_mm;
    };
    const auto shop = aShop().with(aGarment().withDecal(name)).build();
    EXPECT_EQ(written(shop.route()),
              (Lines{
                  "read-tag-1 | Read the tag | 100 % cotton",
                  "lint-roll-1 | Lint roll | front",
                  "preheat-1 | Preheat | 15 s",
                  "place-1 | Place decal | Heron · 75 mm below the seam",
                  "place-2 | Place decal | Name “Juno” · 365 mm below the seam, 20 mm to "
                  "wearer's right",
                  "press-1 | Press | 150 °C · 12 s · medium",
                  "cool-1 | Cool | to warm, about 40 s",
                  "peel-1 | Peel warm, one motion",
                  "finish-front-1 | Cover sheet, front | 5 s",
                  "finish-back-1 | Cover sheet, back | 5 s",
                  "look-1 | Look for fabric texture",
              }));
    EXPECT_EQ(stepOf(shop.route(), "peel-1").attended, Seconds{20});
}

TEST(Route, DecalsTooFarApartForThePlatenHaveAPassEach) {
    const auto farBelow = [](Decal& decal) {
        decal.layer = 1;
        decal.below = 400_mm; // to 680 mm: 605 mm from the heron's top
    };
    const auto shop = aShop().with(aGarment().withDecal(farBelow)).build();
    EXPECT_TRUE(hasStep(shop.route(), "press-2"));
}

TEST(Route, LowerLayerIsTackedAndPeeledBeforeTheUpperIsLaid) {
    const auto shop = aShop().with(aGarment().withDecal([](Decal& decal) { decal.height = 60_mm; })).build();
    EXPECT_EQ(keysOf(shop.route()),
              (Lines{"read-tag-1", "lint-roll-1", "preheat-1", "place-1", "press-1", "cool-1", "peel-1",
                     "place-2", "press-2", "cool-2", "peel-2", "finish-front-1", "finish-back-1", "look-1"}));
    EXPECT_EQ(stepOf(shop.route(), "press-1").title, "Tack");
    EXPECT_EQ(stepOf(shop.route(), "press-1").platen, Seconds{5});
    EXPECT_EQ(stepOf(shop.route(), "press-2").title, "Press");
    EXPECT_EQ(stepOf(shop.route(), "press-2").platen, Seconds{12});
}

TEST(Route, LayersThatDoNotTouchAreNotTacked) {
    const auto shop = aShop().with(aGarment().withDecal([](Decal& decal) { decal.below = 400_mm; })).build();
    EXPECT_EQ(stepOf(shop.route(), "press-1").platen, Seconds{12});
    EXPECT_EQ(stepOf(shop.route(), "press-2").platen, Seconds{12});
}

GarmentBuilder layeredOver(Celsius upper, Seconds upperDwell) {
    return aGarment()
        .withOtherFilm([=](Film& film) {
            film.recipe->temperature = upper;
            film.recipe->dwell = upperDwell;
        })
        .withDecal([](Decal& decal) {
            decal.film = kOtherFilm;
            decal.cutFrom = kOtherRoll;
        });
}

TEST(Route, LayersThatAgreeArePressedAtTheCoolerHeatForTheLongerDwell) {
    const auto shop = aShop().with(layeredOver(158_C, Seconds{8})).build();
    EXPECT_EQ(stepOf(shop.route(), "press-1").temperature, 150_C);
    EXPECT_EQ(stepOf(shop.route(), "press-2").temperature, 150_C);
    EXPECT_EQ(stepOf(shop.route(), "press-2").platen, Seconds{12});
}

TEST(Route, LayersThatDisagreeKeepTheirOwnHeat) {
    const auto shop = aShop().with(layeredOver(165_C, Seconds{8})).build();
    EXPECT_EQ(stepOf(shop.route(), "press-1").temperature, 150_C);
    EXPECT_EQ(stepOf(shop.route(), "press-2").temperature, 165_C);
    EXPECT_EQ(stepOf(shop.route(), "press-2").platen, Seconds{8});
    // The finishing press goes over both.
    EXPECT_EQ(stepOf(shop.route(), "finish-front-1").temperature, 150_C);
}

TEST(Route, BackIsPressedAfterTheFrontWithATurnBetween) {
    const auto shop = aShop()
                          .with(aGarment()
                                    .decal([](Decal& decal) { decal.placement = Placement::Back; })
                                    .withDecal([](Decal& decal) { decal.layer = 1; }))
                          .build();
    const Route route = shop.route();
    EXPECT_EQ(stepOf(route, "lint-roll-1").detail, "front, then back");
    EXPECT_EQ(keysOf(route), (Lines{"read-tag-1", "lint-roll-1", "preheat-1", "place-1", "press-1", "cool-1",
                                    "peel-1", "turn-1", "place-2", "press-2", "cool-2", "peel-2",
                                    "finish-front-1", "finish-back-1", "look-1"}));
    EXPECT_EQ(stepOf(route, "turn-1").detail, "to the back");
    EXPECT_EQ(stepOf(route, "press-1").decal, shop.garment().decals[1].id);
}

TEST(Route, LargeDecalIsPressedInPiecesAndPeeledOnce) {
    const auto shop = aShop().with(aGarment().decal([](Decal& decal) { decal.width = 420_mm; })).build();
    const Route route = shop.route();
    EXPECT_EQ(stepOf(route, "press-1").detail, "part 1 of 2 · 150 °C · 12 s · medium");
    EXPECT_EQ(stepOf(route, "press-2").detail, "part 2 of 2 · 150 °C · 12 s · medium");
    EXPECT_FALSE(hasStep(route, "press-3"));
    EXPECT_FALSE(hasStep(route, "place-2"));
    EXPECT_FALSE(hasStep(route, "peel-2"));
}

TEST(Route, KeysAreUniqueAndStayWhenADecalsDetailsChange) {
    auto garment = layeredOver(158_C, Seconds{8});
    garment.onZipHoodie(WayRound::Pillow);
    const auto before = aShop().with(garment).build().route();
    garment.recipe([](Recipe& recipe) { recipe.dwell = Seconds{20}; }).decal([](Decal& decal) {
        decal.below = 90_mm;
        decal.content = Artwork{"tern"};
    });
    const auto after = aShop().with(garment).build().route();
    EXPECT_EQ(keysOf(before), keysOf(after));
    const auto keys = keysOf(after);
    EXPECT_EQ(std::set<std::string>(keys.begin(), keys.end()).size(), keys.size());
}

TEST(Route, WithoutAPressItIsStillReckoned) {
    const auto shop = aShop().with(aGarment()).withoutPress().build();
    EXPECT_EQ(shop.route().press, std::nullopt);
    EXPECT_TRUE(hasStep(shop.route(), "press-1"));
}

// ── platens ─────────────────────────────────────────────────────────────────────────────────────────────

Decal sized(Millimetres width, Millimetres height) {
    Decal decal;
    decal.width = width;
    decal.height = height;
    return decal;
}

struct PiecesCase {
    Millimetres platenWidth, platenHeight, width, height;
    int columns, rows;
};

TEST(Platen, PiecesOverlapByTwentyMillimetres) {
    const std::vector<PiecesCase> cases{
        {380_mm, 380_mm, 380_mm, 380_mm, 1, 1},                                         // to the edge
        {380_mm, 380_mm, 381_mm, 100_mm, 2, 1}, {380_mm, 380_mm, 740_mm, 100_mm, 2, 1}, // 380 + 380 − 20
        {380_mm, 380_mm, 741_mm, 100_mm, 3, 1}, {380_mm, 380_mm, 400_mm, 400_mm, 2, 2},
        {300_mm, 400_mm, 390_mm, 290_mm, 1, 1}, // turned, it fits
        {300_mm, 400_mm, 700_mm, 290_mm, 2, 1}, // turned, two rather than three
    };
    for (const PiecesCase& each : cases) {
        Press press = aPress();
        press.platenWidth = each.platenWidth;
        press.platenHeight = each.platenHeight;
        const PlatenPieces pieces = piecesOn(press, sized(each.width, each.height));
        EXPECT_EQ(pieces.columns, each.columns) << each.width.value;
        EXPECT_EQ(pieces.rows, each.rows) << each.width.value;
    }
}

TEST(Platen, WithoutMeasuresTakesEveryDecalWhole) {
    Press press = aPress();
    press.platenWidth = 0_mm;
    EXPECT_EQ(piecesOn(press, sized(400_mm, 400_mm)).count(), 1);
}

TEST(Platen, AbsurdDecalsGiveASmallNumberOfPieces) {
    EXPECT_EQ(piecesOn(aPress(), sized({1'000'000'000'000}, {1'000'000'000'000})).count(), 400);
}

Press pressNamed(PressId id, Millimetres side) {
    Press press = aPress();
    press.id = id;
    press.platenWidth = side;
    press.platenHeight = side;
    return press;
}

TEST(PressFor, FirstThatTakesTheDecalsWhole) {
    const auto shop = aShop()
                          .with(aGarment())
                          .press([](Press& press) { press.platenWidth = press.platenHeight = 150_mm; })
                          .withPress(pressNamed(PressId{2}, 300_mm))
                          .withPress(pressNamed(PressId{3}, 500_mm))
                          .build();
    EXPECT_EQ(pressFor(shop.facts, shop.garment())->id, PressId{2});
}

TEST(PressFor, LargestWhereNoneTakesThemWhole) {
    const auto shop = aShop()
                          .with(aGarment().decal([](Decal& decal) { decal.width = 900_mm; }))
                          .withPress(pressNamed(PressId{2}, 500_mm))
                          .withPress(pressNamed(PressId{3}, 400_mm))
                          .build();
    EXPECT_EQ(pressFor(shop.facts, shop.garment())->id, PressId{2});
}

TEST(PressFor, SmallPlatenIsSoughtWhereTheStyleWantsOne) {
    Press withSmall = pressNamed(PressId{2}, 380_mm);
    withSmall.hasSmallPlaten = true;
    const auto shop =
        aShop().with(aGarment().onZipHoodie(WayRound::SmallPlaten)).withPress(withSmall).build();
    EXPECT_EQ(pressFor(shop.facts, shop.garment())->id, PressId{2});
}

TEST(PressFor, BegunGarmentsStayOnTheirPress) {
    auto shop =
        aShop().with(aGarment().doneThrough("preheat-1")).withPress(pressNamed(PressId{2}, 500_mm)).build();
    EXPECT_EQ(pressFor(shop.facts, shop.garment())->id, kBench);
    for (StepRecord& record : shop.facts.steps)
        record.press = PressId{2};
    EXPECT_EQ(pressFor(shop.facts, shop.garment())->id, PressId{2});
}

TEST(PressFor, NoneInAShopWithoutOne) {
    const auto shop = aShop().with(aGarment()).withoutPress().build();
    EXPECT_EQ(pressFor(shop.facts, shop.garment()), nullptr);
}

// ── layers ──────────────────────────────────────────────────────────────────────────────────────────────

Decal decalAt(Placement placement, Millimetres below, Millimetres aside, Millimetres width,
              Millimetres height) {
    Decal decal = sized(width, height);
    decal.placement = placement;
    decal.below = below;
    decal.aside = aside;
    return decal;
}

TEST(Layers, OverlapNeedsSharedClothOnOneSide) {
    const Decal chest = decalAt(Placement::Chest, 75_mm, 0_mm, 200_mm, 100_mm);
    EXPECT_TRUE(overlap(chest, decalAt(Placement::LeftChest, 80_mm, 90_mm, 80_mm, 80_mm)));
    EXPECT_FALSE(overlap(chest, decalAt(Placement::Back, 75_mm, 0_mm, 200_mm, 100_mm)));
    EXPECT_FALSE(overlap(chest, decalAt(Placement::Chest, 175_mm, 0_mm, 200_mm, 100_mm)))
        << "edges only touch";
    EXPECT_TRUE(overlap(chest, decalAt(Placement::Chest, 174_mm, 0_mm, 200_mm, 100_mm)));
    EXPECT_FALSE(overlap(chest, decalAt(Placement::Chest, 75_mm, 150_mm, 100_mm, 100_mm)));
    EXPECT_TRUE(overlap(chest, decalAt(Placement::Chest, 75_mm, 149_mm, 99_mm, 100_mm)))
        << "half a millimetre shared";
    EXPECT_FALSE(overlap(chest, decalAt(Placement::Chest, 75_mm, -150_mm, 100_mm, 100_mm)));
}

} // namespace
} // namespace holdfast::test
