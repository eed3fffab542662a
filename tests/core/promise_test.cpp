// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/orders/promise.h"

#include "core/orders/cutting_time.h"
#include "core/orders/promise_hours.h"
#include "tests/core/promise_builders.h"

#include <gtest/gtest.h>

#include <limits>

using namespace holdfast;
using namespace holdfast::fair_days;

namespace {

Promise promised(const FairShop& shop, const std::vector<AskedGarment>& asked,
                 const std::vector<PromisedWork>& load = {}, const Now& moment = atTheTable()) {
    const Result<Promise> promise = promiseFor(asked, shop.facts, shop.with(load), moment);
    EXPECT_TRUE(promise.ok()) << (promise.ok() ? "" : promise.error().message.english());
    return promise.ok() ? *promise : Promise{};
}

std::string refused(const FairShop& shop, const std::vector<AskedGarment>& asked,
                    const std::vector<PromisedWork>& load = {}) {
    const Result<Promise> promise = promiseFor(asked, shop.facts, shop.with(load), atTheTable());
    EXPECT_FALSE(promise.ok());
    return promise.ok() ? "" : promise.error().message.english();
}

LocalTime pressedAt(const Promise& promise) {
    for (const PromiseStep& step : promise.path)
        if (step.stage == PromiseStage::Press)
            return step.at;
    return {};
}

} // namespace

TEST(Promise, WashedBlankIsPressedTodayAndReadyAfterItsRest) {
    FairShop shop;
    const Promise promise = promised(shop, {aTee(kFog)});
    EXPECT_EQ(pressedAt(promise), at(0, 11, 52));
    EXPECT_EQ(promise.readyAt, at(1, 12)); // 11:52 tomorrow, on the half hour
    EXPECT_EQ(told(promise.path), "press today, rest 24 h, ready Wed");
    EXPECT_EQ(promise.why, "It rests 24 h after the press before its first wash.");
}

TEST(Promise, UnwashedBlankIsWashedTonightAndPressedTomorrow) {
    FairShop shop;
    const Promise promise = promised(shop, {aTee(kMoss)});
    EXPECT_EQ(told(promise.path), "wash tonight, press Wed, rest 24 h, ready Thu");
    EXPECT_EQ(promise.path.front().at, at(0, 17));
    EXPECT_EQ(pressedAt(promise), at(1, 9, 10));
    EXPECT_EQ(promise.readyAt, at(2, 9, 30));
}

TEST(Promise, MarginOfTheShopIsAddedToTheWork) {
    FairShop shop;
    shop.facts.settings.planMarginPercent = 50;
    EXPECT_EQ(pressedAt(promised(shop, {aTee(kMoss)})), at(1, 9, 15));
    // and to what is promised already: 5 h 20 become 8 h, the whole day.
    const std::vector<PromisedWork> load{{at(1, 17), Minutes{320}}};
    EXPECT_EQ(pressedAt(promised(shop, {aTee(kMoss)}, load)), at(2, 9, 15));
}

TEST(Promise, WorkThatDoesNotFitBeforeClosingGoesOnTheNextDay) {
    FairShop shop;
    EXPECT_EQ(pressedAt(promised(shop, {aTee(kFog, Hours{6})})), at(1, 9, 42));
}

TEST(Promise, EarlierPromisesKeepTheHoursBeforeTheyAreDue) {
    FairShop shop;
    const std::vector<PromisedWork> load{{at(1, 15), Hours{6}}};
    const Promise promise = promised(shop, {aTee(kMoss, Minutes{30})}, load);
    EXPECT_EQ(pressedAt(promise), at(1, 15, 30));
    EXPECT_EQ(promise.readyAt, at(2, 15, 30));
}

TEST(Promise, HoursBeforeThoseOfEarlierPromisesAreFree) {
    FairShop shop;
    const std::vector<PromisedWork> load{{at(1, 15), Hours{4}}};
    EXPECT_EQ(pressedAt(promised(shop, {aTee(kMoss, Minutes{30})}, load)), at(1, 9, 30));
}

TEST(Promise, WorkThatIsTooLateAlreadyGoesFirst) {
    FairShop shop;
    const std::vector<PromisedWork> load{{at(-1, 12), Hours{2}}};
    EXPECT_EQ(pressedAt(promised(shop, {aTee(kFog)}, load)), at(0, 13, 52));
}

