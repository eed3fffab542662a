// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/film/use_first.h"

#include "core/cutting/cut_length.h"
#include "core/cutting/nest.h"
#include "core/film/usual_use.h"
#include "core/film/waiting_decals.h"
#include "core/trade/count_phrases.h"

#include <algorithm>
#include <tuple>
#include <utility>

namespace holdfast {

namespace {

// A roll without a limit is looked at over as long as use was.
constexpr Days kLookedAhead{7 * kUseWeeks};

// Metres to the centimetre: needs are rounded up, what is there down, so that the two compare as shown.
Millimetres wholeCentimetres(Millimetres length, bool roundsUp) {
    return Millimetres{(std::max<std::int64_t>(0, length.value) + (roundsUp ? 9 : 0)) / 10 * 10};
}

// A roll on the shelf while decals are allotted to it.
struct ShelfRoll {
    const FilmRoll* roll = nullptr;
    const Film* film = nullptr;
    const RollCondition* condition = nullptr;
    const ShopSettings* settings = nullptr;
    bool mayBeUsed = true;
    std::vector<const Decal*> decals;
    Millimetres sum;                // of the decals one after the other
    const Decal* refused = nullptr; // found no room next to these decals; nor does a larger one

    std::optional<Millimetres> lengthOf(const Decal& decal) const {
        return lengthFor(decal, *film, roll->width, *settings);
    }
    // One after the other while that fits, else together.
    Millimetres allotted() const {
        const Millimetres rows = lengthInRows(decals, *film, roll->width, *settings);
        const Millimetres plain = std::min(sum, rows);
        return plain <= roll->left ? plain : nestedLength(decals, *film, roll->width, *settings);
    }
    Millimetres leftBeside() const { return roll->left - allotted(); }
    bool takes(const Decal& decal) {
        const std::optional<Millimetres> length = lengthOf(decal);
        if (!length || *length > roll->left)
            return false;
        if (sum + *length <= roll->left)
            return true;
        if (refused && decal.width >= refused->width && decal.height >= refused->height)
            return false;
        decals.push_back(&decal);
        const bool fits = fitOnto(decals, *film, roll->width, roll->left, *settings);
        decals.pop_back();
        if (!fits)
            refused = &decal;
        return fits;
    }
    void add(const Decal& decal) {
        decals.push_back(&decal);
        sum += lengthOf(decal).value_or(Millimetres{});
    }
    void remove(const Decal& decal) {
        std::erase(decals, &decal);
        refused = nullptr;
        sum = sum - lengthOf(decal).value_or(Millimetres{});
    }
};

LocalDate useByOrNever(const RollCondition& condition) {
    return condition.useBy.value_or(LocalDate::max());
}

// The rolls of one film in the order in which they are cut from: those that may be used, earliest use-by
// first, offcuts before longer ones; then those that may not, the least spoiled first.
class FilmShelf {
public:
    void add(ShelfRoll roll) { m_rolls.push_back(std::move(roll)); }
    std::vector<ShelfRoll>& rolls() { return m_rolls; }

    void sortByUse(LocalDate today) {
        const auto key = [today](const ShelfRoll& shelf) {
            const RollCondition& condition = *shelf.condition;
            const auto useBy = useByOrNever(condition).time_since_epoch().count();
            return std::tuple{!shelf.mayBeUsed,
                              !shelf.mayBeUsed && condition.isPastAge(today),
                              shelf.mayBeUsed ? useBy : -useBy,
                              shelf.roll->left,
                              shelf.roll->number,
                              shelf.roll->id};
        };
        std::ranges::sort(m_rolls, {}, key);
    }

