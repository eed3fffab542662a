#include "core/orders/promise_material.h"

#include <algorithm>
#include <map>
#include <tuple>

namespace holdfast {

namespace {

// Household hours: the last load of an evening begins by then. Common practice, no source.
constexpr Hours kLastLoadBegins{21};
constexpr Seconds kShortestWash{60};
constexpr Seconds kLongestWait{Days{366}};
constexpr Days kLongestLead{366};

bool isWashedClean(const BlankLot& lot, const ShopFacts& facts) {
    const WashLoad* load = facts.lastLoadOf(lot);
    return load && !load->leftSoftener();
}

std::string timeWords(LocalTime time) {
    return spokenDay(dateOf(time)) + ", " + clockTime(time);
}

// The evenings' loads, filled one after the other.
class WashEvenings {
public:
    WashEvenings(const ShopSettings& settings, std::span<const OpenStretch> hours, LocalTime now)
        : m_settings(settings)
        , m_hours(hours)
        , m_now(now)
        , m_takes(std::clamp<Seconds>(settings.washTakes, kShortestWash, kLongestWait)) {}

    Seconds takes() const { return m_takes; }

    // Puts one blank into the first load that begins when it is there and has room. None: no evening left.
    std::optional<LocalTime> put(Grams weight, LocalTime there) {
        const std::int64_t added = std::clamp<std::int64_t>(weight.value, 0, kHeaviest);
        const std::int64_t holds = std::clamp<std::int64_t>(m_settings.washerHolds.value, 0, kHeaviest);
        const bool fits = m_load && *m_load >= there && m_filled + added <= holds;
        if (!fits) {
            const std::optional<LocalTime> next = nextLoad(there);
            if (!next)
                return std::nullopt;
            m_load = next;
            m_filled = 0;
        }
        m_filled += added;
        return m_load;
    }

private:
    static constexpr std::int64_t kHeaviest = 1'000'000'000;

    std::optional<LocalTime> nextLoad(LocalTime there) const {
        const LocalTime earliest = std::max({there, m_now, m_load ? *m_load + m_takes : m_now});
        // From the evening of that day on; an evening begins when the workshop closes.
        auto day = std::ranges::lower_bound(m_hours, dateOf(earliest), {},
                                            [](const OpenStretch& open) { return dateOf(open.begins); });
        if (const auto open = m_settings.hoursOn(dateOf(earliest));
            open && (day == m_hours.end() || dateOf(day->begins) != dateOf(earliest))) {
            // Today's pressing hours are over; its evening may not be.
            if (earliest <= LocalTime{dateOf(earliest)} + kLastLoadBegins)
                return earliest;
        }
        for (; day != m_hours.end(); ++day) {
            const LocalTime closes = day->ends;
            const LocalTime begins = std::max(closes, earliest);
            const LocalTime last = std::max(closes, LocalTime{dateOf(day->begins)} + kLastLoadBegins);
            if (begins <= last)
                return begins;
        }
        return std::nullopt;
    }

    const ShopSettings& m_settings;
    std::span<const OpenStretch> m_hours;
    LocalTime m_now;
    Seconds m_takes;
    std::optional<LocalTime> m_load; // begins
    std::int64_t m_filled = 0;       // grams in it
};

class Gathering {
public:
    Gathering(const ShopFacts& facts, std::span<const OpenStretch> hours, const Now& now)
        : m_facts(facts)
        , m_hours(hours)
        , m_now(now)
        , m_evenings(facts.settings, hours, now.local())
        , m_drying(std::clamp<Seconds>(facts.settings.dryingTakes, Seconds{0}, kLongestWait)) {}

    std::optional<Material> gather(std::span<const AskedGarment> asked) {
        std::vector<const AskedGarment*> unwashed;
        std::vector<const AskedGarment*> missing;
        for (const AskedGarment& garment : asked)
            takeBlank(garment, unwashed, missing);
        if (!unwashed.empty() || !missing.empty())
            washWhatIsPromised();
        for (const AskedGarment* garment : unwashed)
            wash(*garment, m_now.local());
        for (const AskedGarment* garment : missing)
            buyBlank(*garment);
        for (const AskedGarment& garment : asked) {
            for (const FilmId film : garment.films)
                takeFilm(film);
        }
        if (m_isBeyond)
            return std::nullopt;
        return written();
    }

private:
    using Kind = std::tuple<BlankStyleId, std::string, ColourId>;

    struct Supply {
        std::int64_t dry = 0;          // nothing to wait for
        std::vector<LocalTime> drying; // one each, soonest last
        std::int64_t unwashed = 0;
    };

    // Free units of a kind, looked up once and counted down.
    Supply& supplyOf(const AskedGarment& garment) {
        const auto [known, isNew] = m_supplies.try_emplace(Kind{garment.style, garment.size, garment.colour});
        if (isNew)
            known->second = freeSupply(garment);
        return known->second;
    }

    Supply freeSupply(const AskedGarment& garment) const {
        const BlankStyle* style = m_facts.styles.find(garment.style);
        const bool washedFirst = !style || style->washedFirst();
        Supply supply;
        for (const BlankLot& lot : m_facts.lots) {
            if (lot.style != garment.style || lot.size != garment.size || lot.colour != garment.colour)
                continue;
            const std::int64_t units = m_facts.freeUnits(lot);
            if (washedFirst && !isWashedClean(lot, m_facts)) {
                supply.unwashed += units;
                continue;
            }
            const WashLoad* load = m_facts.lastLoadOf(lot);
            if (!load || load->isDry())
                supply.dry += units;
            else
                supply.drying.insert(supply.drying.end(),
                                     static_cast<std::size_t>(std::min(units, kMostAsked)), dryAt(*load));
        }
        std::ranges::sort(supply.drying, std::ranges::greater{});
        return supply;
    }

