// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/stock/what_to_bring.h"

#include "core/trade/assertion.h"

#include <algorithm>
#include <set>

namespace holdfast {

namespace {

using FairDay = std::pair<std::string, LocalDate>;

// Each day on which there was a stall: of a fair in the list, or where any order was taken.
std::set<FairDay> fairDays(std::span<const FairOrder> orders, std::span<const Fair> fairs, LocalDate from,
                           LocalDate today) {
    std::set<FairDay> days;
    for (const Fair& fair : fairs)
        for (LocalDate day = std::max(fair.firstDay, from); day <= fair.lastDay && day < today;
             day += Days{1})
            days.emplace(fair.name, day);
    for (const FairOrder& order : orders)
        if (order.on >= from && order.on < today)
            days.emplace(order.place, order.on);
    return days;
}

std::int64_t runsOfDays(const std::set<FairDay>& days) {
    return std::ranges::count_if(
        days, [&](const FairDay& day) { return !days.contains({day.first, day.second - Days{1}}); });
}

// Free blanks of each kind, by what is still to be done to them.
class RailStock {
public:
    explicit RailStock(const ShopFacts& facts) {
        for (const BlankLot& lot : facts.lots) {
            ToBring& kind = m_kinds[{lot.style, lot.size, lot.colour}];
            const BlankStyle& style = facts.styles.at(lot.style);
            const WashLoad* load = facts.lastLoadOf(lot);
            const bool isReady = !style.washedFirst() || (load && !load->leftSoftener());
            (isReady ? kind.ready : kind.toWash) += facts.freeUnits(lot);
        }
    }

    ToBring of(const BlankKind& kind) const {
        const auto found = m_kinds.find(kind);
        ToBring stock = found == m_kinds.end() ? ToBring{} : found->second;
        stock.kind = kind;
        return stock;
    }

private:
    std::map<BlankKind, ToBring> m_kinds;
};

} // namespace

FairDemand fairDemand(std::span<const FairOrder> orders, std::span<const Fair> fairs, LocalDate from,
                      LocalDate today) {
    const std::set<FairDay> days = fairDays(orders, fairs, from, today);
    FairDemand demand;
    demand.days = std::ssize(days);
    demand.fairs = runsOfDays(days);
    std::map<FairDay, std::size_t> placeOfDay;
    for (const FairDay& day : days)
        placeOfDay.emplace_hint(placeOfDay.end(), day, placeOfDay.size());
    std::map<BlankStyleId, std::int64_t> garments;
    for (const FairOrder& order : orders) {
        const auto day = placeOfDay.find({order.place, order.on});
        if (day == placeOfDay.end())
            continue;
        for (const SoldGarment& garment : order.garments) {
            ++demand.sold[{garment.style, garment.size, garment.colour}];
            auto& aDay = demand.soldADay[garment.style];
            aDay.resize(days.size());
            ++aDay[day->second];
            ++garments[garment.style];
            demand.margin[garment.style] += static_cast<double>((garment.price - garment.cost.total()).minor);
        }
    }
    for (auto& [style, margin] : demand.margin)
        margin /= static_cast<double>(garments[style]);
    return demand;
}

WhatToBring whatToBring(const FairDemand& demand, const ShopFacts& facts, std::int64_t comingDays) {
    HOLDFAST_ASSERT(comingDays >= 1);
    WhatToBring what;
    what.fairs = demand.fairs;
    what.days = demand.days;
    what.comingDays = comingDays;
    const RailStock rail{facts};
    for (const BlankStyle& style : facts.styles) {
        const auto soldADay = demand.soldADay.find(style.id);
        if (style.isRetired || soldADay == demand.soldADay.end())
            continue;
        const auto asked = kindsAsked(style, demand.sold, soldADay->second, static_cast<double>(comingDays));
        const double leftOver = static_cast<double>(style.cost.minor) * facts.settings.keepingPercent / 100;
        for (std::size_t size = 0; size < style.sizes.size(); ++size) {
            for (std::size_t colour = 0; colour < style.colours.size(); ++colour) {
                if (style.colours[colour].isRetired)
                    continue;
                ToBring kind = rail.of({style.id, style.sizes[size], style.colours[colour].id});
                kind.name = style.name + ", " + style.sizes[size] + ", " + style.colours[colour].name;
                kind.asked = asked[size][colour];
                kind.brought = bestQuantity(kind.asked, demand.margin.at(style.id), leftOver);
                what.asked += kind.asked.mean;
                what.shortage += kind.brought.shortage;
                what.leftover += kind.brought.leftover;
                if (kind.brought.quantity > 0)
                    what.kinds.push_back(std::move(kind));
            }
        }
    }
    return what;
}

} // namespace holdfast
