// SPDX-License-Identifier: GPL-3.0-or-later
// What is done with the bench: decals are marked as cut, and those cut wrong wait again.
#include "app/slips/option_list.h"
#include "app/widgets/switch.h"
#include "db/actions/film_actions.h"
#include "tests/app/cutting_bench_fixture.h"
#include "tests/app/slips_fixture.h"

#include <cctype>

namespace holdfast::app::test {

namespace {

class CuttingBenchActs : public CuttingBenchFixture {
protected:
    // By an action that changes nothing of it.
    void reckonAfresh() { valueOf(db::addPlace(file(), "Attic")); }
};
class MiscutSlip : public SlipsFixture {};

} // namespace

TEST_F(CuttingBenchActs, MarkCutChargesTheRollMovesTheGarmentsOnAndTurnsToTheNextFilm) {
    const UsualShop usual = stockUsualShop();
    const FilmId gorse = addFilm("Gorse");
    receiveRoll(gorse, usual.place);
    const auto taken = takeOrder({aGarment(usual), aGarment(usual)});
    GarmentDraft other = aGarment(usual);
    other.decals.front().film = gorse;
    takeOrder({other}, "Teodor Wick");
    open();
    ASSERT_EQ(model().film()->film, usual.film);
    for (const GarmentId garment : garmentsOf(taken.id))
        EXPECT_EQ(stageOf(garment), Stage::ToCut);
    key(Qt::Key_C);
    EXPECT_EQ(refused.toStdString(), "");
    EXPECT_EQ(roll(usual.roll).left, 5000_mm - 288_mm);
    for (const GarmentId garment : garmentsOf(taken.id))
        EXPECT_EQ(stageOf(garment), Stage::ToPress);
    ASSERT_NE(model().film(), nullptr);
    EXPECT_EQ(model().film()->film, gorse);
    EXPECT_TRUE(bench()->hasFocus());
    // Taken back, it lies on the bench again.
    const auto last = file().lastUndoable();
    ASSERT_TRUE(last.has_value());
    ASSERT_TRUE(file().undo(last->id).ok());
    EXPECT_EQ(roll(usual.roll).left, 5000_mm);
    EXPECT_EQ(model().films().size(), 2U);
}

// More than a moment's work: written beside the window, while the bench stands, and once only.
TEST_F(CuttingBenchActs, ManyDecalsAreMarkedBesideTheWindow) {
    const UsualShop usual = stockUsualShop();
    receiveRoll(usual.film, usual.place, 30'000_mm);
    std::vector<OrderId> orders;
    for (int order = 0; order < 6; ++order)
        orders.push_back(takeOrder(std::vector<GarmentDraft>(50, withDecal(usual, 60_mm, 70_mm))).id);
    const FilmId gorse = addFilm("Gorse");
    receiveRoll(gorse, usual.place);
    GarmentDraft other = aGarment(usual);
    other.decals.front().film = gorse;
    takeOrder({other}, "Teodor Wick");
    open();
    SlipTarget matter;
    matter.film = usual.film;
    place->turnTo(matter);
    std::size_t lying = 0;
    Millimetres length;
    std::vector<RollId> charged;
    for (const Nest& each : model().nests()) {
        lying += each.decals.size();
        length += each.length;
        charged.push_back(each.roll);
    }
    ASSERT_EQ(lying, 300U);
    const auto left = [&] {
        Millimetres sum;
        for (const RollId each : charged)
            sum += roll(each).left;
        return sum;
    };
    const Millimetres before = left();
    key(Qt::Key_C);
    EXPECT_TRUE(place->isWriting());
    EXPECT_EQ(left(), before) << "it was written before the key came back";
    key(Qt::Key_C);
    waitForWriting();
    EXPECT_EQ(refused.toStdString(), "");
    EXPECT_TRUE(said.startsWith(QStringLiteral("Cut "))) << said.toStdString();
    for (const OrderId order : orders)
        for (const GarmentId garment : garmentsOf(order))
            EXPECT_TRUE(desk().shop()->facts.garments.at(garment).decals.front().isCut());
    EXPECT_EQ(left(), before - length);
    ASSERT_NE(model().film(), nullptr);
    EXPECT_EQ(model().film()->film, gorse);
    EXPECT_TRUE(bench()->hasFocus());
    // What the desk was handed is what it reckons itself.
    const auto handed = desk().shop();
    reckonAfresh();
    EXPECT_EQ(desk().shop()->allotment.rollOf, handed->allotment.rollOf);
    EXPECT_EQ(desk().shop()->plan.order, handed->plan.order);
    valueOf(file().undo(file().lastUndoable()->id));
    for (std::size_t taken = 0; taken < charged.size(); ++taken)
        valueOf(file().undo(file().lastUndoable()->id));
    EXPECT_EQ(left(), before);
}

TEST_F(CuttingBenchActs, WhatIsLeftOutStaysUncutAndIsNotCharged) {
    const UsualShop usual = stockUsualShop();
    const auto taken = takeOrder({aGarment(usual), aGarment(usual), aGarment(usual)});
    open();
    const DecalId out = *model().chosen();
    key(Qt::Key_Delete);
    key(Qt::Key_C);
    EXPECT_EQ(roll(usual.roll).left, 5000_mm - 288_mm);
    int uncut = 0;
    for (const GarmentId garment : garmentsOf(taken.id)) {
        const Decal& decal = desk().shop()->facts.garments.at(garment).decals.front();
        EXPECT_EQ(decal.isCut(), decal.id != out);
        uncut += decal.isCut() ? 0 : 1;
    }
    EXPECT_EQ(uncut, 1);
}

TEST_F(CuttingBenchActs, CutItTurnsToTheNextFilmThatHasSomethingToLay) {
    const UsualShop usual = stockUsualShop();
    takeOrder({aGarment(usual), aGarment(usual)});
    const FilmId withoutRoll = addFilm("Gorse");
    const FilmId withRoll = addFilm("Bracken");
    receiveRoll(withRoll, usual.place);
    for (const FilmId film : {withoutRoll, withRoll}) {
        GarmentDraft garment = aGarment(usual);
        garment.decals.front().film = film;
        takeOrder({garment}, "Teodor Wick");
    }
    open();
    SlipTarget matter;
    matter.film = usual.film;
    place->turnTo(matter);
    bench()->setFocus();
    key(Qt::Key_Delete); // what is left out keeps its film here
    key(Qt::Key_C);
    EXPECT_EQ(model().films().size(), 3U);
    EXPECT_EQ(model().film()->film, withRoll);
    EXPECT_EQ(nest().decals.size(), 1U);
}

TEST_F(CuttingBenchActs, TwoRollsAreTwoActionsEachChargedWithItsOwn) {
    const UsualShop usual = stockUsualShop();
    const RollId second = receiveRoll(usual.film, usual.place);
    valueOf(db::correctLength(file(), usual.roll, 300_mm, "measured anew"));
    takeOrder({aGarment(usual), aGarment(usual), aGarment(usual)});
    open();
    cutFirstFrom(usual.roll);
    ASSERT_EQ(model().nests().size(), 2U);
    const Millimetres onSecond = nest(1).length;
    bench()->setFocus(); // C looks for a roll while the list has the keyboard
    key(Qt::Key_C);
    EXPECT_EQ(roll(usual.roll).left, 300_mm - 288_mm);
    EXPECT_EQ(roll(second).left, 5000_mm - onSecond);
    EXPECT_EQ(model().film(), nullptr);
}

TEST_F(CuttingBenchActs, OffcutsWorthKeepingBecomeRollsUnlessTheyAreThrownAway) {
    const UsualShop usual = stockUsualShop();
    const auto rolls = [&] { return desk().shop()->facts.rolls.size(); };
    takeOrder({aGarment(usual)});
    open();
    ASSERT_EQ(rows("offcuts")->rows().size(), static_cast<qsizetype>(nest().offcuts.size()));
    ASSERT_FALSE(nest().offcuts.empty());
    const FilmArea offcut = nest().offcuts.front();
    const std::size_t kept = nest().offcuts.size();
    key(Qt::Key_C);
    EXPECT_EQ(refused.toStdString(), "");
    ASSERT_EQ(rolls(), 1 + kept);
    const auto isIt = [&](const FilmRoll& each) {
        return each.id != usual.roll && each.film == usual.film && each.width == offcut.acrossSize &&
               each.left == offcut.alongSize;
    };
    EXPECT_EQ(std::ranges::count_if(desk().shop()->facts.rolls, isIt), 1);

    takeOrder({withDecal(usual, 300_mm, 350_mm)}, "Teodor Wick");
    ASSERT_EQ(nest().roll, usual.roll);
    for (int at = 0; at < static_cast<int>(nest().offcuts.size()); ++at)
        part<Switch>(QStringLiteral("offcuts-%1").arg(at))->click();
    key(Qt::Key_C);
    EXPECT_EQ(rolls(), 1 + kept);
}

TEST_F(CuttingBenchActs, WhatIsCutAndNotPressedMayBeFoundCutWrong) {
    const UsualShop usual = stockUsualShop();
    const auto taken = takeOrder({aGarment(usual), aGarment(usual)});
    open();
    key(Qt::Key_C);
    // Nothing waits any more, and still they can be told.
    ASSERT_EQ(model().film(), nullptr);
    auto* decals = part<OptionList>(QStringLiteral("cutDecals"));
    ASSERT_EQ(decals->model()->rowCount(), 2);
    EXPECT_TRUE(decals->isVisible());
    EXPECT_TRUE(decals->model()
                    ->index(0, 0)
                    .data(Qt::AccessibleDescriptionRole)
                    .toString()
                    .contains(QStringLiteral("from R-01, today")));
    EXPECT_FALSE(button("markMiscut")->isEnabled()) << "none is chosen";
    decals->setFocus();
    key(Qt::Key_Down);
    button("markMiscut")->click();
    ASSERT_EQ(asked.size(), 1U);
    EXPECT_EQ(asked.front(), SlipName::Miscut);
    ASSERT_TRUE(askedFor.decal.has_value());
    valueOf(db::markMiscut(file(), *askedFor.decal, "not mirrored"));
    EXPECT_EQ(decals->model()->rowCount(), 1);
    ASSERT_NE(model().film(), nullptr);
    EXPECT_NE(nest().find(*askedFor.decal), nullptr);
    EXPECT_EQ(garmentsOf(taken.id).size(), 2U);
}

TEST_F(CuttingBenchActs, EveryOneOfManyThatAreCutIsFoundByTypingAndMarkedMiscut) {
    const UsualShop usual = stockUsualShop();
    std::vector<GarmentDraft> garments;
    for (int at = 0; at < 20; ++at)
        garments.push_back(withDecal(usual, {60 + at}, 45_mm));
    takeOrder(garments);
    open();
    key(Qt::Key_C);
    auto* decals = part<OptionList>(QStringLiteral("cutDecals"));
    ASSERT_EQ(decals->model()->rowCount(), 20);
    const QString last = decals->model()->index(19, 0).data().toString();
    decals->setFocus();
    // Letters and digits belong to the list: none of them nests, turns, pins or cuts.
    const auto entries = file().recent(50).size();
    for (const QChar letter : last.left(last.indexOf(u' ')))
        QTest::keyClick(decals, letter.toLatin1());
    EXPECT_EQ(decals->currentIndex().data().toString(), last);
    EXPECT_EQ(file().recent(50).size(), entries);
    QTest::keyClick(decals, Qt::Key_Return);
    ASSERT_EQ(asked.size(), 1U);
    EXPECT_EQ(asked.front(), SlipName::Miscut);
    EXPECT_EQ(decalTitle(model().facts(), model().decal(*askedFor.decal)), last);
}

TEST_F(CuttingBenchActs, LettersInAListAreNobodysKey) {
    const UsualShop usual = stockUsualShop();
    time().pass(48h);
    receiveRoll(usual.film, usual.place);
    takeOrder({aGarment(usual), aGarment(usual)});
    open();
    waitForSearch();
    key(Qt::Key_L);
    ASSERT_TRUE(part<OptionList>(QStringLiteral("rolls"))->hasFocus());
    const std::vector<NestedDecal> before = nest().decals;
    for (const char letter : std::string("cnrpswe"))
        key(static_cast<Qt::Key>(std::toupper(letter)));
    EXPECT_TRUE(part<OptionList>(QStringLiteral("rolls"))->hasFocus());
    EXPECT_EQ(nest().decals.size(), before.size());
    EXPECT_EQ(nest().decals.front().lies, before.front().lies);
    EXPECT_FALSE(nest().decals.front().isPinned);
    EXPECT_EQ(sentence()->words().toStdString(), "Cut mirrored, a frame round each decal, parted at 288 mm.");
    EXPECT_EQ(roll(usual.roll).left, 5000_mm);
}

TEST_F(CuttingBenchActs, WhatIsOnThePressIsNoLongerAMiscut) {
    const UsualShop usual = stockUsualShop();
    const auto taken = takeOrder({aGarment(usual)});
    cut(garmentsOf(taken.id).front(), usual.roll);
    press(garmentsOf(taken.id).front());
    open();
    EXPECT_EQ(part<OptionList>(QStringLiteral("cutDecals"))->model()->rowCount(), 0);
    EXPECT_FALSE(part<QWidget>(QStringLiteral("cutNotPressed"))->isVisible());
}

// ── the slip ──────────────────────────────────────────────────────────────────────────────────────────

TEST_F(MiscutSlip, GivesTheDecalBackWithItsReason) {
    const UsualShop usual = stockUsualShop();
    const auto taken = takeOrder({aGarment(usual)});
    const GarmentId garment = garmentsOf(taken.id).front();
    cut(garment, usual.roll);
    SlipTarget matter;
    matter.garment = garment;
    matter.decal = desk().shop()->facts.garments.at(garment).decals.front().id;
    ASSERT_NE(open(SlipName::Miscut, matter), nullptr);
    submit();
    EXPECT_FALSE(isFinished());
    EXPECT_FALSE(errorAt("kind").isEmpty());
    choose(QStringLiteral("kind"), 3);
    type(QStringLiteral("reason"), QStringLiteral("the blade was blunt"));
    submit();
    EXPECT_TRUE(isFinished());
    EXPECT_FALSE(desk().shop()->facts.garments.at(garment).decals.front().isCut());
    EXPECT_EQ(stageOf(garment), Stage::ToCut);
    EXPECT_NE(file().recent(1).front().title.english().find("torn while weeding: the blade was blunt"),
              std::string::npos)
        << file().recent(1).front().title;
}

TEST_F(MiscutSlip, IsNotMadeForADecalThatIsNotCut) {
    const UsualShop usual = stockUsualShop();
    const auto taken = takeOrder({aGarment(usual)});
    SlipTarget matter;
    matter.garment = garmentsOf(taken.id).front();
    matter.decal = desk().shop()->facts.garments.at(*matter.garment).decals.front().id;
    EXPECT_EQ(open(SlipName::Miscut, matter), nullptr);
}

} // namespace holdfast::app::test