    LocalTime dryAt(const WashLoad& load) const {
        return std::max(m_now.local(), m_now.toLocal(load.startedAt) + m_evenings.takes() + m_drying);
    }

    void takeBlank(const AskedGarment& garment, std::vector<const AskedGarment*>& unwashed,
                   std::vector<const AskedGarment*>& missing) {
        Supply& supply = supplyOf(garment);
        if (supply.dry > 0) {
            --supply.dry;
        } else if (!supply.drying.empty()) {
            const LocalTime dry = supply.drying.back();
            supply.drying.pop_back();
            note({PromiseStage::Dry, dry, dry,
                  blankWords(garment) + " is drying until " + timeWords(dry) + "."});
        } else if (supply.unwashed > 0) {
            --supply.unwashed;
            unwashed.push_back(&garment);
        } else {
            missing.push_back(&garment);
        }
    }

    // Blanks kept for promised garments go into the machine before ours.
    void washWhatIsPromised() {
        for (const Garment& garment : m_facts.garments) {
            const BlankLot* lot = garment.lot ? m_facts.lots.find(*garment.lot) : nullptr;
            const Order* order = m_facts.orders.find(garment.order);
            const BlankStyle* style = m_facts.styles.find(garment.style);
            if (!lot || !order || !style || order->state != OrderState::Confirmed || garment.handedOverAt)
                continue;
            if (style->washedFirst() && !isWashedClean(*lot, m_facts) && m_facts.stepsOf(garment).empty())
                m_evenings.put(style->weight, m_now.local());
        }
    }

    void wash(const AskedGarment& garment, LocalTime there) {
        const BlankStyle* style = m_facts.styles.find(garment.style);
        const std::optional<LocalTime> begins = m_evenings.put(style ? style->weight : Grams{}, there);
        if (!begins) {
            m_isBeyond = true;
            return;
        }
        const LocalTime dry = *begins + m_evenings.takes() + m_drying;
        note({PromiseStage::Wash, *begins, dry,
              blankWords(garment) + " is not washed yet: in the wash " + timeWords(*begins) + ", dry by " +
                  timeWords(dry) + "."});
    }

    void buyBlank(const AskedGarment& garment) {
        const std::optional<LocalTime> comes = arrival(m_facts.settings.blankLeadTime);
        if (!comes) {
            m_isBeyond = true;
            return;
        }
        note({PromiseStage::BuyBlank, *comes, *comes,
              "There is no " + blankWords(garment) + " left: a new one comes by " + timeWords(*comes) + "."});
        const BlankStyle* style = m_facts.styles.find(garment.style);
        if (!style || style->washedFirst())
            wash(garment, *comes);
    }

    void takeFilm(FilmId film) {
        const auto serves = [&](const FilmRoll& roll) {
            return roll.film == film && roll.state == RollState::OnShelf && roll.left > Millimetres{} &&
                   (!roll.printedUseBy || *roll.printedUseBy >= m_now.today());
        };
        if (std::ranges::any_of(m_facts.rolls, serves))
            return;
        const std::optional<LocalTime> comes = arrival(m_facts.settings.filmLeadTime);
        if (!comes) {
            m_isBeyond = true;
            return;
        }
        const Film* known = m_facts.films.find(film);
        note({PromiseStage::BuyFilm, *comes, *comes,
              "There is no roll of " + (known ? known->name() : std::string{"this film"}) +
                  " on the shelf: a new one comes by " + timeWords(*comes) + "."});
    }

    // Deliveries are taken in when the workshop opens.
    std::optional<LocalTime> arrival(Days lead) const {
        const LocalDate date = m_now.today() + std::clamp(lead, Days{0}, kLongestLead);
        return nextOpen(m_hours, LocalTime{date});
    }

    std::string blankWords(const AskedGarment& garment) const {
        const BlankStyle* style = m_facts.styles.find(garment.style);
        if (!style)
            return "blank of this kind";
        const Colour* colour = style->colour(garment.colour);
        return style->name + ", " + garment.size + (colour ? ", " + colour->name : std::string{});
    }

    // Of each stage only what is done last is waited for.
    void note(MaterialLeg leg) {
        const auto known = std::ranges::find(m_legs, leg.stage, &MaterialLeg::stage);
        if (known == m_legs.end())
            m_legs.push_back(std::move(leg));
        else if (known->doneAt < leg.doneAt)
            *known = std::move(leg);
    }

    Material written() {
        Material material{m_now.local(), {}};
        std::erase_if(m_legs, [this](const MaterialLeg& leg) { return leg.doneAt <= m_now.local(); });
        for (const MaterialLeg& leg : m_legs)
            material.readyAt = std::max(material.readyAt, leg.doneAt);
        std::ranges::stable_sort(m_legs, {}, &MaterialLeg::at);
        material.legs = std::move(m_legs);
        return material;
    }

    static constexpr std::int64_t kMostAsked = 10'000;

    const ShopFacts& m_facts;
    std::span<const OpenStretch> m_hours;
    const Now& m_now;
    WashEvenings m_evenings;
    Seconds m_drying;
    std::map<Kind, Supply> m_supplies;
    std::vector<MaterialLeg> m_legs;
    bool m_isBeyond = false;
};

} // namespace

std::optional<Material> materialFor(std::span<const AskedGarment> asked, const ShopFacts& facts,
                                    std::span<const OpenStretch> hours, const Now& now) {
    return Gathering{facts, hours, now}.gather(asked);
}

} // namespace holdfast
