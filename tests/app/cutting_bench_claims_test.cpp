// SPDX-License-Identifier: GPL-3.0-or-later
// What the bench claims and what it costs, what can be read and reached, and what a scan leads to.
#include "app/places/cutting_bench/bench_numbers.h"
#include "app/places/cutting_bench/film_inks.h"
#include "app/slips/option_list.h"
#include "app/theme/contrast.h"
#include "tests/app/cutting_bench_fixture.h"

#include <QDir>
#include <QFile>

namespace holdfast::app::test {

namespace {

class CuttingBenchClaims : public CuttingBenchFixture {};

} // namespace

// The place in windows of 1366 × 768, 1280 × 700, 1024 × 600 and 800 × 1280.
TEST_F(CuttingBenchClaims, EverythingCanBeReachedInEveryWindow) {
    const UsualShop usual = stockUsualShop();
    takeOrder({aGarment(usual), aGarment(usual)});
    for (const QSize size : {QSize{1270, 660}, QSize{1184, 590}, QSize{928, 490}, QSize{704, 1170}}) {
        open(size);
        waitForSearch(); // while it goes on another button has the place of "Nest again"
        EXPECT_LE(place->minimumSizeHint().width(), size.width());
        EXPECT_LE(place->minimumSizeHint().height(), size.height());
        // At 150 and 200 % of 1366 × 768 the shell scrolls it down, never across.
        EXPECT_LE(place->minimumSizeHint().width(), 587);
        ASSERT_EQ(place->size(), size);
        for (const char* name :
             {"saveCutFile", "cutSheet", "markCut", "nestAgain", "turnDecal", "pinDecal"}) {
            const std::string where = std::string(name) + " at " + std::to_string(size.width());
            QWidget* act = button(name);
            act->setFocus(Qt::TabFocusReason); // brought into view
            QCoreApplication::processEvents();
            const QRect box(act->mapTo(place.get(), QPoint()), act->size());
            EXPECT_TRUE(place->rect().contains(box)) << where;
            EXPECT_GE(act->width(), act->sizeHint().width()) << where;
            EXPECT_GE(act->height(), 32) << where;
            const QRect whole(act->mapTo(place->window(), QPoint()), act->size());
            EXPECT_EQ(act->visibleRegion().boundingRect().size(), whole.size()) << where;
        }
        EXPECT_GE(sentence()->width(), sentence()->minimumSizeHint().width());
        EXPECT_GE(sentence()->height(), sentence()->heightForWidth(sentence()->width()));
        place.reset();
    }
}

TEST_F(CuttingBenchClaims, TheSentenceIsTurnedByItsKeysByTheArrowsAndByAClick) {
    const UsualShop usual = stockUsualShop();
    takeOrder({aGarment(usual)});
    open();
    const auto says = [&] { return sentence()->words().toStdString(); };
    key(Qt::Key_W);
    EXPECT_EQ(says(), "Cut mirrored, no frames, parted at 208 mm.");
    key(Qt::Key_E);
    EXPECT_EQ(says(), "Cut mirrored, no frames, not parted.");
    sentence()->setFocus();
    key(Qt::Key_Space);
    key(Qt::Key_Right);
    key(Qt::Key_Return);
    EXPECT_EQ(says(), "Cut mirrored, a frame round each decal, parted at 208 mm.");
    EXPECT_EQ(sentence()->accessibleName().toStdString(), says());
    for (const auto choice : {CutSentence::Choice::Frames, CutSentence::Choice::Parting})
        QTest::mouseClick(sentence(), Qt::LeftButton, {}, sentence()->boxOf(choice).center().toPoint());
    EXPECT_EQ(says(), "Cut mirrored, no frames, not parted.");
    // What is said is what the file has.
    const QString path = QDir::temp().filePath(QStringLiteral("holdfast-cut-sentence.svg"));
    place->saveCutFiles(path);
    waitForWriting();
    QFile file(path);
    ASSERT_TRUE(file.open(QIODevice::ReadOnly));
    const QByteArray svg = file.readAll();
    EXPECT_FALSE(svg.contains("weeding-frames"));
    EXPECT_FALSE(svg.contains("parting-cut"));
    EXPECT_TRUE(file.remove());
}

// ── what is proved ────────────────────────────────────────────────────────────────────────────────────

TEST_F(CuttingBenchClaims, APinSaysWhatItCostsAndUnpinnedItIsNestedAgain) {
    const UsualShop usual = stockUsualShop();
    takeOrder({withDecal(usual, 180_mm, 228_mm)});
    open();
    waitForSearch();
    const Millimetres shortest = nest().length;
    EXPECT_EQ(label("lengthWords"), "This is the shortest layout possible");
    const DecalId decal = nest().decals.front().decal;
    drag(decal, {300, 0});
    const Millimetres pinned = nest().length;
    ASSERT_GT(pinned, shortest + 100_mm);
    EXPECT_EQ(label("lengthWords"),
              std::to_string((pinned - shortest).value) + " mm longer than without the pin");
    // Pinned, nothing shorter is possible, and only that is said.
    key(Qt::Key_N);
    EXPECT_EQ(said.toStdString(), "Nothing shorter is possible with what is pinned.");
    EXPECT_EQ(nest().length, pinned);
    key(Qt::Key_P);
    EXPECT_FALSE(nest().decals.front().isPinned);
    EXPECT_EQ(nest().length, pinned) << "it stays where it lies until it is nested again";
    EXPECT_EQ(label("lengthWords"),
              "A layout " + std::to_string((pinned - shortest).value) + " mm shorter is known: nest again");
    key(Qt::Key_N);
    waitForSearch();
    EXPECT_EQ(nest().length, shortest);
    EXPECT_EQ(label("lengthWords"), "This is the shortest layout possible");
    EXPECT_EQ(said.toStdString(), "Nested again: " + std::to_string((pinned - shortest).value) +
                                      " mm shorter. This is the shortest layout possible.");
}

TEST_F(CuttingBenchClaims, WhatIsPinnedBeforeOthersComeStillSaysItsCost) {
    const UsualShop usual = stockUsualShop();
    takeOrder({withDecal(usual, 180_mm, 228_mm)});
    open();
    waitForSearch();
    drag(nest().decals.front().decal, {300, 0});
    takeOrder({withDecal(usual, 60_mm, 60_mm)}, "Teodor Wick"); // laid again, the pin kept
    waitForSearch();
    ASSERT_EQ(nest().decals.size(), 2U);
    EXPECT_NE(label("lengthWords").find("longer than without the pin"), std::string::npos)
        << label("lengthWords");
    EXPECT_EQ(label("lengthWords").find("shortest"), std::string::npos);
}

TEST_F(CuttingBenchClaims, EscapeStopsTheSearchAndKeepsTheBestSoFar) {
    const UsualShop usual = stockUsualShop();
    std::vector<GarmentDraft> garments;
    for (int at = 0; at < 40; ++at)
        garments.push_back(withDecal(usual, {60 + 13 * (at % 11)}, {45 + 17 * (at % 7)}));
    takeOrder(garments);
    CuttingBenchPlace::setSearchRounds(1'000'000'000); // it would not end by itself
    open();
    const Millimetres atOnce = nest().length;
    ASSERT_TRUE(tools()->showsSearch()) << "nothing shorter is looked for";
    EXPECT_TRUE(button("endWork")->isVisible());
    key(Qt::Key_Escape);
    QTRY_VERIFY_WITH_TIMEOUT(!tools()->showsSearch(), 60'000);
    EXPECT_LE(nest().length, atOnce);
    EXPECT_EQ(nest().decals.size(), 40U);
    const std::int64_t least = nest().leastLength.value; // rounded up to whole percent
    const std::int64_t above = (100 * (nest().length.value - least) + least - 1) / least;
    EXPECT_EQ(label("lengthWords"),
              "At most " + std::to_string(above) + " % longer than the shortest possible");
    EXPECT_EQ(faultIn(nest()), "");
    // Asked for again, and left in the middle by turning to another place: at once.
    key(Qt::Key_N);
    ASSERT_TRUE(tools()->showsSearch());
    place->hide();
    EXPECT_FALSE(tools()->showsSearch());
}

// ── what can be read ──────────────────────────────────────────────────────────────────────────────────

// Painted and measured: in each number's place the ground and what differs most from it. Contrast as in
// WCAG 2.2; 4.8 is the lowest of the program's own text.
TEST_F(CuttingBenchClaims, NumbersCanBeReadOnEveryFilmByDayAndInTheEvening) {
    const UsualShop usual = stockUsualShop();
    // Shades of the demo's films and the extremes.
    const std::vector<std::uint32_t> shades{0x34457A, 0xC9C0B0, 0x5F8552, 0xF1EFE6, 0xCF9F2B, 0x7D95A3,
                                            0xA63C48, 0x2E2A2B, 0xD8B98A, 0x7A5A38, 0xE3EAD0, 0xB08A3E,
                                            0xFFFFFF, 0x000000, 0x808080, 0xFFFF00, 0x00FF00, 0xFF00FF};
    for (const std::uint32_t shade : shades) {
        const FilmId film = addFilm("Shade " + std::to_string(shade), [&](Film& made) { made.rgb = shade; });
        receiveRoll(film, usual.place);
        GarmentDraft garment = withDecal(usual, 200_mm, 280_mm);
        garment.decals.front().film = film;
        takeOrder({garment});
    }
    open();
    DecalShapes shapes;
    for (const Light wanted : {Light::Day, Light::Evening}) {
        setLight(*qApp, wanted);
        for (int at = 0; at < static_cast<int>(model().films().size()); ++at) {
            SlipTarget matter;
            matter.film = model().films()[static_cast<std::size_t>(at)].film;
            place->turnTo(matter);
            BenchNumbers numbers;
            const BenchScale scale(model().nests(), bench()->size());
            numbers.lay(model(), scale, shapes);
            const DecalId decal = nest().decals.front().decal;
            ASSERT_NE(numbers.of(decal), nullptr);
            const QPointF origin =
                bench()->rectOf(decal).topLeft() - scale.rectOf(0, nest().find(decal)->lies).topLeft();
            const QRect box =
                numbers.of(decal)->place.translated(origin).toAlignedRect().adjusted(3, 3, -3, -3);
            const QImage seen = bench()->viewport()->grab().toImage();
            double most = 1;
            const QColor ground = seen.pixelColor(box.topLeft());
            for (int y = box.top(); y <= box.bottom(); ++y)
                for (int x = box.left(); x <= box.right(); ++x)
                    most = std::max(most, contrast(ground, seen.pixelColor(x, y)));
            EXPECT_GE(most, 4.8) << model().facts().films.at(*matter.film).name();
        }
        // White film in the evening is no lamp: no more than half as light as by day.
        if (wanted == Light::Evening) {
            EXPECT_LT(luminance(FilmInks(Qt::white).film), 0.5);
            EXPECT_EQ(FilmInks(Qt::black).film.rgb(), QColor(Qt::black).rgb());
        }
    }
    setLight(*qApp, Light::Day);
}

// ── what is scanned ───────────────────────────────────────────────────────────────────────────────────

TEST_F(CuttingBenchClaims, ARollsLabelTurnsToItsFilmAndPutsItFirst) {
    const UsualShop usual = stockUsualShop();
    time().pass(48h);
    const RollId newer = receiveRoll(usual.film, usual.place);
    const FilmId gorse = addFilm("Gorse");
    const RollId gorseRoll = receiveRoll(gorse, usual.place);
    const FilmId unused = addFilm("Bracken");
    const RollId other = receiveRoll(unused, usual.place);
    takeOrder({aGarment(usual)});
    GarmentDraft garment = aGarment(usual);
    garment.decals.front().film = gorse;
    takeOrder({garment}, "Teodor Wick");
    open();
    SlipTarget matter;
    matter.roll = gorseRoll;
    EXPECT_TRUE(place->takeScan(matter));
    EXPECT_EQ(model().film()->film, gorse);
    matter.roll = newer;
    EXPECT_TRUE(place->takeScan(matter));
    EXPECT_EQ(model().film()->film, usual.film);
    EXPECT_EQ(nest().roll, newer);
    EXPECT_EQ(said.toStdString(), "R-02 comes first.");
    EXPECT_TRUE(bench()->hasFocus());
    matter.roll = other;
    EXPECT_FALSE(place->takeScan(matter)) << "nothing of its film is to be cut";
    EXPECT_EQ(model().film()->film, usual.film);
}

TEST_F(CuttingBenchClaims, ABagTagShowsADecalThatLiesHereOrIsCutAndATicketTheFirstOfItsOrder) {
    const UsualShop usual = stockUsualShop();
    const auto first = takeOrder({aGarment(usual), aGarment(usual)});
    const auto second = takeOrder({aGarment(usual)}, "Teodor Wick");
    const auto cutOne = takeOrder({aGarment(usual)}, "Inka Sorrel");
    cut(garmentsOf(cutOne.id).front(), usual.roll);
    open();
    const auto chosenOrder = [&] { return model().decal(*model().chosen()).garment->order; };
    SlipTarget matter;
    matter.order = second.id;
    EXPECT_TRUE(place->takeScan(matter));
    EXPECT_EQ(chosenOrder(), second.id);
    matter = {};
    matter.garment = garmentsOf(first.id).back();
    EXPECT_TRUE(place->takeScan(matter));
    EXPECT_EQ(model().decal(*model().chosen()).garment->id, garmentsOf(first.id).back());
    matter.garment = garmentsOf(cutOne.id).front();
    EXPECT_TRUE(place->takeScan(matter));
    EXPECT_TRUE(part<OptionList>(QStringLiteral("cutDecals"))->hasFocus());
    press(garmentsOf(cutOne.id).front());
    EXPECT_FALSE(place->takeScan(matter));
}

} // namespace holdfast::app::test
