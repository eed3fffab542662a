// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/shop/films_to_cut.h"

#include "core/film/waiting_decals.h"
#include "core/holds/cutting_holds.h"
#include "core/trade/count_phrases.h"

#include <algorithm>
#include <utility>

namespace holdfast {

namespace {

// Shorter rolls, and all that are narrower than the film is sold, are offcuts; common practice, no source.
constexpr Millimetres kShortestFreshRoll{1000};
constexpr Days kAhead{366};
// Beyond this many decals the rolls are taken by their use-by, and the offcuts are not tried first.
constexpr std::size_t kMostDecalsCompared = 300;

std::optional<Sentence> whyNotYet(const ReckonedShop& shop, const WaitingDecal& waiting) {
    const auto found = shop.assessments.find(waiting.garment->id);
    if (found == shop.assessments.end())
        return std::nullopt;
    const Finding* held = stopsTheKnife(found->second.findings, *waiting.decal);
    return held ? std::optional{said("{what}: {why}", {{"what", held->what}, {"why", held->why}})}
                : std::nullopt;
}

// The next day with pressing hours, today while they last.
LocalDate nextPressDay(const ShopSettings& settings, const Now& now) {
    for (LocalDate date = now.today(); date <= now.today() + kAhead; date += Days{1}) {
        const std::optional<OpeningHours> hours = settings.hoursOn(date);
        if (hours && now.local() < LocalTime{date} + hours->closes)
            return date;
    }
    return now.today();
}

bool isOffcut(const FilmRoll& roll, const Film& film) {
    return roll.left < kShortestFreshRoll || roll.width < film.rollWidth;
}

Sentence useByWords(const RollCondition& condition, LocalDate today) {
    if (!condition.useBy)
        return said("No age limit is given.");
    std::vector<NamedValue> values{{"useBy", condition.useByName()},
                                   {"day", *condition.useBy},
                                   {"left", dayCount((*condition.useBy - today).count())}};
    if (!condition.useByRange)
        return said("{useBy} {day}, {left} left.", values);
    values.push_back({"range", *condition.useByRange});
    return said("{useBy} {day}, {left} left ({range}).", values);
}

Sentence sizeOnShelf(const FilmRoll& roll) {
    return said("Offcut, {left} of {width} width.", {{"left", roll.left}, {"width", roll.width}});
}

RollOffer offerOf(const ReckonedShop& shop, const Film& film, const FilmRoll& roll) {
    const RollCondition& condition = shop.conditions.at(roll.id);
    const LocalDate today = shop.now.today();
    const LocalDate pressDay = nextPressDay(shop.facts.settings, shop.now);
    if (roll.left <= Millimetres{0})
        return {roll.id, false, said("Nothing is left on it.")};
    if (condition.isPastAge(today))
        return {
            roll.id, false,
            said("Past its {useBy} by {days}: press a test strip first.",
                 {{"useBy", condition.useByName()}, {"days", dayCount((today - *condition.useBy).count())}})};
    if (condition.stripFailed)
        return {roll.id, false, said("Its last test strip failed.")};
    if (condition.isBadlyKept(film))
        return {roll.id, false, said("Stored outside its limits: press a test strip first.")};
    if (condition.useBy && *condition.useBy < pressDay)
        return {roll.id, false,
                said("Its {useBy}, {day}, comes before the next press day, {pressDay}.",
                     {{"useBy", condition.useByName()}, {"day", *condition.useBy}, {"pressDay", pressDay}})};
    Sentence useBy = useByWords(condition, today);
    return {roll.id, true,
            isOffcut(roll, film) ? oneAfterTheOther(sizeOnShelf(roll), std::move(useBy)) : useBy};
}

std::vector<RollOffer> rollsByUse(const ReckonedShop& shop, const Film& film) {
    std::vector<RollOffer> offers;
    for (const RollForecast& forecast : shop.allotment.useFirst) {
        const FilmRoll& roll = shop.facts.rolls.at(forecast.roll);
        if (roll.film == film.id)
            offers.push_back(offerOf(shop, film, roll));
    }
    std::ranges::stable_partition(offers, &RollOffer::mayBeUsed);
    return offers;
}

struct Charge {
    std::size_t lacking = 0;
    std::int64_t area = 0; // mm²

