// SPDX-License-Identifier: GPL-3.0-or-later
// Each slip opened on a real shop, filled by keys, and what it did to the shop.
#include "tests/app/slips_fixture.h"

#include "app/slips/option_list.h"
#include "app/widgets/banner.h"
#include "app/widgets/button.h"
#include "app/widgets/field.h"
#include "db/actions/blank_actions.h"
#include "db/actions/film_actions.h"
#include "db/actions/press_actions.h"
#include "db/tables/facts.h"

#include <QApplication>
#include <QLineEdit>

#include <algorithm>

namespace holdfast::app::test {
namespace {

class Slips : public SlipsFixture {
protected:
    const ShopFacts& facts() { return desk().shop()->facts; }

    static SlipTarget about(BlankStyleId style) {
        SlipTarget matter;
        matter.style = style;
        return matter;
    }
    static SlipTarget about(RollId roll) {
        SlipTarget matter;
        matter.roll = roll;
        return matter;
    }
    static SlipTarget about(BlankLotId lot) {
        SlipTarget matter;
        matter.lot = lot;
        return matter;
    }
    static SlipTarget about(GarmentId garment) {
        SlipTarget matter;
        matter.garment = garment;
        return matter;
    }
    static SlipTarget about(OrderId order) {
        SlipTarget matter;
        matter.order = order;
        return matter;
    }
    static SlipTarget about(FilmId film) {
        SlipTarget matter;
        matter.film = film;
        return matter;
    }
};

// ── blanks ──

TEST_F(Slips, LabelIsReadWithFibresThatAddToAHundred) {
    const auto style = addStyle("Long sleeve", [](BlankStyle& each) { each.label.reset(); });
    ASSERT_TRUE(open(SlipName::ReadLabel, about(style)));
    type(QStringLiteral("share-0"), QStringLiteral("80"));
    find<Button>(QStringLiteral("addFibre"))->click();
    submit(); // the rest of a hundred was offered, in polyester
    EXPECT_TRUE(isFinished());
    const auto& label = facts().styles.at(style).label;
    ASSERT_TRUE(label);
    EXPECT_EQ(fibreText(label->fibres), "80 % cotton, 20 % polyester");
    EXPECT_EQ(label->readOn, now().today());
}

TEST_F(Slips, LabelBeginsAtItsFirstFibreAlsoWhereItWasReadBefore) {
    const auto unread = addStyle("Long sleeve", [](BlankStyle& each) { each.label.reset(); });
    const auto read = stockUsualShop().style;
    for (const BlankStyleId style : {unread, read}) {
        ASSERT_TRUE(open(SlipName::ReadLabel, about(style)));
        EXPECT_EQ(QApplication::focusWidget()->objectName(), QStringLiteral("fibre-0"));
    }
}

TEST_F(Slips, LabelTakesStretchCoatingHeatAndCare) {
    const auto style = addStyle("Apron", [](BlankStyle& each) { each.label.reset(); });
    open(SlipName::ReadLabel, about(style));
    type(QStringLiteral("share-0"), QStringLiteral("100"));
    choose(QStringLiteral("stretch"), 1);
    choose(QStringLiteral("coating"), 2);
    type(QStringLiteral("highestSafe"), QStringLiteral("150"));
    choose(QStringLiteral("careWash"), 0);
    choose(QStringLiteral("careCleaning"), 3);
    submit();
    const auto& label = facts().styles.at(style).label;
    ASSERT_TRUE(label);
    EXPECT_EQ(label->stretch, Stretch::Some);
    EXPECT_EQ(label->coating, Coating::Waxed);
    EXPECT_EQ(label->highestSafe, Celsius{150});
    EXPECT_EQ(label->care.washCelsius, 0);
    EXPECT_EQ(label->care.cleaning, Cleaning::PF);
}

TEST_F(Slips, StyleIsPressedUnwashedForAReasonAndWashedAgainWithoutOne) {
    const auto style = addStyle("Cap");
    open(SlipName::MarkNotPrewashed, about(style));
    typeText(QStringLiteral("Filz läuft ein"));
    press(Qt::Key_Return);
    EXPECT_TRUE(isFinished());
    EXPECT_EQ(facts().styles.at(style).notPrewashedBecause, "Filz läuft ein");
    open(SlipName::MarkNotPrewashed, about(style));
    type(QStringLiteral("reason"), {});
    submit();
    EXPECT_TRUE(facts().styles.at(style).washedFirst());
}

TEST_F(Slips, WayRoundIsChosenForEachObstacle) {
    const auto style = addStyle("Zip hoodie", [](BlankStyle& each) {
        each.obstacles = {{Obstacle::Zip, {}}, {Obstacle::Seams, WayRound::Pillow}};
    });
    open(SlipName::ChooseWayRound, about(style));
    const auto& obstacles = facts().styles.at(style).obstacles;
    const auto zip =
        std::ranges::find(obstacles, Obstacle::Zip, &ObstacleOnStyle::obstacle) - obstacles.begin();
    choose(QStringLiteral("way-%1").arg(zip), 1);
    press(Qt::Key_Return);
    EXPECT_TRUE(isFinished());
    for (const auto& each : facts().styles.at(style).obstacles)
        EXPECT_EQ(each.way, each.obstacle == Obstacle::Zip ? WayRound::Turn : WayRound::Pillow);
}

TEST_F(Slips, WhoLookedUpTheLawIsNoted) {
    const auto style = addStyle("Bib", [](BlankStyle& each) { each.forChild = true; });
    open(SlipName::NoteLawChecked, about(style));
    typeText(QStringLiteral("Odile"));
    press(Qt::Key_Return);
    EXPECT_EQ(facts().styles.at(style).lawCheckedBy, "Odile");
}

TEST_F(Slips, DeliveryNeedsOnlyItsNumberWhenAGarmentAsksForIt) {
    const auto usual = stockUsualShop();
    const auto garment = garmentsOf(takeOrder({aGarment(usual, "XL")}).id).front();
    SlipTarget matter = about(garment);
    matter.style = usual.style;
    matter.size = QStringLiteral("XL");
    matter.colour = usual.moss;
    open(SlipName::ReceiveBlanks, matter);
    typeText(QStringLiteral("3"));
    submit();
    EXPECT_TRUE(isFinished());
    const auto lot = facts().garments.at(garment).lot;
    ASSERT_TRUE(lot) << "the garment that waited gets one";
    EXPECT_EQ(facts().lots.at(*lot).unitsLeft, 3);
}

TEST_F(Slips, DeliveryMayBringAColourThatTheStyleHadNot) {
    const auto style = addStyle("Tote", [](BlankStyle& each) { each.sizes = {"one size"}; });
    open(SlipName::ReceiveBlanks, about(style));
    turn(QStringLiteral("hasNewColour"));
    type(QStringLiteral("newColour"), QStringLiteral("Möwe"));
    auto* code = find<Field>(QStringLiteral("shadeCode"))->editor();
    code->setFocus();
    code->selectAll();
    typeText(QStringLiteral("d8d4c9"));
    type(QStringLiteral("newUnits-0-0"), QStringLiteral("12"));
    submit();
    EXPECT_TRUE(isFinished());
    const auto colours = coloursOf(style);
    ASSERT_EQ(colours.size(), 3U);
    EXPECT_EQ(colours[2].name, "Möwe");
    EXPECT_EQ(colours[2].rgb, 0xd8d4c9U);
    EXPECT_EQ(facts().lots.begin()->colour, colours[2].id);
}

TEST_F(Slips, CountIsCorrectedWithItsReason) {
    const auto usual = stockUsualShop();
    open(SlipName::CorrectCount, about(usual.unwashed));
    typeText(QStringLiteral("3"));
    press(Qt::Key_Return);
    typeText(QStringLiteral("one had a hole"));
    press(Qt::Key_Return);
    EXPECT_TRUE(isFinished());
    EXPECT_EQ(facts().lots.at(usual.unwashed).unitsLeft, 3);
}

TEST_F(Slips, CountAsksWhichOfTheLotsOfACellWasCounted) {
    const auto usual = stockUsualShop();
    const auto dry = wash(usual.unwashed, 1);
    db::WashPlan plan;
    plan.parts = {{usual.unwashed, 1}};
    ASSERT_TRUE(db::startWash(file(), plan).ok());
    SlipTarget matter;
    matter.style = usual.style;
    matter.size = QStringLiteral("L");
    matter.colour = usual.moss;
    for (const SlipName name : {SlipName::CorrectCount, SlipName::MeasureShrinkage}) {
        open(name, matter);
        auto* lots = find<OptionList>(QStringLiteral("lot"));
        ASSERT_NE(lots, nullptr);
        ASSERT_EQ(lots->model()->rowCount(), 3);
        EXPECT_EQ(lots->model()->index(0, 0).data().toString(), QStringLiteral("1 washed"));
        EXPECT_EQ(lots->model()->index(1, 0).data().toString(), QStringLiteral("1 drying"));
        EXPECT_EQ(lots->model()->index(2, 0).data().toString(), QStringLiteral("2 unwashed"));
        EXPECT_EQ(QApplication::focusWidget(), lots);
        const auto before = entries();
        submit();
        EXPECT_FALSE(errorAt("lot").isEmpty());
        EXPECT_EQ(entries(), before);
    }
    open(SlipName::CorrectCount, matter);
    typeText(QStringLiteral("unw")); // any word of a name finds it
    EXPECT_EQ(find<OptionList>(QStringLiteral("lot"))->chosenAt(), 2);
    type(QStringLiteral("counted"), QStringLiteral("5"));
    type(QStringLiteral("reason"), QStringLiteral("a box was found"));
    submit();
    EXPECT_TRUE(isFinished());
    EXPECT_EQ(facts().lots.at(usual.unwashed).unitsLeft, 5);
    EXPECT_EQ(facts().lots.at(dry).unitsLeft, 1);
}

TEST_F(Slips, StyleIsWrittenDownAndItsLabelAskedForNext) {
    open(SlipName::AddStyle);
    typeText(QStringLiteral("Smock, lang ärmlig"));
    choose(QStringLiteral("outline"), 2);
    type(QStringLiteral("sizes"), QStringLiteral("S, M; 12–18 months"));
    type(QStringLiteral("colour-0"), QStringLiteral("Moss"));
    find<Button>(QStringLiteral("addColour"))->click();
    typeText(QStringLiteral("Chalk"));
    type(QStringLiteral("weight"), QStringLiteral("240"));
    type(QStringLiteral("cost"), QStringLiteral("7,50"));
    choose(QStringLiteral("obstacle-1"), 2);
    turn(QStringLiteral("forChild"));
    submit();
    EXPECT_TRUE(isFinished());
    ASSERT_EQ(facts().styles.size(), 1U);
    const BlankStyle& style = *facts().styles.begin();
    EXPECT_EQ(style.name, "Smock, lang ärmlig");
    EXPECT_EQ(style.outline, "hoodie");
    EXPECT_EQ(style.sizes, (std::vector<std::string>{"S", "M", "12–18 months"}));
    ASSERT_EQ(style.colours.size(), 2U);
    EXPECT_NE(style.colours[0].rgb, style.colours[1].rgb);
    EXPECT_EQ(style.cost, Money{750});
    EXPECT_EQ(style.obstacles, (std::vector<ObstacleOnStyle>{{Obstacle::Buttons, WayRound::Pillow}}));
    EXPECT_TRUE(style.forChild);
    EXPECT_EQ(asked, std::vector{SlipName::ReadLabel});
}

TEST_F(Slips, GarmentGetsAnotherBlank) {
    const auto usual = stockUsualShop();
    const auto garment = garmentsOf(takeOrder({aGarment(usual)}).id).front();
    open(SlipName::ChangeBlank, about(garment));
    choose(QStringLiteral("size"), 2);
    submit();
    EXPECT_TRUE(isFinished());
    EXPECT_EQ(facts().garments.at(garment).size, "L");
    EXPECT_EQ(facts().garments.at(garment).lot, usual.unwashed);
}

TEST_F(Slips, LoadOfTheLotIsFoundDry) {
    const auto usual = stockUsualShop();
    db::WashPlan plan;
    plan.detergent = "mild";
    plan.parts = {{receiveBlanks(usual.style, "S", usual.chalk, 2), 2}};
    valueOf(db::startWash(file(), plan));
    plan.parts = {{usual.unwashed, 4}};
    const auto load = valueOf(db::startWash(file(), plan));
    open(SlipName::MarkDry, about(usual.unwashed));
    press(Qt::Key_Return);
    EXPECT_TRUE(isFinished());
    for (const WashLoad& each : facts().loads)
        EXPECT_EQ(each.isDry(), each.id == load || each.startedAt < now().instant);
}

TEST_F(Slips, NoLoadUnderWayIsSaidAndNothingCanBeDone) {
    open(SlipName::MarkDry);
    EXPECT_FALSE(find<Button>(QStringLiteral("slipAction"))->isEnabled());
    submit();
    EXPECT_FALSE(isFinished());
}

TEST_F(Slips, ShrinkageIsMeasured) {
    const auto usual = stockUsualShop();
    open(SlipName::MeasureShrinkage, about(usual.washed));
    for (const char* measure : {"700", "670", "500", "490"}) {
        typeText(QString::fromLatin1(measure));
        press(Qt::Key_Return);
    }
    EXPECT_TRUE(isFinished());
    EXPECT_EQ(facts().lots.at(usual.washed).shrinkage, (Shrinkage{700_mm, 670_mm, 500_mm, 490_mm}));
}

// ── films and rolls ──

TEST_F(Slips, RollNeedsOnlyItsLength) {
    const auto usual = stockUsualShop();
    open(SlipName::ReceiveRoll, about(usual.film));
    typeText(QStringLiteral("3,4"));
    press(Qt::Key_Return);
    EXPECT_TRUE(isFinished());
    const FilmRoll& roll = *std::ranges::max_element(facts().rolls, {}, &FilmRoll::number);
    EXPECT_EQ(roll.left, 3400_mm);
    EXPECT_EQ(roll.width, 500_mm);
    EXPECT_EQ(roll.receivedOn, now().today());
    EXPECT_EQ(roll.placeNow(), usual.place);
    ASSERT_EQ(said.size(), 1U);
    EXPECT_TRUE(said[0].contains(QStringLiteral("R-02"))) << said[0].toStdString();
}

TEST_F(Slips, FirstRollNamesItsPlace) {
    const auto film = addFilm("Dusk");
    open(SlipName::ReceiveRoll, about(film));
    type(QStringLiteral("length"), QStringLiteral("10"));
    type(QStringLiteral("printedUseBy"), QStringLiteral("2027-11-01"));
    type(QStringLiteral("placeName"), QStringLiteral("Kühles Regal"));
    submit();
    EXPECT_TRUE(isFinished());
    ASSERT_EQ(facts().places.size(), 1U);
    EXPECT_EQ(facts().places.begin()->name, "Kühles Regal");
    EXPECT_EQ(facts().rolls.begin()->placeNow(), facts().places.begin()->id);
    EXPECT_EQ(facts().rolls.begin()->printedUseBy, localDate(2027, 11, 1));
}

TEST_F(Slips, BeforeThereIsAFilmItIsAskedForInsteadOfARoll) {
    ASSERT_TRUE(open(SlipName::ReceiveRoll));
    EXPECT_EQ(slip().title(), QStringLiteral("Add a film"));
    ASSERT_TRUE(open(SlipName::ReceiveBlanks));
    EXPECT_EQ(slip().title(), QStringLiteral("Add a blank style"));
    ASSERT_TRUE(open(SlipName::CheckPress));
    EXPECT_EQ(slip().title(), QStringLiteral("Add a press"));
}

TEST_F(Slips, RollIsMovedToAPlaceWithinItsLimits) {
    const auto usual = stockUsualShop();
    const auto damp = valueOf(db::addPlace(file(), "Van"));
    valueOf(db::recordReading(file(), damp, {now().instant, 12_C, 70_rh}));
    const auto dry = addPlace("Loft shelf");
    open(SlipName::RollMove, about(usual.roll));
    press(Qt::Key_Return);
    EXPECT_TRUE(isFinished());
    EXPECT_EQ(facts().rolls.at(usual.roll).placeNow(), dry);
}

TEST_F(Slips, PlaceOutsideItsLimitsIsNeverChosenByItself) {
    const auto usual = stockUsualShop();
    const auto damp = valueOf(db::addPlace(file(), "Van"));
    valueOf(db::recordReading(file(), damp, {now().instant, 12_C, 70_rh}));
    open(SlipName::RollMove, about(usual.roll));
    auto* places = find<OptionList>(QStringLiteral("place"));
    EXPECT_TRUE(places->hasFocus());
    EXPECT_EQ(places->chosenAt(), -1);
    press(Qt::Key_Return);
    EXPECT_FALSE(errorAt("place").isEmpty());
    press(Qt::Key_Down);
    EXPECT_EQ(places->chosenAt(), 0);
    EXPECT_EQ(errorAt("place"), QString());
    press(Qt::Key_Return);
    EXPECT_EQ(facts().rolls.at(usual.roll).placeNow(), damp);
}

TEST_F(Slips, RollIsMovedToANewPlace) {
    const auto usual = stockUsualShop();
    open(SlipName::RollMove, about(usual.roll));
    typeText(QStringLiteral("Box under the bench"));
    press(Qt::Key_Return);
    EXPECT_TRUE(isFinished());
    const auto place = facts().rolls.at(usual.roll).placeNow();
    ASSERT_TRUE(place);
    EXPECT_EQ(facts().places.at(*place).name, "Box under the bench");
}

TEST_F(Slips, TestStripThatHoldsMovesTheUseByOn) {
    const auto usual = stockUsualShop();
    open(SlipName::TestStrip, about(usual.roll));
    press(Qt::Key_1);
    press(Qt::Key_Return);
    EXPECT_TRUE(isFinished());
    const FilmRoll& roll = facts().rolls.at(usual.roll);
    ASSERT_EQ(roll.testStrips.size(), 1U);
    EXPECT_TRUE(roll.testStrips[0].passed);
    EXPECT_EQ(roll.left, 4940_mm);
}

TEST_F(Slips, TestStripThatLiftsIsKept) {
    const auto usual = stockUsualShop();
    open(SlipName::TestStrip, about(usual.roll));
    press(Qt::Key_2);
    type(QStringLiteral("note"), QStringLiteral("lifted at one edge"));
    submit();
    EXPECT_FALSE(facts().rolls.at(usual.roll).testStrips.at(0).passed);
}

TEST_F(Slips, RollIsUsedUpOrMeasuredAnew) {
    const auto usual = stockUsualShop();
    open(SlipName::UseUpRoll, about(usual.roll));
    choose(QStringLiteral("what"), 1);
    type(QStringLiteral("measured"), QStringLiteral("4.2"));
    type(QStringLiteral("reason"), QStringLiteral("cut short by the maker"));
    submit();
    EXPECT_EQ(facts().rolls.at(usual.roll).left, 4200_mm);
    open(SlipName::UseUpRoll, about(usual.roll));
    typeText(QStringLiteral("crumpled"));
    press(Qt::Key_Return);
    EXPECT_TRUE(isFinished());
    EXPECT_FALSE(facts().rolls.find(usual.roll));
}

TEST_F(Slips, ReadingIsTwoNumbers) {
    const auto usual = stockUsualShop();
    time().pass(2h);
    open(SlipName::RecordReading, about(usual.roll));
    typeText(QStringLiteral("19,5"));
    press(Qt::Key_Return);
    typeText(QStringLiteral("47"));
    press(Qt::Key_Return);
    EXPECT_TRUE(isFinished());
    const ClimateSeries& series = *desk().shop()->climate.at(usual.place);
    EXPECT_EQ(series.back(), (ClimateReading{now().instant, {19.5}, {47}}));
}

TEST_F(Slips, ReadingNotedEarlierKeepsItsOwnTime) {
    const auto usual = stockUsualShop();
    const Now here = now();
    time().pass(26h);
    open(SlipName::RecordReading, about(usual.roll));
    type(QStringLiteral("temperature"), QStringLiteral("21"));
    type(QStringLiteral("humidity"), QStringLiteral("52"));
    type(QStringLiteral("day"), QString::fromStdString(isoDate(here.today())));
    submit();
    EXPECT_EQ(errorAt("time"), QStringLiteral("Say at what time that day, such as 9:30."));
    type(QStringLiteral("time"), QStringLiteral("23:15"));
    submit();
    EXPECT_TRUE(isFinished());
    const ClimateSeries& series = *desk().shop()->climate.at(usual.place);
    EXPECT_EQ(series.back().at, here.toInstant(LocalTime{here.today()} + 23h + 15min));
}

TEST_F(Slips, AReadingThatIsUnlikelyIsAskedAboutBeforeItIsWritten) {
    const auto usual = stockUsualShop();
    time().pass(2h);
    const auto before = entries();
    open(SlipName::RecordReading, about(usual.roll));
    type(QStringLiteral("temperature"), QStringLiteral("68"));
    type(QStringLiteral("humidity"), QStringLiteral("44"));
    submit();
    EXPECT_FALSE(isFinished());
    EXPECT_EQ(entries(), before);
    const auto* doubt = find<Banner>(QStringLiteral("unlikelyReading"));
    ASSERT_TRUE(doubt->isVisible());
    EXPECT_TRUE(doubt->accessibleName().contains(QStringLiteral("68 °F would be 20 °C")))
        << doubt->accessibleName().toStdString();
    type(QStringLiteral("temperature"), QStringLiteral("20"));
    EXPECT_FALSE(doubt->isVisible());
    type(QStringLiteral("temperature"), QStringLiteral("52"));
    submit();
    EXPECT_FALSE(isFinished()) << "another number is another question";
    submit();
    EXPECT_TRUE(isFinished()) << "it may be right";
    EXPECT_EQ(desk().shop()->climate.at(usual.place)->back().temperature, Celsius{52});
}

TEST_F(Slips, AReadingIsCorrectedWithItsOwnTime) {
    const auto usual = stockUsualShop();
    time().pass(26h);
    const ClimateReading wrong{now().instant - 1h - 17s, {28}, {44}};
    valueOf(db::recordReading(file(), usual.place, wrong));
    SlipTarget matter;
    matter.place = usual.place;
    matter.at = wrong.at;
    open(SlipName::CorrectReading, matter);
    type(QStringLiteral("temperature"), QStringLiteral("18"));
    submit();
    EXPECT_TRUE(isFinished());
    const auto readings = [&]() -> const ClimateSeries& { return *desk().shop()->climate.at(usual.place); };
    EXPECT_EQ(readings().back(), (ClimateReading{wrong.at, {18}, {44}}));
    open(SlipName::CorrectReading, matter);
    type(QStringLiteral("time"), QStringLiteral("9:00"));
    submit();
    EXPECT_EQ(readings().back().at, now().toInstant(LocalTime{now().today()} + 9h));
    EXPECT_FALSE(open(SlipName::CorrectReading, matter)) << "there is none of that moment any more";
}

TEST_F(Slips, AFirstRollLeadsOverItsFilmAndTheRecipeBackToTheRoll) {
    open(SlipName::ReceiveRoll);
    EXPECT_EQ(slip().title(), QStringLiteral("Add a film"));
    typeText(QStringLiteral("Skerry Glint"));
    type(QStringLiteral("shade"), QStringLiteral("Gorse"));
    type(QStringLiteral("costPerMetre"), QStringLiteral("9"));
    choose(QStringLiteral("follows"), 0);
    submit();
    ASSERT_TRUE(isFinished());
    EXPECT_EQ(asked, std::vector{SlipName::Recipe});
    EXPECT_EQ(askedFor.then, SlipName::ReceiveRoll);
    open(SlipName::Recipe, askedFor);
    type(QStringLiteral("temperature"), QStringLiteral("150"));
    type(QStringLiteral("dwell"), QStringLiteral("12"));
    choose(QStringLiteral("pressure"), 1);
    choose(QStringLiteral("peel"), 1);
    submit();
    ASSERT_TRUE(isFinished());
    EXPECT_EQ(asked, (std::vector{SlipName::Recipe, SlipName::ReceiveRoll}));
    EXPECT_EQ(askedFor.film, facts().films.begin()->id);
}

TEST_F(Slips, FilmIsWrittenDownAndItsRecipeAskedForNext) {
    open(SlipName::AddFilm);
    typeText(QStringLiteral("Skerry Glint"));
    type(QStringLiteral("shade"), QStringLiteral("Gorse"));
    type(QStringLiteral("costPerMetre"), QStringLiteral("9"));
    type(QStringLiteral("shelfLife"), QStringLiteral("365"));
    choose(QStringLiteral("follows"), 0);
    turn(QStringLiteral("notFor-3"));
    turn(QStringLiteral("mayLieUnder"));
    type(QStringLiteral("humidityHigh"), QStringLiteral("55"));
    submit();
    EXPECT_TRUE(isFinished());
    ASSERT_EQ(facts().films.size(), 1U);
    const Film& film = *facts().films.begin();
    EXPECT_EQ(film.name(), "Skerry Glint, Gorse");
    EXPECT_EQ(film.costPerMetre, Money{900});
    EXPECT_EQ(film.shelfLife, Days{365});
    EXPECT_EQ(film.follows, Stretch::None);
    EXPECT_EQ(film.notFor, std::vector{Fibre::Wool});
    EXPECT_FALSE(film.mayLieUnder);
    EXPECT_EQ(film.storage.humidity.high, Humidity{55});
    EXPECT_EQ(film.storage.temperature, StorageLimits{}.temperature);
    EXPECT_FALSE(film.recipe);
    EXPECT_EQ(asked, std::vector{SlipName::Recipe});
}

TEST_F(Slips, RecipeIsEnteredWithEveryNumber) {
    const auto film = addFilm("Oyster", [](Film& each) { each.recipe.reset(); });
    open(SlipName::Recipe, about(film));
    typeText(QStringLiteral("160"));
    press(Qt::Key_Return);
    typeText(QStringLiteral("15"));
    choose(QStringLiteral("pressure"), 2);
    choose(QStringLiteral("peel"), 0);
    type(QStringLiteral("preheat"), QStringLiteral("10"));
    submit();
    EXPECT_TRUE(isFinished());
    const auto& recipe = facts().films.at(film).recipe;
    ASSERT_TRUE(recipe);
    Recipe expected;
    expected.temperature = 160_C;
    expected.dwell = 15s;
    expected.pressure = Pressure::Firm;
    expected.peel = Peel::Hot;
    expected.preheat = 10s;
    EXPECT_EQ(*recipe, expected);
    EXPECT_FALSE(recipe->isConfirmed());
}

TEST_F(Slips, RecipeIsConfirmedByName) {
    const auto film = addFilm("Oyster", [](Film& each) { each.recipe->confirmedBy.clear(); });
    open(SlipName::Recipe, about(film));
    typeText(QStringLiteral("Odile, the sheet of May"));
    press(Qt::Key_Return);
    EXPECT_TRUE(isFinished());
    EXPECT_EQ(facts().films.at(film).recipe->confirmedBy, "Odile, the sheet of May");
}

TEST_F(Slips, ChangedNumberTakesTheConfirmationAway) {
    const auto film = addFilm("Oyster");
    open(SlipName::Recipe, about(film));
    type(QStringLiteral("dwell"), QStringLiteral("14"));
    submit();
    EXPECT_TRUE(isFinished());
    EXPECT_EQ(facts().films.at(film).recipe->dwell, 14s);
    EXPECT_FALSE(facts().films.at(film).recipe->isConfirmed());
}

TEST_F(Slips, DecalGetsTheFilmThatSuits) {
    const auto usual = stockUsualShop();
    addFilm("Wool only", [](Film& each) { each.notFor = {Fibre::Cotton}; });
    const auto moss = addFilm("Moss");
    receiveRoll(moss, usual.place);
    const auto garment = garmentsOf(takeOrder({aGarment(usual)}).id).front();
    open(SlipName::ChangeFilm, about(garment));
    const auto* films = find<OptionList>(QStringLiteral("film"));
    const auto* model = static_cast<const OptionModel*>(films->model());
    EXPECT_EQ(model->option(model->rowCount() - 1).tone, Tone::Held) << "what does not suit stands last";
    press(Qt::Key_Return);
    EXPECT_TRUE(isFinished());
    EXPECT_EQ(facts().garments.at(garment).decals[0].film, moss);
}

// ── presses ──

TEST_F(Slips, PressIsSetUp) {
    open(SlipName::AddPress);
    for (const char* typed : {"Bench press", "400", "380"}) {
        typeText(QString::fromLatin1(typed));
        press(Qt::Key_Return);
    }
    submit();
    EXPECT_TRUE(isFinished());
    ASSERT_EQ(facts().presses.size(), 1U);
    EXPECT_EQ(facts().presses.begin()->platenWidth, 400_mm);
    EXPECT_EQ(facts().presses.begin()->platenHeight, 380_mm);
    EXPECT_EQ(facts().presses.begin()->checkEvery, Press{}.checkEvery);
}

TEST_F(Slips, PressIsCheckedAtNineSpots) {
    const auto usual = stockUsualShop();
    time().pass(24h);
    SlipTarget matter;
    matter.press = usual.press;
    open(SlipName::CheckPress, matter);
    for (int spot = 0; spot < 9; ++spot) {
        typeText(QString::number(149 + spot % 3));
        press(Qt::Key_Return);
    }
    EXPECT_TRUE(isFinished());
    const PressCheck* check = facts().lastCheck(usual.press);
    EXPECT_EQ(check->at, now().instant);
    EXPECT_EQ(check->set, 150_C);
    EXPECT_EQ(check->readings.size(), 9U);
    EXPECT_EQ(check->by, "the maker");
}

} // namespace
} // namespace holdfast::app::test