TEST(Promise, SaysThatThePressIsTaken) {
    FairShop shop;
    const std::vector<PromisedWork> load{{at(3, 17), Hours{29} + Minutes{18}}};
    const Promise promise = promised(shop, {aTee(kFog)}, load);
    EXPECT_EQ(told(promise.path), "press Mon, rest 24 h, ready 17 Nov");
    EXPECT_EQ(promise.why, "Other promises are pressed first: pressed by Mon 16 Nov 09:10.");
}

TEST(Promise, SaysThatTheWorkshopIsClosedMeanwhile) {
    FairShop shop;
    shop.facts.settings.closedDays = {kTuesday, kTuesday + Days{1}, kTuesday + Days{2}, kTuesday + Days{3}};
    const Promise promise = promised(shop, {aTee(kFog)});
    EXPECT_EQ(pressedAt(promise), at(6, 9, 10));
    EXPECT_EQ(promise.why, "It is pressed in the next opening hours: pressed by Mon 16 Nov 09:10.");
}

TEST(Promise, DayAWeekAwayIsNamedByItsDate) {
    FairShop shop;
    shop.facts.settings.filmLeadTime = Days{7};
    shop.promised.film = {};
    EXPECT_EQ(told(promised(shop, {aTee(kFog)}).path),
              "film in 17 Nov, press 17 Nov, rest 24 h, ready 18 Nov");
    shop.facts.settings.filmLeadTime = Days{6};
    EXPECT_EQ(told(promised(shop, {aTee(kFog)}).path), "film in Mon, press Mon, rest 24 h, ready 17 Nov");
}

TEST(Promise, BlankThatIsDryingIsWaitedFor) {
    FairShop shop;
    shop.facts.lots = {};
    shop.addLot(kMoss, 1, shop.addLoad(at(0, 8), false)); // dry at 21:00
    const Promise promise = promised(shop, {aTee(kMoss)});
    EXPECT_EQ(told(promise.path), "dry today, press Wed, rest 24 h, ready Thu");
    EXPECT_EQ(promise.path.front().at, at(0, 21));
}

TEST(Promise, BlankWashedWithSoftenerIsWashedAgain) {
    FairShop shop;
    shop.facts.lots = {};
    WashLoad load;
    load.id = {7};
    load.softener = true;
    load.dryAt = Instant{};
    shop.facts.loads.add(load);
    shop.addLot(kMoss, 1, load.id);
    EXPECT_EQ(told(promised(shop, {aTee(kMoss)}).path), "wash tonight, press Wed, rest 24 h, ready Thu");
}

TEST(Promise, BlankThatIsNotPrewashedGoesStraightToThePress) {
    FairShop shop;
    shop.changeStyle([](BlankStyle& tee) { tee.notPrewashedBecause = "waxed cloth"; });
    EXPECT_EQ(told(promised(shop, {aTee(kMoss)}).path), "press today, rest 24 h, ready Wed");
}

TEST(Promise, UnitsKeptForOthersAreNotFree) {
    FairShop shop;
    shop.facts.lots = {};
    const BlankLotId lot = shop.addLot(kFog, 1, shop.addLoad(at(-3, 17), true));
    shop.addLot(kFog, 1);
    shop.keep(lot);
    EXPECT_EQ(told(promised(shop, {aTee(kFog)}).path), "wash tonight, press Wed, rest 24 h, ready Thu");
}

TEST(Promise, EachGarmentOfAnOrderTakesAUnit) {
    FairShop shop;
    shop.facts.lots = {};
    shop.addLot(kFog, 1, shop.addLoad(at(-3, 17), true));
    shop.addLot(kFog, 1);
    EXPECT_EQ(told(promised(shop, {aTee(kFog)}).path), "press today, rest 24 h, ready Wed");
    EXPECT_EQ(told(promised(shop, {aTee(kFog), aTee(kFog)}).path),
              "wash tonight, press Wed, rest 24 h, ready Thu");
    EXPECT_EQ(told(promised(shop, {aTee(kFog), aTee(kFog), aTee(kFog)}).path),
              "blank in Mon, wash Mon, press 17 Nov, rest 24 h, ready 18 Nov");
}

