// SPDX-License-Identifier: GPL-3.0-or-later
// What is wrong is said at its field, in words, and nothing is written.
#include "tests/app/slips_fixture.h"

#include "app/widgets/button.h"
#include "db/actions/blank_actions.h"
#include "db/actions/film_actions.h"
#include "db/actions/press_actions.h"

#include <QApplication>
#include <QLineEdit>

namespace holdfast::app::test {
namespace {

const QString kHuge = QStringLiteral("999999999999999999999999");
const QString kWords = QStringLiteral("zwölf ☂");
const QString kLong(501, QChar(0xe4));

class SlipRefusals : public SlipsFixture {
protected:
    SlipRefusals()
        : usual(stockUsualShop()) {
        hoodie = addStyle("Zip hoodie", [](BlankStyle& each) {
            each.label.reset();
            each.obstacles = {{Obstacle::Zip, {}}};
        });
        auto draft = anOrder({aGarment(usual, "L")});
        draft.isConfirmed = false;
        order = valueOf(db::takeOrder(file(), draft, now())).id;
        garment = garmentsOf(order).front();
    }

    SlipTarget everything() {
        SlipTarget matter;
        matter.order = order;
        matter.garment = garment;
        matter.style = hoodie;
        matter.lot = usual.washed;
        matter.roll = usual.roll;
        matter.film = usual.film;
        matter.press = usual.press;
        matter.place = usual.place;
        return matter;
    }

    // Each of these in the field, and everything else as the slip offers it or `fill` puts it.
    void expectRefused(SlipName name, const QString& field, const QStringList& bad,
                       const std::function<void()>& fill = {}) {
        expectRefused(name, field, field.toStdString(), bad, fill);
    }
    void expectRefused(SlipName name, const QString& field, const std::string& part, const QStringList& bad,
                       const std::function<void()>& fill = {}) {
        for (const QString& text : bad) {
            SCOPED_TRACE((field + QStringLiteral(": “") + text.left(30) + QStringLiteral("”")).toStdString());
            ASSERT_TRUE(open(name, everything()));
            if (fill)
                fill();
            type(field, text);
            const auto count = entries();
            submit();
            EXPECT_FALSE(isFinished());
            EXPECT_EQ(entries(), count);
            EXPECT_FALSE(errorAt(part).isEmpty());
            EXPECT_TRUE(slip().isAncestorOf(QApplication::focusWidget()));
            // The words go as soon as something else is typed.
            type(field, QStringLiteral("5"));
            EXPECT_EQ(errorAt(part), QString());
        }
    }

