// SPDX-License-Identifier: GPL-3.0-or-later
// Rules over the roll a decal is cut from, or is to be cut from.

#include "core/holds/rules.h"
#include "core/trade/count_phrases.h"

#include <algorithm>
#include <cmath>

namespace holdfast {

namespace {

struct RollInUse {
    const FilmRoll* roll;
    const Film* film;
    const RollCondition* condition;
    const Decal* decal; // the first one cut from it
};

std::optional<RollId> rollOf(const Subject& subject, const Decal& decal) {
    return decal.isCut() ? decal.cutFrom : subject.around.allotment.rollFor(decal.id);
}

// Each roll of a garment once. Rolls that are not known any more, or were not reckoned, say nothing.
std::vector<RollInUse> rollsOf(const Subject& subject) {
    std::vector<RollInUse> rolls;
    for (const Decal& decal : subject.garment.decals) {
        const auto id = rollOf(subject, decal);
        if (!id || std::ranges::any_of(rolls, [&](const RollInUse& use) { return use.roll->id == *id; }))
            continue;
        const FilmRoll* roll = subject.facts().rolls.find(*id);
        const RollCondition* condition = subject.around.conditions.find(*id);
        const Film* film = roll ? subject.facts().films.find(roll->film) : nullptr;
        if (film && condition)
            rolls.push_back({roll, film, condition, &decal});
    }
    return rolls;
}

Finding onRoll(Rule rule, Grade grade, const RollInUse& use) {
    Finding finding;
    finding.rule = rule;
    finding.grade = grade;
    finding.film = use.film->id;
    finding.roll = use.roll->id;
    finding.decal = use.decal->id;
    finding.place = use.roll->placeNow();
    return finding;
}

Value placeName(const Subject& subject, const RollInUse& use) {
    const auto id = use.roll->placeNow();
    const StoragePlace* place = id ? subject.facts().places.find(*id) : nullptr;
    return place ? Value{place->name} : Value{said("its place")};
}

Sentence humidityBand(const Film& film) {
    return said("{low}–{high} %", {{"low", Decimal{film.storage.humidity.low.percent}},
                                   {"high", Decimal{film.storage.humidity.high.percent}}});
}

Sentence temperatureBand(const Film& film) {
    return said("{low}–{high} °C", {{"low", Decimal{film.storage.temperature.low.value}},
                                    {"high", Decimal{film.storage.temperature.high.value}}});
}

Sentence whyPastAge(const RollInUse& use, LocalDate today) {
    const LocalDate useBy = *use.condition->useBy;
    std::vector<NamedValue> values{{"roll", use.roll->label()},
                                   {"useBy", use.condition->useByName()},
                                   {"day", DateWithYear{useBy}},
                                   {"ago", dayCount((today - useBy).count())}};
    // The printed date may come before the shelf life by warmth is over: then it is the reason.
    const bool isWarmth = use.film->shelfLife &&
                          use.condition->effectiveDays >= static_cast<double>(use.film->shelfLife->count());
    if (isWarmth) {
        values.push_back({"age", std::llround(use.condition->effectiveDays)});
        values.push_back({"life", dayCount(use.film->shelfLife->count())});
        return said("{roll}: {useBy} {day}, {ago} ago; effective age {age} of {life} by estimate.", values);
    }
    if (use.roll->printedUseBy)
        return said("{roll}: {useBy} {day}, {ago} ago; the date is the one printed on it.", values);
    return said("{roll}: {useBy} {day}, {ago} ago.", values);
}

// Outside in both, humidity is said first.
std::optional<Sentence> outsideNow(const RollInUse& use) {
    const std::vector<NamedValue> values{{"roll", use.roll->label()}};
    const auto& latest = use.condition->latest;
    if (latest && use.condition->humidityOutsideNow)
        return use.condition->latestHumidity > use.film->storage.humidity.high
                   ? said("Roll {roll} is stored too damp", values)
                   : said("Roll {roll} is stored too dry", values);
    if (latest && use.condition->temperatureOutsideNow)
        return latest->temperature > use.film->storage.temperature.high
                   ? said("Roll {roll} is stored too hot", values)
                   : said("Roll {roll} is stored too cold", values);
    return std::nullopt;
}

Sentence whyOutsideNow(const Subject& subject, const RollInUse& use) {
    std::vector<NamedValue> values{{"roll", use.roll->label()}, {"place", placeName(subject, use)}};
    if (use.condition->humidityOutsideNow) {
        values.push_back({"humidity", Decimal{use.condition->latestHumidity->percent}});
        values.push_back({"humidityBand", humidityBand(*use.film)});
    }
    if (use.condition->temperatureOutsideNow) {
        values.push_back({"temperature", use.condition->latest->temperature});
        values.push_back({"temperatureBand", temperatureBand(*use.film)});
    }
    if (!use.condition->temperatureOutsideNow)
        return said("{roll}: {place} is at {humidity} %, limits {humidityBand}.", values);
    if (!use.condition->humidityOutsideNow)
        return said("{roll}: {place} is at {temperature}, limits {temperatureBand}.", values);
    return said("{roll}: {place} is at {humidity} %, limits {humidityBand}, and at {temperature}, limits "
                "{temperatureBand}.",
                values);
}

Sentence hoursOutside(double hours, Sentence band) {
    return said("{hours} h outside {band}",
                {{"hours", Decimal{std::round(hours)}}, {"band", std::move(band)}});
}

Sentence hoursOutside(const RollInUse& use) {
    const Sentence damp = hoursOutside(use.condition->humidityHoursOutside, humidityBand(*use.film));
    const Sentence warm = hoursOutside(use.condition->temperatureHoursOutside, temperatureBand(*use.film));
    if (use.condition->temperatureHoursOutside <= 0)
        return damp;
    if (use.condition->humidityHoursOutside <= 0)
        return warm;
    return said("{damp} and {warm}", {{"damp", damp}, {"warm", warm}});
}

Sentence whyTooLongOutside(const Subject& subject, const RollInUse& use) {
    const TestStrip* strip = use.roll->lastPassedStrip();
    std::vector<NamedValue> values{
        {"roll", use.roll->label()},
        {"hours", hoursOutside(use)},
        {"since", DateWithYear{strip ? dateOf(subject.around.now.toLocal(strip->at)) : use.roll->receivedOn}},
        {"allowed", hourCount(use.film->storage.allowedOutside.count())}};
    if (use.condition->bothHoursOutside <= 0)
        return said("{roll}: {hours} since {since}; {allowed} are allowed.", values);
    values.push_back({"all", hourCount(std::llround(use.condition->hoursOutside()))});
    return said("{roll}: {all} outside its limits, {hours}, since {since}; {allowed} are allowed.", values);
}

Sentence whyStale(const Subject& subject, const RollInUse& use) {
    const Now& now = subject.around.now;
    std::vector<NamedValue> values{
        {"place", placeName(subject, use)},
        {"every", hourCount(subject.facts().settings.readingsGoStaleAfter.count())}};
    const auto& latest = use.condition->latest;
    if (!latest)
        return said("{place}: no reading on record; one is due every {every}.", values);
    values.push_back({"at", now.toLocal(latest->at)});
    values.push_back({"ago", hourCount(std::chrono::floor<Hours>(now.instant - latest->at).count())});
    return said("{place}: last reading {at}, {ago} ago; one is due every {every}.", values);
}

} // namespace

void noRollFits(const Subject& subject, Findings& findings) {
    for (const Decal& decal : subject.garment.decals) {
        const Sentence* lack =
            decal.isCut() || rollOf(subject, decal) ? nullptr : subject.around.allotment.lackOf(decal.id);
        if (!lack)
            continue;
        const auto earlier = std::ranges::find_if(findings, [&](const Finding& finding) {
            return finding.rule == Rule::NoRollFits && finding.film == decal.film;
        });
        // Decals of one film are one finding; each reason is said once.
        if (earlier != findings.end()) {
            if (!earlier->why.says(*lack))
                earlier->why = oneAfterTheOther(earlier->why, *lack);
            continue;
        }
        Finding finding;
        finding.rule = Rule::NoRollFits;
        finding.what = said("No roll fits");
        finding.why = *lack;
        finding.frees = {FreeingAct::ReceiveRoll, FreeingAct::ChooseFilm};
        finding.film = decal.film;
        finding.decal = decal.id;
        findings.push_back(std::move(finding));
    }
}

void rollPastAge(const Subject& subject, Findings& findings) {
    const LocalDate today = subject.around.now.today();
    for (const RollInUse& use : rollsOf(subject)) {
        if (!use.condition->isPastAge(today))
            continue;
        Finding finding = onRoll(Rule::RollPastAge, Grade::Hold, use);
        finding.what = said("Roll {roll} past its {useBy}",
                            {{"roll", use.roll->label()}, {"useBy", use.condition->useByName()}});
        finding.why = whyPastAge(use, today);
        finding.frees = {FreeingAct::TestStrip, FreeingAct::ReceiveRoll, FreeingAct::ChooseFilm};
        findings.push_back(std::move(finding));
    }
}

void rollBadlyKept(const Subject& subject, Findings& findings) {
    for (const RollInUse& use : rollsOf(subject)) {
        if (!use.condition->isBadlyKept(*use.film))
            continue;
        Finding finding = onRoll(Rule::RollBadlyKept, Grade::Hold, use);
        if (auto outside = outsideNow(use)) {
            finding.what = std::move(*outside);
            finding.why = whyOutsideNow(subject, use);
            // A strip proves nothing while the place is still outside.
            finding.frees = {FreeingAct::MoveRoll, FreeingAct::RecordReading, FreeingAct::TestStrip,
                             FreeingAct::ReceiveRoll};
        } else {
            finding.what = said("Roll {roll} badly stored", {{"roll", use.roll->label()}});
            finding.why = whyTooLongOutside(subject, use);
            finding.frees = {FreeingAct::TestStrip, FreeingAct::ReceiveRoll};
        }
        findings.push_back(std::move(finding));
    }
}

// What a strip has shown outweighs a date that is still to come.
void stripFailed(const Subject& subject, Findings& findings) {
    for (const RollInUse& use : rollsOf(subject)) {
        const TestStrip* strip = use.roll->lastStrip();
        if (!strip || strip->passed)
            continue;
        Finding finding = onRoll(Rule::StripFailed, Grade::Hold, use);
        finding.what = said("Roll {roll} failed its test strip", {{"roll", use.roll->label()}});
        const DateWithYear day{dateOf(subject.around.now.toLocal(strip->at))};
        finding.why =
            strip->note.empty()
                ? said("{roll}: the strip of {day} failed.", {{"roll", use.roll->label()}, {"day", day}})
                : said("{roll}: the strip of {day} failed, {note}.",
                       {{"roll", use.roll->label()}, {"day", day}, {"note", strip->note}});
        finding.frees = {FreeingAct::ReceiveRoll, FreeingAct::TestStrip, FreeingAct::ChooseFilm};
        findings.push_back(std::move(finding));
    }
}

void rollUnplaced(const Subject& subject, Findings& findings) {
    for (const RollInUse& use : rollsOf(subject)) {
        if (use.condition->hasPlace)
            continue;
        Finding finding = onRoll(Rule::RollUnplaced, Grade::Caution, use);
        finding.what = said("Roll {roll} has no storage place", {{"roll", use.roll->label()}});
        finding.why = said("{roll}: nobody noted where it is stored, so its age counts at {temperature}.",
                           {{"roll", use.roll->label()}, {"temperature", use.film->ageing.reference}});
        finding.frees = {FreeingAct::MoveRoll};
        findings.push_back(std::move(finding));
    }
}

void readingsStale(const Subject& subject, Findings& findings) {
    for (const RollInUse& use : rollsOf(subject)) {
        const auto place = use.roll->placeNow();
        if (!use.condition->hasPlace || !use.condition->readingIsStale)
            continue;
        const bool isSaid = std::ranges::any_of(findings, [&](const Finding& earlier) {
            return earlier.rule == Rule::ReadingsStale && earlier.place == place;
        });
        if (isSaid)
            continue;
        Finding finding = onRoll(Rule::ReadingsStale, Grade::Caution, use);
        finding.what = said("No recent reading");
        finding.why = whyStale(subject, use);
        finding.frees = {FreeingAct::RecordReading, FreeingAct::MoveRoll};
        findings.push_back(std::move(finding));
    }
}

} // namespace holdfast