    // The roll the decal was allotted to; none where it fits none.
    ShelfRoll* allot(const Decal& decal) {
        for (const bool mayBeUsed : {true, false}) {
            for (ShelfRoll& roll : m_rolls) {
                if (roll.mayBeUsed == mayBeUsed && roll.takes(decal)) {
                    roll.add(decal);
                    return &roll;
                }
            }
            // A wide roll may be full of decals that a narrow one would take as well.
            for (ShelfRoll& roll : m_rolls) {
                if (roll.mayBeUsed == mayBeUsed && makeRoom(roll, decal)) {
                    roll.add(decal);
                    return &roll;
                }
            }
        }
        return nullptr;
    }

private:
    // Moves decals to other rolls that may be used until this one takes the decal; or moves none.
    bool makeRoom(ShelfRoll& crowded, const Decal& decal) {
        const std::optional<Millimetres> length = crowded.lengthOf(decal);
        if (!length || *length > crowded.roll->left)
            return false;
        std::vector<std::pair<const Decal*, ShelfRoll*>> moved;
        const ShelfRoll before = crowded;
        for (const Decal* candidate : before.decals) {
            const auto other = std::ranges::find_if(m_rolls, [&](const ShelfRoll& roll) {
                const std::optional<Millimetres> there = roll.lengthOf(*candidate);
                return &roll != &crowded && roll.mayBeUsed && there && roll.sum + *there <= roll.roll->left;
            });
            if (other == m_rolls.end())
                continue;
            crowded.remove(*candidate);
            other->add(*candidate);
            moved.emplace_back(candidate, &*other);
            if (crowded.sum + *length <= crowded.roll->left)
                return true;
        }
        if (crowded.takes(decal))
            return true;
        for (const auto& [candidate, other] : moved)
            other->remove(*candidate);
        // In the order they had: in another, the same decals may lie longer.
        crowded = before;
        return false;
    }