    auto operator<=>(const Charge&) const = default;
};

Charge chargeOf(const ReckonedShop& shop, const FilmToCut& film) {
    const auto nests = nestFilm(shop, film, usualWish(shop, film));
    if (!nests.ok())
        return {film.waiting.size(), 0};
    Charge charge{nests->lack.size(), 0};
    for (const Nest& nest : nests->nests)
        charge.area += nest.length.value * nest.rollWidth.value;
    return charge;
}

// Offcuts first, where that takes no more film.
void offerOffcutsFirst(const ReckonedShop& shop, const Film& film, FilmToCut& toCut) {
    if (toCut.waiting.size() > kMostDecalsCompared)
        return;
    FilmToCut tried = toCut;
    const auto isUsableOffcut = [&](const RollOffer& offer) {
        return offer.mayBeUsed && isOffcut(shop.facts.rolls.at(offer.roll), film);
    };
    std::ranges::stable_partition(tried.rolls, isUsableOffcut);
    const bool isSameOrder =
        std::ranges::equal(tried.rolls, toCut.rolls, {}, &RollOffer::roll, &RollOffer::roll);
    if (isSameOrder || chargeOf(shop, toCut) < chargeOf(shop, tried))
        return;
    for (RollOffer& offer : tried.rolls) {
        if (isUsableOffcut(offer))
            offer.reason =
                oneAfterTheOther(std::move(offer.reason), said("Cutting it first takes no more film."));
    }
    toCut.rolls = std::move(tried.rolls);
}

std::vector<const FilmRoll*> rollsFor(const ReckonedShop& shop, const FilmToCut& film, const NestWish& wish) {
    const std::vector<RollId> wished = wish.rolls.empty() ? usualWish(shop, film).rolls : wish.rolls;
    std::vector<const FilmRoll*> rolls;
    for (const RollId id : wished) {
        const FilmRoll* roll = shop.facts.rolls.find(id);
        if (roll && roll->film == film.film && roll->state == RollState::OnShelf)
            rolls.push_back(roll);
    }
    return rolls;
}

std::vector<const Decal*> decalsFor(const ReckonedShop& shop, const FilmToCut& film, const NestWish& wish) {
    std::map<DecalId, const Decal*> byId;
    for (const WaitingDecal& waiting : waitingDecals(shop.facts))
        byId.emplace(waiting.decal->id, waiting.decal);
    std::vector<const Decal*> decals;
    for (const DecalId id : film.waiting) {
        const auto found = byId.find(id);
        if (found != byId.end() && !wish.leftOut.contains(id))
            decals.push_back(found->second);
    }
    return decals;
}

} // namespace

std::size_t decalsToCut(const ReckonedShop& shop) {
    return static_cast<std::size_t>(
        std::ranges::count_if(waitingDecals(shop.facts), [&](const WaitingDecal& waiting) {
            return waiting.film && !whyNotYet(shop, waiting);
        }));
}

std::vector<FilmToCut> filmsToCut(const ReckonedShop& shop) {
    std::vector<FilmToCut> films;
    for (const WaitingDecal& waiting : waitingDecals(shop.facts)) {
        if (!waiting.film)
            continue;
        auto found = std::ranges::find(films, waiting.film->id, &FilmToCut::film);
        if (found == films.end())
            found = films.insert(films.end(), FilmToCut{waiting.film->id, {}, {}, {}});
        if (auto why = whyNotYet(shop, waiting))
            found->notYet.emplace(waiting.decal->id, std::move(*why));
        else
            found->waiting.push_back(waiting.decal->id);
    }
    for (FilmToCut& toCut : films) {
        const Film& film = shop.facts.films.at(toCut.film);
        toCut.rolls = rollsByUse(shop, film);
        offerOffcutsFirst(shop, film, toCut);
    }
    return films;
}

NestWish usualWish(const ReckonedShop& shop, const FilmToCut& film) {
    NestWish wish;
    wish.gap = shop.facts.settings.decalGap;
    for (const RollOffer& offer : film.rolls) {
        if (offer.mayBeUsed)
            wish.rolls.push_back(offer.roll);
    }
    return wish;
}

Result<FilmNests> nestFilm(const ReckonedShop& shop, const FilmToCut& film, const NestWish& wish,
                           const StripSearch* search, const std::function<bool()>& shouldStop) {
    const FilmToNest task{&shop.facts.films.at(film.film), rollsFor(shop, film, wish),
                          decalsFor(shop, film, wish), shop.facts.settings.edgeMargin};
    return nestOnRolls(task, wish, search, shouldStop);
}

} // namespace holdfast
