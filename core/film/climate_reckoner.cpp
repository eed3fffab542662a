// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/film/roll_condition.h"

#include "core/film/ageing.h"
#include "core/film/ageing_outlook.h"
#include "core/film/both_outside.h"
#include "core/film/exposure.h"

#include <algorithm>
#include <cmath>
#include <tuple>
#include <utility>

namespace holdfast {

namespace {

// Cold storage slows ageing until its end lies beyond any calendar; a century says as much.
constexpr double kFarthestDays = 36'500;

// Running sums that no reckoning asked for this many times over belong to a model that was changed.
constexpr std::uint64_t kKeptUnasked = 16;

// A stretch of time in one place.
struct Span {
    PlaceId place;
    Instant begins;
    Instant ends;
};

// Where the roll was between two instants, latest first. A stay recorded later counts where a clock that
// was set back makes two overlap, so that no hour counts twice.
std::vector<Span> spansOf(const FilmRoll& roll, Instant from, Instant to) {
    std::vector<Span> spans;
    Instant ends = to;
    for (auto stay = roll.stays.rbegin(); stay != roll.stays.rend() && ends > from; ++stay) {
        const Instant begins = std::max(stay->since, from);
        if (begins < ends) {
            spans.push_back({stay->place, begins, ends});
            ends = begins;
        }
    }
    return spans;
}

const ClimateReading* latestBefore(const ClimateSeries& series, Instant now) {
    const auto next = std::ranges::upper_bound(series, now, {}, &ClimateReading::at);
    return next == series.begin() ? nullptr : &*std::prev(next);
}

// Of this reading, or of the last one before it that has a humidity.
std::optional<Humidity> latestHumidityUpTo(const ClimateSeries& series, const ClimateReading& latest) {
    for (const ClimateReading* reading = &latest;; --reading) {
        if (reading->hasHumidity)
            return reading->humidity;
        if (reading == series.data())
            return std::nullopt;
    }
}

// The latest instant from which on there are that many days of one kind up to `ends`, to the second.
// REQUIRES: that there are as many from `begins`.
Instant latestSince(const AgeingCurve& curve, Instant begins, Instant ends, double AgeingCurve::Age::* kind,
                    double days) {
    Instant enough = begins;
    Instant tooLate = ends;
    while (tooLate - enough > Seconds{1}) {
        const Instant middle = enough + (tooLate - enough) / 2;
        (curve.between(middle, ends).*kind >= days ? enough : tooLate) = middle;
    }
    return enough;
}

LocalDate dateAfter(const Now& now, double days) {
    const double seconds = std::clamp(days, -kFarthestDays, kFarthestDays) * 86'400.0;
    return dateOf(now.local() + Seconds{std::llround(seconds)});
}

// An extension counts until a later strip fails.
std::optional<LocalDate> extendedTo(const FilmRoll& roll, const Now& now) {
    std::optional<LocalDate> until;
    for (const TestStrip& strip : roll.testStrips) {
        if (!strip.passed) {
            until.reset();
            continue;
        }
        const LocalDate reaches = dateOf(now.toLocal(strip.at)) + strip.extends;
        until = until ? std::max(*until, reaches) : reaches;
    }
    return until;
}

// The day on which it reaches the shelf life. `ahead`: the days until then, where it is not that old yet.
LocalDate dayByWarmth(const FilmRoll& roll, const std::optional<Instant>& reached, double ahead,
                      const Now& now) {
    const Days waits = std::max(Days{0}, roll.agesFrom() - now.today()); // not made yet
    return reached ? dateOf(now.toLocal(*reached)) : dateAfter(now, ahead) + waits;
}

// Never later than the printed day, and never earlier than the day that a test strip gives.
void findUseBy(RollCondition& condition, const FilmRoll& roll, const Film& film,
               const std::optional<Instant>& reached, const DaysAhead& ahead, const Now& now) {
    const std::optional<LocalDate> extended = extendedTo(roll, now);
    const auto withStrip = [&](LocalDate day) { return extended ? std::max(day, *extended) : day; };
    const auto withPrinted = [&](LocalDate day) {
        return roll.printedUseBy ? std::min(day, *roll.printedUseBy) : day;
    };
    const auto byWarmth = [&](double days) { return withPrinted(dayByWarmth(roll, reached, days, now)); };

    std::optional<LocalDate> unextended = roll.printedUseBy;
    if (film.shelfLife)
        unextended = byWarmth(ahead.usual);
    if (!unextended)
        return;
    condition.useBy = withStrip(*unextended);
    condition.extendedByStrip = *condition.useBy > *unextended;
    if (!film.shelfLife)
        return;
    const DaySpan range{withStrip(byWarmth(ahead.fast)), withStrip(byWarmth(ahead.slow))};
    if (range.first < range.last)
        condition.useByRange = range;
    condition.useByIsEstimate = condition.useByRange.has_value() ||
                                (!condition.extendedByStrip && condition.useBy != roll.printedUseBy);
}

const std::shared_ptr<const ClimateSeries>* seriesOf(const ClimateHistory& climate, PlaceId place) {
    const auto found = climate.find(place);
    return found == climate.end() || !found->second || found->second->empty() ? nullptr : &found->second;
}

// The place it is in now, by its latest reading. Readings that lie in the future wait for their time.
void findPresent(RollCondition& condition, const FilmRoll& roll, const Film& film,
                 const ClimateHistory& climate, const ShopSettings& settings, const Now& now) {
    const std::optional<PlaceId> place = roll.placeNow();
    condition.hasPlace = place.has_value();
    condition.readingIsStale = true;
    const auto* series = place ? seriesOf(climate, *place) : nullptr;
    const ClimateReading* latest = series ? latestBefore(**series, now.instant) : nullptr;
    if (!latest)
        return;
    condition.latest = *latest;
    condition.readingIsStale = now.instant - latest->at > settings.readingsGoStaleAfter;
    condition.latestHumidity = latestHumidityUpTo(**series, *latest);
    condition.humidityOutsideNow =
        condition.latestHumidity && !film.storage.humidity.contains(*condition.latestHumidity);
    condition.temperatureOutsideNow = !film.storage.temperature.contains(latest->temperature);
}

} // namespace

struct ClimateReckoner::Sums {
    using Series = std::shared_ptr<const ClimateSeries>;
    using SeriesKey = const ClimateSeries*;
    using ExposureKey = std::tuple<SeriesKey, Measure, double, double>;
    using BothKey = std::pair<ExposureKey, ExposureKey>;

