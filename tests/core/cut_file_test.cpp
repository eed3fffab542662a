// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/cutting/cut_file.h"
#include "core/shop/films_to_cut.h"
#include "tests/core/cutting_builders.h"

#include <gtest/gtest.h>

namespace holdfast::test {
namespace {

// An L: 40 wide, 30 high, its foot to the right.
DecalOutline anL(DecalId decal) {
    const auto line = [](double x, double y) { return OutlineStretch{false, {}, {}, {x, y}}; };
    return {decal, "401-a", {{{0, 0}, {line(0, 30), line(40, 30), line(40, 25), line(5, 25), line(5, 0)}}}};
}

struct Sheet {
    CuttingBench bench;
    DecalId decal;
    Nest nest;

    explicit Sheet(bool isTurned) {
        bench.roll(9, 1000_mm);
        decal = bench.waiting.decal(40_mm, 30_mm);
        NestWish wish = bench.usual();
        wish.pins[decal] = {6_mm, 4_mm, isTurned};
        nest = bench.nests(wish).nests.front();
    }
    std::string svg(const CutFileWish& wish = {}) const { return cutFileSvg(nest, {anL(decal)}, wish); }
};

bool contains(const std::string& text, const std::string& part) {
    return text.find(part) != std::string::npos;
}

// SVG 1.1, section 7.10: units; a viewBox in user units equal to the size in mm makes one unit one
// millimetre.
TEST(CutFile, SizesStandInMillimetres) {
    const Sheet sheet(false);
    EXPECT_TRUE(contains(sheet.svg(), R"(version="1.1" width="38mm" height="500mm" viewBox="0 0 38 500")"))
        << sheet.svg();
}

TEST(CutFile, IsMirrored) {
    const Sheet upright(true); // its width lies along the roll
    EXPECT_TRUE(contains(upright.svg(), "M44,6L44,36L4,36L4,31L39,31L39,6Z")) << upright.svg();
    const Sheet lying(false);
    EXPECT_TRUE(contains(lying.svg(), "M4,6L34,6L34,46L29,46L29,11L4,11Z")) << lying.svg();
}

// A reflection turns an outline's sense round, a turn alone does not: the sign of its area (Gauss's area
// formula).
TEST(CutFile, MirroringTurnsTheOutlinesSenseRound) {
    for (const bool isTurned : {false, true}) {
        const Sheet sheet(isTurned);
        const OutlineLoop loop = anL(sheet.decal).loops.front();
        std::vector<OutlinePoint> points{loop.start};
        for (const OutlineStretch& stretch : loop.stretches)
            points.push_back(stretch.end);
        const auto area = [&](const auto& placed) {
            double twice = 0;
            for (std::size_t index = 0; index < points.size(); ++index) {
                const OutlinePoint from = placed(points[index]);
                const OutlinePoint to = placed(points[(index + 1) % points.size()]);
                twice += from.x * to.y - to.x * from.y;
            }
            return twice / 2;
        };
        const double worn = area([](OutlinePoint point) { return point; });
        const double cut =
            area([&](OutlinePoint point) { return onSheet(sheet.nest.decals.front(), point); });
        EXPECT_NEAR(cut, -worn, 1e-9);
        EXPECT_NEAR(std::abs(cut), 40 * 5 + 25 * 5, 1e-9);
    }
}

TEST(CutFile, FramesPartingCutAndLabelsAreOnLayersOfTheirOwn) {
    const Sheet sheet(true);
    const std::string all = sheet.svg();
    EXPECT_TRUE(contains(all, R"(<g id="cut-lines")"));
    EXPECT_TRUE(contains(all, R"(<rect x="2" y="4" width="44" height="34"/>)")) << all;
    EXPECT_TRUE(contains(all, "M48,0V500"));
    EXPECT_TRUE(contains(all, R"(<text x="4" y="38.4">401-a</text>)")) << all;
    const std::string bare = sheet.svg({false, false, "R-09 <Dusk> & “more”"});
    EXPECT_FALSE(contains(bare, "weeding-frames"));
    EXPECT_FALSE(contains(bare, "parting-cut"));
    EXPECT_TRUE(contains(bare, "<title>R-09 &lt;Dusk&gt; &amp; “more”</title>"));
}

TEST(CutFile, WhereThereIsNoGapThereIsNoRoomForLabels) {
    Sheet sheet(true);
    sheet.nest.gap = 0_mm;
    EXPECT_FALSE(contains(sheet.svg(), "<text"));
}

TEST(CutFile, CurvesAreKept) {
    const Sheet sheet(true);
    DecalOutline curve{sheet.decal, "", {{{0, 0}, {{true, {0, 10}, {10.25, 30}, {40, 30}}}}}};
    EXPECT_TRUE(contains(cutFileSvg(sheet.nest, {curve}, {}), "M44,6C44,16 33.75,36 4,36Z"));
}

} // namespace
} // namespace holdfast::test
