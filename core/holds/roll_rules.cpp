// SPDX-License-Identifier: GPL-3.0-or-later
// Rules over the roll a decal is cut from, or is to be cut from.

#include "core/holds/rules.h"
#include "core/trade/unit_words.h"

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

std::string placeName(const Subject& subject, const RollInUse& use) {
    const auto id = use.roll->placeNow();
    const StoragePlace* place = id ? subject.facts().places.find(*id) : nullptr;
    return place ? place->name : "its place";
}

std::string humidityBand(const Film& film) {
    return bandWords(film.storage.humidity.low.percent, film.storage.humidity.high.percent, "%");
}

std::string temperatureBand(const Film& film) {
    return bandWords(film.storage.temperature.low.value, film.storage.temperature.high.value, "°C");
}

std::string whyPastAge(const RollInUse& use, LocalDate today) {
    const LocalDate useBy = *use.condition->useBy;
    std::string why = use.roll->label() + ": " + use.condition->useByName() + " " + spokenDate(useBy) + ", " +
                      countWords((today - useBy).count(), "day") + " ago";
    // The printed date may come before the shelf life by warmth is over: then it is the reason.
    const bool isWarmth = use.film->shelfLife &&
                          use.condition->effectiveDays >= static_cast<double>(use.film->shelfLife->count());
    if (isWarmth)
        why += "; effective age " + std::to_string(std::llround(use.condition->effectiveDays)) + " of " +
               countWords(use.film->shelfLife->count(), "day") + " by estimate";
    else if (use.roll->printedUseBy)
        why += "; the date is the one printed on it";
    return why + ".";
}

// "damp" where the latest reading is above the band, and so on; outside in both, humidity is said first.
std::string outsideWord(const RollInUse& use) {
    const auto& latest = use.condition->latest;
    if (latest && use.condition->humidityOutsideNow)
        return use.condition->latestHumidity > use.film->storage.humidity.high ? "damp" : "dry";
    if (latest && use.condition->temperatureOutsideNow)
        return latest->temperature > use.film->storage.temperature.high ? "hot" : "cold";
    return {};
}

std::string whyOutsideNow(const Subject& subject, const RollInUse& use) {
    std::string why = use.roll->label() + ": " + placeName(subject, use) + " stands at ";
    const ClimateReading& latest = *use.condition->latest;
    if (use.condition->humidityOutsideNow)
        why += numberWords(use.condition->latestHumidity->percent) + " %, kept at " + humidityBand(*use.film);
    if (use.condition->humidityOutsideNow && use.condition->temperatureOutsideNow)
        why += ", and at ";
    if (use.condition->temperatureOutsideNow)
        why += temperatureWords(latest.temperature) + ", kept at " + temperatureBand(*use.film);
    return why + ".";
}

std::string whyTooLongOutside(const Subject& subject, const RollInUse& use) {
    const TestStrip* strip = use.roll->lastPassedStrip();
    const LocalDate since = strip ? dateOf(subject.around.now.toLocal(strip->at)) : use.roll->receivedOn;
    std::string hours;
    if (use.condition->humidityHoursOutside > 0)
        hours = numberWords(std::round(use.condition->humidityHoursOutside)) + " h outside " +
                humidityBand(*use.film);
    if (use.condition->temperatureHoursOutside > 0)
        hours += (hours.empty() ? "" : " and ") +
                 numberWords(std::round(use.condition->temperatureHoursOutside)) + " h outside " +
                 temperatureBand(*use.film);
    if (use.condition->bothHoursOutside > 0)
        hours =
            numberWords(std::round(use.condition->hoursOutside())) + " h outside its limits, " + hours + ",";
    return use.roll->label() + ": " + hours + " since " + spokenDate(since) + "; " +
           std::to_string(use.film->storage.allowedOutside.count()) + " h are allowed.";
}

} // namespace

void noRollFits(const Subject& subject, Findings& findings) {
    for (const Decal& decal : subject.garment.decals) {
        const std::string* lack =
            decal.isCut() || rollOf(subject, decal) ? nullptr : subject.around.allotment.lackOf(decal.id);
        if (!lack)
            continue;
        const auto said = std::ranges::find_if(findings, [&](const Finding& finding) {
            return finding.rule == Rule::NoRollFits && finding.film == decal.film;
        });
        // Decals of one film are one finding; each reason is said once.
        if (said != findings.end()) {
            if (said->why.find(*lack) == std::string::npos)
                said->why += " " + *lack;
            continue;
        }
        Finding finding;
        finding.rule = Rule::NoRollFits;
        finding.what = "No roll fits";
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
        finding.what = "Roll " + use.roll->label() + " past its " + use.condition->useByName();
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
        if (const std::string word = outsideWord(use); !word.empty()) {
            finding.what = "Roll " + use.roll->label() + " stands too " + word;
            finding.why = whyOutsideNow(subject, use);
            // A strip proves nothing while the place is still outside.
            finding.frees = {FreeingAct::MoveRoll, FreeingAct::RecordReading, FreeingAct::TestStrip,
                             FreeingAct::ReceiveRoll};
        } else {
            finding.what = "Roll " + use.roll->label() + " badly kept";
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
        finding.what = "Roll " + use.roll->label() + " failed its test strip";
        finding.why = use.roll->label() + ": the strip of " +
                      spokenDate(dateOf(subject.around.now.toLocal(strip->at))) + " failed" +
                      (strip->note.empty() ? "" : ", " + strip->note) + ".";
        finding.frees = {FreeingAct::ReceiveRoll, FreeingAct::TestStrip, FreeingAct::ChooseFilm};
        findings.push_back(std::move(finding));
    }
}

void rollUnplaced(const Subject& subject, Findings& findings) {
    for (const RollInUse& use : rollsOf(subject)) {
        if (use.condition->hasPlace)
            continue;
        Finding finding = onRoll(Rule::RollUnplaced, Grade::Caution, use);
        finding.what = "Roll " + use.roll->label() + " has no place";
        finding.why = use.roll->label() + ": nobody noted where it stands, so its age counts at " +
                      temperatureWords(use.film->ageing.reference) + ".";
        finding.frees = {FreeingAct::MoveRoll};
        findings.push_back(std::move(finding));
    }
}

void readingsStale(const Subject& subject, Findings& findings) {
    const Now& now = subject.around.now;
    for (const RollInUse& use : rollsOf(subject)) {
        const auto place = use.roll->placeNow();
        if (!use.condition->hasPlace || !use.condition->readingIsStale)
            continue;
        const bool isSaid = std::ranges::any_of(findings, [&](const Finding& said) {
            return said.rule == Rule::ReadingsStale && said.place == place;
        });
        if (isSaid)
            continue;
        Finding finding = onRoll(Rule::ReadingsStale, Grade::Caution, use);
        finding.what = "No recent reading";
        finding.why = withCapital(placeName(subject, use)) + ": ";
        if (const auto& latest = use.condition->latest) {
            const LocalTime at = now.toLocal(latest->at);
            const auto hours = std::chrono::floor<Hours>(now.instant - latest->at).count();
            finding.why += "last reading " + spokenDay(dateOf(at)) + ", " + clockTime(at) + ", " +
                           std::to_string(hours) + " h ago";
        } else {
            finding.why += "no reading on record";
        }
        finding.why += "; one is wanted every " +
                       std::to_string(subject.facts().settings.readingsGoStaleAfter.count()) + " h.";
        finding.frees = {FreeingAct::RecordReading, FreeingAct::MoveRoll};
        findings.push_back(std::move(finding));
    }
}

} // namespace holdfast