    // Holds its series, so that no other can come to lie at the same address.
    template <class Curve>
    struct Kept {
        Series series;
        Curve curve;
        std::uint64_t askedAt = 0;
    };

    std::map<std::pair<SeriesKey, AgeingModel>, Kept<AgeingCurve>> ageing;
    std::map<ExposureKey, Kept<ExposureCurve>> exposure;
    std::map<BothKey, Kept<BothOutside>> both;
    std::map<SeriesKey, Series> beginnings; // of series, among those that are kept; none: null
    std::map<std::pair<SeriesKey, AgeingModel>, AgeingOutlook> outlooks; // of this reckoning
    std::uint64_t reckoning = 0;

    const AgeingCurve& ageingOf(const Series& series, const AgeingModel& model) {
        const auto key = std::pair{series.get(), model};
        auto at = ageing.find(key);
        if (at == ageing.end()) {
            const auto shorter = ageing.find({beginningOf(series).get(), model});
            AgeingCurve curve =
                shorter != ageing.end() ? shorter->second.curve.goneOn(*series) : AgeingCurve{*series, model};
            at = ageing.emplace(key, Kept<AgeingCurve>{series, std::move(curve)}).first;
        }
        at->second.askedAt = reckoning;
        return at->second.curve;
    }

    // A series that was summed before and that this one begins with: a reading was added after it.
    const Series& beginningOf(const Series& series) {
        const auto [found, isNew] = beginnings.try_emplace(series.get());
        if (isNew) {
            for (const auto& [key, kept] : ageing) {
                if (kept.series->size() <= series->size() && !kept.series->empty() &&
                    kept.series->back() == (*series)[kept.series->size() - 1] &&
                    std::ranges::equal(*kept.series, std::span{*series}.first(kept.series->size())))
                    found->second = kept.series;
            }
        }
        return found->second;
    }

    // Of a storage place with these readings; null: with none.
    const AgeingOutlook& outlookOf(const Series* series, const AgeingModel& model, const Now& now) {
        const auto key = std::pair{series ? series->get() : nullptr, model};
        if (const auto known = outlooks.find(key); known != outlooks.end())
            return known->second;
        const AgeingOutlook outlook =
            series ? AgeingOutlook{ageingOf(*series, model), (*series)->front().at, model, now}
                   : AgeingOutlook{model, now};
        return outlooks.emplace(key, outlook).first->second;
    }

