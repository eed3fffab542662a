// SPDX-License-Identifier: GPL-3.0-or-later
// The shop's rules for prices, typed into the form of its settings.

#include "app/widgets/field.h"
#include "db/tables/facts.h"
#include "tests/app/slips_fixture.h"

namespace holdfast::app::test {

namespace {

class PriceRulesForm : public SlipsFixture {
protected:
    void openPart(SettingsPart part) {
        SlipTarget about;
        about.settings = part;
        open(SlipName::Settings, about);
    }
    PriceRules saved() { return desk().shop()->facts.settings.prices; }
};

} // namespace

TEST_F(PriceRulesForm, RulesAreSavedAsTheyWereTyped) {
    openPart(SettingsPart::Bill);
    type(QStringLiteral("forMany"), QStringLiteral("12: 5 %; 24: 7,25"));
    type(QStringLiteral("rushWithin"), QStringLiteral("3"));
    type(QStringLiteral("rushMore"), QStringLiteral("25"));
    type(QStringLiteral("extras"), QStringLiteral("Gift wrap: 2.50; By post: 4"));
    choose(QStringLiteral("taxKind"), 1);
    type(QStringLiteral("taxRate"), QStringLiteral("20 %"));
    type(QStringLiteral("taxName"), QStringLiteral("VAT"));
    submit();
    ASSERT_TRUE(isFinished());
    const PriceRules rules = saved();
    EXPECT_EQ(rules.forMany, (std::vector<PriceForMany>{{12, {5'00}}, {24, {7'25}}}));
    EXPECT_EQ(rules.rushWithin, Days{3});
    EXPECT_EQ(rules.rushMore, Percentage{25'00});
    EXPECT_EQ(rules.extras, (std::vector<UsualExtra>{{"Gift wrap", {250}}, {"By post", {400}}}));
    EXPECT_EQ(rules.tax, (TaxRule{TaxKind::Included, {20'00}, TaxedBy::Total, Rounding::HalfUp}));
    EXPECT_EQ(rules.taxName, "VAT");
    openPart(SettingsPart::Bill);
    EXPECT_EQ(find<Field>(QStringLiteral("forMany"))->text(), QStringLiteral("12: 5 %; 24: 7.25 %"));
}

TEST_F(PriceRulesForm, WhatIsWrongIsSaidAtItsField) {
    openPart(SettingsPart::Bill);
    type(QStringLiteral("forMany"), QStringLiteral("a dozen: 5 %"));
    type(QStringLiteral("rushMore"), QStringLiteral("a lot"));
    submit();
    EXPECT_FALSE(isFinished());
    EXPECT_TRUE(errorAt("forMany").contains(QStringLiteral("a dozen: 5 %")));
    EXPECT_TRUE(errorAt("rushMore").contains(QStringLiteral("A percentage")));
    type(QStringLiteral("forMany"), QStringLiteral("24: 5 %; 12: 10 %"));
    type(QStringLiteral("rushMore"), QStringLiteral("0"));
    submit();
    EXPECT_FALSE(isFinished());
    EXPECT_TRUE(errorAt("forMany").contains(QStringLiteral("needs more garments")));
    EXPECT_EQ(saved(), PriceRules{});
}

TEST_F(PriceRulesForm, PriceListHasEachStyle) {
    const BlankStyleId tee = addStyle("Tee");
    openPart(SettingsPart::PriceList);
    turn(QStringLiteral("byList"));
    type(QStringLiteral("decalPrices"), QStringLiteral("100: 2.00; 300: 4.50"));
    type(QStringLiteral("stylePrice%1").arg(tee.value), QStringLiteral("15"));
    submit();
    ASSERT_TRUE(isFinished());
    EXPECT_EQ(saved().by, PricedBy::List);
    EXPECT_EQ(saved().stylePrices.at(tee), Money{1500});
    EXPECT_EQ(saved().decalPrices, (std::vector<DecalPrice>{{100_mm, {200}}, {300_mm, {450}}}));
    openPart(SettingsPart::PriceList);
    type(QStringLiteral("stylePrice%1").arg(tee.value), {});
    submit();
    ASSERT_TRUE(isFinished());
    EXPECT_TRUE(saved().stylePrices.empty());
}

TEST_F(PriceRulesForm, MarkUpIsAskedWhereItIsChosen) {
    openPart(SettingsPart::Money);
    choose(QStringLiteral("pricedBy"), static_cast<int>(PricedBy::MarkUp));
    type(QStringLiteral("markUpPercent"), QStringLiteral("120"));
    submit();
    ASSERT_TRUE(isFinished());
    EXPECT_EQ(saved().by, PricedBy::MarkUp);
    EXPECT_EQ(saved().markUpPercent, 120);
}

} // namespace holdfast::app::test
