// SPDX-License-Identifier: GPL-3.0-or-later
#include "tests/bench/core_shop.h"

#include <cmath>
#include <cstdio>

namespace holdfast::bench {
namespace {

using namespace literals;

constexpr PlaceId kFirstPlace{1};
constexpr int kPlaces = 4;
constexpr BlankStyleId kTee{1};
constexpr ColourId kMoss{1};
constexpr BlankLotId kLot{1};
constexpr PressId kPress{1};
constexpr WashLoadId kLoad{1};
constexpr std::array kTemperatures{130.0, 150.0, 160.0};

Film film(std::int64_t id) {
    Film made;
    made.id = FilmId{id};
    made.finish = "Finish";
    made.shade = std::to_string(id);
    made.shelfLife = Days{365};
    Recipe recipe;
    recipe.temperature = Celsius{kTemperatures[static_cast<std::size_t>(id) % kTemperatures.size()]};
    recipe.dwell = Seconds{12};
    recipe.coolBeforePeel = Seconds{40};
    recipe.confirmedBy = "the maker's sheet";
    made.recipe = recipe;
    return made;
}

FilmRoll roll(std::int64_t id, FilmId of, Days age) {
    FilmRoll made;
    made.id = RollId{id};
    made.number = static_cast<int>(id);
    made.film = of;
    made.width = 500_mm;
    made.receivedOn = benchNow().today() - age;
    made.stays = {
        {PlaceId{kFirstPlace.value + id % kPlaces}, benchNow().toInstant(LocalTime{made.receivedOn})}};
    made.left = 8000_mm;
    return made;
}

double wave(double at, double days, double height) {
    return height * std::sin(at / days * 6.283185307179586);
}

ClimateReading reading(Instant at) {
    const double day = std::chrono::duration<double, Days::period>(at.time_since_epoch()).count();
    return {at, Celsius{19 + wave(day, 1, 1.5) + wave(day, 40, 3)},
            Humidity{43 + wave(day, 1, 3) + wave(day, 23, 6)}};
}

ClimateSeries series(std::size_t readings, std::chrono::seconds every) {
    ClimateSeries made;
    made.reserve(readings);
    const Instant last = benchNow().instant;
    for (std::size_t at = 0; at < readings; ++at)
        made.push_back(reading(last - every * static_cast<std::int64_t>(readings - 1 - at)));
    return made;
}

BlankStyle tee() {
    BlankStyle made;
    made.id = kTee;
    made.name = "Tee";
    made.outline = "tee";
    made.sizes = {"M"};
    made.colours = {{kMoss, "Moss", 0x66754c}};
    made.weight = 180_g;
    FabricLabel label;
    label.fibres = {{Fibre::Cotton, 100}};
    label.highestSafe = 200_C;
    made.label = label;
    return made;
}

Press press() {
    Press made;
    made.id = kPress;
    made.name = "Bench press";
    made.platenWidth = 380_mm;
    made.platenHeight = 380_mm;
    return made;
}

Garment garment(std::int64_t id, const Now& now) {
    Garment made;
    made.id = GarmentId{id};
    made.order = OrderId{id};
    made.style = kTee;
    made.size = "M";
    made.colour = kMoss;
    made.lot = kLot;
    Decal decal;
    decal.id = DecalId{id};
    decal.garment = made.id;
    decal.film = FilmId{1 + id % 12};
    decal.content = Artwork{"heron"};
    decal.below = 75_mm;
    decal.width = 200_mm;
    decal.height = 275_mm;
    decal.confirmedBy = "at the table";
    decal.cutFrom = RollId{1 + id % 12};
    decal.cutAt = now.instant - Hours{20};
    made.decals = {decal};
    return made;
}

} // namespace

Now benchNow() {
    return {std::chrono::sys_days{std::chrono::year{2026} / 11 / 11} + Minutes{8 * 60 + 30}, Seconds{0}};
}

ShopFacts readyGarments(int garments) {
    const Now now = benchNow();
    ShopFacts facts;
    for (std::int64_t id = 1; id <= 12; ++id) {
        facts.films.add(film(id));
        facts.rolls.add(roll(id, FilmId{id}, Days{40}));
    }
    facts.styles.add(tee());
    facts.presses.add(press());
    facts.pressChecks = {{kPress, now.instant - Hours{30}, 150_C, {149_C, 150_C, 151_C}, "the maker"}};
    WashLoad load;
    load.id = kLoad;
    load.startedAt = now.instant - Hours{40};
    load.dryAt = now.instant - Hours{20};
    facts.loads.add(load);
    BlankLot lot;
    lot.id = kLot;
    lot.style = kTee;
    lot.size = "M";
    lot.colour = kMoss;
    lot.lastLoad = kLoad;
    lot.unitsLeft = garments + 50;
    facts.lots.add(lot);
    for (std::int64_t id = 1; id <= garments; ++id) {
        Order order;
        order.id = OrderId{id};
        order.number = id;
        order.promised = LocalTime{now.today()} + Days{1 + id * 7 % 21} + Hours{15};
        facts.orders.add(order);
        facts.garments.add(garment(id, now));
    }
    return facts;
}

ClimateSeries quarterHours(std::size_t readings) {
    return series(readings, Minutes{15});
}

RollsInClimate rollsOnShelves(int rolls) {
    RollsInClimate made;
    for (std::int64_t id = 1; id <= 12; ++id)
        made.facts.films.add(film(id));
    for (std::int64_t id = 1; id <= rolls; ++id)
        made.facts.rolls.add(roll(id, FilmId{1 + id % 12}, Days{20 + id * 37 % 500}));
    for (int at = 0; at < kPlaces; ++at) {
        const PlaceId place{kFirstPlace.value + at};
        made.facts.places.add({place, "Place " + std::to_string(at)});
        made.climate[place] = std::make_shared<const ClimateSeries>(series(540 * 12, Hours{2}));
    }
    return made;
}

std::string loggerFile(std::size_t lines) {
    std::string text = "time,temperature (C),humidity (%)\n";
    text.reserve(lines * 32);
    for (const ClimateReading& each : series(lines, Minutes{2})) {
        char line[64];
        const int length =
            std::snprintf(line, sizeof line, ",%.2f,%.2f\n", each.temperature.value, each.humidity.percent);
        text += isoInstant(each.at);
        text.append(line, static_cast<std::size_t>(length));
    }
    return text;
}

} // namespace holdfast::bench