    std::vector<ShelfRoll> m_rolls;
};

Sentence whyNotUsable(const ShelfRoll& shelf, LocalDate today) {
    const RollCondition& condition = *shelf.condition;
    const NamedValue roll{"roll", shelf.roll->label()};
    if (condition.isPastAge(today))
        return said("{roll} is past its {useBy} ({days}); press a test strip",
                    {roll,
                     {"useBy", condition.useByName()},
                     {"days", dayCount(-condition.daysLeft(today)->count())}});
    if (condition.stripFailed)
        return said("{roll} failed its test strip", {roll});
    return said("{roll} was stored outside its limits; press a test strip", {roll});
}

Sentence tooShort(const Decal& decal, const Film& film, const ShelfRoll& nearest, Millimetres needs,
                  Millimetres left, LocalDate today) {
    std::vector<NamedValue> values{{"film", film.name()},
                                   {"size", Extent{decal.width, decal.height}},
                                   {"needs", InMetres{wholeCentimetres(needs, true)}},
                                   {"roll", nearest.roll->label()},
                                   {"left", InMetres{wholeCentimetres(left, false)}}};
    const bool isPromised = !nearest.decals.empty();
    if (nearest.mayBeUsed)
        return isPromised ? said("{film}: decal of {size} needs {needs}, {roll} has {left} left after what "
                                 "is promised.",
                                 values)
                          : said("{film}: decal of {size} needs {needs}, {roll} has {left} left.", values);
    values.push_back({"whyNot", whyNotUsable(nearest, today)});
    return isPromised
               ? said("{film}: decal of {size} needs {needs}, {roll} has {left} left after what is "
                      "promised, and {whyNot}.",
                      values)
               : said("{film}: decal of {size} needs {needs}, {roll} has {left} left, and {whyNot}.", values);
}

// Why no roll takes the decal, with the numbers of the roll that comes nearest.
Sentence lackWords(const Decal& decal, const Film& film, std::vector<ShelfRoll>& rolls,
                   const ShopSettings& settings, LocalDate today) {
    if (rolls.empty())
        return said("No roll of {film} on the shelf.", {{"film", film.name()}});

    const ShelfRoll* nearest = nullptr;
    Millimetres nearestLeft;
    Millimetres nearestNeeds;
    Millimetres widest;
    for (const ShelfRoll& shelf : rolls) {
        widest = std::max(widest, shelf.roll->width);
        const std::optional<Millimetres> needs = shelf.lengthOf(decal);
        if (!needs)
            continue;
        const Millimetres left = shelf.leftBeside();
        if (!nearest || *needs - left < nearestNeeds - nearestLeft) {
            nearest = &shelf;
            nearestLeft = left;
            nearestNeeds = *needs;
        }
    }
    if (!nearest) {
        const Millimetres side = film.hasGrain ? decal.width : std::min(decal.width, decal.height);
        return said("{film}: {side} decal needs {needs} of width, the widest roll is {widest}.",
                    {{"film", film.name()},
                     {"side", side},
                     {"needs", side + settings.edgeMargin * 2},
                     {"widest", widest}});
    }
    return tooShort(decal, film, *nearest, nearestNeeds, nearestLeft, today);
}

std::vector<RollInTurn> inTurn(FilmShelf& shelf, LocalDate today) {
    std::vector<RollInTurn> rolls;
    for (const ShelfRoll& entry : shelf.rolls()) {
        const Millimetres allotted = entry.allotted();
        RollInTurn roll{entry.condition->daysLeft(today).value_or(kLookedAhead), allotted,
                        std::max(Millimetres{}, entry.roll->left - allotted), entry.mayBeUsed};
        if (const auto& range = entry.condition->useByRange) {
            roll.daysAtLeast = range->first - today;
            roll.daysAtMost = range->last - today;
        }
        rolls.push_back(roll);
    }
    return rolls;
}

// What becomes of each roll of one film. Usual use goes to the roll with the earliest use-by first.
void forecastUse(FilmShelf& shelf, const UseRate& rate, LocalDate today,
                 std::vector<std::pair<RollForecast, LocalDate>>& forecasts) {
    const std::vector<RollInTurn> rolls = inTurn(shelf, today);
    const std::vector<ExpectedUse> uses = expectedUseInTurn(rate, rolls);
    for (std::size_t at = 0; at < rolls.size(); ++at) {
        const ShelfRoll& entry = shelf.rolls()[at];
        const ExpectedUse& use = uses[at];
        const RollCondition& condition = *entry.condition;
        RollForecast forecast;
        forecast.roll = entry.roll->id;
        forecast.daysLeft = condition.daysLeft(today);
        forecast.left = entry.roll->left;
        forecast.allotted = rolls[at].allotted;
        forecast.mayBeUsed = entry.mayBeUsed;

        const Millimetres free = rolls[at].free;
        forecast.usualUse = use.expected;
        if (forecast.daysLeft || !entry.mayBeUsed) {
            forecast.expectedWaste = free - use.expected;
            forecast.wasteLow = free - use.high;
            forecast.wasteHigh = free - use.low;
        }
        forecasts.emplace_back(std::move(forecast), useByOrNever(condition));
    }
}

// Each quotation takes its film from what the confirmed orders leave, and gives it back: the next one is
// looked at as if it were the only one.
void lookAtQuotations(const ShopFacts& facts, const std::map<FilmId, FilmShelf>& shelves, LocalDate today,
                      Allotment& allotment) {
    std::map<OrderId, std::vector<WaitingDecal>> quotations;
    for (const WaitingDecal& quoted : quotedDecals(facts))
        if (quoted.film)
            quotations[quoted.garment->order].push_back(quoted);
    for (const auto& [order, decals] : quotations) {
        std::map<FilmId, FilmShelf> tried;
        for (const WaitingDecal& quoted : decals) {
            const auto shelf = shelves.find(quoted.decal->film);
            FilmShelf& own =
                tried.try_emplace(quoted.decal->film, shelf == shelves.end() ? FilmShelf{} : shelf->second)
                    .first->second;
            if (const ShelfRoll* roll = own.allot(*quoted.decal))
                allotment.rollIfConfirmed[quoted.decal->id] = roll->roll->id;
            else
                allotment.lackIfConfirmed[quoted.decal->id] =
                    lackWords(*quoted.decal, *quoted.film, own.rolls(), facts.settings, today);
        }
    }
}

template <typename Value>
const Value* foundIn(const std::map<DecalId, Value>& first, const std::map<DecalId, Value>& second,
                     DecalId decal) {
    if (const auto found = first.find(decal); found != first.end())
        return &found->second;
    const auto found = second.find(decal);
    return found == second.end() ? nullptr : &found->second;
}

} // namespace

std::optional<RollId> Allotment::rollFor(DecalId decal) const {
    const RollId* roll = foundIn(rollOf, rollIfConfirmed, decal);
    return roll ? std::optional{*roll} : std::nullopt;
}

const Sentence* Allotment::lackOf(DecalId decal) const {
    return foundIn(lack, lackIfConfirmed, decal);
}

const RollForecast* Allotment::forecast(RollId roll) const {
    const auto found = std::ranges::find(useFirst, roll, &RollForecast::roll);
    return found == useFirst.end() ? nullptr : &*found;
}

Allotment allot(const ShopFacts& facts, const RollConditions& conditions, const RecentUse& recentUse,
                const Now& now) {
    const LocalDate today = now.today();
    std::map<FilmId, FilmShelf> shelves;
    for (const FilmRoll& roll : facts.rolls) {
        const Film* film = facts.films.find(roll.film);
        const RollCondition* condition = conditions.find(roll.id);
        if (roll.state != RollState::OnShelf || !film || !condition)
            continue;
        ShelfRoll shelf;
        shelf.roll = &roll;
        shelf.film = film;
        shelf.condition = condition;
        shelf.settings = &facts.settings;
        shelf.mayBeUsed = condition->mayBeUsed(*film, today);
        shelves[roll.film].add(std::move(shelf));
    }
    for (auto& [film, shelf] : shelves)
        shelf.sortByUse(today);

    Allotment allotment;
    const std::vector<WaitingDecal> waitingInOrder = waitingDecals(facts);
    for (const WaitingDecal& waiting : waitingInOrder) {
        if (!waiting.film)
            continue;
        FilmShelf& shelf = shelves[waiting.decal->film];
        if (!shelf.allot(*waiting.decal))
            allotment.lack[waiting.decal->id] =
                lackWords(*waiting.decal, *waiting.film, shelf.rolls(), facts.settings, today);
    }

    lookAtQuotations(facts, shelves, today, allotment);

    std::vector<std::pair<RollForecast, LocalDate>> forecasts;
    for (auto& [film, shelf] : shelves) {
        for (const ShelfRoll& entry : shelf.rolls()) {
            for (const Decal* decal : entry.decals)
                allotment.rollOf[decal->id] = entry.roll->id;
        }
        const auto use = recentUse.find(film);
        forecastUse(shelf, use == recentUse.end() ? UseRate{} : rateOf(use->second), today, forecasts);
    }
    std::ranges::stable_sort(forecasts, [](const auto& one, const auto& other) {
        return std::tuple{one.second, -one.first.expectedWaste, one.first.left} <
               std::tuple{other.second, -other.first.expectedWaste, other.first.left};
    });
    std::map<RollId, std::vector<const WaitingDecal*>> decalsOf;
    for (const WaitingDecal& waiting : waitingInOrder) {
        if (const auto at = allotment.rollOf.find(waiting.decal->id); at != allotment.rollOf.end())
            decalsOf[at->second].push_back(&waiting);
    }
    for (auto& [forecast, useBy] : forecasts) {
        for (const WaitingDecal* waiting : decalsOf[forecast.roll]) {
            forecast.decals.push_back(waiting->decal->id);
            if (dateOf(now.later(waiting->promised, -facts.settings.restBeforeWash)) > useBy)
                forecast.pressEarly.push_back(waiting->decal->id);
        }
        allotment.useFirst.push_back(std::move(forecast));
    }
    return allotment;
}

} // namespace holdfast
