// SPDX-License-Identifier: GPL-3.0-or-later
// Boxes on cloth: shapes whose measures are reckoned by hand, and the eight drawn garments.

#include "core/garments/garment_drawings.h"
#include "core/garments/garment_scale.h"
#include "core/garments/on_cloth.h"
#include "core/garments/placement_presets.h"
#include "core/garments/svg_path.h"
#include "core/orders/decal_on_cloth.h"

#include <gtest/gtest.h>

#include <algorithm>
#include <array>
#include <random>

namespace holdfast {
namespace {

// A cloth 400 mm wide and 300 mm tall under its top seam, with a zip down its middle from 100 mm on, a pocket
// 80 mm wide at the right, and at the left a corner of 100 × 100 mm cut off at 45°. One unit is two
// millimetres.
GarmentShape handMadeShape() {
    return shapeFromSvg("<svg><path data-part=\"cloth\" d=\"M0 0H200V150H50L0 100Z\"/>"
                        "<path data-part=\"zip\" data-side=\"front\" d=\"M100 50V150\"/>"
                        "<path data-part=\"pocket\" d=\"M150 100h40v30h-40z\"/></svg>",
                        100);
}

class OnCloth : public ::testing::Test {
protected:
    Cloth cloth(bool isBack = false, std::span<const GarmentPart> across = {}) const {
        return {shape, {100, 0}, 2, isBack, across};
    }
    static SheetBox box(double centre, double top, double width, double height) {
        return {centre - width / 2, top, centre + width / 2, top + height};
    }

