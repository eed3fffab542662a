// Too long under heat: it is said, and the maker says what became of the garment by one key.
#include "app/desk/formats.h"
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
    EXPECT_EQ(panel().detail,
              QStringLiteral("Press was to take 12 s; from 30 s more it is likely scorched."));
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
    EXPECT_EQ(entries().front().title, "1-a: Press done, 155 min too long under heat");
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
