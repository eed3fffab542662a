// SPDX-License-Identifier: GPL-3.0-or-later
// A price by hand, a discount, an extra and the tax at the fair table, and the day that the customer asks
// for.

#include "app/places/fair_table/draft_note.h"
#include "app/places/fair_table/order_lines.h"
#include "app/widgets/button.h"
#include "db/actions/shop_actions.h"
#include "db/tables/facts.h"
#include "tests/app/fair_table_fixture.h"
#include "tests/app/painted_texts.h"

#include <QLabel>

#include <algorithm>

namespace holdfast::app::test {

namespace {

class TablePrice : public FairTable {
protected:
    void SetUp() override {
        FairTable::SetUp();
        m_usual = stockUsualShop();
    }
    void setPrices(const std::function<void(PriceRules&)>& change) {
        ShopSettings settings = desk().shop()->facts.settings;
        change(settings.prices);
        valueOf(db::changeSettings(file(), settings));
    }
    Money total() { return table().sums().total; }
    Money usualPrice() { return table().sums().garments[0].usual; }
    Order lastOrder() {
        const OrderId id = orders().front().id;
        return valueOf(file().read([&](db::Connection& connection) {
                   return db::loadFactsOf(connection, std::span(&id, 1));
               }))
            .orders.at(id);
    }
    QString labelOf(const char* name) { return child<QLabel>(name).text(); }
    QString told(const char* block) { return child<QWidget>(block).accessibleName(); }
    QStringList lines() {
        QStringList all;
        const auto* model = child<OrderLines>("orderLines").model();
        for (int row = 0; row < model->rowCount(); ++row)
            all.append(model->index(row, 0).data().toString());
        return all;
    }

