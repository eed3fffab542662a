// SPDX-License-Identifier: GPL-3.0-or-later
// What the findings say, with their numbers.

#include "tests/core/builders.h"

#include <gtest/gtest.h>

namespace holdfast::test {
namespace {

std::string said(const TestShop& shop, Rule rule) {
    const auto finding = shop.finding(rule);
    return finding ? finding->what.english() + " | " + finding->why.english() : "nothing";
}

TEST(HoldsWording, UnwashedNamesTheLot) {
    const auto shop = aShop().with(aGarment().onUnwashedTee()).build();
    EXPECT_EQ(said(shop, Rule::BlankUnwashed),
              "Unwashed | Lot of 12 Oct 2026, M, Moss: no wash load on record.");
    EXPECT_EQ(shop.finding(Rule::BlankUnwashed)->lot, kLot);
}

TEST(HoldsWording, DecalOffTheClothSaysWhereAndByHowMuch) {
    // A tee of size M ends (238 − 55) × 520 / 128 = 743 mm below its collar at the sides, some 15 mm lower in
    // the middle.
    const auto shop = aShop()
                          .with(aGarment().decal([](Decal& decal) {
                              decal.content = Artwork{"heron"};
                              decal.placement = Placement::Chest;
                              decal.below = 700_mm;
                              decal.aside = {};
                              decal.width = 80_mm;
                              decal.height = 110_mm;
                          }))
                          .build();
    EXPECT_EQ(said(shop, Rule::DecalOffCloth),
              "Decal off the cloth | Heron is 80 × 110 mm on the chest. It runs 52 mm over the lower edge.");
}

TEST(HoldsWording, LettersTooSmallSayHowHighTheyAreAndHowThin) {
    const auto small = [](Decal& decal) {
        decal.content = Wording{"Hilt", Face::BookSerif};
        decal.height = 7_mm;
    };
    const auto shop = aShop().with(aGarment().decal(small).uncut()).build();
    EXPECT_EQ(
        said(shop, Rule::LetteringTooSmall),
        "Letters too small to weed | Name “Hilt” is 7 mm high: strokes of about 0.8 mm, an estimate. Film "
        "tears under 2 mm: make it larger.");
    // What is cut was weeded as it is.
    const auto cut = aShop().with(aGarment().decal(small)).build();
    EXPECT_EQ(said(cut, Rule::LetteringTooSmall), "nothing");
}

TEST(HoldsWording, DampSaysSinceWhenAndUntilAboutWhen) {
    const auto shop = aShop().with(aGarment().onDampTee()).build();
    // In at 10:00 on Sunday; 1 h of washing and 12 h of drying.
    EXPECT_EQ(said(shop, Rule::BlankDamp), "Not yet dry | Lot of 12 Oct 2026, M, Moss: washed Sun 22 Nov "
                                           "10:00, should be dry from Sun 22 Nov 23:00; "
                                           "not marked dry yet.");
}

TEST(HoldsWording, SoftenerAndDryerSheetAreToldApart) {
    const auto softener = aShop().with(aGarment().onSoftenedTee()).build();
    EXPECT_EQ(softener.finding(Rule::SoftenerLeft)->what, "Washed with softener");
    const auto sheet = aShop().with(aGarment().load([](WashLoad& load) { load.dryerSheet = true; })).build();
    EXPECT_EQ(sheet.finding(Rule::SoftenerLeft)->what, "Dried with dryer sheet");
}

TEST(HoldsWording, NoBlankCountsWhatIsFree) {
    const auto none = aShop().with(aGarment().onNoBlank()).build();
    EXPECT_EQ(said(none, Rule::BlankOutOfStock), "Blank out of stock | Tee, M, Moss: 0 left on the rail.");

    // Five units in the lot, one of them kept for the second garment.
    const auto some = aShop().with(aGarment().onNoBlank()).with(aGarment()).build();
    EXPECT_EQ(said(some, Rule::BlankOutOfStock),
              "No blank reserved | Tee, M, Moss: 4 left on the rail, none reserved for this garment.");
}

TEST(HoldsWording, ShrinkageGivesBothMeasuresAndTheLimit) {
    const auto shop = aShop()
                          .with(aGarment().lot([](BlankLot& lot) {
                              lot.shrinkage = Shrinkage{500_mm, 474_mm, 350_mm, 352_mm};
                          }))
                          .build();
    EXPECT_EQ(said(shop, Rule::BlankShrank), "Blank shrank | Lot of 12 Oct 2026, M, Moss: after its wash "
                                             "length 5.2 % shorter, width 0.6 % longer; "
                                             "the shop's limit is 4 %.");
}

TEST(HoldsWording, ShrinkageAtTheLimitIsNoFinding) {
    const auto shop = aShop()
                          .with(aGarment().lot([](BlankLot& lot) {
                              lot.shrinkage = Shrinkage{500_mm, 480_mm, 350_mm, 336_mm};
                          }))
                          .build();
    EXPECT_FALSE(shop.raises(Rule::BlankShrank));
}

TEST(HoldsWording, ShrinkageThatWasNotMeasuredBeforeIsNoFinding) {
    for (const Shrinkage& measured :
         {Shrinkage{0_mm, 0_mm, 350_mm, 300_mm}, Shrinkage{500_mm, 400_mm, 0_mm, 0_mm}}) {
        const auto shop =
            aShop().with(aGarment().lot([&](BlankLot& lot) { lot.shrinkage = measured; })).build();
        EXPECT_FALSE(shop.raises(Rule::BlankShrank));
    }
}

TEST(HoldsWording, RollPastItsUseByGivesDateDaysAndAge) {
    const auto shop =
        aShop()
            .with(
                aGarment().roll([](FilmRoll& roll) { roll.number = 17; }).condition([](RollCondition& roll) {
                    roll.useBy = localDate(2026, 11, 19);
                    roll.useByIsEstimate = true;
                    roll.effectiveDays = 396.2;
                }))
            .build();
    EXPECT_EQ(said(shop, Rule::RollPastAge),
              "Roll R-17 past its estimated use-by | R-17: estimated use-by 19 Nov 2026, 6 days ago; "
              "effective age 396 of 365 days by estimate.");
}

// A date printed before the shelf life by warmth is over is the reason, not the age.
TEST(HoldsWording, RollWhosePrintedDateCameFirstSaysThatDate) {
    const auto shop = aShop()
                          .with(aGarment()
                                    .roll([](FilmRoll& roll) { roll.printedUseBy = localDate(2026, 11, 19); })
                                    .condition([](RollCondition& roll) {
                                        roll.useBy = localDate(2026, 11, 19);
                                        roll.effectiveDays = 350;
                                    }))
                          .build();
    EXPECT_EQ(said(shop, Rule::RollPastAge), "Roll R-09 past its use-by | R-09: use-by 19 Nov 2026, 6 days "
                                             "ago; the date is the one printed on it.");
}

TEST(HoldsWording, RollWithPrintedDateOnlySaysSo) {
    const auto shop =
        aShop()
            .with(aGarment()
                      .film([](Film& film) { film.shelfLife.reset(); })
                      .roll([](FilmRoll& roll) { roll.printedUseBy = localDate(2026, 11, 24); })
                      .condition([](RollCondition& roll) { roll.useBy = localDate(2026, 11, 24); }))
            .build();
    EXPECT_EQ(said(shop, Rule::RollPastAge), "Roll R-09 past its use-by | R-09: use-by 24 Nov 2026, 1 day "
                                             "ago; the date is the one printed on it.");
}

TEST(HoldsWording, RollOnItsUseByDayIsStillGood) {
    const auto shop =
        aShop()
            .with(aGarment().condition([](RollCondition& roll) { roll.useBy = localDate(2026, 11, 25); }))
            .build();
    EXPECT_FALSE(shop.raises(Rule::RollPastAge));
}

struct OutsideNow {
    double humidity;
    double temperature;
    std::string what;
    std::string why;
};

TEST(HoldsWording, RollOutsideItsLimitsNowSaysWhichWay) {
    const std::vector<OutsideNow> cases{
        {58, 19, "Roll R-09 is stored too damp", "R-09: Film shelf is at 58 %, limits 30–50 %."},
        {22, 19, "Roll R-09 is stored too dry", "R-09: Film shelf is at 22 %, limits 30–50 %."},
        {44, 34, "Roll R-09 is stored too hot", "R-09: Film shelf is at 34 °C, limits 10–30 °C."},
        {44, 4.5, "Roll R-09 is stored too cold", "R-09: Film shelf is at 4.5 °C, limits 10–30 °C."},
        {58, 34, "Roll R-09 is stored too damp",
         "R-09: Film shelf is at 58 %, limits 30–50 %, and at 34 °C, limits 10–30 °C."},
    };
    for (const OutsideNow& each : cases) {
        const auto shop = aShop()
                              .with(aGarment().condition([&](RollCondition& roll) {
                                  roll.latestHumidity = Humidity{each.humidity};
                                  roll.latest->temperature = {each.temperature};
                                  roll.humidityOutsideNow = each.humidity < 30 || each.humidity > 50;
                                  roll.temperatureOutsideNow = each.temperature < 10 || each.temperature > 30;
                              }))
                              .build();
        EXPECT_EQ(said(shop, Rule::RollBadlyKept), each.what + " | " + each.why);
    }
}

TEST(HoldsWording, RollTooLongOutsideGivesHoursSinceTheLastPassedStrip) {
    const auto outside = [](RollCondition& roll) {
        roll.humidityHoursOutside = 61.3;
        roll.temperatureHoursOutside = 12;
    };
    const auto noStrip = aShop().with(aGarment().condition(outside)).build();
    EXPECT_EQ(said(noStrip, Rule::RollBadlyKept), "Roll R-09 badly stored | R-09: 61 h outside 30–50 % and "
                                                  "12 h outside 10–30 °C since 4 Jun 2026; 72 h "
                                                  "are allowed.");

    const auto atOnce = [&](RollCondition& roll) {
        outside(roll);
        roll.temperatureHoursOutside = 36.2;
        roll.bothHoursOutside = 20;
    };
    EXPECT_EQ(said(aShop().with(aGarment().condition(atOnce)).build(), Rule::RollBadlyKept),
              "Roll R-09 badly stored | R-09: 78 h outside its limits, 61 h outside 30–50 % and 36 h outside "
              "10–30 °C, since 4 Jun 2026; 72 h are allowed.");

    // Of a limit that was kept nothing is said.
    const auto onlyHot = [](RollCondition& roll) { roll.temperatureHoursOutside = 80; };
    EXPECT_EQ(said(aShop().with(aGarment().condition(onlyHot)).build(), Rule::RollBadlyKept),
              "Roll R-09 badly stored | R-09: 80 h outside 10–30 °C since 4 Jun 2026; 72 h are allowed.");

    const auto withStrip =
        aShop()
            .with(aGarment().condition(outside).roll([](FilmRoll& roll) {
                roll.testStrips = {{daysAgo(42), true, Days{30}, ""}, {daysAgo(1), false, Days{0}, ""}};
            }))
            .build();
    EXPECT_NE(said(withStrip, Rule::RollBadlyKept).find("since 14 Oct 2026"), std::string::npos);
}

TEST(HoldsWording, FailedStripGivesItsDayAndWhatWasNoted) {
    const auto stripped = [](std::string note) {
        return aShop()
            .with(aGarment().roll(
                [&](FilmRoll& roll) { roll.testStrips = {{daysAgo(1), false, Days{0}, note}}; }))
            .build();
    };
    EXPECT_EQ(said(stripped(""), Rule::StripFailed),
              "Roll R-09 failed its test strip | R-09: the strip of 24 Nov 2026 failed.");
    EXPECT_EQ(said(stripped("lifted at a corner"), Rule::StripFailed),
              "Roll R-09 failed its test strip | R-09: the strip of 24 Nov 2026 failed, lifted at a corner.");
}

TEST(HoldsWording, StaleReadingsCountHours) {
    const auto stale = [](RollCondition& roll) {
        roll.readingIsStale = true;
        roll.latest->at = hoursAgo(50);
    };
    const auto shop = aShop().with(aGarment().condition(stale)).build();
    EXPECT_EQ(said(shop, Rule::ReadingsStale),
              "No recent reading | Film shelf: last reading Mon 23 Nov 08:00, 50 h "
              "ago; one is due every 24 h.");
    const auto never = aShop()
                           .with(aGarment().condition([](RollCondition& roll) {
                               roll.readingIsStale = true;
                               roll.latest.reset();
                           }))
                           .build();
    EXPECT_EQ(said(never, Rule::ReadingsStale),
              "No recent reading | Film shelf: no reading on record; one is due every 24 h.");
}

TEST(HoldsWording, StaleReadingsOfOnePlaceAreSaidOnceForTwoRolls) {
    auto garment = aGarment();
    garment.withOtherFilm([](Film&) {}).withDecal([](Decal& decal) {
        decal.film = kOtherFilm;
        decal.cutFrom = kOtherRoll;
        decal.placement = Placement::Back;
    });
    auto shop = aShop().with(garment).build();
    std::map<RollId, RollCondition> conditions;
    for (const auto& [id, condition] : shop.conditions) {
        conditions[id] = condition;
        conditions[id].readingIsStale = true;
    }
    shop.conditions = RollConditions(conditions);
    EXPECT_EQ(shop.findings().size(), 1u);
}

TEST(HoldsWording, LackOfARollIsTakenOverAndSaidOnce) {
    const auto shop = aShop()
                          .with(aGarment()
                                    .withDecal([](Decal& decal) { decal.placement = Placement::Back; })
                                    .lacking("No roll of Marram Soft, Dusk on the shelf."))
                          .build();
    ASSERT_EQ(shop.findings().size(), 1u);
    EXPECT_EQ(said(shop, Rule::NoRollFits), "No roll fits | No roll of Marram Soft, Dusk on the shelf.");
}

TEST(HoldsWording, TwoDecalsThatLackForDifferentReasonsAreOneFindingWithBoth) {
    auto shop = aShop()
                    .with(aGarment()
                              .withDecal([](Decal& decal) { decal.placement = Placement::Back; })
                              .lacking("First."))
                    .build();
    shop.allotment.lack[shop.garment().decals[1].id] = asItIs("Second.");
    ASSERT_EQ(shop.findings().size(), 1u);
    EXPECT_EQ(shop.findings().front().why, "First. Second.");
}

TEST(HoldsWording, QuotationAsksForNoRoll) {
    const auto shop =
        aShop()
            .with(aGarment().uncut().order([](Order& order) { order.state = OrderState::Quoted; }))
            .build();
    EXPECT_FALSE(shop.raises(Rule::NoRollFits));
}

TEST(HoldsWording, AnIronCoolerThanTheRecipeIsSaidAndAHoldWhereTheFibreMelts) {
    const auto ironed = [](int celsius, Fibre fibre, int percent) {
        return aShop()
            .with(aGarment().label([&](FabricLabel& label) {
                label.highestSafe.reset();
                label.care.ironCelsius = celsius;
                label.fibres = {{fibre, percent}, {Fibre::Cotton, 100 - percent}};
            }))
            .build();
    };
    const auto cotton = ironed(110, Fibre::Linen, 40);
    EXPECT_EQ(said(cotton, Rule::FilmUnfitHeat),
              "Hotter than its label allows | Marram Soft, Dusk is pressed at 150 °C; the label of Tee says "
              "iron at up "
              "to 110 °C; how hot a platen may be is not known. Press a spare or a hidden spot.");
    EXPECT_EQ(cotton.finding(Rule::FilmUnfitHeat)->grade, Grade::Caution);
    const auto acrylic = ironed(110, Fibre::Acrylic, 30);
    EXPECT_EQ(said(acrylic, Rule::FilmUnfitHeat), "Too hot for acrylic | Marram Soft, Dusk is pressed at 150 "
                                                  "°C; the label of Tee says iron at up to 110 °C, "
                                                  "and acrylic glazes or melts above some 135 °C.");
    EXPECT_EQ(acrylic.finding(Rule::FilmUnfitHeat)->grade, Grade::Hold);
    EXPECT_EQ(ironed(110, Fibre::Polyamide, 4).finding(Rule::FilmUnfitHeat)->grade, Grade::Caution);
    EXPECT_FALSE(ironed(150, Fibre::Acrylic, 30).raises(Rule::FilmUnfitHeat));
    EXPECT_FALSE(ironed(200, Fibre::Linen, 40).raises(Rule::FilmUnfitHeat));
}

TEST(HoldsWording, FilmUnfitGivesBothSides) {
    const auto tooHot =
        aShop().with(aGarment().label([](FabricLabel& label) { label.highestSafe = 140_C; })).build();
    EXPECT_EQ(said(tooHot, Rule::FilmUnfitHeat),
              "Too hot for the cloth | Marram Soft, Dusk is pressed at 150 °C; Tee takes at most 140 °C.");

    const auto stretchy =
        aShop().with(aGarment().label([](FabricLabel& label) { label.stretch = Stretch::High; })).build();
    EXPECT_EQ(said(stretchy, Rule::FilmUnfitStretch), "Stretches more than the film | Tee has high stretch; "
                                                      "Marram Soft, Dusk follows at most some stretch.");

    const auto coated =
        aShop()
            .with(aGarment().label([](FabricLabel& label) { label.coating = Coating::WaterRepellent; }))
            .build();
    EXPECT_EQ(
        said(coated, Rule::FilmUnfitCoating),
        "Film slips on the coating | Tee is water-repellent; Marram Soft, Dusk does not grip coated cloth.");
}

TEST(HoldsWording, FibreCountsFromFivePercentOn) {
    const auto shopWithSilk = [](int percent) {
        return aShop()
            .with(aGarment()
                      .film([](Film& film) { film.notFor = {Fibre::Silk}; })
                      .label([percent](FabricLabel& label) {
                          label.fibres = {{Fibre::Cotton, 100 - percent}, {Fibre::Silk, percent}};
                      }))
            .build();
    };
    EXPECT_EQ(said(shopWithSilk(5), Rule::FilmUnfitFibre),
              "Film not for silk | Tee is 5 % silk; Marram Soft, Dusk is not made for silk.");
    EXPECT_FALSE(shopWithSilk(4).raises(Rule::FilmUnfitFibre));
}

TEST(HoldsWording, SameFilmOnTwoDecalsIsSaidOnce) {
    const auto shop = aShop()
                          .with(aGarment()
                                    .label([](FabricLabel& label) { label.highestSafe = 140_C; })
                                    .withDecal([](Decal& decal) { decal.placement = Placement::Back; }))
                          .build();
    EXPECT_EQ(shop.findings().size(), 1u);
}

TEST(HoldsWording, EachUnconfirmedDecalIsSaid) {
    const auto unconfirmed = [](Decal& decal) {
        decal.confirmedBy.clear();
        decal.content = Wording{"Juno", Face::BookSerif};
        decal.placement = Placement::Back;
    };
    const auto shop =
        aShop()
            .with(aGarment().decal([](Decal& decal) { decal.confirmedBy.clear(); }).withDecal(unconfirmed))
            .build();
    const auto findings = shop.findings();
    ASSERT_EQ(findings.size(), 2u);
    EXPECT_EQ(findings[0].what, "Artwork not confirmed");
    EXPECT_EQ(findings[1].what, "Wording not confirmed");
    EXPECT_EQ(findings[1].why, "Name “Juno”, back, 200 × 280 mm: the customer has not agreed to it yet.");
}

TEST(HoldsWording, LawIsNeverCalledKept) {
    const auto shop = aShop()
                          .with(aGarment().style([](BlankStyle& style) {
                              style.forChild = true;
                              style.hasCords = true;
                          }))
                          .build();
    EXPECT_EQ(said(shop, Rule::LocalLaw),
              "Check local law | A rule may apply: check local law. Tee: for a child, has cords.");
}

TEST(HoldsWording, PressOffSaysWhatToDialIn) {
    const auto shop = aShop()
                          .with(aGarment())
                          .check([](PressCheck& check) { check.readings = {145_C, 146_C, 146.2_C}; })
                          .build();
    EXPECT_EQ(
        said(shop, Rule::PressOff),
        "Platen too cool | Bench press, checked 20 Nov 2026: on average 4.3 °C below the set 150 °C, 3 °C "
        "allowed; dial in +4.3 °C and check again.");
}

TEST(HoldsWording, UnevenPlatenGivesItsSpread) {
    const auto shop = aShop()
                          .with(aGarment())
                          .check([](PressCheck& check) { check.readings = {150_C, 147_C, 153.5_C}; })
                          .build();
    EXPECT_EQ(said(shop, Rule::PressUneven),
              "Platen uneven | Bench press, checked 20 Nov 2026: hottest and coolest spot 6.5 °C apart, 6 °C "
              "allowed.");
}

TEST(HoldsWording, OneSpotFarOffIsOffThoughTheMeanAndTheSpreadAreAllowed) {
    const auto shop = aShop()
                          .with(aGarment())
                          .press([](Press& press) { press.tolerance = 5_C; })
                          .check([](PressCheck& check) { check.readings = {157_C, 152_C, 151_C}; })
                          .build();
    EXPECT_EQ(said(shop, Rule::PressOff),
              "One spot too hot | Bench press, checked 20 Nov 2026: one spot 7 °C above the set 150 °C, 6 °C "
              "allowed.");
    EXPECT_FALSE(shop.raises(Rule::PressUneven));
}

TEST(HoldsWording, CheckWithoutReadingsIsNoCheck) {
    const auto shop =
        aShop().with(aGarment()).check([](PressCheck& check) { check.readings.clear(); }).build();
    EXPECT_EQ(said(shop, Rule::PressCheckOverdue),
              "Press check overdue | Bench press: no check on record; a check is due every 30 days.");
    EXPECT_FALSE(shop.raises(Rule::PressOff));
}

TEST(HoldsWording, DepositGivesWhatWasPaidAndWhatIsAsked) {
    const auto shop = aShop()
                          .with(aGarment().order([](Order& order) { order.paid = {1000}; }))
                          .settings([](ShopSettings& settings) { settings.depositPercent = 50; })
                          .build();
    EXPECT_EQ(said(shop, Rule::DepositShort),
              "Deposit short | £10.00 of £26.50 paid; the shop asks 50 % first, £13.50.");
}

TEST(HoldsWording, LargeDecalSaysInHowManyPieces) {
    const auto shop = aShop().with(aGarment().decal([](Decal& decal) { decal.width = 420_mm; })).build();
    EXPECT_EQ(
        said(shop, Rule::DecalBeyondPlaten),
        "Pressed in 2 parts | Heron is 420 × 280 mm, the platen of Bench press 380 × 380 mm: 2 presses, "
        "lifted and overlapped, never slid.");
}

TEST(HoldsWording, FilmsThatDisagreeSayWhatTheLowerOneWouldSuffer) {
    const auto shop = aShop()
                          .with(aGarment()
                                    .withOtherFilm([](Film& film) { film.recipe->temperature = 165_C; })
                                    .withDecal([](Decal& decal) {
                                        decal.film = kOtherFilm;
                                        decal.cutFrom = kOtherRoll;
                                    }))
                          .build();
    EXPECT_EQ(said(shop, Rule::FilmsDisagree),
              "Films need different heat | Marram Soft, Dusk needs 150 °C, Marram Soft, Oyster over it 165 "
              "°C. Each "
              "needs its own pass, and the lower one would be pressed at 165 °C.");
}

TEST(HoldsWording, TwoDecalsOverlappingInOneLayerMustBeLaidOverEachOther) {
    const auto shop = aShop().with(aGarment().withDecal([](Decal& decal) { decal.layer = 1; })).build();
    EXPECT_EQ(said(shop, Rule::LayersNotAllowed),
              "Layers not allowed | Heron and Heron overlap in layer 1; one must lie over the other.");
}

TEST(HoldsWording, FilmThatMayNotLieOverAnotherIsNamed) {
    const auto shop =
        aShop()
            .with(aGarment().film([](Film& film) { film.mayLieOver = false; }).withDecal([](Decal&) {}))
            .build();
    EXPECT_EQ(said(shop, Rule::LayersNotAllowed),
              "Layers not allowed | Heron lies over Heron; Marram Soft, Dusk may not lie over another film.");
}

TEST(HoldsWording, DecalsSideBySideMayLieAsTheyLike) {
    // 200 mm wide at the centre line reaches to 100 mm; 100 mm wide at 150 mm begins there.
    const auto shop =
        aShop()
            .with(aGarment().film([](Film& film) { film.mayLieOver = false; }).withDecal([](Decal& decal) {
                decal.layer = 1;
                decal.aside = 150_mm;
                decal.width = 100_mm;
            }))
            .build();
    EXPECT_FALSE(shop.raises(Rule::LayersNotAllowed));
}

} // namespace
} // namespace holdfast::test
