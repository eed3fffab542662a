// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/orders/promise.h"

#include "core/orders/cutting_time.h"
#include "core/orders/promise_film.h"
#include "core/orders/promise_hours.h"
#include "core/orders/promise_material.h"
#include "core/trade/count_phrases.h"

#include <algorithm>
#include <optional>
#include <utility>

namespace holdfast {

namespace {

constexpr Days kAhead{366};
constexpr int kMostMargin = 1'000; // percent

using HalfHours = std::chrono::duration<std::int64_t, std::ratio<30 * 60>>;

// Work with the shop's margin on it.
Seconds withMargin(Seconds work, const ShopSettings& settings) {
    const std::int64_t percent = 100 + std::clamp(settings.planMarginPercent, 0, kMostMargin);
    const std::int64_t seconds = std::clamp<std::int64_t>(work.count(), 0, kLongestWork.count());
    return Seconds{(seconds * percent + 99) / 100};
}

// What is to be done by hand for the order as a whole, margins and all.
struct HandWork {
    Seconds cutting{0};
    Seconds pressing{0};
};

HandWork workOf(std::span<const AskedGarment> asked, Seconds longestOther, const ShopSettings& settings) {
    HandWork work;
    work.pressing = withMargin(longestOther, settings);
    std::vector<DecalToCut> decals;
    for (const AskedGarment& garment : asked) {
        work.pressing = std::min(work.pressing + withMargin(garment.pressTime, settings), kLongestWork);
        decals.insert(decals.end(), garment.decals.begin(), garment.decals.end());
    }
    work.cutting = std::min(withMargin(cuttingTime(decals, settings), settings), kLongestWork);
    work.pressing = std::max(work.pressing, Seconds{1}); // what takes no time still needs an open moment
    return work;
}

std::vector<PromisedWork> withMargins(std::span<const PromisedWork> promised, const ShopSettings& settings) {
    std::vector<PromisedWork> all;
    all.reserve(promised.size());
    for (const PromisedWork& one : promised)
        all.push_back({one.due, withMargin(one.work, settings)});
    return all;
}

Hours restOf(const ShopSettings& settings) {
    return std::clamp<Hours>(settings.restBeforeWash, Hours{0}, kAhead);
}

Sentence dayWords(LocalTime time, const Now& now) {
    const LocalDate date = dateOf(time);
    if (date == now.today())
        return said("today");
    return date - now.today() < Days{7} ? said("{day}", {{"day", Weekday{date}}})
                                        : said("{day}", {{"day", DayOfMonth{date}}});
}

Sentence whenWords(PromiseStage stage, LocalTime at, const Now& now) {
    if (stage == PromiseStage::Wash && dateOf(at) == now.today())
        return said("tonight");
    return dayWords(at, now);
}

PromiseStep stepAt(PromiseStage stage, LocalTime at, const Now& now) {
    return {stage, at, promiseStageWords(stage), whenWords(stage, at, now)};
}

// When the hands are done with the order.
struct HandsDone {
    LocalTime cut{};
    LocalTime pressed{};
};

std::optional<HandsDone> handsDoneIn(std::span<const OpenStretch> hours, LocalTime film, LocalTime blanks,
                                     const HandWork& work) {
    HandsDone made{film, {}};
    if (work.cutting > Seconds{0}) {
        const std::optional<LocalTime> cut = doneBy(hours, film, work.cutting);
        if (!cut)
            return std::nullopt;
        made.cut = *cut;
    }
    const std::optional<LocalTime> pressed = doneBy(hours, std::max(made.cut, blanks), work.pressing);
    if (!pressed)
        return std::nullopt;
    made.pressed = *pressed;
    return made;
}

// What the promise and its explanation are made from.
struct PromiseBasis {
    std::vector<MaterialLeg> legs; // by `at`
    LocalTime filmAt{};
    LocalTime blanksAt{};
    HandWork work;
    HandsDone made;
    HandsDone alone; // if nothing else were promised
    Hours rest{0};
    LocalTime ready{};
};

std::vector<PromiseStep> pathOf(const PromiseBasis& basis, const Now& now) {
    std::vector<PromiseStep> path;
    for (const MaterialLeg& leg : basis.legs)
        path.push_back(stepAt(leg.stage, leg.at, now));
    if (basis.work.cutting > Seconds{0}) {
        const auto behind = std::ranges::upper_bound(path, basis.made.cut, {}, &PromiseStep::at);
        path.insert(behind, stepAt(PromiseStage::Cut, basis.made.cut, now));
    }
    path.push_back(stepAt(PromiseStage::Press, basis.made.pressed, now));
    if (basis.rest > Hours{0})
        path.push_back({PromiseStage::Rest, basis.made.pressed, promiseStageWords(PromiseStage::Rest),
                        hourCount(basis.rest.count())});
    path.push_back(stepAt(PromiseStage::Ready, basis.ready, now));
    return path;
}

struct Wait {
    Seconds length{0};
    Sentence words;
};

Sentence cuttingWords(LocalTime cut, LocalTime alone, const Now& now) {
    if (alone < cut)
        return said("Other promises are cut first: cut by {when}.", {{"when", cut}});
    if (dateOf(cut) == now.today())
        return said("Cutting takes until {when}.", {{"when", TimeOfDay{cut}}});
    return said("It is cut in the next opening hours: done by {when}.", {{"when", cut}});
}

Sentence pressWords(LocalTime pressed, LocalTime alone, const Now& now) {
    if (alone < pressed)
        return said("Other promises are pressed first: pressed by {when}.", {{"when", pressed}});
    if (dateOf(pressed) == now.today())
        return said("Pressing takes until {when}.", {{"when", TimeOfDay{pressed}}});
    return said("It is pressed in the next opening hours: pressed by {when}.", {{"when", pressed}});
}

// Each wait is as long as it goes on beyond the ones before it.
Sentence longestWait(const PromiseBasis& basis, const Now& now) {
    std::vector<std::pair<LocalTime, Sentence>> waits;
    for (const MaterialLeg& leg : basis.legs)
        waits.emplace_back(leg.doneAt, leg.why);
    if (basis.work.cutting > Seconds{0})
        waits.emplace_back(basis.made.cut, cuttingWords(basis.made.cut, basis.alone.cut, now));
    std::ranges::stable_sort(waits, {}, &std::pair<LocalTime, Sentence>::first);
    waits.emplace_back(basis.made.pressed, pressWords(basis.made.pressed, basis.alone.pressed, now));
    waits.emplace_back(now.later(basis.made.pressed, basis.rest),
                       said("It rests {rest} after the press before its first wash.",
                            {{"rest", hourCount(basis.rest.count())}}));
    Wait longest;
    LocalTime since = now.local();
    for (auto& [until, words] : waits) {
        const Seconds length = std::max(Seconds{0}, until - since);
        if (longest.words.empty() || length > longest.length)
            longest = {length, std::move(words)};
        since = std::max(since, until);
    }
    return longest.words;
}

Error handsTaken() {
    return plainError(
        said("The press is taken for the next year: no day can be promised. Set longer pressing hours in the "
             "settings, or move promises already given."));
}

// Reckoned over this many days from now on; an error may only say that they are too few.
Result<Promise> promisedWithin(Days ahead, std::span<const AskedGarment> asked, const ShopFacts& facts,
                               const ShopSettings& settings, const Promised& promised, const Now& now) {
    const std::vector<OpenStretch> hours = openHours(settings, now, ahead);
    if (hours.empty())
        return plainError(closedForAYear());

    const Result<BlanksReady> blanks = blanksFor(asked, facts, settings, promised.washes, hours, now);
    if (!blanks.ok())
        return blanks.error();
    PromiseBasis basis;
    basis.legs = blanks->legs;
    basis.blanksAt = blanks->at;
    basis.filmAt = now.local();
    basis.work = workOf(asked, promised.longestGarment, settings);
    basis.rest = restOf(settings);

    const std::vector<OpenStretch> left = hoursLeft(hours, withMargins(promised.work, settings));
    std::optional<HandsDone> made = handsDoneIn(left, basis.filmAt, basis.blanksAt, basis.work);
    const auto toBuy =
        filmsToBuy(asked, facts, promised.film, made ? dateOf(made->pressed) : dateOf(hours.back().ends));
    if (!toBuy.empty()) {
        Result<MaterialLeg> bought = filmBought(toBuy, facts, promised.film, hours, now);
        if (!bought.ok())
            return bought.error();
        if (bought->doneAt > now.local()) {
            basis.filmAt = bought->doneAt;
            basis.legs.push_back(std::move(bought).value());
            std::ranges::stable_sort(basis.legs, {}, &MaterialLeg::at);
            made = handsDoneIn(left, basis.filmAt, basis.blanksAt, basis.work);
        }
    }
    if (!made)
        return handsTaken();
    basis.made = *made;
    basis.alone = handsDoneIn(hours, basis.filmAt, basis.blanksAt, basis.work).value_or(*made);
    const std::optional<LocalTime> ready = handedOverFrom(settings, now.later(made->pressed, basis.rest));
    if (!ready)
        return plainError(
            said("The workshop is closed for a year after pressing: no day can be promised. Set its pressing "
                 "hours, or remove closed days, in the settings."));
    basis.ready = *ready;
    return Promise{basis.ready, pathOf(basis, now), longestWait(basis, now)};
}

// Beyond what is promised, a month is mostly enough, and a year takes ten times as long to look over.
Days nearEnough(const Promised& promised, const Now& now) {
    constexpr Days kMonth{31};
    const LocalTime farthest = now.local() + kAhead;
    LocalTime last = now.local();
    for (const PromisedWork& work : promised.work)
        last = std::max(last, std::min(work.due, farthest));
    return dateOf(last) - now.today() + kMonth;
}

} // namespace

Result<Promise> promiseFor(std::span<const AskedGarment> asked, const ShopFacts& facts,
                           const Promised& promised, const Now& now) {
    return promiseFor(asked, facts, facts.settings, promised, now);
}

Result<Promise> promiseFor(std::span<const AskedGarment> asked, const ShopFacts& facts,
                           const ShopSettings& settings, const Promised& promised, const Now& now) {
    if (asked.empty())
        return plainError(said("Choose at least one garment to promise a day for."));
    if (const Days near = nearEnough(promised, now); near < kAhead) {
        Result<Promise> promise = promisedWithin(near, asked, facts, settings, promised, now);
        if (promise.ok())
            return promise;
    }
    return promisedWithin(kAhead, asked, facts, settings, promised, now);
}

Sentence closedForAYear() {
    return said(
        "The workshop is closed for the next year: no day can be promised. Set its pressing hours, or "
        "remove closed days, in the settings.");
}

std::optional<LocalTime> handedOverFrom(const ShopSettings& settings, LocalTime rested) {
    const LocalTime midnight{dateOf(rested)};
    const LocalTime onHalfHour = midnight + std::chrono::ceil<HalfHours>(rested - midnight);
    for (LocalTime from = onHalfHour; from <= onHalfHour + kAhead; from = LocalTime{dateOf(from) + Days{1}}) {
        const std::vector<OpenStretch> today = openHours(settings, from, Days{0});
        if (!today.empty())
            return today.front().begins;
    }
    return std::nullopt;
}

Phrase promiseStageWords(PromiseStage stage) {
    switch (stage) {
    case PromiseStage::BuyBlank:
        return phrase("blank in");
    case PromiseStage::BuyFilm:
        return phrase("film in");
    case PromiseStage::Wash:
        return phrase("wash");
    case PromiseStage::Dry:
        return phrase("dry");
    case PromiseStage::Cut:
        return phrase("cut");
    case PromiseStage::Press:
        return phrase("press");
    case PromiseStage::Rest:
        return phrase("rest");
    case PromiseStage::Ready:
        return phrase("ready");
    }
    return {};
}

} // namespace holdfast