    UsualShop m_usual;
};

} // namespace

TEST_F(TablePrice, HandPriceIsTypedAndEnterDoesNotTakeTheOrder) {
    open();
    chooseHeronOnMossTee();
    const Money usual = usualPrice();
    keys("h");
    typeText(QStringLiteral("12"));
    EXPECT_EQ(total(), Money{1200});
    EXPECT_EQ(usualPrice(), usual);
    key(Qt::Key_Return);
    EXPECT_TRUE(orders().empty());
    takeItFor("Odile");
    ASSERT_EQ(orders().size(), 1u);
    EXPECT_EQ(lastOrder().total, Money{1200});
}

TEST_F(TablePrice, HandPriceStaysWhenADecalIsAddedAndGoesWhenItIsEmptied) {
    open();
    chooseHeronOnMossTee();
    const Money usual = usualPrice();
    keys("h");
    typeText(QStringLiteral("12"));
    key(Qt::Key_Escape);
    keys("a");
    keys("d3");
    EXPECT_EQ(total(), Money{1200});
    EXPECT_GT(usualPrice(), usual);
    keys("h");
    key(Qt::Key_Delete);
    EXPECT_EQ(total(), usualPrice());
}

TEST_F(TablePrice, WordsAreNoPriceAndChangeNothing) {
    open();
    chooseHeronOnMossTee();
    keys("h");
    typeText(QStringLiteral("12x"));
    EXPECT_EQ(child<Field>("priceByHand").error(), QStringLiteral("An amount, 0 or more"));
    EXPECT_EQ(total(), Money{1200}) << "what was an amount before";
    key(Qt::Key_Return);
    EXPECT_EQ(QApplication::focusWidget(), child<Field>("priceByHand").editor());
}

TEST_F(TablePrice, DiscountWithItsReasonIsALineOfTheBill) {
    open();
    chooseHeronOnMossTee();
    const Money usual = usualPrice();
    keys("h");
    key(Qt::Key_Tab);
    typeText(QStringLiteral("10 %"));
    key(Qt::Key_Return);
    typeText(QStringLiteral("regular"));
    key(Qt::Key_Return);
    EXPECT_EQ(total(), usual - partOf(usual, {10'00}, Rounding::HalfUp));
    EXPECT_TRUE(lines().last().startsWith(QStringLiteral("Discount 10 %, regular")))
        << lines().last().toStdString();
    takeItFor("Odile");
    ASSERT_EQ(lastOrder().lines.size(), 1u);
    EXPECT_EQ(lastOrder().lines[0].words, "regular");
}

TEST_F(TablePrice, AnExtraIsAddedByEnterAndRemovedInTheLines) {
    open();
    chooseHeronOnMossTee();
    const Money usual = usualPrice();
    keys("h");
    child<Field>("extraWords").editor()->setFocus(Qt::TabFocusReason);
    typeText(QStringLiteral("By post"));
    key(Qt::Key_Return);
    key(Qt::Key_Return);
    EXPECT_EQ(child<Field>("extraAmount").error(), QStringLiteral("An amount, 0 or more"));
    typeText(QStringLiteral("4"));
    key(Qt::Key_Return);
    EXPECT_EQ(total(), usual + Money{400});
    key(Qt::Key_Escape);
    keys("l");
    key(Qt::Key_End);
    key(Qt::Key_Delete);
    EXPECT_EQ(total(), usual);
}

TEST_F(TablePrice, UsualExtraIsOnePress) {
    setPrices([](PriceRules& prices) { prices.extras = {{"Gift wrap", {250}}}; });
    open();
    chooseHeronOnMossTee();
    const Money usual = usualPrice();
    keys("h");
    const auto buttons = place().findChildren<Button*>();
    const auto wrap = std::ranges::find_if(
        buttons, [](const Button* button) { return button->text() == QStringLiteral("Gift wrap £2.50"); });
    ASSERT_NE(wrap, buttons.end());
    QTest::mouseClick(*wrap, Qt::LeftButton);
    EXPECT_EQ(total(), usual + Money{250});
}

TEST_F(TablePrice, ManyCostLessUntilItIsLeftOff) {
    setPrices([](PriceRules& prices) { prices.forMany = {{12, {5'00}}}; });
    open();
    chooseHeronOnMossTee();
    const Money usual = usualPrice();
    table().edit(Step::Copies, [](TableDraft& draft) { draft.garment().copies = 12; });
    EXPECT_EQ(total(), usual * 12 - partOf(usual * 12, {5'00}, Rounding::HalfUp));
    keys("l");
    key(Qt::Key_End);
    key(Qt::Key_Delete);
    EXPECT_EQ(total(), usual * 12);
}

TEST_F(TablePrice, AddedTaxIsALineAndStaysWithTheOrder) {
    const TaxRule tax{TaxKind::Added, {8'25}, TaxedBy::Total, Rounding::HalfUp};
    setPrices([&](PriceRules& prices) {
        prices.tax = tax;
        prices.taxName = "Sales tax";
    });
    open();
    chooseHeronOnMossTee();
    const Money usual = usualPrice();
    EXPECT_EQ(total(), usual + partOf(usual, {8'25}, Rounding::HalfUp));
    EXPECT_TRUE(lines().last().startsWith(QStringLiteral("Sales tax 8.25 %")));
    takeItFor("Odile");
    EXPECT_EQ(lastOrder().tax, tax);
}

TEST_F(TablePrice, IncludedTaxIsSaidBelowTheTotal) {
    setPrices([](PriceRules& prices) {
        prices.tax = {TaxKind::Included, {20'00}, TaxedBy::Total, Rounding::HalfUp};
        prices.taxName = "VAT";
    });
    open();
    chooseHeronOnMossTee();
    EXPECT_TRUE(labelOf("costFloor").contains(QStringLiteral(" of it VAT 20 %")));
}

TEST_F(TablePrice, ListPriceIsAskedAndTheCostStaysInSight) {
    setPrices([&](PriceRules& prices) {
        prices.by = PricedBy::List;
        prices.stylePrices[m_usual.style] = {1500};
        prices.decalPrices = {{2000_mm, {300}}};
    });
    open();
    chooseHeronOnMossTee();
    EXPECT_EQ(total(), Money{1800});
    EXPECT_TRUE(labelOf("costFloor").contains(QStringLiteral("costs ")));
}

TEST_F(TablePrice, HandPriceOfAnOrderThatWasTakenIsOneChange) {
    GarmentDraft garment = aGarment(m_usual);
    garment.price = {1900};
    const auto taken = takeOrder({garment});
    open();
    SlipTarget about;
    about.order = taken.id;
    place().turnTo(about);
    keys("h");
    typeText(QStringLiteral("15"));
    key(Qt::Key_Return);
    EXPECT_EQ(child<Button>("takeOrder").text(), QStringLiteral("Save changes"));
    place().setFocus();
    key(Qt::Key_Return);
    EXPECT_EQ(file().recent(1).front().title.english(), "Order 1 changed: 1-a costs £15.00 (was £19.00)");
}

TEST_F(TablePrice, HalfTypedBillIsThereAgain) {
    open();
    chooseHeronOnMossTee();
    table().edit(Step::Choice, [&](TableDraft& draft) {
        draft.garment().priceByHand = Money{1234};
        draft.lines = {{BillLineKind::Extra, "By post", Money{400}},
                       {BillLineKind::Discount, "", Percentage{-7'50}}};
        draft.isRushOff = true;
        draft.wantedOn = now().today() + Days{9};
    });
    EXPECT_EQ(valueOf(draftFromNote(noteOf(draft()), desk().shop()->facts)), draft());
}

TEST_F(TablePrice, LaterDayThatIsAskedForIsPromised) {
    open();
    chooseHeronOnMossTee();
    const LocalTime soonest = table().sums().promise->readyAt;
    const LocalDate wanted = dateOf(soonest) + Days{7};
    keys("u");
    typeText(QString::fromStdString(isoDate(wanted)));
    ASSERT_TRUE(table().sums().wanted);
    EXPECT_EQ(table().sums().wanted->answer, WantedDay::Answer::Kept);
    EXPECT_EQ(dateOf(table().sums().promise->readyAt), wanted);
    EXPECT_TRUE(told("promise").contains(QStringLiteral("as wanted"))) << told("promise").toStdString();
    key(Qt::Key_Escape);
    takeItFor("Odile");
    EXPECT_EQ(dateOf(lastOrder().promised), wanted);
}

TEST_F(TablePrice, DayThatIsTooSoonIsAnsweredAndTheSoonestIsPromised) {
    open();
    keys("g1s3c1d2"); // L is to be washed first
    const LocalTime soonest = table().sums().promise->readyAt;
    ASSERT_GT(dateOf(soonest), now().today());
    keys("u");
    typeText(QStringLiteral("today"));
    ASSERT_TRUE(table().sums().wanted);
    EXPECT_EQ(table().sums().wanted->answer, WantedDay::Answer::TooSoon);
    EXPECT_TRUE(told("promise").contains(QStringLiteral("not on Wed 25 Nov, as wanted")))
        << told("promise").toStdString();
    key(Qt::Key_Escape);
    takeItFor("Odile");
    EXPECT_EQ(lastOrder().promised, soonest);
}

// The line had room for one of the two, and showed what the day waits for.
TEST_F(TablePrice, DayIsAnsweredAlsoWhereTheOrderWaitsForADelivery) {
    open();
    chooseHeronOnMossTee();
    table().edit(Step::Copies, [](TableDraft& draft) { draft.garment().copies = 40; });
    table().edit(Step::Day, [&](TableDraft& draft) { draft.wantedOn = now().today(); });
    const auto painted = textsPaintedBy(child<QWidget>("promise"));
    EXPECT_TRUE(std::ranges::any_of(painted, [](const PaintedText& each) {
        return each.text.startsWith(QStringLiteral("not on Wed 25 Nov, as wanted"));
    }));
}

TEST_F(TablePrice, AnHourMoreOnOneDayIsOfferedAndTakenByAKey) {
    wash(receiveBlanks(m_usual.style, "M", m_usual.moss, 200), 200);
    for (int more = 0; more < 10; ++more)
        receiveRoll(m_usual.film, {});
    open();
    chooseHeronOnMossTee();
    const auto readyOn = [&](int copies) {
        table().edit(Step::Copies, [&](TableDraft& draft) { draft.garment().copies = copies; });
        return dateOf(table().sums().promise->readyAt);
    };
    const LocalDate wanted = readyOn(1);
    int copies = 5; // until the last of them is pressed a day later
    while (copies < 200 && readyOn(copies) == wanted)
        copies += 5;
    ASSERT_GT(readyOn(copies), wanted);
    table().edit(Step::Day, [&](TableDraft& draft) { draft.wantedOn = wanted; });
    ASSERT_TRUE(table().sums().sooner && table().sums().sooner->longerDay);
    const LongerDay offered = *table().sums().sooner->longerDay;
    EXPECT_TRUE(child<Button>("sooner").isVisible());
    EXPECT_TRUE(child<Button>("sooner").text().startsWith(QStringLiteral("Open ")));
    place().setFocus();
    keys("j");
    EXPECT_EQ(desk().shop()->facts.settings.hoursOn(offered.day), offered.hours);
    EXPECT_EQ(table().sums().wanted->answer, WantedDay::Answer::Kept);
    EXPECT_EQ(table().sums().promise->readyAt, offered.readyAt);
}

TEST_F(TablePrice, DayIsReadByItsNameAndPastOnesAreRefused) {
    open();
    chooseHeronOnMossTee();
    keys("u");
    typeText(QStringLiteral("mon"));
    EXPECT_EQ(draft().wantedOn, localDate(2026, 11, 30));
    typeInto("wantedOn", QStringLiteral("wed"));
    EXPECT_EQ(draft().wantedOn, localDate(2026, 12, 2)) << "a week on, for today is Wednesday";
    typeInto("wantedOn", QStringLiteral("2026-11-24"));
    EXPECT_EQ(child<Field>("wantedOn").error(), QStringLiteral("That day is past."));
    EXPECT_EQ(draft().wantedOn, std::nullopt);
    typeInto("wantedOn", QStringLiteral("someday"));
    key(Qt::Key_Escape);
    EXPECT_EQ(draft().wantedOn, std::nullopt);
}

TEST_F(TablePrice, ShortDayCostsMoreWhereTheShopSaysSo) {
    setPrices([](PriceRules& prices) {
        prices.rushWithin = Days{3};
        prices.rushMore = {25'00};
    });
    open();
    chooseHeronOnMossTee();
    const Money usual = usualPrice();
    EXPECT_EQ(total(), usual) << "nobody asked for a day";
    keys("u");
    typeText(QStringLiteral("fri"));
    EXPECT_EQ(total(), usual + partOf(usual, {25'00}, Rounding::HalfUp));
    typeInto("wantedOn", QStringLiteral("2026-12-09"));
    EXPECT_EQ(total(), usual);
    typeInto("wantedOn", QStringLiteral("fri"));
    key(Qt::Key_Escape);
    keys("l");
    key(Qt::Key_End);
    key(Qt::Key_Delete);
    EXPECT_EQ(total(), usual);
}

} // namespace holdfast::app::test
