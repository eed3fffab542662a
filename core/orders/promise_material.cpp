// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/orders/promise_material.h"

#include "core/orders/promise_wash.h"
#include "core/trade/assertion.h"

#include <algorithm>
#include <map>
#include <tuple>
#include <utility>

namespace holdfast {

namespace {

constexpr Seconds kLongestWait{Days{366}};
constexpr Days kLongestLead{366};
constexpr std::int64_t kMostAsked = 10'000;

bool isWashedClean(const BlankLot& lot, const ShopFacts& facts) {
    const WashLoad* load = facts.lastLoadOf(lot);
    return load && !load->leftSoftener();
}

// Deliveries are taken in when the workshop opens.
std::optional<LocalTime> arrival(Days lead, std::span<const OpenStretch> hours, const Now& now) {
    return nextOpen(hours, LocalTime{now.today() + std::clamp(lead, Days{0}, kLongestLead)});
}

// When the load that runs now leaves the washer.
LocalTime washerFree(const ShopFacts& facts, Seconds takes, const Now& now) {
    LocalTime free = now.local();
    for (const WashLoad& load : facts.loads) {
        if (!load.isDry() && load.startedAt <= now.instant)
            free = std::max(free, now.toLocal(load.startedAt + takes));
    }
    return free;
}

Error beyondTheYear() {
    return plainError(said("What is needed will not arrive, or be dry, within a year: no day can be "
                           "promised. Check the lead, washing and drying times in the settings."));
}

class Gathering {
public:
    Gathering(const ShopFacts& facts, const ShopSettings& settings, std::span<const PromisedWash> promised,
              std::span<const OpenStretch> hours, const Now& now)
        : m_facts(facts)
        , m_settings(settings)
        , m_promised(promised)
        , m_hours(hours)
        , m_now(now)
        , m_takes(std::clamp<Seconds>(settings.washTakes, kShortestWash, kLongestWait))
        , m_evenings(settings, hours, now, washerFree(facts, m_takes, now))
        , m_drying(std::clamp<Seconds>(settings.dryingTakes, Seconds{0}, kLongestWait)) {}

    Result<BlanksReady> gather(std::span<const AskedGarment> asked) {
        std::vector<const AskedGarment*> unwashed;
        std::vector<const AskedGarment*> missing;
        for (const AskedGarment& garment : asked) {
            if (!garment.isOnPress)
                takeBlank(garment, unwashed, missing);
        }
        if (!unwashed.empty() || !missing.empty())
            washWhatIsPromised();
        for (const AskedGarment* garment : unwashed)
            wash(*garment, m_now.local());
        for (const AskedGarment* garment : missing)
            buyBlank(*garment);
        if (m_failure)
            return *m_failure;
        return written();
    }

private:
    using Kind = std::tuple<BlankStyleId, std::string, ColourId>;
    enum class State { Dry, Drying, Unwashed };

    struct Supply {
        std::int64_t dry = 0;          // nothing to wait for
        std::vector<LocalTime> drying; // one each, soonest last
        std::int64_t unwashed = 0;
    };

    State stateOf(const BlankLot& lot) const {
        const BlankStyle* style = m_facts.styles.find(lot.style);
        if ((!style || style->washedFirst()) && !isWashedClean(lot, m_facts))
            return State::Unwashed;
        const WashLoad* load = m_facts.lastLoadOf(lot);
        return !load || load->isDry() ? State::Dry : State::Drying;
    }

    // Free units of a kind, looked up once and counted down.
    Supply& supplyOf(const AskedGarment& garment) {
        const auto [known, isNew] = m_supplies.try_emplace(Kind{garment.style, garment.size, garment.colour});
        if (isNew)
            known->second = freeSupply(garment);
        return known->second;
    }

    Supply freeSupply(const AskedGarment& garment) const {
        Supply supply;
        for (const BlankLot& lot : m_facts.lots) {
            if (lot.style != garment.style || lot.size != garment.size || lot.colour != garment.colour)
                continue;
            const std::int64_t units = m_facts.freeUnits(lot);
            switch (stateOf(lot)) {
            case State::Dry:
                supply.dry += units;
                break;
            case State::Drying:
                supply.drying.insert(supply.drying.end(),
                                     static_cast<std::size_t>(std::min(units, kMostAsked)),
                                     dryAt(*m_facts.lastLoadOf(lot)));
                break;
            case State::Unwashed:
                supply.unwashed += units;
                break;
            }
        }
        std::ranges::sort(supply.drying, std::ranges::greater{});
        return supply;
    }

    LocalTime dryAt(const WashLoad& load) const {
        return std::max(m_now.local(), m_now.toLocal(load.startedAt + m_takes + m_drying));
    }

    void takeBlank(const AskedGarment& garment, std::vector<const AskedGarment*>& unwashed,
                   std::vector<const AskedGarment*>& missing) {
        if (const BlankLot* lot = garment.lot ? m_facts.lots.find(*garment.lot) : nullptr) {
            if (stateOf(*lot) == State::Drying)
                waitUntilDry(garment, dryAt(*m_facts.lastLoadOf(*lot)));
            else if (stateOf(*lot) == State::Unwashed)
                unwashed.push_back(&garment);
            return;
        }
        Supply& supply = supplyOf(garment);
        if (supply.dry > 0) {
            --supply.dry;
        } else if (!supply.drying.empty()) {
            const LocalTime dry = supply.drying.back();
            supply.drying.pop_back();
            waitUntilDry(garment, dry);
        } else if (supply.unwashed > 0) {
            --supply.unwashed;
            unwashed.push_back(&garment);
        } else {
            missing.push_back(&garment);
        }
    }