TEST(Promise, BlankOutOfStockIsBoughtAndWashed) {
    FairShop shop;
    shop.facts.lots = {};
    shop.facts.settings.blankLeadTime = Days{2};
    const Promise promise = promised(shop, {aTee(kMoss)});
    EXPECT_EQ(told(promise.path), "blank in Thu, wash Thu, press Fri, rest 24 h, ready Mon");
    EXPECT_EQ(promise.why, "There is no Tee, M, Moss left: a new one comes by Thu 12 Nov 09:00.");
    EXPECT_EQ(promise.readyAt, at(6, 9)); // rested on Saturday, when the workshop is closed
}

TEST(Promise, FilmThatIsNotOnTheShelfIsBought) {
    FairShop shop;
    shop.promised.film = {};
    EXPECT_EQ(told(promised(shop, {aTee(kFog)}).path), "film in Mon, press Mon, rest 24 h, ready 17 Nov");
    EXPECT_EQ(promised(shop, {aTee(kFog)}).why,
              "There is no roll of Marram Soft, Dusk on the shelf: a new one comes by Mon 16 Nov 09:00.");
}

TEST(Promise, FilmThatIsPromisedToOthersIsNotThere) {
    FairShop shop;
    AskedGarment large = aTee(kFog);
    large.decals = {{kDusk, Millimetres{300}, Millimetres{280}}};
    shop.promised.film = {{kDusk, Millimetres{500}, Millimetres{287}, std::nullopt}}; // wants 280 and the gap
    EXPECT_EQ(told(promised(shop, {large}).path).substr(0, 8), "film in ");
    EXPECT_EQ(promised(shop, {large}).why,
              "Too little of Marram Soft, Dusk is left after what is promised: more "
              "arrives by Mon 16 Nov 09:00.");
    shop.promised.film.front().left = {288};
    EXPECT_EQ(told(promised(shop, {large}).path).find("film in"), std::string::npos);
    EXPECT_EQ(told(promised(shop, {large, large, large}).path).substr(0, 8), "film in ");
}

TEST(Promise, DecalsOfAnOrderAreLaidTogetherAndOnSeveralRolls) {
    FairShop shop;
    AskedGarment small = aTee(kFog);
    small.decals = {{kDusk, Millimetres{150}, Millimetres{150}}};
    const std::vector<AskedGarment> six(6, small);
    // Three in a row of 488 mm; one after the other they would want 948.
    shop.promised.film = {{kDusk, Millimetres{500}, Millimetres{316}, std::nullopt}};
    EXPECT_EQ(told(promised(shop, six).path).find("film in"), std::string::npos);
    shop.promised.film.front().left = {315};
    EXPECT_NE(told(promised(shop, six).path).find("film in"), std::string::npos);
    shop.promised.film.push_back({kDusk, Millimetres{170}, Millimetres{474}, std::nullopt});
    EXPECT_EQ(told(promised(shop, six).path).find("film in"), std::string::npos);
}

TEST(Promise, FilmThatGoesOffBeforeThePressIsNotThere) {
    FairShop shop;
    shop.promised.film.front().useBy = kTuesday;
    EXPECT_EQ(told(promised(shop, {aTee(kFog)}).path), "press today, rest 24 h, ready Wed");
    EXPECT_EQ(told(promised(shop, {aTee(kMoss)}).path),
              "wash tonight, film in Mon, press Mon, rest 24 h, ready 17 Nov");
}

TEST(Promise, CuttingTakesTheHandsBeforeThePress) {
    FairShop shop;
    shop.facts.settings.cutTakes = Minutes{4};
    shop.facts.settings.weedingTakes = Seconds{60};
    const std::vector<AskedGarment> three(3, aTee(kFog)); // cut once: 4 min, and a minute each
    EXPECT_EQ(told(promised(shop, three).path), "cut today, press today, rest 24 h, ready Wed");
    EXPECT_EQ(promised(shop, three).path.front().at, at(0, 11, 49));
    EXPECT_EQ(pressedAt(promised(shop, three)), at(0, 12, 19));
    shop.facts.settings.planMarginPercent = 50;
    EXPECT_EQ(pressedAt(promised(shop, three)), at(0, 12, 37, 30));
}

TEST(Promise, FilmIsCutWhileTheBlankIsWashed) {
    FairShop shop;
    shop.facts.settings.cutTakes = Minutes{30};
    const Promise promise = promised(shop, {aTee(kMoss)});
    EXPECT_EQ(told(promise.path), "cut today, wash tonight, press Wed, rest 24 h, ready Thu");
    EXPECT_EQ(promise.path.front().at, at(0, 12, 12));
    EXPECT_EQ(pressedAt(promise), at(1, 9, 10));
}

