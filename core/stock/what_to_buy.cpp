// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/stock/what_to_buy.h"

#include "core/film/waiting_decals.h"
#include "core/orders/film_waste.h"
#include "core/trade/unit_normal.h"

#include <algorithm>
#include <cmath>
#include <tuple>

namespace holdfast {

namespace {

constexpr double kDaysInWeek = 7;
constexpr std::int64_t kMillimetresInMetre = 1000;
// Below one in ten and above one in ten: eight of ten cases are between.
constexpr double kLowTenth = 0.1;
constexpr double kHighTenth = 0.9;

double weeksIn(Days days) {
    return static_cast<double>(days.count()) / kDaysInWeek;
}

std::int64_t roundedUp(double amount) {
    return static_cast<std::int64_t>(std::ceil(amount - 1e-9));
}

// Whether decals are cut and blanks taken already is the garment's own affair: it needs a blank as long as it
// has none and nothing was pressed.
bool needsABlank(const ReckonedShop& shop, const Garment& garment) {
    return !garment.lot && !garment.handedOverAt &&
           shop.facts.orderOf(garment).state == OrderState::Confirmed &&
           !shop.of(garment.id).progress.hasBegun();
}

// What is left of each kind, and how many garments have none.
struct RailOfKinds {
    std::map<BlankKind, std::int64_t> left;
    std::map<BlankKind, std::int64_t> needed;

    explicit RailOfKinds(const ReckonedShop& shop) {
        for (const BlankLot& lot : shop.facts.lots)
            left[{lot.style, lot.size, lot.colour}] += shop.facts.freeUnits(lot);
        for (const Garment& garment : shop.facts.garments)
            if (needsABlank(shop, garment))
                ++needed[{garment.style, garment.size, garment.colour}];
    }
};

std::int64_t countOf(const std::map<BlankKind, std::int64_t>& counts, const BlankKind& kind) {
    const auto found = counts.find(kind);
    return found == counts.end() ? 0 : found->second;
}

// Buys by the levels, in whole steps; what orders need and cannot have of what is there, in any case.
void settle(ToBuy& line, const ReorderLevels& levels, std::int64_t needed, std::int64_t step) {
    line.reorderPoint = roundedUp(levels.point); // as it is shown, so that what is at it is bought
    const ReorderLevels shown{static_cast<double>(line.reorderPoint),
                              std::max(levels.upTo, static_cast<double>(line.reorderPoint))};
    const double wanted =
        std::max(shown.toBuy(static_cast<double>(line.there - line.promised)), static_cast<double>(needed));
    if (wanted <= 0)
        return;
    line.buy = roundedUp(wanted / static_cast<double>(step)) * step;
    line.why = needed > 0 ? WhyBuy::Promised : WhyBuy::RunsLow;
}

class BlanksToBuy {
public:
    BlanksToBuy(const ReckonedShop& shop, const BlankUse& use, const WhatToBring* bring)
        : m_facts(shop.facts)
        , m_use(use)
        , m_rail(shop) {
        if (bring)
            for (const ToBring& kind : bring->kinds)
                m_brought.emplace(kind.kind, kind.brought.quantity);
    }

    void addTo(std::vector<ToBuy>& lines) const {
        for (const BlankStyle& style : m_facts.styles)
            if (!style.isRetired)
                addStyle(style, lines);
    }

private:
    void addStyle(const BlankStyle& style, std::vector<ToBuy>& lines) const {
        const auto sold = m_use.soldAWeek.find(style.id);
        const std::vector<std::int64_t> none(static_cast<std::size_t>(m_use.weeks));
        const std::vector<std::int64_t>& aWeek = sold == m_use.soldAWeek.end() ? none : sold->second;
        const double lead = weeksIn(m_facts.settings.blankLeadTime);
        const auto inLead = kindsAsked(style, m_use.sold, aWeek, lead);
        const auto after =
            kindsAsked(style, m_use.sold, aWeek, lead + weeksIn(m_facts.settings.boughtToLast));
        for (std::size_t size = 0; size < style.sizes.size(); ++size)
            for (std::size_t colour = 0; colour < style.colours.size(); ++colour)
                if (!style.colours[colour].isRetired)
                    if (const ToBuy line =
                            lineOf(style, size, colour, inLead[size][colour], after[size][colour]);
                        line.isUsed || line.promised > 0 || line.buy > 0)
                        lines.push_back(line);
    }

    ToBuy lineOf(const BlankStyle& style, std::size_t size, std::size_t colour, const Demand& inLead,
                 const Demand& after) const {
        const BlankKind kind{style.id, style.sizes[size], style.colours[colour].id};
        ToBuy line;
        line.what = kind;
        line.name = style.name + ", " + kind.size + ", " + style.colours[colour].name;
        line.supplier = style.supplier;
        line.there = countOf(m_rail.left, kind);
        line.promised = countOf(m_rail.needed, kind);
        line.weeks = m_use.weeks;
        line.leadTime = m_facts.settings.blankLeadTime;
        ReorderLevels levels;
        line.isUsed = line.isUseKnown() && countOf(m_use.sold, kind) > 0;
        if (line.isUsed) {
            line.use = inLead.mean;
            line.useLow = static_cast<double>(quantityEnough(inLead, kLowTenth));
            line.useHigh = static_cast<double>(quantityEnough(inLead, kHighTenth));
            levels = countedLevels(inLead, after, m_facts.settings.runOutPercent / 100.0);
        }
        settle(line, levels, line.promised - line.there, 1);
        buyForTheFair(line, kind);
        line.cost = style.cost * line.buy;
        return line;
    }