    UsualShop usual;
    BlankStyleId hoodie;
    OrderId order;
    GarmentId garment;
};

TEST_F(SlipRefusals, LabelWhoseFibresDoNotAddUp) {
    expectRefused(SlipName::ReadLabel, QStringLiteral("share-0"), "fibres",
                  {{},
                   QStringLiteral("-3"),
                   QStringLiteral("0"),
                   QStringLiteral("99"),
                   QStringLiteral("101"),
                   kHuge,
                   kWords});
    expectRefused(SlipName::ReadLabel, QStringLiteral("highestSafe"),
                  {QStringLiteral("-10"), QStringLiteral("59"), QStringLiteral("261"), kHuge, kWords},
                  [this] { type(QStringLiteral("share-0"), QStringLiteral("100")); });
}

TEST_F(SlipRefusals, LabelThatNamesAFibreTwice) {
    ASSERT_TRUE(open(SlipName::ReadLabel, everything()));
    type(QStringLiteral("share-0"), QStringLiteral("50"));
    find<Button>(QStringLiteral("addFibre"))->click();
    choose(QStringLiteral("fibre-1"), 0);
    submit();
    EXPECT_FALSE(isFinished());
    EXPECT_TRUE(errorAt("fibres").contains(QStringLiteral("twice"))) << errorAt("fibres").toStdString();
}

TEST_F(SlipRefusals, ReasonsThatSayNothing) {
    const QStringList bad{{}, QStringLiteral("x"), QStringLiteral("   "), kLong};
    expectRefused(SlipName::MarkNotPrewashed, QStringLiteral("reason"), bad);
    expectRefused(SlipName::UseUpRoll, QStringLiteral("reason"), bad);
    expectRefused(SlipName::CancelOrder, QStringLiteral("reason"), bad);
    expectRefused(SlipName::Waive, QStringLiteral("reason"), bad);
    expectRefused(SlipName::CorrectCount, QStringLiteral("reason"), bad,
                  [this] { type(QStringLiteral("counted"), QStringLiteral("5")); });
}

TEST_F(SlipRefusals, NoteLongerThanItMayBe) {
    expectRefused(SlipName::OrderNote, QStringLiteral("note"), {QString(501, u'n')});
}

TEST_F(SlipRefusals, NamesThatAreNone) {
    const QStringList bad{{}, QStringLiteral("  "), kLong};
    expectRefused(SlipName::NoteLawChecked, QStringLiteral("who"), bad);
    expectRefused(SlipName::Customer, QStringLiteral("customerName"), bad);
    expectRefused(SlipName::Customer, QStringLiteral("customerPhone"), {kLong});
    expectRefused(SlipName::Recipe, QStringLiteral("confirmedBy"), {kLong});
    expectRefused(SlipName::ConfirmWording, QStringLiteral("how"), {kLong});
}

TEST_F(SlipRefusals, WhatIsNotChosen) {
    const auto count = entries();
    open(SlipName::ReceiveBlanks);
    submit();
    EXPECT_FALSE(errorAt("style").isEmpty());
    open(SlipName::TestStrip, everything());
    submit();
    EXPECT_FALSE(errorAt("passed").isEmpty());
    open(SlipName::ConfirmWording, everything());
    submit();
    EXPECT_FALSE(errorAt("agreed").isEmpty());
    open(SlipName::ChooseWayRound, everything());
    submit();
    EXPECT_FALSE(errorAt("way-0").isEmpty());
    open(SlipName::Spoil, everything());
    submit();
    EXPECT_FALSE(errorAt("kind").isEmpty());
    EXPECT_EQ(entries(), count);
    EXPECT_FALSE(isFinished());
}

TEST_F(SlipRefusals, CountsThatAreNone) {
    expectRefused(SlipName::CorrectCount, QStringLiteral("counted"),
                  {{}, QStringLiteral("-1"), kHuge, kWords},
                  [this] { type(QStringLiteral("reason"), QStringLiteral("counted again")); });
    for (const QString& units :
         {QString(), QStringLiteral("0"), QStringLiteral("-4"), QStringLiteral("5001"), kHuge, kWords}) {
        const auto count = entries();
        open(SlipName::ReceiveBlanks, everything());
        type(QStringLiteral("units-1-0"), units);
        submit();
        EXPECT_FALSE(isFinished()) << units.toStdString();
        EXPECT_FALSE(errorAt("units").isEmpty()) << units.toStdString();
        EXPECT_EQ(entries(), count);
    }
}

TEST_F(SlipRefusals, NewColourWithoutNameOrShadeLeavesNoTrace) {
    const auto colours = coloursOf(hoodie).size();
    expectRefused(SlipName::ReceiveBlanks, QStringLiteral("newColour"), {{}, kLong}, [this] {
        turn(QStringLiteral("hasNewColour"));
        type(QStringLiteral("newUnits-0-0"), QStringLiteral("4"));
    });
    EXPECT_EQ(coloursOf(hoodie).size(), colours);
}

TEST_F(SlipRefusals, MeasuresThatAreNone) {
    const auto others = [this] {
        for (const char* name : {"lengthBefore", "lengthAfter", "widthBefore", "widthAfter"})
            type(QString::fromLatin1(name), QStringLiteral("500"));
    };
    for (const char* name : {"lengthBefore", "lengthAfter", "widthBefore", "widthAfter"})
        expectRefused(SlipName::MeasureShrinkage, QString::fromLatin1(name),
                      {{}, QStringLiteral("9"), QStringLiteral("-5"), QStringLiteral("3001"), kWords},
                      others);
}

TEST_F(SlipRefusals, StyleThatCannotBe) {
    const auto fill = [this] {
        type(QStringLiteral("name"), QStringLiteral("Smock"));
        choose(QStringLiteral("outline"), 0);
        type(QStringLiteral("sizes"), QStringLiteral("S, M"));
        type(QStringLiteral("colour-0"), QStringLiteral("Moss"));
        type(QStringLiteral("weight"), QStringLiteral("200"));
        type(QStringLiteral("cost"), QStringLiteral("4"));
    };
    expectRefused(SlipName::AddStyle, QStringLiteral("name"), {{}, QStringLiteral("tee"), kLong}, fill);
    expectRefused(SlipName::AddStyle, QStringLiteral("sizes"),
                  {{}, QStringLiteral(", ;"), QStringLiteral("S, S")}, fill);
    expectRefused(SlipName::AddStyle, QStringLiteral("colour-0"), "colours", {{}, kLong}, fill);
    expectRefused(SlipName::AddStyle, QStringLiteral("weight"), {{}, QStringLiteral("0"), kHuge, kWords},
                  fill);
    expectRefused(SlipName::AddStyle, QStringLiteral("cost"),
                  {{}, QStringLiteral("-1"), QStringLiteral("1.234"), QStringLiteral("1000000"), kWords},
                  fill);
    EXPECT_EQ(asked, std::vector<SlipName>{});
}

TEST_F(SlipRefusals, RollThatCannotBe) {
    const auto fill = [this] { type(QStringLiteral("length"), QStringLiteral("5")); };
    expectRefused(SlipName::ReceiveRoll, QStringLiteral("length"),
                  {{}, QStringLiteral("0"), QStringLiteral("-5"), QStringLiteral("201"), kWords}, fill);
    expectRefused(SlipName::ReceiveRoll, QStringLiteral("width"),
                  {{}, QStringLiteral("19"), QStringLiteral("2001"), kHuge, kWords}, fill);
    expectRefused(SlipName::ReceiveRoll, QStringLiteral("receivedOn"),
                  {{}, QStringLiteral("2026-11-26"), QStringLiteral("31/2/2026"), kWords}, fill);
    expectRefused(SlipName::ReceiveRoll, QStringLiteral("madeOn"), {QStringLiteral("2026-11-26"), kWords},
                  fill);
    expectRefused(SlipName::ReceiveRoll, QStringLiteral("printedUseBy"),
                  {kWords, QStringLiteral("2200-01-02")}, fill);
}

TEST_F(SlipRefusals, RollWithANewPlaceLeavesNoPlaceBehindWhenItIsRefused) {
    const auto places = desk().shop()->facts.places.size();
    for (const QString& name : {QString(), kLong}) {
        ASSERT_TRUE(open(SlipName::ReceiveRoll, everything()));
        type(QStringLiteral("length"), QStringLiteral("5"));
        choose(QStringLiteral("place"), 1);
        type(QStringLiteral("placeName"), name);
        submit();
        EXPECT_FALSE(errorAt("placeName").isEmpty());
        type(QStringLiteral("placeName"), QStringLiteral("Loft"));
        type(QStringLiteral("length"), {});
        submit();
        EXPECT_FALSE(isFinished());
    }
    EXPECT_EQ(desk().shop()->facts.places.size(), places);
}

TEST_F(SlipRefusals, TestStripLongerThanAllowed) {
    expectRefused(SlipName::TestStrip, QStringLiteral("used"),
                  {{}, QStringLiteral("-1"), QStringLiteral("1001"), kWords},
                  [this] { choose(QStringLiteral("passed"), 0); });
    expectRefused(SlipName::TestStrip, QStringLiteral("note"), {kLong},
                  [this] { choose(QStringLiteral("passed"), 0); });
}

TEST_F(SlipRefusals, ReadingsThatNoRoomHas) {
    const auto fill = [this] {
        time().pass(1min);
        type(QStringLiteral("temperature"), QStringLiteral("19"));
        type(QStringLiteral("humidity"), QStringLiteral("44"));
    };
    expectRefused(SlipName::RecordReading, QStringLiteral("temperature"),
                  {{}, QStringLiteral("-41"), QStringLiteral("81"), QStringLiteral("nan"), kWords}, fill);
    expectRefused(SlipName::RecordReading, QStringLiteral("humidity"),
                  {{}, QStringLiteral("-1"), QStringLiteral("101"), kHuge, kWords}, fill);
}

TEST_F(SlipRefusals, SecondReadingOfOneMomentIsRefusedInWords) {
    ASSERT_TRUE(open(SlipName::RecordReading, everything()));
    type(QStringLiteral("temperature"), QStringLiteral("19"));
    type(QStringLiteral("humidity"), QStringLiteral("44"));
    submit();
    EXPECT_FALSE(isFinished());
    EXPECT_TRUE(errorAt("time").contains(QStringLiteral("already"))) << errorAt("time").toStdString();
}

TEST_F(SlipRefusals, ReadingOfAMomentThatCannotBe) {
    const auto fill = [this] {
        time().pass(1min);
        type(QStringLiteral("temperature"), QStringLiteral("19"));
        type(QStringLiteral("humidity"), QStringLiteral("44"));
    };
    expectRefused(SlipName::RecordReading, QStringLiteral("time"), {{}, QStringLiteral("25:00"), kWords},
                  fill);
    expectRefused(SlipName::RecordReading, QStringLiteral("day"), {{}, kWords}, fill);
    ASSERT_TRUE(open(SlipName::RecordReading, everything()));
    fill();
    type(QStringLiteral("day"), QStringLiteral("yesterday's"));
    submit();
    EXPECT_FALSE(errorAt("day").isEmpty());
}

TEST_F(SlipRefusals, FilmThatCannotBe) {
    const auto fill = [this] {
        type(QStringLiteral("finish"), QStringLiteral("Skerry Glint"));
        type(QStringLiteral("shade"), QStringLiteral("Gorse"));
        type(QStringLiteral("costPerMetre"), QStringLiteral("9"));
    };
    expectRefused(SlipName::AddFilm, QStringLiteral("finish"), {{}, kLong}, fill);
    expectRefused(SlipName::AddFilm, QStringLiteral("shade"), {{}, kLong}, fill);
    for (const char* name : {"rollWidth", "costPerMetre", "humidity", "storage", "allowedOutside",
                             "testStripExtends", "q10", "reference"})
        expectRefused(SlipName::AddFilm, QString::fromLatin1(name),
                      {{}, QStringLiteral("-999"), kHuge, kWords}, fill);
    expectRefused(SlipName::AddFilm, QStringLiteral("shelfLife"),
                  {QStringLiteral("0"), QStringLiteral("-3"), kHuge, kWords}, fill);
    expectRefused(SlipName::AddFilm, QStringLiteral("humidity"), {QStringLiteral("60")},
                  fill); // above its end
    EXPECT_EQ(asked, std::vector<SlipName>{});
}

TEST_F(SlipRefusals, RecipeNumbers) {
    for (const char* name :
         {"temperature", "dwell", "coolBeforePeel", "preheat", "finishFront", "finishBack", "tack"})
        expectRefused(SlipName::Recipe, QString::fromLatin1(name),
                      {{}, QStringLiteral("-1"), QStringLiteral("601"), kHuge, kWords});
}

TEST_F(SlipRefusals, PressThatCannotBe) {
    const auto fill = [this] {
        type(QStringLiteral("name"), QStringLiteral("Second press"));
        type(QStringLiteral("platenWidth"), QStringLiteral("400"));
        type(QStringLiteral("platenHeight"), QStringLiteral("400"));
    };
    expectRefused(SlipName::AddPress, QStringLiteral("name"), {{}, QStringLiteral("bench PRESS"), kLong},
                  fill);
    for (const char* name : {"platenWidth", "platenHeight", "heatsPerMinute", "coolsPerMinute", "tolerance",
                             "evenWithin", "checkEvery"})
        expectRefused(SlipName::AddPress, QString::fromLatin1(name), {{}, QStringLiteral("0"), kHuge, kWords},
                      fill);
}

TEST_F(SlipRefusals, PressCheckThatCannotBe) {
    const auto fill = [this] { type(QStringLiteral("spot-0"), QStringLiteral("150")); };
    expectRefused(SlipName::CheckPress, QStringLiteral("spot-4"), "readings",
                  {QStringLiteral("301"), QStringLiteral("-21"), kWords}, fill);
    expectRefused(SlipName::CheckPress, QStringLiteral("set"), {{}, QStringLiteral("39"), kHuge, kWords},
                  fill);
    expectRefused(SlipName::CheckPress, QStringLiteral("by"), {{}, kLong}, fill);
    expectRefused(SlipName::CheckPress, QStringLiteral("spot-0"), "readings", {{}});
}

TEST_F(SlipRefusals, MoneyThatIsNotOwed) {
    expectRefused(SlipName::TakeMoney, QStringLiteral("amount"),
                  {{},
                   QStringLiteral("0"),
                   QStringLiteral("-5"),
                   QStringLiteral("26.51"),
                   QStringLiteral("1.005"),
                   kHuge,
                   kWords});
    expectRefused(SlipName::TakeMoney, QStringLiteral("amount"), {QStringLiteral("1")},
                  [this] { choose(QStringLiteral("kind"), 2); }); // nothing was paid
}

TEST_F(SlipRefusals, PromisesThatCannotBe) {
    expectRefused(SlipName::MovePromise, QStringLiteral("day"),
                  {{}, QStringLiteral("yesterday"), QStringLiteral("2035-01-01"), kWords});
    expectRefused(SlipName::MovePromise, QStringLiteral("time"),
                  {{}, QStringLiteral("25"), QStringLiteral("9:75"), kWords});
}

TEST_F(SlipRefusals, SettingsOutOfTheirRange) {
    for (const char* name :
         {"currencyDecimals",  "depositPercent", "minuteRate",         "overheadPerGarment",
          "marginPercent",     "pricePoint",     "planMarginPercent",  "washerHolds",
          "washTakes",         "dryingTakes",    "shrinkLimitPercent", "blankLeadTime",
          "filmLeadTime",      "keepingPercent", "decalGap",           "edgeMargin",
          "filmWastePercent",  "restBeforeWash", "betterRest",         "readingsGoStaleAfter",
          "mostOverUnderHeat", "runOutPercent",  "boughtToLast"})
        expectRefused(SlipName::Settings, QString::fromLatin1(name),
                      {{}, QStringLiteral("-1"), kHuge, kWords});
    expectRefused(SlipName::Settings, QStringLiteral("shopName"), {{}, kLong});
    for (const char* name : {"fairName", "collectAt", "whenEdgeLifts"})
        expectRefused(SlipName::Settings, QString::fromLatin1(name), {kLong});
    expectRefused(SlipName::Settings, QStringLiteral("currency"),
                  {{}, QStringLiteral("gbp"), QStringLiteral("GBPX")});
    expectRefused(SlipName::Settings, QStringLiteral("closedDays"), {kWords, QStringLiteral("24/12, 31/2")});
    expectRefused(SlipName::Settings, QStringLiteral("opens-0"), "week", {{}, QStringLiteral("18"), kWords});
    expectRefused(SlipName::Settings, QStringLiteral("betterRest"), {QStringLiteral("12")});
}

TEST_F(SlipRefusals, WhatTheFileRefusesIsSaidAboveTheAction) {
    ASSERT_TRUE(open(SlipName::ChangeFilm, everything()));
    const Film other = *desk().shop()->facts.films.begin();
    std::vector<db::AgreedDecal> agreed;
    for (const Decal& decal : desk().shop()->facts.garments.at(garment).decals)
        agreed.push_back({.decal = decal.id, .wording = std::nullopt});
    valueOf(db::confirmWordings(file(), agreed, "by phone"));
    // Let through and cut meanwhile, on the Cutting bench.
    valueOf(db::waive(file(), garment, Rule::WordingUnconfirmed, "a sample for the stall"));
    cut(garment, usual.roll);
    const auto count = entries();
    press(Qt::Key_Home);
    submit();
    EXPECT_FALSE(isFinished());
    EXPECT_EQ(entries(), count);
    EXPECT_TRUE(slip().refusal().contains(QStringLiteral("cut already"))) << slip().refusal().toStdString();
}

} // namespace
} // namespace holdfast::app::test