TEST(Promise, FilmThatIsBoughtIsCutWhenItComes) {
    FairShop shop;
    shop.facts.settings.cutTakes = Minutes{30};
    shop.promised.film = {};
    const Promise promise = promised(shop, {aTee(kMoss)});
    EXPECT_EQ(told(promise.path), "wash tonight, film in Mon, cut Mon, press Mon, rest 24 h, ready 17 Nov");
    EXPECT_EQ(pressedAt(promise), at(6, 9, 40));
}

TEST(Promise, SaysThatCuttingIsTheLongestWait) {
    FairShop shop;
    shop.facts.settings.restBeforeWash = Hours{0};
    shop.facts.settings.cutTakes = Minutes{100};
    EXPECT_EQ(promised(shop, {aTee(kFog)}).why, "Cutting takes until 13:22.");
    const std::vector<PromisedWork> load{{at(3, 17), Hours{29} + Minutes{18}}};
    EXPECT_EQ(promised(shop, {aTee(kFog)}, load).why,
              "Other promises are cut first: cut by Mon 16 Nov 10:40.");
}

TEST(Promise, WhoComesWhileAGarmentIsPressedWaitsForIt) {
    FairShop shop;
    shop.promised.longestGarment = Minutes{12};
    EXPECT_EQ(pressedAt(promised(shop, {aTee(kFog)})), at(0, 12, 4));
}

TEST(Promise, TheGarmentThatIsPressedMeanwhileHasTheMarginToo) {
    FairShop shop;
    shop.promised.longestGarment = Minutes{12};
    shop.facts.settings.planMarginPercent = 50;
    // 18 minutes for the one that lies there, 15 for a tee of ten.
    EXPECT_EQ(pressedAt(promised(shop, {aTee(kFog)})), at(0, 11, 42) + Minutes{18 + 15});
}

TEST(Promise, WorkThatJustFillsADayIsDoneThatDay) {
    const std::vector<OpenStretch> hours{{at(1, 9), at(1, 17)}, {at(2, 9), at(2, 17)}};
    EXPECT_EQ(doneBy(hours, at(0, 20), Hours{8}), at(1, 17));
    EXPECT_EQ(doneBy(hours, at(0, 20), Hours{8} + Seconds{1}), at(2, 9, 0, 1));
}

TEST(Promise, WeedingLetteringTakesHalfAsLongAgainRoundedUp) {
    ShopSettings settings;
    settings.weedingTakes = Seconds{61};
    const DecalToCut word{kDusk, {0}, {0}, true, false};
    EXPECT_EQ(weedingTime(word, settings), Seconds{92}); // 91.5
}

TEST(Promise, OrderTakenBeforeKeepsItsBlankAndFilm) {
    FairShop shop;
    shop.facts.lots = {};
    shop.promised.film = {};
    AskedGarment kept = aTee(kFog);
    kept.lot = shop.addLot(kFog, 1, shop.addLoad(at(-3, 17), true));
    kept.decals.front().hasFilm = true;
    shop.keep(*kept.lot); // so that none is free
    EXPECT_EQ(told(promised(shop, {kept}).path), "press today, rest 24 h, ready Wed");
    kept.lot = shop.addLot(kMoss, 1);
    EXPECT_EQ(told(promised(shop, {kept}).path), "wash tonight, press Wed, rest 24 h, ready Thu");
    kept.isOnPress = true; // was let through unwashed
    EXPECT_EQ(told(promised(shop, {kept}).path), "press today, rest 24 h, ready Wed");
}

TEST(Promise, WasherThatRunsIsWaitedFor) {
    FairShop shop;
    shop.facts.settings.week[2] = OpeningHours{Hours{9}, Hours{11}};
    EXPECT_EQ(promised(shop, {aTee(kMoss)}).path.front().at, at(0, 11, 42));
    shop.addLot(kFog, 1, shop.addLoad(at(0, 11, 20), false));
    EXPECT_EQ(promised(shop, {aTee(kMoss)}).path.front().at, at(0, 12, 20));
}

