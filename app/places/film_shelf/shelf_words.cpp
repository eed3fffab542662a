// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/places/film_shelf/shelf_words.h"

#include "app/desk/formats.h"
#include "core/trade/unit_words.h"

#include <QCoreApplication>
#include <QStringList>

#include <algorithm>
#include <cmath>

namespace holdfast::app {

namespace {

constexpr Days kYearIsPlain{300};

QString inFilmShelf(const char* text) {
    return QCoreApplication::translate("FilmShelf", text);
}

const Film& filmOf(const ReckonedShop& shop, const FilmRoll& roll) {
    return shop.facts.films.at(roll.film);
}

QString placeWords(const ReckonedShop& shop, const FilmRoll& roll) {
    const auto place = roll.placeNow();
    const StoragePlace* found = place ? shop.facts.places.find(*place) : nullptr;
    return found ? words(found->name) : inFilmShelf("Its place");
}

// "damp", "dry", "hot" or "cold"; humidity is said first. REQUIRES: it is outside now.
QString outsideWord(const RollCondition& condition, const Film& film) {
    const ClimateReading& latest = *condition.latest;
    if (condition.humidityOutsideNow)
        return condition.latestHumidity > film.storage.humidity.high ? inFilmShelf("damp")
                                                                     : inFilmShelf("dry");
    return latest.temperature > film.storage.temperature.high ? inFilmShelf("hot") : inFilmShelf("cold");
}

QString latestWords(const RollCondition& condition) {
    return condition.humidityOutsideNow ? humidity(*condition.latestHumidity)
                                        : celsius(condition.latest->temperature);
}

QString bandThatIsLeft(const RollCondition& condition, const Film& film) {
    return condition.humidityOutsideNow ? humidityBandWords(film) : temperatureBandWords(film);
}

bool isOutsideNow(const RollCondition& condition) {
    return condition.latest && condition.isOutsideNow();
}

QString pastWords(const RollCondition& condition, LocalDate today) {
    return inFilmShelf("Past by %1").arg(dayCount(today - *condition.useBy));
}

QString rangeWords(const RollCondition& condition, LocalDate today) {
    if (condition.useByRange)
        return inFilmShelf("estimate %1").arg(spanInShort(*condition.useByRange, today));
    return condition.useByIsEstimate ? inFilmShelf("estimate") : QString();
}

Advice spoiltAdvice(const ReckonedShop& shop, const FilmRoll& roll, const RollCondition& condition,
                    const Film& film) {
    const LocalDate today = shop.now.today();
    if (isOutsideNow(condition))
        return {Tone::Held, inFilmShelf("Too %1 now.").arg(outsideWord(condition, film)),
                inFilmShelf("%1 is at %2, keep %3. Move the roll, or bring the air back within its limits "
                            "and record a reading; then press a test strip.")
                    .arg(placeWords(shop, roll), latestWords(condition), bandThatIsLeft(condition, film)),
                RollAct::Move};
    if (condition.stripFailed)
        return {
            Tone::Held, inFilmShelf("Its test strip failed."),
            inFilmShelf("Nothing is cut from it. Use another roll and write this one off, or press another "
                        "strip."),
            RollAct::TestStrip};
    if (condition.isPastAge(today))
        return {Tone::Held,
                condition.useByIsEstimate ? inFilmShelf("%1, by estimate.").arg(pastWords(condition, today))
                                          : pastWords(condition, today) + QLatin1Char('.'),
                inFilmShelf("Press a test strip; if it grips, the roll is good until %1.")
                    .arg(date(today + film.testStripExtends)),
                RollAct::TestStrip};
    return {Tone::Held, inFilmShelf("Badly stored."),
            inFilmShelf("%1, %2 are allowed. Press a test strip, or use another roll.")
                .arg(exposureWords(condition, film),
                     hourCount(static_cast<double>(film.storage.allowedOutside.count()))),
            RollAct::TestStrip};
}

Advice staleAdvice(const ReckonedShop& shop, const FilmRoll& roll, const RollCondition& condition) {
    const QString place = placeWords(shop, roll);
    if (!condition.latest)
        return {Tone::Caution, inFilmShelf("No reading yet."),
                inFilmShelf("The air of %1 is not known.").arg(place), RollAct::RecordReading};
    const auto hours = std::chrono::floor<Hours>(shop.now.instant - condition.latest->at);
    return {Tone::Caution, inFilmShelf("No reading for %1.").arg(timeSpan(hours)),
            inFilmShelf("%1 was at %2 and %3 then.")
                .arg(place,
                     condition.latestHumidity ? humidity(*condition.latestHumidity)
                                              : inFilmShelf("unknown humidity"),
                     celsius(condition.latest->temperature)),
            RollAct::RecordReading};
}

} // namespace

std::optional<LocalDate> limitWithoutWarmth(const Film& film, const FilmRoll& roll) {
    std::optional<LocalDate> limit = roll.printedUseBy;
    if (film.shelfLife) {
        const LocalDate byAge = roll.agesFrom() + *film.shelfLife;
        limit = limit ? std::min(*limit, byAge) : byAge;
    }
    return limit;
}

Days daysLostToWarmth(const ReckonedShop& shop, const FilmRoll& roll) {
    const RollCondition& condition = shop.conditions.at(roll.id);
    const auto limit = limitWithoutWarmth(filmOf(shop, roll), roll);
    if (!limit || !condition.useBy || condition.extendedByStrip)
        return Days{0};
    return std::max(Days{0}, *limit - *condition.useBy);
}

QString dayInShort(LocalDate day, LocalDate today) {
    const QString whole = date(day);
    const Days away = day - today;
    return away > kYearIsPlain || away < -kYearIsPlain ? whole
                                                       : whole.left(whole.lastIndexOf(QLatin1Char(' ')));
}

QString spanInShort(const DaySpan& span, LocalDate today) {
    return words(span.last - today > kYearIsPlain ? spokenSpan(span) : nearSpan(span));
}

QString hourCount(double hours) {
    return inFilmShelf("%1 h").arg(std::lround(hours));
}

QString humidityBandWords(const Film& film) {
    const Band<Humidity>& band = film.storage.humidity;
    return words(bandWords(band.low.percent, band.high.percent, "%"));
}

QString temperatureBandWords(const Film& film) {
    const Band<Celsius>& band = film.storage.temperature;
    return words(bandWords(band.low.value, band.high.value, "°C"));
}

QString exposureWords(const RollCondition& condition, const Film& film) {
    QStringList parts;
    if (std::lround(condition.humidityHoursOutside) > 0)
        parts << inFilmShelf("%1 outside %2")
                     .arg(hourCount(condition.humidityHoursOutside), humidityBandWords(film));
    if (std::lround(condition.temperatureHoursOutside) > 0)
        parts << inFilmShelf("%1 outside %2")
                     .arg(hourCount(condition.temperatureHoursOutside), temperatureBandWords(film));
    return parts.join(inFilmShelf(" and "));
}

QString TailWords::inOneLine() const {
    QStringList parts{lead};
    for (const QString& part : {rest, range, lost})
        if (!part.isEmpty())
            parts << part;
    return parts.join(QStringLiteral(", "));
}

TailWords tailWords(const ReckonedShop& shop, const FilmRoll& roll) {
    const RollCondition& condition = shop.conditions.at(roll.id);
    const Film& film = filmOf(shop, roll);
    const LocalDate today = shop.now.today();
    TailWords said;
    if (!condition.mayBeUsed(film, today)) {
        said.iconName = QStringLiteral("hold");
        said.leadInk = &Tokens::madder;
        if (isOutsideNow(condition)) {
            said.lead = inFilmShelf("Too %1 now").arg(outsideWord(condition, film));
            said.rest =
                inFilmShelf("at %1, keep %2").arg(latestWords(condition), bandThatIsLeft(condition, film));
        } else if (condition.stripFailed) {
            said.lead = inFilmShelf("Strip failed");
            said.rest = inFilmShelf("use another roll");
        } else if (condition.isPastAge(today)) {
            said.lead = pastWords(condition, today);
            said.rest = condition.useByIsEstimate ? inFilmShelf("by estimate: press a test strip first")
                                                  : inFilmShelf("press a test strip first");
        } else {
            said.lead = inFilmShelf("Badly stored");
            said.rest = exposureWords(condition, film);
        }
        return said;
    }
    if (!condition.useBy) {
        said.lead = inFilmShelf("No limit given");
        said.rest = exposureWords(condition, film);
        return said;
    }
    const Days left = *condition.useBy - today;
    said.lead = left == Days{0} ? inFilmShelf("Last day") : dayCount(left);
    said.leadInk = left <= kSoon ? &Tokens::weld : &Tokens::ink;
    const QString by = dayInShort(*condition.useBy, today);
    said.rest = condition.extendedByStrip ? inFilmShelf("by %1, by its test strip").arg(by)
                                          : inFilmShelf("by %1").arg(by);
    said.range = rangeWords(condition, today);
    if (const Days lost = daysLostToWarmth(shop, roll); lost > Days{0})
        said.lost = inFilmShelf("%1 lost to warmth").arg(dayCount(lost));
    return said;
}

Advice adviceFor(const ReckonedShop& shop, const FilmRoll& roll) {
    const RollCondition& condition = shop.conditions.at(roll.id);
    const Film& film = filmOf(shop, roll);
    const LocalDate today = shop.now.today();
    if (roll.state == RollState::PutAway)
        return {Tone::Plain,
                inFilmShelf("Put away."),
                inFilmShelf("Nothing is cut from it until it is back on the shelf."),
                {}};
    if (!condition.mayBeUsed(film, today))
        return spoiltAdvice(shop, roll, condition, film);
    if (!film.recipe)
        return {Tone::Held, inFilmShelf("No recipe."),
                inFilmShelf("Enter it from the maker’s sheet before anything is pressed."), RollAct::Recipe};
    if (!condition.hasPlace)
        return {Tone::Caution, inFilmShelf("No place."),
                inFilmShelf(
                    "Nobody noted where it is stored, so its age counts at %1. Move it to a storage place.")
                    .arg(celsius(film.ageing.reference)),
                RollAct::Move};
    if (condition.readingIsStale)
        return staleAdvice(shop, roll, condition);
    if (!film.recipe->isConfirmed())
        return {Tone::Caution, inFilmShelf("Recipe not confirmed."),
                inFilmShelf("Compare it with the maker’s sheet."), RollAct::Recipe};
    const RollForecast* forecast = shop.allotment.forecast(roll.id);
    if (forecast && !forecast->pressEarly.empty())
        return {Tone::Caution, inFilmShelf("Use it first."),
                inFilmShelf("Some of its work is promised for after its use-by: cut and press that early."),
                RollAct::CutWork};
    const bool isSoon = condition.useBy && *condition.useBy - today <= kSoon;
    if (forecast && isSoon && forecast->expectedWaste > Millimetres{0})
        return {Tone::Caution, inFilmShelf("Use it first."),
                forecast->decals.empty() ? inFilmShelf("Offer this film while it lasts.")
                                         : inFilmShelf("Cut what waits for it now."),
                forecast->decals.empty() ? std::nullopt : std::optional{RollAct::CutWork}};
    return {};
}

} // namespace holdfast::app
