// SPDX-License-Identifier: GPL-3.0-or-later
// Where the numbers of decals go on the film, so that whoever weeds finds them.
#include "app/places/cutting_bench/bench_numbers.h"
#include "tests/app/cutting_bench_fixture.h"

namespace holdfast::app::test {

namespace {

class CuttingBenchNumbers : public CuttingBenchFixture {
protected:
    // No number lies over a drawing, over another decal's box, over another number or off the film.
    void expectClear(const BenchScale& scale, const BenchNumbers& numbers, DecalShapes& shapes) {
        for (std::size_t at = 0; at < scale.count(); ++at) {
            std::vector<QRectF> places;
            for (const NestedDecal& decal : nest(at).decals) {
                const BenchNumber* number = numbers.of(decal.decal);
                if (!number)
                    continue;
                EXPECT_TRUE(scale.film(at).contains(number->place));
                for (const NestedDecal& other : nest(at).decals) {
                    if (!number->place.intersects(scale.rectOf(at, other.box)))
                        continue;
                    EXPECT_EQ(other.decal, decal.decal) << "over another's box";
                    const QPainterPath& shape = shapes.of(*model().decal(other.decal).decal);
                    EXPECT_FALSE(outlineOnFilm(scale, at, other, shape).intersects(number->place));
                }
                for (const QRectF& earlier : places)
                    EXPECT_FALSE(earlier.intersects(number->place)) << "over another number";
                places.push_back(number->place);
            }
        }
    }
};

} // namespace

// Small decals have no room for a number within; they get one near by, with a line to them, that covers
// nothing.
TEST_F(CuttingBenchNumbers, SmallDecalsHaveTheirNumberBesideThemWithALine) {
    const UsualShop usual = stockUsualShop();
    takeOrder({withDecal(usual, 280_mm, 372_mm), withDecal(usual, 85_mm, 35_mm, Artwork{"fish"}),
               withDecal(usual, 60_mm, 14_mm, Artwork{"boat"})});
    open();
    waitForSearch();
    const BenchScale scale(model().nests(), bench()->size());
    DecalShapes shapes;
    BenchNumbers numbers;
    numbers.lay(model(), scale, shapes);
    expectClear(scale, numbers, shapes);
    int withLine = 0;
    for (const NestedDecal& decal : nest().decals) {
        const BenchNumber* number = numbers.of(decal.decal);
        ASSERT_NE(number, nullptr);
        EXPECT_EQ(number->text, decalNumber(model().facts(), model().decal(decal.decal)));
        const QRectF box = scale.rectOf(0, decal.box);
        EXPECT_EQ(number->leader.has_value(), !box.contains(number->place));
        if (!number->leader)
            continue;
        ++withLine;
        EXPECT_TRUE(box.adjusted(-0.01, -0.01, 0.01, 0.01).contains(number->leader->p1()));
        EXPECT_TRUE(number->place.adjusted(-0.01, -0.01, 0.01, 0.01).contains(number->leader->p2()));
        EXPECT_LT(number->leader->length(), 50);
    }
    EXPECT_EQ(withLine, 2);
}

TEST_F(CuttingBenchNumbers, NumbersOfAThousandDecalsStandOnlyWhereThereIsRoom) {
    const UsualShop usual = stockUsualShop();
    receiveRoll(usual.film, usual.place, 60'000_mm);
    for (int order = 0; order < 20; ++order) {
        std::vector<GarmentDraft> garments;
        for (int at = 0; at < 50; ++at)
            garments.push_back(withDecal(usual, {20 + (order * 50 + at) % 60}, {12 + at % 40}));
        takeOrder(garments);
    }
    open();
    const BenchScale scale(model().nests(), bench()->size());
    DecalShapes shapes;
    BenchNumbers numbers;
    numbers.lay(model(), scale, shapes);
    // Each decal's number looks only at what lies near it; with all the others it would be a million and more
    // for each place that is tried.
    EXPECT_LT(numbers.compared(), 1000 * 2000);
    expectClear(scale, numbers, shapes);
    std::size_t laid = 0;
    std::size_t numbered = 0;
    for (const Nest& each : model().nests())
        for (const NestedDecal& decal : each.decals) {
            ++laid;
            numbered += numbers.of(decal.decal) ? 1 : 0;
        }
    EXPECT_EQ(laid, 1000U);
    EXPECT_LT(numbered, laid) << "there is no room for all";
    EXPECT_GT(numbered, 0U);
}

} // namespace holdfast::app::test