TEST(Promise, WasherThatHoldsNothingSaysSo) {
    FairShop shop;
    shop.facts.settings.washerHolds = {0};
    const Result<Promise> promise =
        promiseFor(std::vector{aTee(kMoss)}, shop.facts, shop.promised, atTheTable());
    ASSERT_FALSE(promise.ok());
    EXPECT_EQ(promise.error().field, "washerHolds");
    EXPECT_EQ(promise.error().message.english(), "A full load of the washer is 0 kg, and Tee, M, Moss must "
                                                 "be washed first: no day can be promised. Set "
                                                 "the load in the settings.");
    EXPECT_EQ(told(promised(shop, {aTee(kFog)}).path), "press today, rest 24 h, ready Wed"); // needs no wash
}

TEST(Promise, BlankOfAPromiseThatComesLaterTakesNoRoomTonight) {
    FairShop shop;
    shop.facts.settings.washerHolds = {160}; // one tee
    shop.promised.washes = {{at(3, 9), {160}}, {at(0, 9), {160}}};
    EXPECT_EQ(promised(shop, {aTee(kMoss)}).path.front().at, at(0, 18));
}

TEST(Promise, WasherHoldsSoMuchAndPromisedBlanksGoFirst) {
    FairShop shop;
    shop.facts.settings.washerHolds = {320}; // two tees
    const BlankLotId moss = shop.addLot(kMoss, 20);
    EXPECT_EQ(promised(shop, {aTee(kMoss)}).path.front().at, at(0, 17));
    for (int kept = 0; kept < 4; ++kept)
        shop.keepUnwashed(moss);
    EXPECT_EQ(promised(shop, {aTee(kMoss)}).path.front().at, at(0, 19));
    for (int kept = 0; kept < 6; ++kept)
        shop.keepUnwashed(moss);
    // Five loads from 17:00 to 21:00 are full of promised blanks: the next evening.
    EXPECT_EQ(promised(shop, {aTee(kMoss)}).path.front().at, at(1, 17));
    EXPECT_EQ(told(promised(shop, {aTee(kMoss)}).path), "wash Wed, press Thu, rest 24 h, ready Fri");
}

TEST(Promise, AfterClosingThereIsStillAWashTonight) {
    FairShop shop;
    const Promise evening = promised(shop, {aTee(kMoss)}, {}, now(at(0, 18, 20)));
    EXPECT_EQ(evening.path.front().at, at(0, 18, 20));
    EXPECT_EQ(evening.path.front().when, "tonight");
    const Promise night = promised(shop, {aTee(kMoss)}, {}, now(at(0, 21, 1)));
    EXPECT_EQ(night.path.front().at, at(1, 17));
}

TEST(Promise, OnAClosedDayTheWashWaitsForTheNextOpenEvening) {
    FairShop shop;
    const Promise saturday = promised(shop, {aTee(kMoss)}, {}, now(at(4, 14)));
    EXPECT_EQ(told(saturday.path), "wash Mon, press Tue, rest 24 h, ready Wed");
}

TEST(Promise, ReadyWhenTheWorkshopOpensIfRestEndsAtNight) {
    FairShop shop;
    shop.facts.settings.restBeforeWash = Hours{8};
    EXPECT_EQ(promised(shop, {aTee(kFog)}).readyAt, at(1, 9)); // 19:52 tonight
    shop.facts.settings.restBeforeWash = Hours{5};
    shop.facts.settings.week[2] = OpeningHours{Hours{9}, Hours{17} + Minutes{10}};
    EXPECT_EQ(promised(shop, {aTee(kFog)}).readyAt, at(0, 17)); // 16:52
}

TEST(Promise, WithoutRestTheOrderIsReadyTheSameDay) {
    FairShop shop;
    shop.facts.settings.restBeforeWash = Hours{0};
    const Promise promise = promised(shop, {aTee(kFog)});
    EXPECT_EQ(told(promise.path), "press today, ready today");
    EXPECT_EQ(promise.readyAt, at(0, 12));
}

TEST(Promise, ShopClosedForAYearSaysSo) {
    FairShop shop;
    shop.facts.settings.week = {};
    EXPECT_EQ(refused(shop, {aTee(kFog)}),
              "The workshop is closed for the next year: no day can be promised. Set its pressing hours, or "
              "remove closed days, in the settings.");
    FairShop resting;
    for (int day = 0; day <= 367; ++day)
        resting.facts.settings.closedDays.push_back(kTuesday + Days{day});
    EXPECT_NE(refused(resting, {aTee(kFog)}).find("closed for the next year"), std::string::npos);
}