    void waitUntilDry(const AskedGarment& garment, LocalTime dry) {
        note({PromiseStage::Dry, dry, dry,
              said("{blank} is drying until {dry}.", {{"blank", blankWords(garment)}, {"dry", dry}})});
    }

    void washWhatIsPromised() {
        for (const PromisedWash& wash : m_promised) {
            const std::optional<LocalTime> there = nextOpen(m_hours, std::max(wash.there, m_now.local()));
            const bool isHereNow = wash.there <= m_now.local();
            if (isHereNow || there)
                m_evenings.put(wash.weight, isHereNow ? m_now.local() : *there);
        }
    }

    void wash(const AskedGarment& garment, LocalTime there) {
        if (m_settings.washerHolds <= Grams{}) {
            m_failure = fieldError("washerHolds",
                                   said("A full load of the washer is 0 kg, and {blank} must be washed "
                                        "first: no day can be promised. Set the load in the settings.",
                                        {{"blank", blankWords(garment)}}));
            return;
        }
        const BlankStyle* style = m_facts.styles.find(garment.style);
        const std::optional<LocalTime> begins = m_evenings.put(style ? style->weight : Grams{}, there);
        if (!begins) {
            m_failure = beyondTheYear();
            return;
        }
        const LocalTime dry = m_now.later(*begins, m_takes + m_drying);
        note({PromiseStage::Wash, *begins, dry,
              said("{blank} is not washed yet: in the wash {begins}, dry by {dry}.",
                   {{"blank", blankWords(garment)}, {"begins", *begins}, {"dry", dry}})});
    }

    void buyBlank(const AskedGarment& garment) {
        const std::optional<LocalTime> comes = arrival(m_settings.blankLeadTime, m_hours, m_now);
        if (!comes) {
            m_failure = beyondTheYear();
            return;
        }
        note({PromiseStage::BuyBlank, *comes, *comes,
              said("There is no {blank} left: a new one comes by {comes}.",
                   {{"blank", blankWords(garment)}, {"comes", *comes}})});
        const BlankStyle* style = m_facts.styles.find(garment.style);
        if (!style || style->washedFirst())
            wash(garment, *comes);
    }

    Sentence blankWords(const AskedGarment& garment) const {
        const BlankStyle* style = m_facts.styles.find(garment.style);
        if (!style)
            return said("blank of this kind");
        const Colour* colour = style->colour(garment.colour);
        std::vector<NamedValue> values{{"style", style->name}, {"size", garment.size}};
        if (!colour)
            return said("{style}, {size}", values);
        values.push_back({"colour", colour->name});
        return said("{style}, {size}, {colour}", values);
    }

    // Of each stage only what is done last is waited for.
    void note(MaterialLeg leg) {
        const auto known = std::ranges::find(m_legs, leg.stage, &MaterialLeg::stage);
        if (known == m_legs.end())
            m_legs.push_back(std::move(leg));
        else if (known->doneAt < leg.doneAt)
            *known = std::move(leg);
    }

    BlanksReady written() {
        BlanksReady ready{m_now.local(), {}};
        std::erase_if(m_legs, [this](const MaterialLeg& leg) { return leg.doneAt <= m_now.local(); });
        for (const MaterialLeg& leg : m_legs)
            ready.at = std::max(ready.at, leg.doneAt);
        std::ranges::stable_sort(m_legs, {}, &MaterialLeg::at);
        ready.legs = std::move(m_legs);
        return ready;
    }

    const ShopFacts& m_facts;
    const ShopSettings& m_settings;
    std::span<const PromisedWash> m_promised;
    std::span<const OpenStretch> m_hours;
    const Now& m_now;
    Seconds m_takes;
    WashEvenings m_evenings;
    Seconds m_drying;
    std::map<Kind, Supply> m_supplies;
    std::vector<MaterialLeg> m_legs;
    std::optional<Error> m_failure;
};

} // namespace

Result<BlanksReady> blanksFor(std::span<const AskedGarment> asked, const ShopFacts& facts,
                              const ShopSettings& settings, std::span<const PromisedWash> promised,
                              std::span<const OpenStretch> hours, const Now& now) {
    return Gathering{facts, settings, promised, hours, now}.gather(asked);
}

Result<MaterialLeg> filmBought(std::span<const FilmId> films, const ShopFacts& facts,
                               std::span<const FreeFilm> onShelf, std::span<const OpenStretch> hours,
                               const Now& now) {
    HOLDFAST_ASSERT(!films.empty());
    const std::optional<LocalTime> comes = arrival(facts.settings.filmLeadTime, hours, now);
    if (!comes)
        return beyondTheYear();
    const FilmId first = films.front();
    const Film* known = facts.films.find(first);
    const std::vector<NamedValue> values{{"film", known ? Value{known->name()} : Value{said("this film")}},
                                         {"comes", *comes}};
    const bool isOnShelf = std::ranges::find(onShelf, first, &FreeFilm::film) != onShelf.end();
    return MaterialLeg{
        PromiseStage::BuyFilm, *comes, *comes,
        isOnShelf
            ? said("Too little of {film} is left after what is promised: more arrives by {comes}.", values)
            : said("There is no roll of {film} on the shelf: a new one comes by {comes}.", values)};
}

} // namespace holdfast