    const ExposureCurve& exposureOf(const Series& series, Measure measure, double low, double high) {
        const ExposureKey key{series.get(), measure, low, high};
        auto at = exposure.find(key);
        if (at == exposure.end()) {
            const auto shorter = exposure.find({beginningOf(series).get(), measure, low, high});
            ExposureCurve curve = shorter != exposure.end() ? shorter->second.curve.goneOn(*series)
                                                            : ExposureCurve{*series, measure, low, high};
            at = exposure.emplace(key, Kept<ExposureCurve>{series, std::move(curve)}).first;
        }
        at->second.askedAt = reckoning;
        return at->second.curve;
    }

    // Of a series over which the two curves run.
    const BothOutside& bothOf(const Series& series, const Film& film) {
        const auto& humidity = film.storage.humidity;
        const auto& temperature = film.storage.temperature;
        const auto keyOver = [&](SeriesKey each) {
            return BothKey{{each, Measure::Humidity, humidity.low.percent, humidity.high.percent},
                           {each, Measure::Temperature, temperature.low.value, temperature.high.value}};
        };
        auto at = both.find(keyOver(series.get()));
        if (at == both.end()) {
            const Series& shorter = beginningOf(series);
            const auto begun = both.find(keyOver(shorter.get()));
            const bool goesOn = begun != both.end() && allHaveHumidity(*series);
            BothOutside hours = goesOn ? begun->second.curve : BothOutside{};
            hours.add(exposureOf(series, Measure::Humidity, humidity.low.percent, humidity.high.percent),
                      exposureOf(series, Measure::Temperature, temperature.low.value, temperature.high.value),
                      goesOn ? shorter->back().at : series->front().at, series->back().at);
            at = both.emplace(keyOver(series.get()), Kept<BothOutside>{series, std::move(hours)}).first;
        }
        at->second.askedAt = reckoning;
        return at->second.curve;
    }

    // What belongs to readings that were replaced, or to a model that was changed.
    void dropUnused(const ClimateHistory& climate) {
        const auto isUnused = [&](const auto& entry) {
            const auto& kept = entry.second;
            const bool isCurrent = std::ranges::any_of(
                climate, [&](const auto& place) { return place.second.get() == kept.series.get(); });
            return !isCurrent || reckoning - kept.askedAt > kKeptUnasked;
        };
        std::erase_if(ageing, isUnused);
        std::erase_if(exposure, isUnused);
        std::erase_if(both, isUnused);
        beginnings.clear();
    }