    void buyForTheFair(ToBuy& line, const BlankKind& kind) const {
        const std::int64_t more = countOf(m_brought, kind) + line.promised - line.there;
        if (more <= line.buy)
            return;
        line.buy = more;
        line.why = WhyBuy::Fair;
    }

    const ShopFacts& m_facts;
    const BlankUse& m_use;
    RailOfKinds m_rail;
    std::map<BlankKind, std::int64_t> m_brought;
};

class FilmsToBuy {
public:
    explicit FilmsToBuy(const ReckonedShop& shop)
        : m_shop(shop)
        , m_waste(1 + filmWaste(shop.facts.cutting, shop.facts.settings).percent / 100.0) {
        for (const WaitingDecal& waiting : waitingDecals(shop.facts))
            if (waiting.film && shop.allotment.lack.contains(waiting.decal->id))
                m_lacking[waiting.film->id] += static_cast<double>(waiting.decal->width.value) *
                                               static_cast<double>(waiting.decal->height.value);
    }

    void addTo(std::vector<ToBuy>& lines) const {
        for (const Film& film : m_shop.facts.films)
            if (!film.isRetired)
                lines.push_back(lineOf(film));
    }

private:
    ToBuy lineOf(const Film& film) const {
        ToBuy line;
        line.what = film.id;
        line.name = film.name();
        line.supplier = film.supplier;
        line.there = thereOf(film).value;
        line.promised = promisedOf(film);
        line.leadTime = m_shop.facts.settings.filmLeadTime;
        ReorderLevels levels;
        if (const auto weeks = m_shop.recentUse.find(film.id); weeks != m_shop.recentUse.end()) {
            line.weeks = std::ssize(weeks->second);
            if (line.isUseKnown())
                levels = levelsOf(line, rateOf(weeks->second));
        }
        settle(line, levels, line.promised, kMillimetresInMetre);
        line.cost = film.costPerMetre * (line.buy / kMillimetresInMetre);
        return line;
    }

    ReorderLevels levelsOf(ToBuy& line, const UseRate& rate) const {
        const Demand aWeek{rate.weeklyMean, rate.weeklySpread * rate.weeklySpread};
        const Demand inLead = overPeriods(aWeek, weeksIn(line.leadTime));
        line.isUsed = aWeek.mean > 0;
        line.use = inLead.mean;
        const double spread = kEightOfTen * std::sqrt(inLead.variance);
        line.useLow = std::max(0.0, inLead.mean - spread);
        line.useHigh = inLead.mean + spread;
        const ShopSettings& settings = m_shop.facts.settings;
        return measuredLevels(inLead,
                              overPeriods(aWeek, weeksIn(line.leadTime) + weeksIn(settings.boughtToLast)),
                              settings.runOutPercent / 100.0);
    }

    Millimetres thereOf(const Film& film) const {
        Millimetres there{0};
        for (const RollForecast& forecast : m_shop.allotment.useFirst) {
            if (!forecast.mayBeUsed || m_shop.facts.rolls.at(forecast.roll).film != film.id)
                continue;
            const Millimetres left = std::max(Millimetres{0}, forecast.left - forecast.allotted);
            const bool isSoonPast =
                forecast.daysLeft && *forecast.daysLeft < m_shop.facts.settings.filmLeadTime;
            there += isSoonPast ? std::min(left, forecast.usualUse) : left;
        }
        return there;
    }

    std::int64_t promisedOf(const Film& film) const {
        const auto area = m_lacking.find(film.id);
        const auto width = static_cast<double>(film.rollWidth.value);
        return area == m_lacking.end() || width <= 0 ? 0 : roundedUp(area->second * m_waste / width);
    }

    const ReckonedShop& m_shop;
    double m_waste;
    std::map<FilmId, double> m_lacking; // mm² of decals that no roll takes
};

// Where it would come too late for another purchase.
bool isBoughtFor(const Fair& fair, const ReckonedShop& shop) {
    const ShopSettings& settings = shop.facts.settings;
    return fair.firstDay <= shop.now.today() + settings.blankLeadTime + settings.boughtToLast;
}

} // namespace

bool WhatToBuy::isAnyBought() const {
    return std::ranges::any_of(lines, [](const ToBuy& line) { return line.buy > 0; });
}

Money WhatToBuy::cost() const {
    Money all;
    for (const ToBuy& line : lines)
        all += line.cost;
    return all;
}

WhatToBuy whatToBuy(const ReckonedShop& shop, const BlankUse& blanks, const std::optional<Fair>& next,
                    const WhatToBring& bring) {
    WhatToBuy what;
    if (next && isBoughtFor(*next, shop))
        what.fair = next;
    BlanksToBuy{shop, blanks, what.fair ? &bring : nullptr}.addTo(what.lines);
    FilmsToBuy{shop}.addTo(what.lines);
    // What is bought first, of each supplier.
    std::ranges::stable_sort(what.lines, {}, [](const ToBuy& line) {
        return std::tuple{line.supplier.empty(), line.supplier, line.buy == 0};
    });
    return what;
}

} // namespace holdfast
