// SPDX-License-Identifier: GPL-3.0-or-later
#include "db/demo/demo_climate.h"

#include "db/actions/film_actions.h"
#include "db/demo/demo_workshop.h"

#include <algorithm>
#include <cmath>
#include <numbers>

namespace holdfast::db::demo {
namespace {

constexpr Hours kEvery{2};
constexpr int kDaysBetweenImports = 7;
// On no day of reading the loggers out is the air too damp: film is cut and pressed in the week that follows.
constexpr int kFirstImport = kFirstDay + 2;

// Something that swells and goes again: days from `on`, at its height there.
struct Spell {
    double middle = 0;
    double halfWidth = 1; // days
    double height = 0;

    double at(double day) const {
        const double away = std::abs(day - middle) / halfWidth;
        if (away >= 1)
            return 0;
        const double wave = std::cos(away * std::numbers::pi / 2);
        return height * wave * wave;
    }
};

// A wave through the day or through the weeks.
struct Swing {
    double days = 1;
    double shift = 0; // days
    double height = 0;

    double at(double day) const { return height * std::sin((day - shift) / days * 2 * std::numbers::pi); }
};

struct Weather {
    double level = 0;
    std::vector<Swing> swings;
    std::vector<Spell> spells;

    double at(double day) const {
        double sum = level;
        for (const Swing& swing : swings)
            sum += swing.at(day);
        for (const Spell& spell : spells)
            sum += spell.at(day);
        return std::round(sum * 10) / 10;
    }
};

struct SilentTime {
    double begins = 0;
    double ends = 0;
};

struct Room {
    std::string place;
    Weather temperature;
    Weather humidity;
    std::vector<SilentTime> silent; // the logger wrote nothing
};

Room filmShelf() {
    return {kFilmShelf,
            {19.6, {{1, 0.4, 0.7}, {26, 3, 0.5}}, {{-70, 2.5, 6.5}}},
            {41.2, {{1, 0.05, 1.5}, {19, -4, 1.5}}, {{-20.5, 1.55, 19}, {-7.2, 0.9, 15}}},
            {{-61.4, -57.3}}};
}

Room backRoom() {
    return {kBackRoom,
            {17.6, {{1, 0.42, 1.2}, {31, 0, 0.8}}, {{-70, 2.5, 14}}},
            {44.0, {{1, 0.1, 2.0}, {23, 2, 2}}, {{-42, 5, 24}}},
            {{-1.6, 1}}};
}

// Readings from one local time until before the other.
std::vector<ClimateReading> readingsOf(const Room& room, const Script& script, LocalTime from,
                                       LocalTime until) {
    std::vector<ClimateReading> readings;
    for (LocalTime time = from; time < until; time += kEvery) {
        const double day =
            std::chrono::duration<double, Days::period>(time - LocalTime{script.day(0)}).count();
        const bool isSilent = std::ranges::any_of(
            room.silent, [&](const SilentTime& each) { return day > each.begins && day < each.ends; });
        if (!isSilent)
            readings.push_back({script.now().toInstant(time), Celsius{room.temperature.at(day)},
                                Humidity{room.humidity.at(day)}});
    }
    return readings;
}

void import(Script& script, const Room& room, LocalTime from) {
    const auto readings = readingsOf(room, script, from, script.now().local());
    if (!readings.empty())
        done(importReadings(script.shop(), script.named.places.at(room.place), readings));
}

void writeRoom(Script& script, const Room& room, Seconds timeOfDay) {
    LocalTime from = script.time(kFirstDay - 1, Seconds{0});
    for (int day = kFirstImport; day < 0; day += kDaysBetweenImports) {
        script.at(day, timeOfDay, [&script, room, from] { import(script, room, from); });
        // The next one begins where this one ends, at the logger's own even hours.
        const auto even = std::chrono::ceil<Hours>(timeOfDay);
        from = script.time(day, even + even % kEvery);
    }
    script.at(0, clockAt(8, 32), [&script, room, from] { import(script, room, from); });
}

} // namespace

void writeClimate(Script& script) {
    script.at(kFirstDay, clockAt(8, 5), [&script] {
        for (const char* place : {kFilmShelf, kBackRoom})
            script.named.places[place] = done(addPlace(script.shop(), place));
    });
    writeRoom(script, filmShelf(), clockAt(8, 20));
    writeRoom(script, backRoom(), clockAt(8, 25));
}

} // namespace holdfast::db::demo
