// SPDX-License-Identifier: GPL-3.0-or-later
// What a scanned paper does at Press walk: a bag tag takes its garment up, if it may be; nothing else is
// written.
#include "app/places/press_walk/aside_list.h"
#include "app/places/press_walk/walk_model.h"
#include "tests/app/press_walk_fixture.h"

#include <QListView>

#include <random>

namespace holdfast::app::test {

namespace {

class PressWalkScan : public PressWalkFixture {
protected:
    SlipTarget tagOf(GarmentId garment) {
        SlipTarget matter;
        matter.garment = garment;
        matter.order = desk().shop()->facts.garments.at(garment).order;
        return matter;
    }
    SlipTarget ticketOf(GarmentId garment) {
        SlipTarget matter;
        matter.order = desk().shop()->facts.garments.at(garment).order;
        return matter;
    }
    std::size_t entries() { return file().recent(100'000).size(); }
};

} // namespace

TEST_F(PressWalkScan, BagTagTakesItsGarmentUpOutOfTurn) {
    const auto garments = readyToPress(3);
    open();
    EXPECT_TRUE(place->takeScan(tagOf(garments[2])));
    EXPECT_EQ(openKey(garments[2]), "read-tag-1");
    EXPECT_TRUE(part<Button>("nextStep").hasFocus());
    EXPECT_TRUE(failures.isEmpty()) << failures.join(u' ').toStdString();
}

TEST_F(PressWalkScan, WithOneInHandItIsSaidAndNothingIsDone) {
    const auto garments = readyToPress(2);
    open();
    place->takeScan(tagOf(garments[0]));
    const std::size_t before = entries();
    EXPECT_TRUE(place->takeScan(tagOf(garments[1])));
    EXPECT_TRUE(failures.last().contains(QStringLiteral("1-a is on the press")))
        << failures.last().toStdString();
    EXPECT_EQ(panel().note, failures.last()) << "read from two metres as well";
    EXPECT_TRUE(place->takeScan(tagOf(garments[0])));
    EXPECT_EQ(failures.last(), QStringLiteral("1-a is in hand already."));
    EXPECT_EQ(entries(), before);
    EXPECT_EQ(openKey(garments[0]), "read-tag-1");
}

TEST_F(PressWalkScan, WhatStandsAsideIsShownWithItsReason) {
    readyToPress(1);
    const GarmentId held = garmentsOf(takeOrder({aGarment(usual, "L")}).id).front();
    cut(held, usual.roll);
    open();
    const std::size_t before = entries();
    EXPECT_TRUE(place->takeScan(tagOf(held)));
    EXPECT_EQ(entries(), before);
    EXPECT_TRUE(failures.last().startsWith(QStringLiteral("2-a cannot be pressed yet. Unwashed")))
        << failures.last().toStdString();
    ASSERT_TRUE(part<AsideList>("asideList").current());
    EXPECT_EQ(part<AsideList>("asideList").current()->garment, held);
}

TEST_F(PressWalkScan, RackAndCountsAreLeftAlone) {
    const auto garments = readyToPress(1);
    open();
    walkTo(garments[0], "cool");
    time().pass(60s);
    const std::size_t before = entries();
    EXPECT_TRUE(place->takeScan(tagOf(garments[0])));
    EXPECT_EQ(openKey(garments[0]), "cool-1") << "it is its key on the rack that takes it up";
    EXPECT_EQ(entries(), before);
    EXPECT_TRUE(failures.last().contains(QStringLiteral("is cooling on the rack")));
}

TEST_F(PressWalkScan, TicketShowsWhichOfItsGarmentsIsNextAndTakesNoneUp) {
    const GarmentId other = readyToPress(1).front();
    const auto garments = readyToPress(2);
    open();
    const std::size_t before = entries();
    EXPECT_TRUE(place->takeScan(ticketOf(garments[0])));
    EXPECT_EQ(entries(), before);
    auto& list = part<QListView>("walkList");
    const auto shown = static_cast<const WalkModel&>(*list.model()).garmentAt(list.currentIndex());
    EXPECT_TRUE(shown == garments[0] || shown == garments[1]);
    EXPECT_TRUE(said.contains(QStringLiteral("is next of this order, planned for "))) << said.toStdString();
    EXPECT_EQ(stageOf(other), Stage::ToPress);
}

TEST_F(PressWalkScan, RollsAreNotForThisPlace) {
    readyToPress(1);
    open();
    SlipTarget matter;
    matter.roll = usual.roll;
    matter.film = usual.film;
    EXPECT_FALSE(place->takeScan(matter));
}

// Whatever is scanned in whatever state: the only thing that is ever written is that a garment was put on the
// press.
TEST_F(PressWalkScan, NoScanFinishesAStepTakesFromTheRackOrStartsACountAgain) {
    std::vector<GarmentId> garments = readyToPress(4);
    const GarmentId unwashed = garmentsOf(takeOrder({aGarment(usual, "L")}).id).front();
    garments.push_back(unwashed);
    open();
    std::mt19937 random(1129);
    const auto oneOf = [&](std::size_t count) {
        return std::uniform_int_distribution<std::size_t>{0, count - 1}(random);
    };
    int takenUp = 0;
    for (int round = 0; round < 300; ++round) {
        // The day goes on between the scans.
        if (oneOf(3) == 0) {
            time().pass(std::chrono::seconds{oneOf(25)});
            key(Qt::Key_Space);
        }
        std::map<GarmentId, std::string> open;
        for (const GarmentId garment : garments)
            open[garment] = openKey(garment);
        const std::size_t before = entries();
        const GarmentId scanned = garments[oneOf(garments.size())];
        place->takeScan(oneOf(2) == 0 ? tagOf(scanned) : ticketOf(scanned));
        const std::size_t written = entries() - before;
        ASSERT_LE(written, 1u);
        if (written == 1) {
            ++takenUp;
            ASSERT_EQ(openKey(scanned), "read-tag-1") << "round " << round;
            ASSERT_TRUE(open[scanned].empty());
            open[scanned] = "read-tag-1";
        }
        for (const GarmentId garment : garments)
            ASSERT_EQ(openKey(garment), open[garment]) << "round " << round;
    }
    EXPECT_GT(takenUp, 0);
}

} // namespace holdfast::app::test
