#include "core/quality/figures.h"

#include "core/quality/exact_test.h"

#include <algorithm>
#include <map>

namespace holdfast {

namespace {

constexpr double kOnceInTwenty = 0.05;

std::vector<std::string> namesOf(const HandedOver& garment, FaultsBy by) {
    switch (by) {
    case FaultsBy::Film:
        return garment.films;
    case FaultsBy::Roll:
        return garment.rolls;
    case FaultsBy::Press:
        return garment.presses;
    case FaultsBy::Style:
        return {garment.style};
    case FaultsBy::Washing:
        return {garment.washing};
    }
    return {};
}

// The chance of as many faults, where there are enough on either side to tell.
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

void count(FaultShare& share, const HandedOver& garment) {
    ++share.garments;
    share.faults += garment.fault.has_value();
}

std::vector<FaultShare> sharesBy(std::span<const HandedOver> garments, FaultsBy by, const FaultShare& all) {
    std::map<std::string, FaultShare> named;
    for (const HandedOver& garment : garments) {
        for (const std::string& name : namesOf(garment, by))
            count(named[name], garment);
    }
    std::vector<FaultShare> shares;
    for (auto& [name, share] : named) {
        share.name = name;
        share.interval = *shareInterval(share.faults, share.garments);
        compare(share, all);
        shares.push_back(std::move(share));
    }
    std::ranges::stable_sort(shares, std::ranges::greater{},
                             [](const FaultShare& share) { return share.interval.share; });
    return shares;
}

} // namespace

FaultShare faultsOfAll(std::span<const HandedOver> garments) {
    FaultShare all;
    for (const HandedOver& garment : garments)
        count(all, garment);
    all.interval = shareInterval(all.faults, all.garments).value_or(ShareInterval{});
    return all;
}

FaultTables faultTables(std::span<const HandedOver> garments) {
    const FaultShare all = faultsOfAll(garments);
    FaultTables tables;
    for (const FaultsBy by : kAllFaultsBy)
        tables[by] = sharesBy(garments, by, all);
    judge(tables);
    return tables;
}

Survival daysWithoutFault(std::span<const HandedOver> garments, LocalDate today) {
    std::vector<Watched> cases;
    for (const HandedOver& garment : garments) {
        const LocalDate until = garment.fault ? garment.fault->toldOn : today;
        cases.push_back({static_cast<double>((until - garment.on).count()), garment.fault.has_value()});
    }
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
