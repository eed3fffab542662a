#include "core/orders/promise.h"

#include "core/orders/promise_hours.h"
#include "core/orders/promise_material.h"

#include <algorithm>
#include <optional>
#include <utility>

namespace holdfast {

namespace {

constexpr Days kAhead{366};
constexpr Seconds kLongestWork{Days{366}};
constexpr int kMostMargin = 1'000; // percent

using HalfHours = std::chrono::duration<std::int64_t, std::ratio<30 * 60>>;

// Work with the shop's margin on it.
Seconds withMargin(Seconds work, const ShopSettings& settings) {
    const std::int64_t percent = 100 + std::clamp(settings.planMarginPercent, 0, kMostMargin);
    const std::int64_t seconds = std::clamp<std::int64_t>(work.count(), 0, kLongestWork.count());
    return Seconds{(seconds * percent + 99) / 100};
}

Seconds workOf(std::span<const AskedGarment> asked, const ShopSettings& settings) {
    Seconds work{0};
    for (const AskedGarment& garment : asked)
        work = std::min(work + withMargin(garment.pressTime, settings), kLongestWork);
    return std::max(work, Seconds{1}); // what takes no time at all still needs an open moment
}

std::vector<PressLoad> withMargins(std::span<const PressLoad> load, const ShopSettings& settings) {
    std::vector<PressLoad> all;
    all.reserve(load.size());
    for (const PressLoad& one : load)
        all.push_back({one.due, withMargin(one.work, settings)});
    return all;
}

Hours restOf(const ShopSettings& settings) {
    return std::clamp<Hours>(settings.restBeforeWash, Hours{0}, kAhead);
}

// On the half hour while the workshop is open, else when it opens next. None: it does not within a year.
std::optional<LocalTime> handedOver(const ShopSettings& settings, LocalTime rested) {
    const LocalTime midnight{dateOf(rested)};
    const LocalTime onHalfHour = midnight + std::chrono::ceil<HalfHours>(rested - midnight);
    for (LocalTime from = onHalfHour; from <= onHalfHour + kAhead; from = LocalTime{dateOf(from) + Days{1}}) {
        const std::vector<OpenStretch> today = openHours(settings, from, Days{0});
        if (!today.empty())
            return today.front().begins;
    }
    return std::nullopt;
}

std::string dayWords(LocalTime time, const Now& now) {
    const LocalDate date = dateOf(time);
    if (date == now.today())
        return "today";
    constexpr std::size_t kWeekday = 3; // "Wed" of "Wed 25 Nov"
    const std::string spoken = spokenDay(date);
    return date - now.today() < Days{7} ? spoken.substr(0, kWeekday) : spoken.substr(kWeekday + 1);
}

std::string whenWords(PromiseStage stage, LocalTime at, const Now& now) {
    if (stage == PromiseStage::Wash && dateOf(at) == now.today())
        return "tonight";
    return dayWords(at, now);
}

PromiseStep stepAt(PromiseStage stage, LocalTime at, const Now& now) {
    return {stage, at, promiseStageWords(stage), whenWords(stage, at, now)};
}

std::vector<PromiseStep> pathOf(const Material& material, LocalTime pressed, Hours rest, LocalTime ready,
                                const Now& now) {
    std::vector<PromiseStep> path;
    for (const MaterialLeg& leg : material.legs)
        path.push_back(stepAt(leg.stage, leg.at, now));
    if (path.empty())
        path.push_back(stepAt(PromiseStage::Cut, pressed, now));
    path.push_back(stepAt(PromiseStage::Press, pressed, now));
    if (rest > Hours{0})
        path.push_back({PromiseStage::Rest, pressed, promiseStageWords(PromiseStage::Rest),
                        std::to_string(rest.count()) + " h"});
    path.push_back(stepAt(PromiseStage::Ready, ready, now));
    return path;
}

struct Wait {
    Seconds length{0};
    std::string words;
};

std::string pressWords(LocalTime pressed, LocalTime alone, const Now& now) {
    const std::string when = spokenDay(dateOf(pressed)) + ", " + clockTime(pressed);
    if (alone < pressed)
        return "Other promises have the press first: pressed by " + when + ".";
    if (dateOf(pressed) == now.today())
        return "Pressing takes until " + clockTime(pressed) + ".";
    return "The press is next free in opening hours: pressed by " + when + ".";
}

// `alone` is when it would be pressed if nothing else were promised.
std::string longestWait(const Material& material, LocalTime pressed, LocalTime alone, Hours rest,
                        const Now& now) {
    std::vector<Wait> waits;
    LocalTime since = now.local();
    for (const MaterialLeg& leg : material.legs) {
        waits.push_back({leg.doneAt - std::min(since, leg.doneAt), leg.why});
        since = std::max(since, leg.doneAt);
    }
    waits.push_back({pressed - material.readyAt, pressWords(pressed, alone, now)});
    waits.push_back(
        {rest, "It rests " + std::to_string(rest.count()) + " h after the press before its first wash."});
    return std::ranges::max_element(waits, {}, &Wait::length)->words;
}

} // namespace

Result<Promise> promiseFor(std::span<const AskedGarment> asked, const ShopFacts& facts,
                           std::span<const PressLoad> load, const Now& now) {
    if (asked.empty())
        return plainError("Choose at least one garment to promise a day for.");
    const ShopSettings& settings = facts.settings;
    const Hours rest = restOf(settings);
    const std::vector<OpenStretch> hours = openHours(settings, now.local(), kAhead);
    if (hours.empty())
        return plainError(
            "The workshop is closed for the next year: no day can be promised. Set its pressing hours, or "
            "take back closed days, in the Back room.");

    const std::optional<Material> material = materialFor(asked, facts, hours, now);
    if (!material)
        return plainError(
            "What is needed comes, or is dry, only in more than a year: no day can be promised. Look over "
            "the lead, washing and drying times in the Back room.");

    const Seconds work = workOf(asked, settings);
    const std::vector<OpenStretch> left = hoursLeft(hours, withMargins(load, settings));
    const std::optional<LocalTime> pressed = doneBy(left, material->readyAt, work);
    if (!pressed)
        return plainError(
            "The press is taken for the next year: no day can be promised. Set longer pressing hours in the "
            "Back room, or move promises already given.");
    const LocalTime alone = doneBy(hours, material->readyAt, work).value_or(*pressed);
    const std::optional<LocalTime> ready = handedOver(settings, *pressed + rest);
    if (!ready)
        return plainError(
            "The workshop is closed for a year after pressing: no day can be promised. Set its pressing "
            "hours, or take back closed days, in the Back room.");
    return Promise{*ready, pathOf(*material, *pressed, rest, *ready, now),
                   longestWait(*material, *pressed, alone, rest, now)};
}

std::string promiseStageWords(PromiseStage stage) {
    switch (stage) {
    case PromiseStage::BuyBlank:
        return "blank in";
    case PromiseStage::BuyFilm:
        return "film in";
    case PromiseStage::Wash:
        return "wash";
    case PromiseStage::Dry:
        return "dry";
    case PromiseStage::Cut:
        return "cut";
    case PromiseStage::Press:
        return "press";
    case PromiseStage::Rest:
        return "rest";
    case PromiseStage::Ready:
        return "ready";
    }
    return {};
}

} // namespace holdfast
