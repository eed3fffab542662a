// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/places/film_shelf/roll_air.h"

#include "app/desk/formats.h"
#include "app/places/film_shelf/shelf_words.h"

#include <algorithm>
#include <cmath>
#include <functional>
#include <iterator>
#include <utility>

namespace holdfast::app {

namespace {

constexpr std::ptrdiff_t kLabelled = 12; // spells of a measure; more have no room

std::vector<AirPiece> airOf(const ReckonedShop& shop, const FilmRoll& roll, Instant from, Instant to,
                            bool beginsBefore) {
    std::vector<AirPiece> air;
    for (std::size_t at = 0; at < roll.stays.size(); ++at) {
        const RollStay& stay = roll.stays[at];
        const Instant ends = at + 1 < roll.stays.size() ? roll.stays[at + 1].since : to;
        const Instant begins = at == 0 && beginsBefore ? from : std::max(from, stay.since);
        const auto place = shop.climate.find(stay.place);
        if (place != shop.climate.end() && place->second && begins < std::min(ends, to))
            air.push_back({place->second, begins, std::min(ends, to)});
    }
    return air;
}

// The readings that matter between two instants, with one to each side.
ClimateSeries sliced(const ClimateSeries& series, Instant from, Instant to) {
    auto first = std::ranges::lower_bound(series, from, {}, &ClimateReading::at);
    auto last = std::ranges::upper_bound(series, to, {}, &ClimateReading::at);
    if (first != series.begin())
        --first;
    if (last != series.end())
        ++last;
    return {first, last};
}

Band<double> bandOf(const Film& film, Measure measure) {
    if (measure == Measure::Humidity)
        return {film.storage.humidity.low.percent, film.storage.humidity.high.percent};
    return {film.storage.temperature.low.value, film.storage.temperature.high.value};
}

} // namespace

Instant exposureSince(const ReckonedShop& shop, const FilmRoll& roll) {
    if (const TestStrip* strip = roll.lastPassedStrip())
        return strip->at;
    return shop.now.toInstant(LocalTime{roll.receivedOn});
}

std::vector<Spell> spellsOutside(const ReckonedShop& shop, const FilmRoll& roll, Measure measure,
                                 Instant from, Instant to) {
    const Band<double> band = bandOf(shop.facts.films.at(roll.film), measure);
    std::vector<Spell> spells;
    for (const AirPiece& piece : airOf(shop, roll, std::max(from, exposureSince(shop, roll)), to, false)) {
        const ClimateSeries readings = sliced(*piece.readings, piece.from, piece.to);
        const ExposureCurve curve(readings, measure, band.low, band.high);
        const auto here = curve.spellsBetween(piece.from, piece.to);
        spells.insert(spells.end(), here.begin(), here.end());
    }
    return spells;
}

std::vector<DayMark> dayMarks(const ReckonedShop& shop, const ClimateWindow& window) {
    std::vector<DayMark> marks;
    for (const int part : {0, 1, 2}) {
        const Instant at = window.from + (window.to - window.from) * part / 2;
        marks.push_back({at, dayInShort(dateOf(shop.now.toLocal(at)), shop.now.today())});
    }
    return marks;
}

void addLongest(std::vector<Spell> spells, Measure measure, std::vector<LabelledSpell>& labelled) {
    const auto longest = spells.begin() + std::min<std::ptrdiff_t>(kLabelled, std::ssize(spells));
    std::ranges::partial_sort(spells, longest, std::greater{}, &Spell::hours);
    for (auto spell = spells.begin(); spell != longest; ++spell)
        labelled.push_back({measure, *spell, hourCount(spell->hours())});
}

RollPicture pictureOf(const ReckonedShop& shop, const FilmRoll& roll, const ClimateWindow& window) {
    const Film& film = shop.facts.films.at(roll.film);
    RollPicture shown;
    ClimatePicture& picture = shown.picture;
    picture.from = window.from;
    picture.to = window.to;
    picture.countedFrom = std::max(picture.from, exposureSince(shop, roll));
    picture.air = airOf(shop, roll, picture.from, picture.to, true);
    picture.humidity = film.storage.humidity;
    picture.temperature = film.storage.temperature;
    for (const Measure measure : {Measure::Humidity, Measure::Temperature}) {
        std::vector<Spell> spells = spellsOutside(shop, roll, measure, picture.from, picture.to);
        for (const Spell& spell : spells)
            shown.humidityHoursOutside += measure == Measure::Humidity ? spell.hours() : 0;
        addLongest(std::move(spells), measure, picture.spells);
    }
    picture.days = dayMarks(shop, window);
    if (const auto& latest = shop.conditions.at(roll.id).latest; latest && latest->at >= picture.from) {
        picture.humidityNow = latest->hasHumidity ? humidity(latest->humidity) : QString();
        picture.temperatureNow = celsius(Celsius{std::round(latest->temperature.value)});
    }
    return shown;
}

} // namespace holdfast::app
