// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/quality/figures.h"

#include "core/quality/exact_test.h"

#include <algorithm>
#include <map>

namespace holdfast {

namespace {

constexpr double kOnceInTwenty = 0.05;

// The chance of as many faults, where there are enough garments with it and without to judge.
void compare(FaultShare& share, const FaultShare& all) {
    const std::int64_t others = all.garments - share.garments;
    share.isJudged = share.garments >= kFewestToJudge && others >= kFewestToJudge;
    if (share.isJudged)
        share.chance = chanceOfAsMany({share.faults, share.garments - share.faults, all.faults - share.faults,
                                       others - (all.faults - share.faults)});
}

// Holm's procedure: the least likely must be so by all comparisons, the next by one fewer, until one is not.
void judge(FaultTables& tables) {
    std::vector<FaultShare*> judged;
    for (auto& [by, shares] : tables)
        for (FaultShare& share : shares)
            if (share.isJudged)
                judged.push_back(&share);
    std::ranges::sort(judged, {}, &FaultShare::chance);
    for (std::size_t before = 0; before < judged.size(); ++before) {
        if (judged[before]->chance * static_cast<double>(judged.size() - before) >= kOnceInTwenty)
            return;
        judged[before]->isMoreThanChance = true;
    }
}

LocalDate watchedUntil(const HandedOver& garment, LocalDate today) {
    return garment.fault ? garment.fault->toldOn : today;
}

} // namespace

FaultShare faultsOfAll(std::span<const HandedOver> garments) {
    FaultShare all;
    all.garments = std::ssize(garments);
    all.faults =
        std::ranges::count_if(garments, [](const HandedOver& garment) { return garment.fault.has_value(); });
    all.interval = shareInterval(all.faults, all.garments).value_or(ShareInterval{});
    return all;
}

std::size_t FaultCounts::numberOf(FaultsBy by, const std::string& name) {
    Named& named = m_named[by];
    const auto [at, isNew] = named.numbers.emplace(name, named.shares.size());
    if (isNew)
        named.shares.emplace_back().name = name;
    return at->second;
}

void FaultCounts::count(FaultsBy by, std::size_t number, bool cameBack) {
    FaultShare& share = m_named[by].shares[number];
    ++share.garments;
    share.faults += cameBack;
}

FaultTables FaultCounts::tables(const FaultShare& all) const {
    FaultTables tables;
    for (const FaultsBy by : kAllFaultsBy) {
        std::vector<FaultShare>& shares = tables[by];
        const auto named = m_named.find(by);
        if (named == m_named.end())
            continue;
        for (const auto& [name, number] : named->second.numbers) {
            FaultShare share = named->second.shares[number];
            if (share.garments == 0)
                continue;
            share.interval = *shareInterval(share.faults, share.garments);
            compare(share, all);
            shares.push_back(std::move(share));
        }
        std::ranges::stable_sort(shares, std::ranges::greater{},
                                 [](const FaultShare& share) { return share.interval.share; });
    }
    judge(tables);
    return tables;
}

std::vector<Days> daysWatched(std::span<const HandedOver> garments, LocalDate today) {
    std::vector<Days> days;
    days.reserve(garments.size());
    for (const HandedOver& garment : garments)
        days.push_back(watchedUntil(garment, today) - garment.on);
    std::ranges::sort(days);
    return days;
}

Survival daysWithoutFault(std::span<const HandedOver> garments, LocalDate today) {
    std::vector<Watched> cases;
    cases.reserve(garments.size());
    for (const HandedOver& garment : garments)
        cases.push_back({static_cast<double>((watchedUntil(garment, today) - garment.on).count()),
                         garment.fault.has_value()});
    return survivalOf(cases);
}

FaultMonths faultsByMonth(std::span<const HandedOver> garments) {
    std::map<std::chrono::year_month, CountSample> byMonth;
    for (const HandedOver& garment : garments) {
        const std::chrono::year_month_day day{garment.on};
        CountSample& sample = byMonth[day.year() / day.month()];
        sample.found += garment.fault.has_value();
        sample.of += 1;
    }
    FaultMonths months;
    for (const auto& [month, sample] : byMonth) {
        months.months.push_back(month);
        months.samples.push_back(sample);
    }
    months.chart = shareChart(months.samples);
    return months;
}

PromisesKept promisesKept(std::span<const PromiseGiven> promises) {
    PromisesKept sum;
    sum.given = static_cast<std::int64_t>(promises.size());
    sum.kept = std::ranges::count_if(promises, &PromiseGiven::isKept);
    sum.interval = shareInterval(sum.kept, sum.given);
    return sum;
}

} // namespace holdfast