    const GarmentShape shape = handMadeShape();
};

TEST_F(OnCloth, BoxWithinTheEdgesAndClearOfAllPartsLiesOnIt) {
    EXPECT_TRUE(liesOnCloth(cloth(), box(0, 10, 100, 50)));
    EXPECT_TRUE(offCloth(cloth(), box(0, 10, 100, 50)).isClean());
    EXPECT_TRUE(liesOnCloth(cloth(), box(0, 0, 400, 96))) << "edge to edge, above the zip";
}

TEST(PathData, ReadsOnBehindACurveAndEndsItWhereItEnds) {
    const auto lines = linesOfPath("M1 2C1 4 3 6 5 6L7 8z");
    ASSERT_EQ(lines.size(), 1U);
    const auto& points = lines.front().points;
    EXPECT_EQ(points.front(), (SheetPoint{1, 2}));
    EXPECT_EQ(points[points.size() - 2], (SheetPoint{5, 6})) << "the curve's own end";
    EXPECT_EQ(points.back(), (SheetPoint{7, 8}));
    EXPECT_TRUE(lines.front().isClosed);
    // Bernstein's weights halfway: one eighth, three, three and one.
    const auto middle = points[points.size() / 2 - 1];
    EXPECT_NEAR(middle.x, (1 + 3 * 1 + 3 * 3 + 5) / 8.0, 1e-12);
    EXPECT_NEAR(middle.y, (2 + 3 * 4 + 3 * 6 + 6) / 8.0, 1e-12);
}

TEST_F(OnCloth, SaysByHowMuchItRunsOverEachEdge) {
    const OffCloth below = offCloth(cloth(), box(60, 200, 60, 124));
    EXPECT_NEAR(below.below, 24, 1e-6);
    EXPECT_EQ(below.above, 0);
    EXPECT_EQ(below.aside, 0);
    EXPECT_FALSE(below.isAllOff);

    const OffCloth corner = offCloth(cloth(), box(180, 30, 60, 40));
    EXPECT_NEAR(corner.aside, 10, 1e-6);
    EXPECT_EQ(corner.below, 0);

    const OffCloth above = offCloth(cloth(), {10, -7, 60, 40});
    EXPECT_NEAR(above.above, 7, 1e-6);
}

// The cut corner runs from (−200, 200) to (−100, 300): a box that ends at (−180, 240) has its lower left
// corner 20 mm to the left of the line and 20 mm below it.
TEST_F(OnCloth, SlantingEdgeIsMeasuredTheShorterWay) {
    const OffCloth off = offCloth(cloth(), {-180, 200, -120, 240});
    EXPECT_NEAR(off.below, 20, 1e-5);
    EXPECT_EQ(off.aside, 0);
    // At the right an edge that goes 20 out over 200 down: 12 below the top it is 101.2 from the middle.
    const GarmentShape steep = shapeFromSvg("<path data-part=\"cloth\" d=\"M0 0H200L220 200H0Z\"/>", 100);
    const OffCloth beside = offCloth({steep, {100, 0}, 1, false, {}}, {50, 12, 109, 100});
    EXPECT_NEAR(beside.aside, 7.8, 1e-5);
    EXPECT_EQ(beside.above, 0);
    EXPECT_TRUE(liesOnCloth(cloth(), {-180, 180, -120, 220}));
}

TEST_F(OnCloth, BoxBesideTheClothIsAllOff) {
    const OffCloth off = offCloth(cloth(), box(300, 50, 80, 80));
    EXPECT_TRUE(off.isAllOff);
    EXPECT_FALSE(off.isClean());
}

TEST_F(OnCloth, KeepsThreeMillimetresClearOfWhatItMustNotLieAcross) {
    EXPECT_FALSE(liesOnCloth(cloth(), {2, 120, 50, 160}));
    EXPECT_TRUE(liesOnCloth(cloth(), {3, 120, 50, 160}));
    EXPECT_EQ(offCloth(cloth(), {-20, 120, 20, 160}).across, std::vector{GarmentPart::Zip});
    EXPECT_EQ(offCloth(cloth(), {110, 215, 130, 225}).across, std::vector{GarmentPart::Pocket})
        << "wholly on the pocket";
}

TEST_F(OnCloth, BackHasNotWhatOnlyTheFrontHas) {
    EXPECT_TRUE(liesOnCloth(cloth(true), {-20, 120, 20, 160}));
    EXPECT_FALSE(liesOnCloth(cloth(true), {110, 215, 130, 225}));
}

TEST_F(OnCloth, MayLieAcrossWhatAWayRoundWasChosenFor) {
    const std::array across{GarmentPart::Pocket};
    EXPECT_TRUE(liesOnCloth(cloth(false, across), {110, 215, 130, 225}));
    EXPECT_FALSE(liesOnCloth(cloth(false, across), {-20, 120, 20, 160}));
}

TEST_F(OnCloth, NearestPlaceIsTheShortestWayToOne) {
    // Up by what it runs over; to the side of the zip by half its width and the clearance.
    const auto up = nearestOnCloth(cloth(), ClothZone::Body, box(60, 240, 60, 84), {});
    ASSERT_TRUE(up);
    EXPECT_EQ(up->top, 216);
    EXPECT_EQ(up->left, 30);
    const auto aside = nearestOnCloth(cloth(), ClothZone::Body, box(-10, 160, 60, 40), {});
    ASSERT_TRUE(aside);
    EXPECT_EQ(aside->right, -3);
    EXPECT_EQ(aside->top, 160);
    const SheetBox lies = box(0, 10, 100, 50);
    const auto same = nearestOnCloth(cloth(), ClothZone::Body, lies, {});
    ASSERT_TRUE(same);
    EXPECT_EQ(same->left, lies.left);
}

TEST_F(OnCloth, NearestPlaceIsClearOfOtherDecals) {
    const SheetBox other = box(60, 150, 100, 100); // ends at 250
    const auto found = nearestOnCloth(cloth(), ClothZone::Body, box(60, 260, 60, 50), std::span(&other, 1));
    ASSERT_TRUE(found);
    EXPECT_FALSE(shareArea(*found, other));
    EXPECT_TRUE(liesOnCloth(cloth(), *found));
    // Straight up there are only 50 mm below the other one, which is what it needs.
    EXPECT_EQ(found->top, 250);
}

TEST_F(OnCloth, WhatFitsNowhereIsMadeSmallerInItsShape) {
    EXPECT_FALSE(nearestOnCloth(cloth(), ClothZone::Body, box(0, 10, 500, 250), {}));
    const auto found = largestOnCloth(cloth(), ClothZone::Body, box(0, 10, 500, 250), {});
    ASSERT_TRUE(found);
    EXPECT_TRUE(liesOnCloth(cloth(), *found));
    EXPECT_NEAR(found->width() / found->height(), 2, 0.05);
    // Above the zip are 97 mm and 194 would be as wide; between zip and side it can be 197 wide.
    EXPECT_GE(found->width(), 180);
    EXPECT_LE(found->width(), 200);
}

// Against a count of points: whatever is called clean has all of a fine grid of its points on the cloth.
TEST_F(OnCloth, CleanBoxesHaveAllTheirPointsOnTheCloth) {
    std::mt19937 chance(7);
    std::uniform_real_distribution<double> across(-260, 260), down(-30, 330), length(5, 300);
    int clean = 0;
    for (int trial = 0; trial < 4000; ++trial) {
        const double left = across(chance), top = down(chance);
        const SheetBox tried{left, top, left + length(chance), top + length(chance)};
        const auto isOn = [](double x, double y) {
            return x > -200 && x < 200 && y > 0 && y < 300 &&
                   y - x < 400; // the cut corner: y − 200 < x + 200
        };
        bool allOn = true, anyOn = false;
        for (int row = 0; row <= 20; ++row)
            for (int column = 0; column <= 20; ++column) {
                const bool on =
                    isOn(tried.left + tried.width() * column / 20, tried.top + tried.height() * row / 20);
                allOn = allOn && on;
                anyOn = anyOn || on;
            }
        const OffCloth off = offCloth(cloth(true, std::array{GarmentPart::Pocket}), tried);
        if (off.isClean()) {
            ++clean;
            const SheetBox inner = tried.grownBy(-0.6);
            EXPECT_TRUE(isOn(inner.left, inner.top) && isOn(inner.right, inner.bottom) &&
                        isOn(inner.left, inner.bottom) && isOn(inner.right, inner.top));
        } else {
            EXPECT_FALSE(allOn);
        }
        EXPECT_FALSE(anyOn && off.isAllOff);
    }
    EXPECT_GT(clean, 100);
}

// ── the drawn garments ────────────────────────────────────────────────────────────────────────────────────
constexpr std::array<std::string_view, 8> kDrawnOutlines{"tee", "long-sleeve", "hoodie",   "tote",
                                                         "bib", "cap",         "bodysuit", "apron"};
constexpr std::array<std::string_view, 19> kSizes{
    "3XS",     "2XS",   "XS",        "S",        "M",          "L",          "XL",
    "2XL",     "3XL",   "4XL",       "One size", "0–3 months", "3–6 months", "6–12 months",
    "12–18 m", "2-3 y", "5–6 years", "9-10 y",   "13-14 y"};

BlankStyle styleOf(std::string_view outline) {
    BlankStyle style;
    style.name = outline;
    style.outline = outline;
    return style;
}

TEST(DrawnGarments, EachSaysWhatIsClothAndWhatIsNot) {
    ASSERT_EQ(garmentDrawings().size(), kDrawnOutlines.size());
    for (const std::string_view outline : kDrawnOutlines) {
        const GarmentShape& shape = garmentShape(outline);
        ASSERT_EQ(shape.cloth.size(), 1u) << outline;
        EXPECT_TRUE(shape.cloth.front().isClosed) << outline;
        EXPECT_FALSE(shape.parts.empty()) << outline;
        for (const PartLines& part : shape.parts)
            EXPECT_FALSE(part.lines.empty()) << outline << ": " << partWords(part.part);
        EXPECT_TRUE(isInside(garmentMeasures(outline).body.centre(), shape.cloth)) << outline;
        EXPECT_GT(shape.reach.left, 0) << outline;
        EXPECT_LT(shape.reach.right, 240) << outline;
        EXPECT_LT(shape.reach.bottom, 260) << outline;
    }
    EXPECT_EQ(&garmentShape("scarf"), &garmentShape("tee"));
}

TEST(DrawnGarments, PresetsLieOnTheClothAtEverySize) {
    for (const std::string_view outline : kDrawnOutlines)
        for (const std::string_view size : kSizes)
            for (const PlacementPreset& middle : presetsFor(outline)) {
                const PlacementPreset preset = *presetFor(outline, middle.placement, size);
                for (const Millimetres width : {preset.wide, preset.widest}) {
                    const DecalSpot spot{preset.placement, preset.below, preset.aside, width, preset.tallest};
                    EXPECT_EQ(offClothWords(styleOf(outline), size, spot), "")
                        << outline << ", " << size << ", " << placementName(preset.placement);
                    EXPECT_EQ(betterSpot(styleOf(outline), size, spot, {}), std::nullopt);
                }
            }
}

TEST(DrawnGarments, ProposedSpotsAlwaysLieOnTheCloth) {
    std::mt19937 chance(11);
    std::uniform_int_distribution<std::int64_t> below(0, 900), aside(-450, 450), length(100, 700);
    int proposed = 0;
    for (const std::string_view outline : kDrawnOutlines)
        for (const std::string_view size : {"XS", "M", "3XL", "3–6 months"})
            for (const PlacementPreset& preset : presetsFor(outline))
                for (int trial = 0; trial < 3; ++trial) {
                    const DecalSpot spot{preset.placement,
                                         {below(chance)},
                                         {aside(chance)},
                                         {length(chance)},
                                         {length(chance)}};
                    const auto better = betterSpot(styleOf(outline), size, spot, {});
                    if (!better) {
                        EXPECT_EQ(offClothWords(styleOf(outline), size, spot), "") << outline;
                        continue;
                    }
                    ++proposed;
                    EXPECT_EQ(offClothWords(styleOf(outline), size, *better), "")
                        << outline << ", " << size << ", " << placementName(preset.placement) << ": "
                        << wayToSpot(spot, *better);
                    EXPECT_EQ(better->placement, spot.placement);
                    EXPECT_LE(better->width, spot.width);
                }
    EXPECT_GT(proposed, 100);
}

TEST(DrawnGarments, SaysInWordsWhatADecalRunsOver) {
    // 380 mm across 158 units: the lower edge of the tote is (245 − 112) × 380 / 158 = 320 mm below its seam.
    const DecalSpot tall{Placement::Front, {90}, {0}, {240}, {254}};
    EXPECT_EQ(offClothWords(styleOf("tote"), "One size", tall), "It runs 24 mm over the lower edge.");
    const auto better = betterSpot(styleOf("tote"), "One size", tall, {});
    ASSERT_TRUE(better);
    EXPECT_EQ(wayToSpot(tall, *better), "24 mm up");

    const DecalSpot acrossZip{Placement::Chest, {70}, {0}, {200}, {60}};
    EXPECT_EQ(offClothWords(styleOf("hoodie"), "M", acrossZip), "It lies across the zip.");
    const DecalSpot gone{Placement::Chest, {70}, {700}, {100}, {60}};
    EXPECT_EQ(offClothWords(styleOf("tee"), "M", gone), "It lies outside the garment.");
}

TEST(DrawnGarments, AWayRoundLetsADecalLieAcrossSeamsButNotAcrossAZip) {
    BlankStyle hoodie = styleOf("hoodie");
    hoodie.obstacles = {{Obstacle::Zip, WayRound::Pillow}, {Obstacle::Seams, WayRound::Pillow}};
    const DecalSpot onPocket{Placement::LeftChest, {460}, {130}, {90}, {90}};
    EXPECT_EQ(offClothWords(styleOf("hoodie"), "M", onPocket), "It lies across the pocket.");
    EXPECT_EQ(offClothWords(hoodie, "M", onPocket), "");
    const DecalSpot acrossZip{Placement::Chest, {70}, {0}, {200}, {60}};
    EXPECT_EQ(offClothWords(hoodie, "M", acrossZip), "It lies across the zip.");
    hoodie.obstacles = {{Obstacle::Seams, std::nullopt}};
    EXPECT_EQ(offClothWords(hoodie, "M", onPocket), "It lies across the pocket.") << "no way chosen yet";
}

TEST(DrawnGarments, ASleevesDecalStaysOnItsSleeve) {
    const DecalSpot tooLow{Placement::Sleeve, {200}, {300}, {75}, {75}};
    const auto better = betterSpot(styleOf("tee"), "M", tooLow, {});
    ASSERT_TRUE(better);
    EXPECT_GT(better->aside.value, 240);
    EXPECT_LT(better->below.value, 200);
}

TEST(GarmentScale, ReadsLettersMonthsAndYears) {
    EXPECT_DOUBLE_EQ(millimetresPerUnit("tee", "M"), 520.0 / 128);
    EXPECT_DOUBLE_EQ(millimetresPerUnit("tee", " xl "), 600.0 / 128);
    EXPECT_DOUBLE_EQ(millimetresPerUnit("tee", "XXS"), millimetresPerUnit("tee", "2XS"));
    EXPECT_DOUBLE_EQ(millimetresPerUnit("tee", "XXL"), millimetresPerUnit("tee", "2XL"));
    EXPECT_DOUBLE_EQ(millimetresPerUnit("bodysuit", "0–3 months"), 197.5 / 118);
    EXPECT_DOUBLE_EQ(millimetresPerUnit("bodysuit", "12–18 m"), 235.0 / 118);
    EXPECT_DOUBLE_EQ(millimetresPerUnit("tee", "9-10 y"), 390.0 / 128);
    EXPECT_DOUBLE_EQ(millimetresPerUnit("tee", "42"), millimetresPerUnit("tee", "M"));
}

// SVG 1.1 section 8.3.2 to 8.3.6: what follows a move without a letter is a line; small letters count from
// where the command began; after a closing the next command begins where the closed line did.
TEST(SvgPath, ReadsMovesLinesCurvesAndClosing) {
    const auto lines = linesOfPath("M10 10 20 10l0,5h-10v-5z m5 5L1-1");
    ASSERT_EQ(lines.size(), 2u);
    EXPECT_TRUE(lines[0].isClosed);
    EXPECT_EQ(lines[0].points, (std::vector<SheetPoint>{{10, 10}, {20, 10}, {20, 15}, {10, 15}}));
    EXPECT_EQ(lines[1].points, (std::vector<SheetPoint>{{15, 15}, {1, -1}}));

    // A cubic curve's middle is (start + 3 first + 3 second + end) / 8.
    const auto curve = linesOfPath("M0 0C0 8 8 8 8 0");
    ASSERT_EQ(curve.size(), 1u);
    EXPECT_EQ(curve[0].points[12], (SheetPoint{4, 6}));
    EXPECT_EQ(curve[0].points.back(), (SheetPoint{8, 0}));

    EXPECT_EQ(linesOfPath("M0 0L5 5Q1 1 2 2").front().points.size(), 2u) << "stops at what it does not know";
    EXPECT_TRUE(linesOfPath("").empty());
    EXPECT_TRUE(linesOfPath("L5 5").empty());
}

} // namespace
} // namespace holdfast
