// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/places/film_shelf/shelf_words.h"

#include "app/desk/formats.h"

#include <QCoreApplication>
#include <QStringList>

#include <algorithm>
#include <cmath>

namespace holdfast::app {

namespace {

constexpr Days kYearIsPlain{300};

class ShelfWords {
    Q_DECLARE_TR_FUNCTIONS(ShelfWords)
};

const Film& filmOf(const ReckonedShop& shop, const FilmRoll& roll) {
    return shop.facts.films.at(roll.film);
}

QString placeWords(const ReckonedShop& shop, const FilmRoll& roll) {
    const auto place = roll.placeNow();
    const StoragePlace* found = place ? shop.facts.places.find(*place) : nullptr;
    return found ? words(found->name) : ShelfWords::tr("Its place");
}

// "damp", "dry", "hot" or "cold"; humidity is said first. REQUIRES: it is outside now.
QString outsideWord(const RollCondition& condition, const Film& film) {
    const ClimateReading& latest = *condition.latest;
    if (condition.humidityOutsideNow)
        return condition.latestHumidity > film.storage.humidity.high ? ShelfWords::tr("damp")
                                                                     : ShelfWords::tr("dry");
    return latest.temperature > film.storage.temperature.high ? ShelfWords::tr("hot")
                                                              : ShelfWords::tr("cold");
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
    return ShelfWords::tr("Past by %1").arg(dayCount(today - *condition.useBy));
}

QString rangeWords(const RollCondition& condition, LocalDate today) {
    if (condition.useByRange)
        return ShelfWords::tr("estimate %1").arg(spanInShort(*condition.useByRange, today));
    return condition.useByIsEstimate ? ShelfWords::tr("estimate") : QString();
}

Advice spoiltAdvice(const ReckonedShop& shop, const FilmRoll& roll, const RollCondition& condition,
                    const Film& film) {
    const LocalDate today = shop.now.today();
    if (isOutsideNow(condition))
        return {Tone::Held, ShelfWords::tr("Too %1 now.").arg(outsideWord(condition, film)),
                ShelfWords::tr("%1 is at %2, keep %3. Move the roll, or bring the air back within its limits "
                               "and record a reading; then press a test strip.")
                    .arg(placeWords(shop, roll), latestWords(condition), bandThatIsLeft(condition, film)),
                RollAct::Move};
    if (condition.stripFailed)
        return {Tone::Held, ShelfWords::tr("Its test strip failed."),
                ShelfWords::tr(
                    "Nothing is cut from it. Use another roll and write this one off, or press another "
                    "strip."),
                RollAct::TestStrip};
    if (condition.isPastAge(today))
        return {Tone::Held,
                condition.useByIsEstimate
                    ? ShelfWords::tr("%1, by estimate.").arg(pastWords(condition, today))
                    : pastWords(condition, today) + QLatin1Char('.'),
                ShelfWords::tr("Press a test strip; if it grips, the roll is good until %1.")
                    .arg(date(today + film.testStripExtends)),
                RollAct::TestStrip};
    return {Tone::Held, ShelfWords::tr("Badly stored."),
            ShelfWords::tr("%1, %2 are allowed. Press a test strip, or use another roll.")
                .arg(exposureWords(condition, film),
                     hourCount(static_cast<double>(film.storage.allowedOutside.count()))),
            RollAct::TestStrip};
}

Advice staleAdvice(const ReckonedShop& shop, const FilmRoll& roll, const RollCondition& condition) {
    const QString place = placeWords(shop, roll);
    if (!condition.latest)
        return {Tone::Caution, ShelfWords::tr("No reading yet."),
                ShelfWords::tr("The air of %1 is not known.").arg(place), RollAct::RecordReading};
    const auto hours = std::chrono::floor<Hours>(shop.now.instant - condition.latest->at);
    return {Tone::Caution, ShelfWords::tr("No reading for %1.").arg(timeSpan(hours)),
            ShelfWords::tr("%1 was at %2 and %3 then.")
                .arg(place,
                     condition.latestHumidity ? humidity(*condition.latestHumidity)
                                              : ShelfWords::tr("unknown humidity"),
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
    const Days away = day - today;
    return away > kYearIsPlain || away < -kYearIsPlain ? date(day) : valueWords(DayOfMonth{day});
}

QString spanInShort(const DaySpan& span, LocalDate today) {
    return span.last - today > kYearIsPlain ? valueWords(span) : valueWords(NearSpan{span});
}

QString hourCount(double hours) {
    return ShelfWords::tr("%1 h").arg(std::lround(hours));
}

QString humidityBandWords(const Film& film) {
    return humidityBand(film.storage.humidity);
}

QString temperatureBandWords(const Film& film) {
    return temperatureBand(film.storage.temperature);
}

QString exposureWords(const RollCondition& condition, const Film& film) {
    QStringList parts;
    if (std::lround(condition.humidityHoursOutside) > 0)
        parts << ShelfWords::tr("%1 outside %2")
                     .arg(hourCount(condition.humidityHoursOutside), humidityBandWords(film));
    if (std::lround(condition.temperatureHoursOutside) > 0)
        parts << ShelfWords::tr("%1 outside %2")
                     .arg(hourCount(condition.temperatureHoursOutside), temperatureBandWords(film));
    return parts.join(ShelfWords::tr(" and "));
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
            said.lead = ShelfWords::tr("Too %1 now").arg(outsideWord(condition, film));
            said.rest =
                ShelfWords::tr("at %1, keep %2").arg(latestWords(condition), bandThatIsLeft(condition, film));
        } else if (condition.stripFailed) {
            said.lead = ShelfWords::tr("Strip failed");
            said.rest = ShelfWords::tr("use another roll");
        } else if (condition.isPastAge(today)) {
            said.lead = pastWords(condition, today);
            said.rest = condition.useByIsEstimate ? ShelfWords::tr("by estimate: press a test strip first")
                                                  : ShelfWords::tr("press a test strip first");
        } else {
            said.lead = ShelfWords::tr("Badly stored");
            said.rest = exposureWords(condition, film);
        }
        return said;
    }
    if (!condition.useBy) {
        said.lead = ShelfWords::tr("No limit given");
        said.rest = exposureWords(condition, film);
        return said;
    }
    const Days left = *condition.useBy - today;
    said.lead = left == Days{0} ? ShelfWords::tr("Last day") : dayCount(left);
    said.leadInk = left <= kSoon ? &Tokens::weld : &Tokens::ink;
    const QString by = dayInShort(*condition.useBy, today);
    said.rest = condition.extendedByStrip ? ShelfWords::tr("by %1, by its test strip").arg(by)
                                          : ShelfWords::tr("by %1").arg(by);
    said.range = rangeWords(condition, today);
    if (const Days lost = daysLostToWarmth(shop, roll); lost > Days{0})
        said.lost = ShelfWords::tr("%1 lost to warmth").arg(dayCount(lost));
    return said;
}

Advice adviceFor(const ReckonedShop& shop, const FilmRoll& roll) {
    const RollCondition& condition = shop.conditions.at(roll.id);
    const Film& film = filmOf(shop, roll);
    const LocalDate today = shop.now.today();
    if (roll.state == RollState::PutAway)
        return {Tone::Plain,
                ShelfWords::tr("Put away."),
                ShelfWords::tr("Nothing is cut from it until it is back on the shelf."),
                {}};
    if (!condition.mayBeUsed(film, today))
        return spoiltAdvice(shop, roll, condition, film);
    if (!film.recipe)
        return {Tone::Held, ShelfWords::tr("No recipe."),
                ShelfWords::tr("Enter it from the maker’s sheet before anything is pressed."),
                RollAct::Recipe};
    if (!condition.hasPlace)
        return {Tone::Caution, ShelfWords::tr("No place."),
                ShelfWords::tr(
                    "Nobody noted where it is stored, so its age counts at %1. Move it to a storage place.")
                    .arg(celsius(film.ageing.reference)),
                RollAct::Move};
    if (condition.readingIsStale)
        return staleAdvice(shop, roll, condition);
    if (!film.recipe->isConfirmed())
        return {Tone::Caution, ShelfWords::tr("Recipe not confirmed."),
                ShelfWords::tr("Compare it with the maker’s sheet."), RollAct::Recipe};
    const RollForecast* forecast = shop.allotment.forecast(roll.id);
    if (forecast && !forecast->pressEarly.empty())
        return {
            Tone::Caution, ShelfWords::tr("Use it first."),
            ShelfWords::tr("Some of its work is promised for after its use-by: cut and press that early."),
            RollAct::CutWork};
    const bool isSoon = condition.useBy && *condition.useBy - today <= kSoon;
    if (forecast && isSoon && forecast->expectedWaste > Millimetres{0})
        return {Tone::Caution, ShelfWords::tr("Use it first."),
                forecast->decals.empty() ? ShelfWords::tr("Offer this film while it lasts.")
                                         : ShelfWords::tr("Cut what waits for it now."),
                forecast->decals.empty() ? std::nullopt : std::optional{RollAct::CutWork}};
    return {};
}

} // namespace holdfast::app
