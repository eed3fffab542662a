// SPDX-License-Identifier: GPL-3.0-or-later
// Styles, films, presses and storage places live on: changed, copied, retired; deliveries as a grid.
#include "app/places/fair_table/film_offer.h"
#include "app/slips/blank_pick.h"
#include "app/slips/option_list.h"
#include "app/widgets/button.h"
#include "app/widgets/field.h"
#include "app/widgets/label.h"
#include "db/actions/blank_actions.h"
#include "db/actions/film_actions.h"
#include "db/actions/press_actions.h"
#include "tests/app/slips_fixture.h"

#include <QApplication>
#include <QLineEdit>
#include <QTest>

#include <algorithm>

namespace holdfast::app::test {

namespace {

class StockSlips : public SlipsFixture {
protected:
    const ShopFacts& facts() { return desk().shop()->facts; }
    static SlipTarget about(BlankStyleId style) {
        SlipTarget matter;
        matter.style = style;
        return matter;
    }
    static SlipTarget about(FilmId film) {
        SlipTarget matter;
        matter.film = film;
        return matter;
    }
    std::string lastTitle() { return file().recent(1).front().title.english(); }
    QString keyboardAt() {
        return QApplication::focusWidget() ? QApplication::focusWidget()->objectName() : QString();
    }
};

TEST_F(StockSlips, ACostIsChangedWithAFewKeys) {
    const auto usual = stockUsualShop();
    open(SlipName::ChangeStyle, about(usual.style));
    typeText(QStringLiteral("5.20")); // the keyboard is in the cost, which is selected
    submit();
    EXPECT_TRUE(isFinished());
    EXPECT_EQ(facts().styles.at(usual.style).cost, Money{520});
    EXPECT_TRUE(lastTitle().starts_with("Blank style Tee changed: cost: £5.20 (was ")) << lastTitle();
    EXPECT_TRUE(asked.empty());
}

TEST_F(StockSlips, TheFormHasTheStyleInItAndSavedAsItIsChangesNothing) {
    const auto usual = stockUsualShop();
    const auto count = entries();
    const BlankStyle before = facts().styles.at(usual.style);
    open(SlipName::ChangeStyle, about(usual.style));
    EXPECT_EQ(find<Field>(QStringLiteral("name"))->text(), QStringLiteral("Tee"));
    EXPECT_EQ(find<Field>(QStringLiteral("sizes"))->text(), QStringLiteral("S, M, L, XL"));
    EXPECT_EQ(find<Field>(QStringLiteral("colour-0"))->text(), QStringLiteral("Moss"));
    submit();
    EXPECT_TRUE(isFinished());
    EXPECT_EQ(entries(), count);
    EXPECT_EQ(facts().styles.at(usual.style).label, before.label);
}

TEST_F(StockSlips, SizesAndColoursAreChangedAndItIsSaidBeforeWhatBecomesOfThem) {
    const auto usual = stockUsualShop();
    open(SlipName::ChangeStyle, about(usual.style));
    const auto* note = find<Label>(QStringLiteral("sizeChanges"));
    EXPECT_FALSE(note->isVisible());
    type(QStringLiteral("sizes"), QStringLiteral("S, Medium, L"));
    EXPECT_EQ(note->text(),
              QStringLiteral("M is called Medium from now on, on the rail and in orders. XL is taken away."));
    type(QStringLiteral("colour-1"), QStringLiteral("Whitewash"));
    find<Button>(QStringLiteral("addColour"))->click();
    typeText(QStringLiteral("Plum"));
    find<Button>(QStringLiteral("retireColour-0"))->click();
    submit();
    EXPECT_TRUE(isFinished());
    const BlankStyle& style = facts().styles.at(usual.style);
    EXPECT_EQ(style.sizes, (std::vector<std::string>{"S", "Medium", "L"}));
    ASSERT_EQ(style.colours.size(), 3U);
    EXPECT_EQ(style.colours[1].id, usual.chalk);
    EXPECT_EQ(style.colours[1].name, "Whitewash");
    EXPECT_TRUE(style.colours[0].isRetired);
    EXPECT_EQ(style.colours[2].name, "Plum");
    EXPECT_EQ(facts().lots.at(usual.washed).size, "Medium");
}

TEST_F(StockSlips, WhatCannotBeIsSaidAtItsPart) {
    const auto usual = stockUsualShop();
    addStyle("Tote");
    const auto count = entries();
    const auto refusedAt = [&](const char* part, const QString& field, const QString& text) {
        open(SlipName::ChangeStyle, about(usual.style));
        type(field, text);
        submit();
        EXPECT_FALSE(isFinished()) << part << ": " << text.toStdString();
        EXPECT_FALSE(errorAt(part).isEmpty()) << part << ": " << text.toStdString();
    };
    refusedAt("name", QStringLiteral("name"), QStringLiteral("TOTE"));
    refusedAt("name", QStringLiteral("name"), {});
    refusedAt("sizes", QStringLiteral("sizes"), QStringLiteral("S, L"));
    refusedAt("sizes", QStringLiteral("sizes"), QStringLiteral(", ;"));
    refusedAt("cost", QStringLiteral("cost"), QStringLiteral("cheap"));
    refusedAt("weight", QStringLiteral("weight"), QStringLiteral("0"));
    refusedAt("colours", QStringLiteral("colour-1"), QStringLiteral("Moss"));
    open(SlipName::ChangeStyle, about(usual.style));
    find<Button>(QStringLiteral("removeColour-0"))->click();
    submit();
    EXPECT_FALSE(errorAt("colours").isEmpty()) << "blanks hang in Moss";
    EXPECT_EQ(entries(), count);
}

TEST_F(StockSlips, AFormOfAStyleThatWasLeftKeepsWhatWasTypedInItsColours) {
    const auto usual = stockUsualShop();
    open(SlipName::ChangeStyle, about(usual.style));
    type(QStringLiteral("colour-1"), QStringLiteral("Whitewash"));
    find<Button>(QStringLiteral("retireColour-0"))->click();
    const QVariantMap typed = slip().typed();
    open(SlipName::ChangeStyle, about(usual.style));
    slip().putBack(typed);
    submit();
    const BlankStyle& style = facts().styles.at(usual.style);
    EXPECT_TRUE(style.colours[0].isRetired);
    EXPECT_EQ(style.colours[1].id, usual.chalk);
    EXPECT_EQ(style.colours[1].name, "Whitewash");
}

TEST_F(StockSlips, AStyleLikeAnotherNeedsItsNameOnly) {
    const auto usual = stockUsualShop();
    open(SlipName::CopyStyle, about(usual.style));
    typeText(QStringLiteral("Tee, heavy"));
    press(Qt::Key_Return);
    EXPECT_TRUE(isFinished());
    ASSERT_EQ(facts().styles.size(), 2U);
    const BlankStyle& tee = facts().styles.at(usual.style);
    const auto copy = std::ranges::find(facts().styles, "Tee, heavy", &BlankStyle::name);
    ASSERT_NE(copy, facts().styles.end());
    EXPECT_EQ(copy->sizes, tee.sizes);
    EXPECT_EQ(copy->cost, tee.cost);
    EXPECT_EQ(copy->label, tee.label);
    EXPECT_EQ(copy->colours.size(), tee.colours.size());
    EXPECT_NE(copy->colours[0].id, tee.colours[0].id);
    EXPECT_TRUE(asked.empty()) << "its label is read already";
}

TEST_F(StockSlips, TheNextShadeNeedsItsNameAndItsColour) {
    const auto usual = stockUsualShop();
    const auto count = entries();
    open(SlipName::NextShade, about(usual.film));
    typeText(QStringLiteral("Gorse"));
    press(Qt::Key_Return);
    EXPECT_FALSE(isFinished()) << "no colour yet";
    auto* code = find<Field>(QStringLiteral("shadeCode"))->editor();
    code->setFocus();
    code->selectAll();
    typeText(QStringLiteral("d8a013"));
    press(Qt::Key_Return);
    EXPECT_TRUE(isFinished());
    EXPECT_EQ(entries(), count + 1);
    const Film& dusk = facts().films.at(usual.film);
    const auto gorse = std::ranges::find(facts().films, "Gorse", &Film::shade);
    ASSERT_NE(gorse, facts().films.end());
    EXPECT_EQ(gorse->rgb, 0xd8a013U);
    EXPECT_EQ(gorse->finish, dusk.finish);
    EXPECT_EQ(gorse->recipe, dusk.recipe);
    EXPECT_EQ(gorse->costPerMetre, dusk.costPerMetre);
    EXPECT_EQ(gorse->storage, dusk.storage);
    EXPECT_TRUE(asked.empty()) << "its recipe is there";
    open(SlipName::NextShade, about(usual.film));
    typeText(QStringLiteral("GORSE"));
    code = find<Field>(QStringLiteral("shadeCode"))->editor();
    code->setFocus();
    code->selectAll();
    typeText(QStringLiteral("d8a013"));
    submit();
    EXPECT_FALSE(errorAt("shade").isEmpty());
}

TEST_F(StockSlips, RetiredIsNotOfferedForNewWorkAndStaysInUse) {
    const auto usual = stockUsualShop();
    const auto other = addStyle("Tote");
    const auto film = addFilm("Oyster");
    const auto taken = takeOrder({aGarment(usual)});
    open(SlipName::ChangeStyle, about(usual.style));
    turn(QStringLiteral("retired"));
    submit();
    EXPECT_TRUE(facts().styles.at(usual.style).isRetired);
    EXPECT_NE(lastTitle().find("retired, 10 blanks left"), std::string::npos) << lastTitle();
    open(SlipName::FilmSheet, about(usual.film));
    turn(QStringLiteral("retired"));
    submit();
    EXPECT_TRUE(facts().films.at(usual.film).isRetired);

    open(SlipName::ReceiveBlanks, about(usual.style));
    EXPECT_EQ(find<PickList>(QStringLiteral("style"))->count(), 1) << "the tote alone";
    open(SlipName::ReceiveRoll, about(usual.film));
    EXPECT_EQ(find<PickList>(QStringLiteral("film"))->count(), 1);
    const auto offers = filmOffers(*desk().shop(), nullptr, nullptr);
    ASSERT_EQ(offers.size(), 1U);
    EXPECT_EQ(offers[0].film->id, film);
    DecalDraft decal;
    decal.film = usual.film;
    EXPECT_EQ(filmOffers(*desk().shop(), nullptr, &decal).size(), 2U) << "a decal that has it keeps it";
    SlipTarget garment;
    garment.garment = garmentsOf(taken.id).front();
    open(SlipName::ChangeBlank, garment);
    EXPECT_EQ(find<PickList>(QStringLiteral("style"))->count(), 2) << "its own and the tote";
    EXPECT_NE(facts().styles.find(other), nullptr);

    open(SlipName::ChangeStyle, about(usual.style));
    turn(QStringLiteral("retired"));
    submit();
    EXPECT_FALSE(facts().styles.at(usual.style).isRetired);
}

TEST_F(StockSlips, AStoragePlaceIsNamedOtherwiseAndRetired) {
    const auto usual = stockUsualShop();
    const auto loft = addPlace("Loft shelf");
    SlipTarget matter;
    matter.place = loft;
    open(SlipName::ChangePlace, matter);
    typeText(QStringLiteral("Loft, north side"));
    turn(QStringLiteral("retired"));
    submit();
    EXPECT_TRUE(isFinished());
    EXPECT_EQ(facts().places.at(loft).name, "Loft, north side");
    EXPECT_TRUE(facts().places.at(loft).isRetired);
    open(SlipName::ReceiveRoll);
    EXPECT_EQ(find<PickList>(QStringLiteral("place"))->count(), 2) << "the shelf, and a new one";
    open(SlipName::RecordReading);
    EXPECT_EQ(find<PickList>(QStringLiteral("place"))->count(), 2);
    matter.place = usual.place;
    open(SlipName::ChangePlace, matter);
    type(QStringLiteral("name"), QStringLiteral("LOFT, north side"));
    submit();
    EXPECT_FALSE(errorAt("name").isEmpty());
    type(QStringLiteral("name"), {});
    submit();
    EXPECT_FALSE(errorAt("name").isEmpty());
}

TEST_F(StockSlips, APressIsRetired) {
    const auto usual = stockUsualShop();
    SlipTarget matter;
    matter.press = usual.press;
    open(SlipName::ChangePress, matter);
    turn(QStringLiteral("retired"));
    submit();
    EXPECT_TRUE(facts().presses.at(usual.press).isRetired);
    open(SlipName::CheckPress);
    EXPECT_EQ(slip().title(), QStringLiteral("Add a press")) << "none is in use";
}

// Four sizes in two colours and six, walked by the keys alone.
TEST_F(StockSlips, ADeliveryIsOneFormOfAllSizesAndColours) {
    const auto style = addStyle("Apron", [](BlankStyle& each) {
        each.sizes = {"S", "M", "L", "XL"};
        each.colours = {{{}, "Moss", 0x66754c}, {{}, "Chalk", 0xe8e4d8}, {{}, "Ink", 0x20304f},
                        {{}, "Plum", 0x602040}, {{}, "Oat", 0xe0d8c0},   {{}, "Slate", 0x606870}};
    });
    const auto count = entries();
    open(SlipName::ReceiveBlanks, about(style));
    int keys = 0;
    for (int cell = 0; cell < 24; ++cell) {
        const QString units = QString::number(10 + cell);
        typeText(units);
        keys += static_cast<int>(units.size());
        if (cell < 23) {
            press(Qt::Key_Return);
            ++keys;
        }
    }
    submit();
    EXPECT_EQ(keys + 1, 24 * 2 + 23 + 1);
    EXPECT_TRUE(isFinished());
    EXPECT_EQ(entries(), count + 1);
    std::int64_t all = 0;
    for (const BlankLot& lot : facts().lots)
        all += lot.unitsLeft;
    EXPECT_EQ(facts().lots.size(), 24U);
    EXPECT_EQ(all, (10 + 33) * 12);
    ASSERT_TRUE(file().undo(file().recent(1).front().id).ok());
    EXPECT_TRUE(facts().lots.empty());
}

TEST_F(StockSlips, ArrowsGoFromCellToCell) {
    const auto usual = stockUsualShop();
    SlipTarget matter = about(usual.style);
    matter.size = QStringLiteral("L");
    matter.colour = usual.moss;
    open(SlipName::ReceiveBlanks, matter);
    EXPECT_EQ(keyboardAt(), QStringLiteral("units-0-2Editor"));
    press(Qt::Key_Left);
    EXPECT_EQ(keyboardAt(), QStringLiteral("units-0-1Editor"));
    press(Qt::Key_Down);
    EXPECT_EQ(keyboardAt(), QStringLiteral("units-1-1Editor"));
    typeText(QStringLiteral("12"));
    press(Qt::Key_Left); // within the number
    EXPECT_EQ(keyboardAt(), QStringLiteral("units-1-1Editor"));
    press(Qt::Key_End);
    press(Qt::Key_Right);
    EXPECT_EQ(keyboardAt(), QStringLiteral("units-1-2Editor"));
    press(Qt::Key_Up);
    EXPECT_EQ(keyboardAt(), QStringLiteral("units-0-2Editor"));
    press(Qt::Key_Tab);
    EXPECT_EQ(keyboardAt(), QStringLiteral("units-0-3Editor"));
    EXPECT_EQ(find<Label>(QStringLiteral("unitsSums"))->text(), QStringLiteral("12 blanks. M: 12"));
}

TEST_F(StockSlips, WrongCellsAreNamedAndTheFirstGetsTheKeyboard) {
    const auto usual = stockUsualShop();
    const auto count = entries();
    open(SlipName::ReceiveBlanks, about(usual.style));
    type(QStringLiteral("units-0-0"), QStringLiteral("4"));
    type(QStringLiteral("units-0-1"), QStringLiteral("many"));
    type(QStringLiteral("units-1-3"), QStringLiteral("5001"));
    submit();
    EXPECT_FALSE(isFinished());
    EXPECT_EQ(errorAt("units"), QStringLiteral("M in Moss: 1 to 5000. XL in Chalk: 1 to 5000."));
    EXPECT_EQ(keyboardAt(), QStringLiteral("units-0-1Editor"));
    EXPECT_EQ(entries(), count);
}

} // namespace
} // namespace holdfast::app::test