    void findAge(RollCondition& condition, const FilmRoll& roll, const Film& film,
                 const ClimateHistory& climate, const Now& now);
    std::optional<Instant> shelfLifeReached(const RollCondition& condition, const FilmRoll& roll,
                                            const Film& film, const ClimateHistory& climate, const Now& now);
    DaysAhead shelfLifeAhead(const RollCondition& condition, const FilmRoll& roll, const Film& film,
                             const ClimateHistory& climate, const Now& now);
    void findExposure(RollCondition& condition, const FilmRoll& roll, const Film& film,
                      const ClimateHistory& climate, const Now& now);
};

// Age by warmth over the roll's whole life.
void ClimateReckoner::Sums::findAge(RollCondition& condition, const FilmRoll& roll, const Film& film,
                                    const ClimateHistory& climate, const Now& now) {
    const Instant from = now.toInstant(LocalTime{roll.agesFrom()});
    if (from >= now.instant)
        return;
    condition.calendarAge = std::max(Days{0}, now.today() - roll.agesFrom());

    double placed = 0; // days that lie in some stay
    for (const Span& span : spansOf(roll, from, now.instant)) {
        const Series* series = seriesOf(climate, span.place);
        if (!series)
            continue;
        placed += daysBetween(span.begins, span.ends);
        const AgeingCurve& curve = ageingOf(*series, film.ageing);
        const AgeingCurve::Age age = curve.between(span.begins, span.ends);
        condition.effectiveDays += age.effectiveDays;
        condition.unrecordedDays += age.unrecordedDays;
    }
    // Before the first stay, and in a place without readings, nothing is recorded.
    const double elsewhere = std::max(0.0, daysBetween(from, now.instant) - placed);
    condition.effectiveDays += elsewhere;
    condition.unrecordedDays += elsewhere;
}

// When its age by warmth was the shelf life, by the readings; none where it is not that old yet. Looked for
// from now backwards, through what it gained since.
std::optional<Instant> ClimateReckoner::Sums::shelfLifeReached(const RollCondition& condition,
                                                               const FilmRoll& roll, const Film& film,
                                                               const ClimateHistory& climate,
                                                               const Now& now) {
    if (!film.shelfLife)
        return std::nullopt;
    double gained = condition.effectiveDays - static_cast<double>(film.shelfLife->count());
    if (gained < 0)
        return std::nullopt;
    const auto daysBefore = [](Instant instant, double days) {
        return instant - Seconds{std::llround(days * 86'400)};
    };
    Instant until = now.instant; // where nothing is recorded, a day counts as one
    for (const Span& span : spansOf(roll, now.toInstant(LocalTime{roll.agesFrom()}), now.instant)) {
        const double unplaced = daysBetween(span.ends, until);
        if (unplaced >= gained)
            break;
        gained -= unplaced;
        until = span.ends;
        const Series* series = seriesOf(climate, span.place);
        if (!series)
            continue;
        const AgeingCurve& curve = ageingOf(*series, film.ageing);
        const double here = curve.between(span.begins, span.ends).effectiveDays;
        if (here >= gained)
            return latestSince(curve, span.begins, span.ends, &AgeingCurve::Age::effectiveDays, gained);
        gained -= here;
        until = span.begins;
    }
    return daysBefore(until, gained);
}

// Days until its age by warmth is the shelf life, by what the place in which it is now may be like.
DaysAhead ClimateReckoner::Sums::shelfLifeAhead(const RollCondition& condition, const FilmRoll& roll,
                                                const Film& film, const ClimateHistory& climate,
                                                const Now& now) {
    if (!film.shelfLife)
        return {};
    const double remaining = static_cast<double>(film.shelfLife->count()) - condition.effectiveDays;
    const std::optional<PlaceId> place = roll.placeNow();
    const Series* series = place ? seriesOf(climate, *place) : nullptr;
    return outlookOf(series, film.ageing, now).daysUntil(remaining);
}

void ClimateReckoner::Sums::findExposure(RollCondition& condition, const FilmRoll& roll, const Film& film,
                                         const ClimateHistory& climate, const Now& now) {
    const TestStrip* strip = roll.lastPassedStrip();
    const Instant from = strip ? strip->at : now.toInstant(LocalTime{roll.receivedOn});
    const Band<Humidity>& humidity = film.storage.humidity;
    const Band<Celsius>& temperature = film.storage.temperature;
    for (const Span& span : spansOf(roll, from, now.instant)) {
        const Series* series = seriesOf(climate, span.place);
        if (!series)
            continue;
        const double damp =
            exposureOf(*series, Measure::Humidity, humidity.low.percent, humidity.high.percent)
                .hoursBetween(span.begins, span.ends);
        const double warm =
            exposureOf(*series, Measure::Temperature, temperature.low.value, temperature.high.value)
                .hoursBetween(span.begins, span.ends);
        condition.humidityHoursOutside += damp;
        condition.temperatureHoursOutside += warm;
        if (damp > 0 && warm > 0)
            condition.bothHoursOutside += bothOf(*series, film).hoursBetween(span.begins, span.ends);
    }
}

ClimateReckoner::ClimateReckoner()
    : m_sums(std::make_unique<Sums>()) {}
ClimateReckoner::~ClimateReckoner() = default;
ClimateReckoner::ClimateReckoner(ClimateReckoner&&) noexcept = default;
ClimateReckoner& ClimateReckoner::operator=(ClimateReckoner&&) noexcept = default;

RollConditions ClimateReckoner::reckon(const ShopFacts& facts, const ClimateHistory& climate, const Now& now,
                                       const GoesOn& goesOn) {
    Sums& sums = *m_sums;
    ++sums.reckoning;
    sums.outlooks.clear();
    std::map<RollId, RollCondition> conditions;
    for (const FilmRoll& roll : facts.rolls) {
        const auto done = static_cast<double>(conditions.size());
        if (goesOn && !goesOn(done / static_cast<double>(facts.rolls.size())))
            break;
        const Film& film = facts.films.at(roll.film);
        RollCondition condition;
        condition.roll = roll.id;
        sums.findAge(condition, roll, film, climate, now);
        sums.findExposure(condition, roll, film, climate, now);
        condition.stripFailed = roll.lastStrip() && !roll.lastStrip()->passed;
        findUseBy(condition, roll, film, sums.shelfLifeReached(condition, roll, film, climate, now),
                  sums.shelfLifeAhead(condition, roll, film, climate, now), now);
        findPresent(condition, roll, film, climate, facts.settings, now);
        conditions.emplace_hint(conditions.end(), roll.id, condition);
    }
    sums.dropUnused(climate);
    return RollConditions{std::move(conditions)};
}

} // namespace holdfast
