// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/shop/walk.h"

#include "core/press/next_at_press.h"
#include "core/trade/unit_words.h"

#include <algorithm>
#include <map>
#include <set>
#include <tuple>

namespace holdfast {

namespace {

bool isAfterClosing(const ReckonedShop& shop, Instant ends) {
    const LocalTime local = shop.now.toLocal(ends);
    const LocalDate date = dateOf(local);
    const auto hours = shop.facts.settings.hoursOn(date);
    return date != shop.now.today() || !hours || local > date + hours->closes;
}

bool isUnderway(const Assessment& assessment) {
    return assessment.stage == Stage::OnPress || assessment.stage == Stage::Cooling;
}

// Before the press: what is aside if the plan has no place for it.
bool isBeforePress(Stage stage) {
    return stage == Stage::ToConfirm || stage == Stage::ToBuy || stage == Stage::ToWash ||
           stage == Stage::Drying || stage == Stage::ToCut || stage == Stage::ToPress;
}

Instant lastEnd(const std::vector<WalkEntry>& entries) {
    return std::ranges::max_element(entries, {}, &WalkEntry::ends)->ends;
}

const RouteStep* stepUnderway(const Assessment& assessment) {
    const auto at = assessment.progress.underway;
    return at && *at < assessment.route.steps.size() ? &assessment.route.steps[*at] : nullptr;
}

// Entries with the press and temperature that decide their run.
struct Placed {
    WalkEntry entry;
    PressId press;
    Celsius temperature;
};

class WalkMaker {
public:
    explicit WalkMaker(const ReckonedShop& shop)
        : m_shop(shop) {}

    Walk make() {
        walkedToday();
        planned();
        std::ranges::stable_sort(m_walk.runs, {}, &WalkRun::begins);
        rack();
        aside();
        next();
        count();
        return std::move(m_walk);
    }

private:
    // What was pressed today and what is under way, in the order it was begun.
    void walkedToday() {
        std::vector<Placed> placed;
        for (const auto& [garmentId, assessment] : m_shop.assessments) {
            const bool pressedToday =
                assessment.progress.pressedAt &&
                dateOf(m_shop.now.toLocal(*assessment.progress.pressedAt)) == m_shop.now.today();
            if (pressedToday || isUnderway(assessment))
                placed.push_back(asItWas(garmentId, assessment));
        }
        std::ranges::stable_sort(placed, {}, [](const Placed& one) { return one.entry.begins; });
        for (const Placed& one : placed)
            joinRun(one);
    }

    Placed asItWas(GarmentId garmentId, const Assessment& assessment) const {
        const auto records = m_shop.facts.stepsOf(m_shop.facts.garments.at(garmentId));
        Placed placed;
        placed.press = assessment.route.press.value_or(PressId{});
        placed.temperature = assessment.route.firstTemperature().value_or(Celsius{});
        WalkEntry& entry = placed.entry;
        entry.garment = garmentId;
        entry.begins = records.empty() ? m_shop.now.instant : records.front().startedAt;
        if (assessment.progress.pressedAt) {
            entry.state = WalkState::Pressed;
            entry.ends = *assessment.progress.pressedAt;
            return placed;
        }
        entry.state = assessment.stage == Stage::Cooling ? WalkState::Cooling : WalkState::OnPress;
        const PlannedGarment* plan = m_shop.plan.find(garmentId);
        entry.ends = plan ? plan->ends : m_shop.now.instant;
        entry.late = plan ? plan->late : Seconds{0};
        entry.isAfterClosing = isAfterClosing(m_shop, entry.ends);
        return placed;
    }

    void joinRun(const Placed& placed) {
        m_onWalk.insert(placed.entry.garment);
        const auto last = m_lastRunOf.find(placed.press);
        if (last != m_lastRunOf.end() && m_walk.runs[last->second].temperature == placed.temperature) {
            WalkRun& run = m_walk.runs[last->second];
            run.ends = std::max(run.ends, placed.entry.ends);
            run.entries.push_back(placed.entry);
            return;
        }
        WalkRun run{placed.press,      placed.temperature, {}, {}, placed.entry.begins,
                    placed.entry.ends, {placed.entry}};
        const Press* press = m_shop.facts.presses.find(placed.press);
        if (last != m_lastRunOf.end() && press) {
            run.changedFrom = m_walk.runs[last->second].temperature;
            run.change = changeTime(*press, *run.changedFrom, run.temperature);
        }
        m_lastRunOf[placed.press] = m_walk.runs.size();
        m_walk.runs.push_back(std::move(run));
    }

