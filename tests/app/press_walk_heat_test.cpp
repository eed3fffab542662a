// SPDX-License-Identifier: GPL-3.0-or-later
// Too long under heat: it is said, and the maker says what became of the garment by one key.
#include "app/desk/formats.h"
#include "app/desk/garment_words.h"
#include "app/places/press_walk/aside_list.h"
#include "db/actions/shop_actions.h"
#include "tests/app/press_walk_fixture.h"

namespace holdfast::app::test {

namespace {

class PressWalkHeat : public PressWalkFixture {
protected:
    // In the press, longer than its recipe says by this much.
    GarmentId leftUnderHeat(Seconds over) {
        const GarmentId garment = readyToPress(1).front();
        open();
        walkTo(garment, "press");
        time().pass(12s + over);
        return garment;
    }
    bool asks() { return panel().asksOutcome; }
    std::vector<db::HistoryEntry> entries() { return file().recent(1000); }
};

} // namespace

TEST_F(PressWalkHeat, IsSaidAsSuchOnlyFromTheShopsOwnNumberOn) {
    leftUnderHeat(29s);
    EXPECT_TRUE(waitsUntil([&] { return panel().word == QStringLiteral("Lift now"); }));
    EXPECT_FALSE(asks());
    time().pass(1s);
    EXPECT_TRUE(waitsUntil([&] { return asks(); }));
    EXPECT_EQ(panel().word, QStringLiteral("Too long under heat"));
    EXPECT_EQ(panel().detail, QStringLiteral("Press takes 12 s; 30 s longer and it is likely scorched."));
    EXPECT_EQ(digits(), QStringLiteral("+30"));
    for (const char* name : {"pressedOn", "spoiledByHeat", "putBack"})
        EXPECT_TRUE(part<Button>(name).isVisible()) << name;
    EXPECT_TRUE(part<Button>("pressedOn").hasFocus()) << "the keyboard is where the answer is given";
}

TEST_F(PressWalkHeat, NumberOfTheBackRoomDecides) {
    ShopSettings settings = desk().shop()->facts.settings;
    settings.mostOverUnderHeat = Seconds{90};
    valueOf(db::changeSettings(file(), settings));
    leftUnderHeat(89s);
    EXPECT_TRUE(waitsUntil([&] { return panel().word == QStringLiteral("Lift now"); }));
    EXPECT_FALSE(asks());
    time().pass(1s);
    EXPECT_TRUE(waitsUntil([&] { return asks(); }));
}

// Between two heats the press has to heat up or to cool: the panel says so before the first garment is put
// under it, and no more once it had heat.
TEST_F(PressWalkHeat, AnotherHeatIsSaidBeforeItsFirstGarmentIsPressed) {
    const FilmId cooler = addFilm("Kelp", [](Film& film) { film.recipe->temperature = Celsius{140}; });
    const RollId roll = receiveRoll(cooler, usual.place);
    const GarmentId hot = readyToPress(1).front();
    GarmentDraft draft = aGarment(usual);
    for (DecalDraft& decal : draft.decals)
        decal.film = cooler;
    const GarmentId mild = garmentsOf(takeOrder({draft}).id).front();
    cut(mild, roll);
    open();
    const Assessment& assessment = desk().shop()->of(mild);
    ASSERT_EQ(assessment.route.firstTemperature(), Celsius{140});
    const bool hotFirst =
        part<Button>("nextStep")
            .text()
            .contains(garmentNumber(desk().shop()->facts, desk().shop()->facts.garments.at(hot)));
    const GarmentId first = hotFirst ? hot : mild;
    const GarmentId second = hotFirst ? mild : hot;
    key(Qt::Key_Space);
    for (int guard = 0; guard < 60 && openKey(second).empty(); ++guard) {
        if (panel().word == garmentNumber(desk().shop()->facts, desk().shop()->facts.garments.at(second)))
            break; // offered as the next on the walk
        if (const RouteStep* step = openStepOf(first); step && step->isTimed())
            time().pass(step->counted());
        key(Qt::Key_Space);
    }
    const QString from = hotFirst ? QStringLiteral("150 °C") : QStringLiteral("140 °C");
    const QString to = hotFirst ? QStringLiteral("140 °C") : QStringLiteral("150 °C");
    const QString heatWords = QStringLiteral("to %1: from %2 it takes about").arg(to, from);
    EXPECT_TRUE(panel().note.contains(heatWords)) << panel().note.toStdString();
    EXPECT_TRUE(panel().isAlert);
    walkTo(second, "place");
    EXPECT_FALSE(panel().note.contains(heatWords)) << panel().note.toStdString();
}

TEST_F(PressWalkHeat, SpaceDoesNotPassTheQuestionBy) {
    const GarmentId garment = leftUnderHeat(2h);
    EXPECT_TRUE(waitsUntil([&] { return asks(); }));
    const std::size_t before = entries().size();
    for (const Qt::Key other : {Qt::Key_Space, Qt::Key_H, Qt::Key_1})
        key(other);
    EXPECT_EQ(entries().size(), before);
    EXPECT_EQ(openKey(garment), "press-1");
    EXPECT_FALSE(part<Button>("nextStep").isEnabled());
}

TEST_F(PressWalkHeat, GGoesOnWithASoundOneInOneEntryThatSaysHowLong) {
    const GarmentId garment = leftUnderHeat(155min);
    EXPECT_TRUE(waitsUntil([&] { return asks(); }));
    const std::size_t before = entries().size();
    key(Qt::Key_G);
    EXPECT_EQ(openKey(garment), "cool-1");
    ASSERT_EQ(entries().size(), before + 1);
    EXPECT_EQ(entries().front().title, "1-a, done: Press, 155 min too long under heat");
    EXPECT_TRUE(part<Button>("nextStep").hasFocus());
}

TEST_F(PressWalkHeat, XMarksItSpoiledWithItsCauseInOneEntryAndUndoBringsItBack) {
    const GarmentId garment = leftUnderHeat(155min);
    EXPECT_TRUE(waitsUntil([&] { return asks(); }));
    const std::size_t before = entries().size();
    key(Qt::Key_X);
    EXPECT_FALSE(askedSlip) << "the cause is known";
    EXPECT_EQ(stageOf(garment), Stage::ToCut);
    ASSERT_EQ(entries().size(), before + 1);
    EXPECT_EQ(entries().front().title, "1-a spoiled: Too long under heat, by 2 h 35 min");
    valueOf(file().undo(entries().front().id));
    EXPECT_EQ(openKey(garment), "press-1");
    EXPECT_TRUE(waitsUntil([&] { return asks(); })) << "it still lies there";
}

TEST_F(PressWalkHeat, RPutsBackAStepWhatHadHeatBeforeInOneEntry) {
    const GarmentId garment = leftUnderHeat(155min);
    EXPECT_TRUE(waitsUntil([&] { return asks(); }));
    const std::size_t before = entries().size();
    key(Qt::Key_R);
    EXPECT_EQ(openKey(garment), "place-1") << "the preheat is behind it";
    EXPECT_EQ(entries().size(), before + 1);
}

TEST_F(PressWalkHeat, RPutsBackOnTheWalkWhatHadNoHeatBefore) {
    const GarmentId garment = readyToPress(1).front();
    open();
    walkTo(garment, "preheat");
    time().pass(1h);
    EXPECT_TRUE(waitsUntil([&] { return asks(); }));
    key(Qt::Key_R);
    EXPECT_EQ(stageOf(garment), Stage::ToPress);
    EXPECT_TRUE(part<Button>("nextStep").hasFocus());
}

TEST_F(PressWalkHeat, AnswersAreGivenInAPausedWalkToo) {
    const GarmentId garment = leftUnderHeat(0s);
    key(Qt::Key_P);
    time().pass(1h);
    EXPECT_TRUE(waitsUntil([&] { return asks(); }));
    key(Qt::Key_G);
    EXPECT_EQ(openKey(garment), "cool-1");
}

TEST_F(PressWalkHeat, KeysOfTheAnswerDoNothingElsewhere) {
    const GarmentId garment = leftUnderHeat(0s);
    const std::size_t before = entries().size();
    key(Qt::Key_G);
    key(Qt::Key_R);
    EXPECT_EQ(entries().size(), before);
    EXPECT_EQ(openKey(garment), "press-1");
}

// What is said about a count is gone with it.
TEST_F(PressWalkHeat, StillCountingIsNotSaidOnceTheCountIsOver) {
    const GarmentId garment = readyToPress(1).front();
    open();
    walkTo(garment, "press");
    key(Qt::Key_Space);
    EXPECT_TRUE(panel().note.contains(QStringLiteral("Still counting")));
    time().pass(13s);
    EXPECT_TRUE(waitsUntil([&] { return panel().word == QStringLiteral("Lift now"); }));
    EXPECT_TRUE(panel().note.isEmpty()) << panel().note.toStdString();
}

} // namespace holdfast::app::test
