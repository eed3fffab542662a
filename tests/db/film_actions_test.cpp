// SPDX-License-Identifier: GPL-3.0-or-later
#include "db/tables/ledgers.h"
#include "tests/db/small_shop.h"

#include <chrono>
#include <limits>

namespace holdfast::db {
namespace {

using FilmActions = SmallShop;
using Doing = Result<Done>;
using Adding = Result<FilmId>;
using Receiving = Result<RollOnShelf>;
using Importing = Result<ReadingsImported>;

constexpr double kNoNumber = std::numeric_limits<double>::quiet_NaN();

TEST_F(FilmActions, FilmIsWrittenAsItWasTyped) {
    auto film = aFilm(" Gorsé ");
    film.notFor = {Fibre::Silk, Fibre::Wool, Fibre::Silk};
    film.follows = Stretch::High;
    film.hasGrain = true;
    film.mayLieUnder = false;
    film.ageing.q10 = 2.5;
    film.supplier = "Saltmarsh";
    film.recipe->peel = Peel::Cool;
    expectUndoable<Adding>([&] { return addFilm(shop(), film); }, "Film Marram Soft, Gorsé added");
    const FilmId id{number("SELECT MAX(id) FROM film")};
    const auto facts = loadFactsOf(connection(), {});
    const Film& written = facts.films.at(id);
    EXPECT_EQ(written.name(), "Marram Soft, Gorsé");
    EXPECT_EQ(written.recipe, film.recipe);
    EXPECT_EQ(written.notFor.size(), 2U);
    EXPECT_EQ(written.follows, Stretch::High);
    EXPECT_TRUE(written.hasGrain);
    EXPECT_FALSE(written.mayLieUnder);
    EXPECT_EQ(written.ageing, film.ageing);
    EXPECT_EQ(written.storage, film.storage);
    EXPECT_EQ(written.shelfLife, film.shelfLife);
    EXPECT_EQ(written.costPerMetre, film.costPerMetre);
    EXPECT_EQ(written.supplier, "Saltmarsh");
}

TEST_F(FilmActions, WrongFilmIsRefusedWithItsField) {
    const std::vector<std::pair<std::string, std::function<void(Film&)>>> wrong{
        {"finish", [](auto& film) { film.finish = ""; }},
        {"shade", [](auto& film) { film.shade = std::string(41, 'x'); }},
        {"shade", [](auto& film) { film.shade = "dusk"; }},
        {"shade", [](auto& film) { film.rgb = 0x1000000; }},
        {"temperature", [](auto& film) { film.recipe->temperature = {221}; }},
        {"temperature", [](auto& film) { film.recipe->temperature = {kNoNumber}; }},
        {"dwell", [](auto& film) { film.recipe->dwell = Seconds{0}; }},
        {"confirmedBy", [](auto& film) { film.recipe->confirmedBy = std::string(81, 'x'); }},
        {"careWash", [](auto& film) { film.care.washCelsius = 100; }},
        {"shelfLife", [](auto& film) { film.shelfLife = Days{0}; }},
        {"humidity", [](auto& film) { film.storage.humidity = {{50}, {50}}; }},
        {"humidity", [](auto& film) { film.storage.humidity = {{30}, {101}}; }},
        {"storage", [](auto& film) { film.storage.temperature = {{30}, {10}}; }},
        {"allowedOutside", [](auto& film) { film.storage.allowedOutside = Hours{-1}; }},
        {"q10", [](auto& film) { film.ageing.q10 = 0.5; }},
        {"reference", [](auto& film) { film.ageing.reference = {kNoNumber}; }},
        {"testStripExtends", [](auto& film) { film.testStripExtends = Days{-1}; }},
        {"rollWidth", [](auto& film) { film.rollWidth = {19}; }},
        {"supplier", [](auto& film) { film.supplier = std::string(81, 'x'); }},
        {"costPerMetre", [](auto& film) { film.costPerMetre = {-1}; }},
    };
    for (const auto& [field, spoil] : wrong) {
        auto film = aFilm("Oyster");
        spoil(film);
        expectRefused<Adding>([&] { return addFilm(shop(), film); }, field);
    }
}

TEST_F(FilmActions, FilmIsDescribedAnewAndKeepsItsRecipe) {
    const Film before = loadFactsOf(connection(), {}).films.at(m_film);
    Film film = before;
    film.shade = " Dusk blue ";
    film.costPerMetre = {725};
    film.notFor = {Fibre::Silk};
    film.storage.humidity = {{35}, {55}};
    film.shelfLife.reset();
    film.supplier = "Saltmarsh";
    film.recipe.reset();
    expectUndoable<Doing>(
        [&] { return changeFilmSheet(shop(), film); },
        "Film Marram Soft, Dusk blue changed: shade: Dusk blue (was Dusk), cost of a metre: "
        "£7.25 (was £9.00), supplier: Saltmarsh (was none), does not grip: silk (was none), shelf life: no "
        "limit (was 365 "
        "days), lowest humidity: 35 % (was 30 %), highest humidity: 55 % (was 50 %)");
    const Film after = loadFactsOf(connection(), {}).films.at(m_film);
    EXPECT_EQ(after.name(), "Marram Soft, Dusk blue");
    EXPECT_EQ(after.costPerMetre.minor, 725);
    EXPECT_EQ(after.supplier, "Saltmarsh");
    EXPECT_EQ(after.notFor, std::vector<Fibre>{Fibre::Silk});
    EXPECT_EQ(after.storage.humidity.high.percent, 55);
    EXPECT_FALSE(after.shelfLife);
    EXPECT_EQ(after.recipe, before.recipe);

    ASSERT_TRUE(addFilm(shop(), aFilm("Oyster")).ok());
    film.shade = "oyster";
    expectRefused<Doing>([&] { return changeFilmSheet(shop(), film); }, "shade", "already");
    film.shade = "Dusk blue";
    film.rollWidth = {19};
    expectRefused<Doing>([&] { return changeFilmSheet(shop(), film); }, "rollWidth");
    film.id = FilmId{7};
    expectRefused<Doing>([&] { return changeFilmSheet(shop(), film); }, "", "not in the shop");
}

TEST_F(FilmActions, RecipeIsUnconfirmedUntilSomebodyComparedIt) {
    Recipe recipe = *aFilm("x").recipe;
    recipe.confirmedBy.clear();
    recipe.temperature = {145};
    expectUndoable<Doing>([&] { return enterRecipe(shop(), m_film, recipe); },
                          "Recipe of Marram Soft, Dusk: 145 °C, 12 s, medium");
    EXPECT_FALSE(loadFactsOf(connection(), {}).films.at(m_film).recipe->isConfirmed());
    expectUndoable<Doing>([&] { return confirmRecipe(shop(), m_film, "Wren"); },
                          "Recipe of Marram Soft, Dusk confirmed by Wren");
    expectRefused<Doing>([&] { return confirmRecipe(shop(), m_film, ""); }, "by");
    recipe.dwell = Seconds{121};
    expectRefused<Doing>([&] { return enterRecipe(shop(), m_film, recipe); }, "dwell");
    auto film = aFilm("Bare");
    film.recipe.reset();
    const auto bare = addFilm(shop(), film);
    ASSERT_TRUE(bare.ok());
    expectRefused<Doing>([&] { return confirmRecipe(shop(), *bare, "Wren"); }, "", "has no recipe yet");
    expectRefused<Doing>([&] { return confirmRecipe(shop(), FilmId{7}, "Wren"); }, "film");
}

TEST_F(FilmActions, RollIsReceivedWithItsNumberItsLengthAndItsPlace) {
    auto roll = aRoll();
    roll.length = {1'250};
    roll.receivedOn -= Days{2};
    roll.madeOn = roll.receivedOn;
    roll.printedUseBy = *roll.madeOn + Days{1};
    expectUndoable<Receiving>([&] { return receiveRoll(shop(), roll, now()); },
                              "R-02 received: Marram Soft, Dusk, 1.25 m");
    const RollId id{number("SELECT MAX(id) FROM film_roll")};
    const auto facts = loadFactsOf(connection(), {});
    const FilmRoll& written = facts.rolls.at(id);
    EXPECT_EQ(written.label(), "R-02");
    EXPECT_EQ(written.left.value, 1'250);
    EXPECT_EQ(written.madeOn, roll.madeOn);
    EXPECT_EQ(written.printedUseBy, roll.printedUseBy);
    EXPECT_EQ(written.placeNow(), m_place);
    EXPECT_EQ(isoInstant(written.stays.at(0).since), "2026-11-08T23:00:00Z")
        << "since that morning, local time";
}

TEST_F(FilmActions, RollMayWaitForItsPlace) {
    auto roll = aRoll();
    roll.place = {};
    const auto received = receiveRoll(shop(), roll, now());
    ASSERT_TRUE(received.ok());
    EXPECT_FALSE(loadFactsOf(connection(), {}).rolls.at(received->id).placeNow());
    expectUndoable<Doing>([&] { return moveRoll(shop(), received->id, m_damp); },
                          "R-02 moved to Back room shelf");
}

TEST_F(FilmActions, WrongRollIsRefusedWithItsField) {
    const std::vector<std::pair<std::string, std::function<void(RollReceived&)>>> wrong{
        {"film", [](auto& roll) { roll.film = {}; }},
        {"place", [](auto& roll) { roll.place = PlaceId{5}; }},
        {"width", [](auto& roll) { roll.width = {19}; }},
        {"width", [](auto& roll) { roll.width = {2001}; }},
        {"length", [](auto& roll) { roll.length = {99}; }},
        {"length", [](auto& roll) { roll.length = {200'001}; }},
        {"receivedOn", [](auto& roll) { roll.receivedOn += Days{1}; }},
        {"receivedOn", [](auto& roll) { roll.receivedOn = {}; }},
        {"madeOn", [](auto& roll) { roll.madeOn = roll.receivedOn + Days{1}; }},
        {"madeOn", [](auto& roll) { roll.madeOn = localDate(1999, 12, 31); }},
        {"printedUseBy", [](auto& roll) { roll.madeOn = roll.printedUseBy = roll.receivedOn; }},
        {"printedUseBy", [](auto& roll) { roll.printedUseBy = localDate(2201, 1, 1); }},
    };
    for (const auto& [field, spoil] : wrong) {
        auto roll = aRoll();
        spoil(roll);
        expectRefused<Receiving>([&] { return receiveRoll(shop(), roll, now()); }, field);
    }
}

TEST_F(FilmActions, RollUsedUpWritesOffWhatIsLeft) {
    expectUndoable<Doing>([&] { return useUpRoll(shop(), m_roll, "creased through"); },
                          "R-01 used up, 25.00 m written off: creased through");
    EXPECT_EQ(lengthOf(m_roll), 0);
    EXPECT_EQ(text("SELECT kind FROM roll_move WHERE mm < 0"), "used-up");
    expectRefused<Doing>([&] { return useUpRoll(shop(), m_roll, "creased through"); }, "", "is used up");
    expectRefused<Doing>([&] { return putRollAway(shop(), m_roll, true); }, "", "is used up");
    expectRefused<Doing>([&] { return moveRoll(shop(), m_roll, m_damp); }, "", "is used up");
    expectRefused<Doing>([&] { return correctLength(shop(), m_roll, {1}, "found"); }, "", "is used up");
    expectRefused<Doing>([&] { return recordTestStrip(shop(), m_roll, true, {1}, ""); }, "", "is used up");
}

TEST_F(FilmActions, EmptyRollIsUsedUpWithoutAMove) {
    ASSERT_TRUE(correctLength(shop(), m_roll, {0}, "all cut").ok());
    expectUndoable<Doing>([&] { return useUpRoll(shop(), m_roll, "all cut"); },
                          "R-01 used up, 0.00 m written off: all cut");
    for (const std::string& bad : {std::string{}, std::string{"no"}, std::string(201, 'x')})
        expectRefused<Doing>([&] { return useUpRoll(shop(), m_roll, bad); }, "reason");
}

TEST_F(FilmActions, RollIsPutAwayAndTakenBack) {
    expectRefused<Doing>([&] { return putRollAway(shop(), m_roll, false); }, "", "on the shelf already");
    expectUndoable<Doing>([&] { return putRollAway(shop(), m_roll, true); }, "R-01 put away");
    expectRefused<Doing>([&] { return putRollAway(shop(), m_roll, true); }, "", "put away already");
    expectUndoable<Doing>([&] { return putRollAway(shop(), m_roll, false); }, "R-01 back on the shelf");
    expectRefused<Doing>([&] { return putRollAway(shop(), RollId{4}, true); }, "roll");
}

TEST_F(FilmActions, RollMovesBetweenPlaces) {
    wait(Hours{2});
    expectUndoable<Doing>([&] { return moveRoll(shop(), m_roll, m_damp); }, "R-01 moved to Back room shelf");
    EXPECT_EQ(loadFactsOf(connection(), {}).rolls.at(m_roll).stays.size(), 2U);
    expectRefused<Doing>([&] { return moveRoll(shop(), m_roll, m_damp); }, "place", "already");
    expectRefused<Doing>([&] { return moveRoll(shop(), m_roll, PlaceId{1}); }, "place");
    wait(-Hours{5});
    ASSERT_TRUE(moveRoll(shop(), m_roll, m_place).ok());
    EXPECT_EQ(loadFactsOf(connection(), {}).rolls.at(m_roll).placeNow(), m_place)
        << "though the clock was set back";
    EXPECT_EQ(titlesOf(m_damp).size(), 5U)
        << "set up, moved there, taken back, moved there again, moved away";
}

TEST_F(FilmActions, MeasuredLengthIsAMoveWithItsReason) {
    expectUndoable<Doing>([&] { return correctLength(shop(), m_roll, {24'500}, "measured on the bench"); },
                          "R-01 measured: 24.50 m instead of 25.00 m, measured on the bench");
    EXPECT_EQ(lengthMovesOf(connection(), m_roll).at(0).length.value, -500);
    EXPECT_EQ(lengthMovesOf(connection(), m_roll).at(0).reason, "measured on the bench");
    const auto before = dump();
    ASSERT_TRUE(correctLength(shop(), m_roll, {24'500}, "measured again").ok());
    EXPECT_EQ(dump(), before);
    expectRefused<Doing>([&] { return correctLength(shop(), m_roll, {-1}, "measured"); }, "measured");
    expectRefused<Doing>([&] { return correctLength(shop(), m_roll, {200'001}, "measured"); }, "measured");
    expectRefused<Doing>([&] { return correctLength(shop(), m_roll, {1}, " "); }, "reason");
}

TEST_F(FilmActions, TestStripTakesFilmAndOneThatPassedExtends) {
    expectUndoable<Doing>([&] { return recordTestStrip(shop(), m_roll, true, {60}, "holds at the corner"); },
                          "R-01: test strip passed, holds at the corner");
    expectUndoable<Doing>([&] { return recordTestStrip(shop(), m_roll, false, {0}, ""); },
                          "R-01: test strip failed");
    EXPECT_EQ(lengthOf(m_roll), 24'940);
    const auto facts = loadFactsOf(connection(), {});
    const auto& strips = facts.rolls.at(m_roll).testStrips;
    ASSERT_EQ(strips.size(), 2U);
    EXPECT_EQ(strips[0].extends, Days{30});
    EXPECT_EQ(strips[1].extends, Days{0});
    expectRefused<Doing>([&] { return recordTestStrip(shop(), m_roll, true, {-1}, ""); }, "used");
    expectRefused<Doing>([&] { return recordTestStrip(shop(), m_roll, true, {1001}, ""); }, "used");
    expectRefused<Doing>([&] { return recordTestStrip(shop(), m_roll, true, {1}, std::string(201, 'x')); },
                         "note");
    ASSERT_TRUE(correctLength(shop(), m_roll, {50}, "nearly gone").ok());
    expectRefused<Doing>([&] { return recordTestStrip(shop(), m_roll, true, {51}, ""); }, "used", "0.05 m");
}

TEST_F(FilmActions, CuttingChargesTheRollAndMarksTheDecals) {
    const auto order = takeTees(2);
    std::vector<DecalId> decals{decalOf(order, 0), decalOf(order, 1)};
    expectUndoable<Doing>([&] { return cutDecals(shop(), m_roll, decals, {420}, now()); },
                          "Cut 2 decals from R-01, 0.42 m");
    EXPECT_EQ(text("SELECT reason FROM roll_move ORDER BY id DESC LIMIT 1"),
              "cut 2 decals of order " + std::to_string(order.number));
    EXPECT_EQ(lengthOf(m_roll), 24'580);
    EXPECT_EQ(connection().number("SELECT COUNT(*) FROM decal WHERE cut_roll_id = ?1", m_roll), 2);
    expectRefused<Doing>([&] { return cutDecals(shop(), m_roll, decals, {420}, now()); }, "decals",
                         "is cut already");
    EXPECT_EQ(titlesOf(m_roll).back(), "R-01 received: Marram Soft, Dusk, 25.00 m");
    EXPECT_EQ(titlesOf(order.id).back(), "Took order 1");
}

TEST_F(FilmActions, AnOffcutKeptIsARollAsOldAsItsOwn) {
    const auto order = takeTees();
    const std::vector<DecalId> decals{decalOf(order)};
    ASSERT_TRUE(recordTestStrip(shop(), m_roll, true, {0}, "").ok());
    const std::vector<OffcutSize> offcuts{{{164}, {148}}, {{300}, {120}}};
    expectUndoable<Doing>([&] { return cutDecals(shop(), m_roll, decals, {420}, now(), offcuts); },
                          "Cut 1 decal from R-01, 0.42 m, kept R-02 (164 × 148 mm), R-03 (300 × 120 mm)");
    const auto facts = loadFactsOf(connection(), {});
    const FilmRoll& roll = facts.rolls.at(m_roll);
    ASSERT_EQ(facts.rolls.size(), 3U);
    for (const FilmRoll& kept : facts.rolls) {
        if (kept.id == m_roll)
            continue;
        const OffcutSize& size = offcuts[static_cast<std::size_t>(kept.number - 2)];
        EXPECT_EQ(kept.width, size.width);
        EXPECT_EQ(kept.left, size.length);
        EXPECT_EQ(kept.receivedOn, roll.receivedOn);
        EXPECT_EQ(kept.madeOn, roll.madeOn);
        EXPECT_EQ(kept.printedUseBy, roll.printedUseBy);
        ASSERT_EQ(kept.stays.size(), roll.stays.size());
        EXPECT_EQ(kept.stays.back().since, roll.stays.back().since);
        ASSERT_EQ(kept.testStrips.size(), 1U);
        EXPECT_TRUE(kept.testStrips.front().passed);
    }
    EXPECT_EQ(roll.left, Millimetres{24'580});
    EXPECT_EQ(number("SELECT COUNT(*) FROM roll_move WHERE kind = 'received'"), 1) << "nothing was bought";
}

TEST_F(FilmActions, OffcutsThatCannotBeAreRefused) {
    const auto order = takeTees();
    const std::vector<DecalId> decals{decalOf(order)};
    const auto refused = [&](std::vector<OffcutSize> offcuts, const std::string& words) {
        expectRefused<Doing>([&] { return cutDecals(shop(), m_roll, decals, {420}, now(), offcuts); },
                             "offcuts", words);
    };
    refused({{{19}, {100}}}, "width");
    refused({{{100}, {0}}}, "length");
    refused({{{501}, {100}}}, "500");
    refused({{{100}, {421}}}, "420");
    refused({{{500}, {300}}, {{500}, {200}}}, "more film");
}

TEST_F(FilmActions, WhatCannotBeCutIsRefused) {
    const auto order = takeTees();
    const std::vector<DecalId> decals{decalOf(order)};
    const std::vector<DecalId> twice{decalOf(order), decalOf(order)};
    const auto refused = [&](const std::vector<DecalId>& which, std::int64_t length, const std::string& field,
                             const std::string& words) {
        expectRefused<Doing>([&] { return cutDecals(shop(), m_roll, which, {length}, now()); }, field, words);
    };
    refused({}, 100, "decals", "");
    refused(twice, 100, "decals", "cut already");
    refused({DecalId{3}}, 100, "decal", "");
    refused(decals, 0, "length", "");
    refused(decals, -1, "length", "");
    refused(decals, 25'001, "length", "25.00 m");
    expectRefused<Doing>([&] { return cutDecals(shop(), RollId{3}, decals, {100}, now()); }, "roll");

    const auto oyster = addFilm(shop(), aFilm("Oyster"));
    ASSERT_TRUE(oyster.ok());
    ASSERT_TRUE(changeFilm(shop(), decals[0], *oyster).ok());
    refused(decals, 100, "decals", "is another film");
    ASSERT_TRUE(changeFilm(shop(), decals[0], m_film).ok());

    ASSERT_TRUE(putRollAway(shop(), m_roll, true).ok());
    refused(decals, 100, "", "put away");
    ASSERT_TRUE(putRollAway(shop(), m_roll, false).ok());

    auto quoted = aDraft();
    quoted.isQuotation = true;
    const auto quotation = take(quoted);
    refused({decalOf(quotation)}, 100, "", "quotation");
    ASSERT_TRUE(cancelOrder(shop(), order.id, "moved away").ok());
    refused(decals, 100, "", "cancelled");
    ASSERT_TRUE(useUpRoll(shop(), m_roll, "all cut").ok());
    refused(decals, 100, "", "used up");
}

TEST_F(FilmActions, DecalCutWrongWaitsAgain) {
    const auto order = readyToPress();
    const auto decal = decalOf(order);
    expectUndoable<Doing>([&] { return markMiscut(shop(), decal, "blade slipped"); },
                          "1-a: Heron cut wrong, blade slipped");
    EXPECT_EQ(number("SELECT COUNT(*) FROM decal WHERE cut_at IS NOT NULL"), 0);
    EXPECT_EQ(lengthOf(m_roll), 24'760) << "what was cut is gone";
    expectRefused<Doing>([&] { return markMiscut(shop(), decal, "blade slipped"); }, "", "not cut yet");
    cutAll(order);
    EXPECT_EQ(lengthOf(m_roll), 24'520);
    expectRefused<Doing>([&] { return markMiscut(shop(), decal, ""); }, "reason");
    const Route route = routeFor(garmentOf(order));
    ASSERT_TRUE(takeUp(shop(), garmentOf(order), route, now()).ok());
    expectRefused<Doing>([&] { return markMiscut(shop(), decal, "blade slipped"); }, "", "is on the press");
    std::string open = "on";
    while (!open.empty())
        open = finishStep(shop(), garmentOf(order), route).value();
    expectRefused<Doing>([&] { return markMiscut(shop(), decal, "blade slipped"); }, "",
                         "is pressed already");
}

TEST_F(FilmActions, PlaceIsSetUpOnce) {
    expectUndoable<Result<PlaceId>>([&] { return addPlace(shop(), " Kästchen "); },
                                    "Storage place Kästchen set up");
    for (const std::string& bad : {std::string{}, std::string{"front shelf"}, std::string(61, 'x')})
        expectRefused<Result<PlaceId>>([&] { return addPlace(shop(), bad); }, "name");
}

TEST_F(FilmActions, ReadingIsRecordedOnceForAMoment) {
    const ClimateReading reading{now().instant, {19.25}, {44.4}};
    expectUndoable<Doing>([&] { return recordReading(shop(), m_place, reading); },
                          "Front shelf: 44 %, 19.2 °C");
    expectRefused<Doing>([&] { return recordReading(shop(), m_place, reading); }, "at", "already");
    EXPECT_TRUE(recordReading(shop(), m_damp, reading).ok());
    const auto refused = [&](Instant at, double celsius, double humidity, const std::string& field) {
        expectRefused<Doing>([&] { return recordReading(shop(), m_place, {at, {celsius}, {humidity}}); },
                             field);
    };
    const Instant before = now().instant - Hours{1};
    refused(now().instant + Seconds{1}, 19, 44, "at");
    refused(Instant{}, 19, 44, "at");
    refused(before, -40.1, 44, "temperature");
    refused(before, 80.1, 44, "temperature");
    refused(before, kNoNumber, 44, "temperature");
    refused(before, 19, -0.1, "humidity");
    refused(before, 19, 100.1, "humidity");
    refused(before, 19, kNoNumber, "humidity");
    expectRefused<Doing>([&] { return recordReading(shop(), PlaceId{3}, reading); }, "place");
    EXPECT_TRUE(recordReading(shop(), m_place, {before, {-40}, {100}}).ok());
}

std::vector<ClimateReading> readingsUntil(Instant last, std::size_t count) {
    std::vector<ClimateReading> readings;
    for (std::size_t at = 0; at < count; ++at)
        readings.push_back({last - Minutes{count - at}, {18.0 + static_cast<double>(at % 50) / 10}, {44}});
    return readings;
}

TEST_F(FilmActions, LogIsReadInWithoutWhatStoodThereAlready) {
    const auto readings = readingsUntil(now().instant, 1200);
    ASSERT_TRUE(recordReading(shop(), m_place, readings[7]).ok());
    expectUndoable<Importing>([&] { return importReadings(shop(), m_place, readings); },
                              "1,199 readings of Front shelf read in");
    const auto before = dump();
    const auto again = importReadings(shop(), m_place, readings);
    ASSERT_TRUE(again.ok());
    EXPECT_EQ(again->added, 0);
    EXPECT_EQ(again->alreadyThere, 1200);
    EXPECT_EQ(dump(), before);
    EXPECT_EQ(loadClimate(connection()).at(m_place)->size(), 1200U);
}

TEST_F(FilmActions, LogWithOneBadReadingIsRefusedWhole) {
    auto readings = readingsUntil(now().instant, 1200);
    readings[1199].humidity = {101};
    expectRefused<Importing>([&] { return importReadings(shop(), m_place, readings); }, "humidity",
                             "Reading 1,200: ");
    expectRefused<Importing>([&] { return importReadings(shop(), m_place, {}); }, "readings");
    expectRefused<Importing>([&] { return importReadings(shop(), PlaceId{3}, readings); }, "place");
}

TEST_F(FilmActions, ReadingInALogCanBeStopped) {
    const auto readings = readingsUntil(now().instant, 25'000);
    std::vector<double> told;
    const auto stopSecond = [&](double share) {
        told.push_back(share);
        return told.size() < 2;
    };
    expectRefused<Importing>([&] { return importReadings(shop(), m_place, readings, stopSecond); }, "",
                             "Stopped");
    EXPECT_EQ(told, (std::vector<double>{0.4, 0.8}));
}

TEST_F(FilmActions, ReadingInALogCanBeStoppedBeforeItIsKept) {
    const auto readings = readingsUntil(now().instant, 25'000);
    expectRefused<Importing>(
        [&] { return importReadings(shop(), m_place, readings, [](double share) { return share < 1; }); }, "",
        "Stopped");
    ASSERT_TRUE(recordReading(shop(), m_place, readings[3]).ok()); // the journal goes on recording
    ASSERT_TRUE(shop().undo(shop().recent(1).at(0).id).ok());
    EXPECT_TRUE(importReadings(shop(), m_place, readings).ok());
}

TEST_F(FilmActions, MillionReadingsAreReadIn) {
    const auto readings = readingsUntil(now().instant, 1'000'000);
    const auto begin = std::chrono::steady_clock::now();
    const auto imported = importReadings(shop(), m_place, readings);
    const std::chrono::duration<double> took = std::chrono::steady_clock::now() - begin;
    ASSERT_TRUE(imported.ok()) << imported.error().message.english();
    EXPECT_EQ(imported->added, 1'000'000);
    EXPECT_EQ(number("SELECT COUNT(*) FROM climate_reading"), 1'000'000);
    RecordProperty("seconds", std::to_string(took.count()));
}

} // namespace
} // namespace holdfast::db