    void planned() {
        for (const HeatRun& planned : m_shop.plan.runs)
            addPlanned(planned);
    }

    // The planned garments of one heat run; they go on the run that is under way at this temperature.
    void addPlanned(const HeatRun& planned) {
        std::vector<WalkEntry> entries;
        for (const PlannedGarment& garment : planned.garments)
            if (m_onWalk.insert(garment.garment).second)
                entries.push_back({garment.garment, WalkState::Planned, garment.begins, garment.ends,
                                   garment.late, isAfterClosing(m_shop, garment.ends)});
        if (entries.empty())
            return;
        const auto last = m_lastRunOf.find(planned.press);
        if (last != m_lastRunOf.end() && m_walk.runs[last->second].temperature == planned.temperature) {
            WalkRun& run = m_walk.runs[last->second];
            run.ends = std::max(run.ends, lastEnd(entries));
            run.entries.insert(run.entries.end(), entries.begin(), entries.end());
            return;
        }
        m_lastRunOf[planned.press] = m_walk.runs.size();
        m_walk.runs.push_back({planned.press, planned.temperature, planned.change, planned.changedFrom,
                               entries.front().begins, lastEnd(entries), entries});
    }

    void rack() {
        std::optional<Instant> lastOnPress;
        for (const WalkRun& run : m_walk.runs)
            for (const WalkEntry& entry : run.entries) {
                const Assessment& assessment = m_shop.of(entry.garment);
                const RouteStep* step = stepUnderway(assessment);
                if (!step || entry.state == WalkState::Planned || entry.state == WalkState::Pressed)
                    continue;
                const Instant since = assessment.progress.underwaySince.value_or(m_shop.now.instant);
                if (step->isWaiting())
                    m_walk.rack.push_back({entry.garment, since + step->waiting, afterCooling(assessment),
                                           step->peel.value_or(Peel::Cool)});
                else if (!lastOnPress || since >= *lastOnPress) {
                    // Of two that are open at once, the one that was turned to last is in hand.
                    lastOnPress = since;
                    m_walk.onPress = entry.garment;
                }
            }
        std::ranges::stable_sort(m_walk.rack, {}, &RackEntry::until);
    }

    static Sentence afterCooling(const Assessment& assessment) {
        const std::size_t next = *assessment.progress.underway + 1;
        return next < assessment.route.steps.size()
                   ? said("{step}", {{"step", withinLine(assessment.route.steps[next].title)}})
                   : said("done");
    }

    void aside() {
        for (const auto& [garmentId, assessment] : m_shop.assessments) {
            if (!isBeforePress(assessment.stage) || m_onWalk.contains(garmentId))
                continue;
            const Garment& garment = m_shop.facts.garments.at(garmentId);
            if (m_shop.facts.orderOf(garment).state != OrderState::Confirmed)
                continue; // a quotation is no work yet
            m_walk.aside.push_back(asideOf(garment, assessment));
        }
        sortAside();
    }

    // By promise, then as the orders were taken. Each key is looked up once.
    void sortAside() {
        using Key = std::tuple<LocalTime, std::int64_t, int, std::size_t>;
        std::vector<Key> keys;
        for (std::size_t at = 0; at < m_walk.aside.size(); ++at) {
            const Garment& garment = m_shop.facts.garments.at(m_walk.aside[at].garment);
            const Order& order = m_shop.facts.orderOf(garment);
            keys.emplace_back(order.promised, order.number, garment.position, at);
        }
        std::ranges::sort(keys);
        std::vector<AsideEntry> sorted;
        sorted.reserve(keys.size());
        for (const Key& key : keys)
            sorted.push_back(std::move(m_walk.aside[std::get<3>(key)]));
        m_walk.aside = std::move(sorted);
    }

    AsideEntry asideOf(const Garment& garment, const Assessment& assessment) const {
        AsideEntry entry;
        entry.garment = garment.id;
        entry.stage = assessment.stage;
        if (const Finding* hold = assessment.firstHold()) {
            entry.isHeld = true;
            entry.what = hold->what;
            entry.why = hold->why;
            entry.finding = *hold;
            if (!hold->frees.empty())
                entry.frees = hold->frees.front();
            return entry;
        }
        waiting(entry, garment);
        return entry;
    }

