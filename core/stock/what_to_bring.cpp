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

struct MeanAndVariance {
    double mean = 0;
    double variance = 0; // with n − 1; nothing of one
};

MeanAndVariance ofDays(const std::vector<std::int64_t>& days) {
    MeanAndVariance of;
    const auto count = static_cast<double>(days.size());
    for (const std::int64_t day : days)
        of.mean += static_cast<double>(day) / count;
    if (days.size() < 2)
        return of;
    for (const std::int64_t day : days) {
        const double off = static_cast<double>(day) - of.mean;
        of.variance += off * off / (count - 1);
    }
    return of;
}

// What a share of a style's garments is asked for over a number of days.
Demand shareOf(const MeanAndVariance& aDay, std::int64_t daysKnown, double share, std::int64_t days) {
    const auto coming = static_cast<double>(days);
    const double mean = aDay.mean * share * coming;
    if (!spreadsMoreThanChance(aDay.mean, aDay.variance, daysKnown))
        return {mean, mean};
    const double size = aDay.mean * aDay.mean / (aDay.variance - aDay.mean) * coming;
    return {mean, mean + mean * mean / size};
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

std::vector<std::vector<std::int64_t>> tableOf(const BlankStyle& style, const FairDemand& demand) {
    std::vector<std::vector<std::int64_t>> table;
    for (const std::string& size : style.sizes) {
        table.emplace_back();
        for (const Colour& colour : style.colours) {
            const auto sold = demand.sold.find({style.id, size, colour.id});
            table.back().push_back(sold == demand.sold.end() ? 0 : sold->second);
        }
    }
    return table;
}

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

std::vector<std::vector<double>> drawnTogether(const std::vector<std::vector<std::int64_t>>& sold) {
    std::vector<double> ofRow, ofColumn;
    double all = 0, squares = 0;
    for (const auto& row : sold) {
        ofRow.push_back(0);
        ofColumn.resize(row.size());
        for (std::size_t column = 0; column < row.size(); ++column) {
            const auto count = static_cast<double>(row[column]);
            ofRow.back() += count;
            ofColumn[column] += count;
            all += count;
            squares += count * count;
        }
    }
    std::vector<std::vector<double>> shares;
    double apart = 0;
    for (std::size_t row = 0; row < sold.size(); ++row) {
        shares.emplace_back();
        for (std::size_t column = 0; column < sold[row].size(); ++column) {
            const double expected = all > 0 ? ofRow[row] * ofColumn[column] / all : 0;
            const double off = static_cast<double>(sold[row][column]) - expected;
            apart += off * off;
            shares.back().push_back(all > 0 ? expected / all : 0);
        }
    }
    // Where sizes and colours fix each cell exactly, there is nothing to draw.
    if (apart <= 1e-12 * all * all)
        return shares;
    const double weight = (all * all - squares) / apart;
    for (std::size_t row = 0; row < sold.size(); ++row)
        for (std::size_t column = 0; column < sold[row].size(); ++column)
            shares[row][column] =
                (static_cast<double>(sold[row][column]) + weight * shares[row][column]) / (all + weight);
    return shares;
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
        const MeanAndVariance aDay = ofDays(soldADay->second);
        const auto shares = drawnTogether(tableOf(style, demand));
        const double leftOver = static_cast<double>(style.cost.minor) * facts.settings.keepingPercent / 100;
        for (std::size_t size = 0; size < style.sizes.size(); ++size) {
            for (std::size_t colour = 0; colour < style.colours.size(); ++colour) {
                if (style.colours[colour].isRetired)
                    continue;
                ToBring kind = rail.of({style.id, style.sizes[size], style.colours[colour].id});
                kind.name = style.name + ", " + style.sizes[size] + ", " + style.colours[colour].name;
                kind.asked = shareOf(aDay, demand.days, shares[size][colour], comingDays);
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