TEST(Promise, PressTakenForAYearSaysSo) {
    FairShop shop;
    const std::vector<PromisedWork> load{{at(400, 17), Hours{8 * 300}}};
    EXPECT_NE(refused(shop, {aTee(kFog)}, load).find("The press is taken for the next year"),
              std::string::npos);
}

TEST(Promise, NothingAskedForIsNoPromise) {
    EXPECT_EQ(refused(FairShop{}, {}), "Choose at least one garment to promise a day for.");
}

TEST(Promise, KindTheShopDoesNotKnowIsBought) {
    FairShop shop;
    const AskedGarment unknown{BlankStyleId{99}, "XL", ColourId{99}, {{FilmId{99}, {}, {}}}, Minutes{5}};
    EXPECT_EQ(told(promised(shop, {unknown}).path),
              "blank in Mon, film in Mon, wash Mon, press 17 Nov, rest 24 h, "
              "ready 18 Nov");
}

TEST(Promise, AbsurdSettingsGiveAPromiseOrAReasonAndNeverHang) {
    constexpr auto kMost = std::numeric_limits<std::int64_t>::max();
    for (const std::int64_t absurd : {kMost, -kMost, std::int64_t{0}}) {
        FairShop shop;
        ShopSettings& settings = shop.facts.settings;
        settings.washerHolds = {absurd};
        settings.washTakes = Minutes{std::clamp<std::int64_t>(absurd, -100'000'000, 100'000'000)};
        settings.dryingTakes = Hours{std::clamp<std::int64_t>(absurd, -100'000'000, 100'000'000)};
        settings.blankLeadTime = Days{std::clamp<std::int64_t>(absurd, -2'000'000'000, 2'000'000'000)};
        settings.restBeforeWash = Hours{std::clamp<std::int64_t>(absurd, -100'000'000, 100'000'000)};
        settings.planMarginPercent = absurd > 0 ? std::numeric_limits<int>::max() : -200;
        const std::vector<PromisedWork> load{{at(1, 9), Seconds{absurd}},
                                             {LocalTime{Seconds{absurd}}, Seconds{60}}};
        const std::vector<AskedGarment> asked{aTee(kMoss, Seconds{absurd}),
                                              aTee(ColourId{9}, Seconds{absurd})};
        const Result<Promise> promise = promiseFor(asked, shop.facts, shop.with(load), atTheTable());
        EXPECT_FALSE(promise.ok()); // a washer that holds nothing, or waits of a century
        EXPECT_FALSE(promise.error().message.english().empty());
    }
}

TEST(Promise, AbsurdWorkIsPromisedOrRefusedInWords) {
    constexpr auto kMost = std::numeric_limits<std::int64_t>::max();
    for (const std::int64_t absurd : {kMost, -kMost, std::int64_t{0}}) {
        FairShop shop;
        shop.facts.settings.cutTakes = Minutes{std::clamp<std::int64_t>(absurd, -100'000'000, 100'000'000)};
        shop.facts.settings.weedingTakes = Seconds{absurd};
        shop.promised.longestGarment = Seconds{absurd};
        AskedGarment garment = aTee(kFog, Seconds{absurd});
        garment.decals = {{kDusk, {absurd / 4}, {absurd / 4}}};
        const Result<Promise> promise =
            promiseFor(std::vector{garment}, shop.facts, shop.promised, atTheTable());
        EXPECT_EQ(promise.ok(), absurd <= 0);
        if (promise.ok())
            EXPECT_GE(promise->readyAt, atTheTable().local());
        else
            EXPECT_FALSE(promise.error().message.english().empty());
    }
}

TEST(Promise, StagesAreSaidInWords) {
    EXPECT_EQ(promiseStageWords(PromiseStage::BuyBlank), "blank in");
    EXPECT_EQ(promiseStageWords(PromiseStage::BuyFilm), "film in");
    EXPECT_EQ(promiseStageWords(PromiseStage::Wash), "wash");
    EXPECT_EQ(promiseStageWords(PromiseStage::Dry), "dry");
    EXPECT_EQ(promiseStageWords(PromiseStage::Cut), "cut");
    EXPECT_EQ(promiseStageWords(PromiseStage::Press), "press");
    EXPECT_EQ(promiseStageWords(PromiseStage::Rest), "rest");
    EXPECT_EQ(promiseStageWords(PromiseStage::Ready), "ready");
}