    // What a garment that no rule holds waits for.
    void waiting(AsideEntry& entry, const Garment& garment) const {
        switch (entry.stage) {
        case Stage::ToConfirm:
            entry.what = said("To confirm");
            entry.why = said("The customer has not agreed to the wording or artwork yet.");
            entry.frees = FreeingAct::ConfirmWording;
            break;
        case Stage::ToBuy:
            entry.what = said("No blank");
            entry.why = said("No blank of this size and colour is reserved for it.");
            entry.frees = FreeingAct::ReceiveBlanks;
            break;
        case Stage::ToWash:
            entry.what = said("To wash");
            entry.why = said("Its blank has not been washed.");
            entry.frees = FreeingAct::WashBlank;
            break;
        case Stage::Drying:
            entry.what = said("Drying");
            entry.why = said("Its wash load has not been found dry yet.");
            entry.frees = FreeingAct::MarkDry;
            break;
        case Stage::ToCut:
            entry.what = said("To cut");
            cutting(entry, garment);
            break;
        case Stage::ToPress:
        case Stage::OnPress:
        case Stage::Cooling:
        case Stage::Resting:
        case Stage::Ready:
        case Stage::HandedOver:
        case Stage::Cancelled:
            entry.what = said("No press for it");
            entry.why = said("No press can be brought to the temperature it needs.");
            entry.frees = FreeingAct::AddPress;
            break;
        }
    }

    void cutting(AsideEntry& entry, const Garment& garment) const {
        Sentence rolls;
        std::int64_t waitingDecals = 0;
        std::optional<RollId> lastRoll;
        for (const Decal& decal : garment.decals) {
            if (decal.isCut())
                continue;
            ++waitingDecals;
            const auto allotted = m_shop.allotment.rollOf.find(decal.id);
            if (allotted == m_shop.allotment.rollOf.end() || allotted->second == lastRoll)
                continue;
            lastRoll = allotted->second;
            if (!entry.cutFrom)
                entry.cutFrom = lastRoll;
            Sentence roll = said("{roll} {film}", {{"roll", m_shop.facts.rolls.at(*lastRoll).label()},
                                                   {"film", m_shop.facts.films.at(decal.film).name()}});
            rolls = rolls.empty() ? roll : said("{rolls}, then {roll}", {{"rolls", rolls}, {"roll", roll}});
        }
        const NamedValue count{"n", waitingDecals};
        entry.why = rolls.empty() ? said("{n} decal to cut.|{n} decals to cut.", {count})
                                  : said("{n} decal to cut from {rolls}.|{n} decals to cut from {rolls}.",
                                         {count, {"rolls", rolls}});
    }

    void next() {
        std::vector<OnTheRack> rack;
        for (const RackEntry& entry : m_walk.rack)
            rack.push_back({entry.garment, entry.peel, entry.until - m_shop.now.instant});
        const NextAtPress offered = nextAtPress({{}, false, rack, m_walk.firstPlanned()});
        if (offered.kind != NextAtPress::Kind::AwaitRack)
            m_walk.next = offered.garment;
    }

    void count() {
        m_walk.ends = m_shop.now.instant;
        for (const WalkRun& run : m_walk.runs) {
            m_walk.pressed += run.pressedCount();
            m_walk.total += run.entries.size();
        }
        if (m_walk.pressed < m_walk.total)
            m_walk.ends = std::max(m_walk.ends, m_shop.plan.ends);
        else if (m_walk.total > 0)
            m_walk.ends = std::ranges::max(m_walk.runs, {}, &WalkRun::ends).ends;
    }

    const ReckonedShop& m_shop;
    Walk m_walk;
    std::map<PressId, std::size_t> m_lastRunOf;
    std::set<GarmentId> m_onWalk;
};

} // namespace

std::size_t WalkRun::pressedCount() const {
    return static_cast<std::size_t>(std::ranges::count(entries, WalkState::Pressed, &WalkEntry::state));
}

std::optional<GarmentId> Walk::firstPlanned() const {
    const WalkEntry* first = nullptr;
    for (const WalkRun& run : runs)
        for (const WalkEntry& entry : run.entries)
            if (entry.state == WalkState::Planned && (!first || entry.begins < first->begins))
                first = &entry;
    return first ? std::optional{first->garment} : std::nullopt;
}

Walk walkOf(const ReckonedShop& shop) {
    return WalkMaker(shop).make();
}

} // namespace holdfast
