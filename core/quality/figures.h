// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
// What a shop can learn from what it handed over: which garments came back, how long decals hold, which
// promises were kept. Pure functions of what db/tables/figures reads; names are as people read them.

#include "core/quality/claim.h"
#include "core/quality/control_chart.h"
#include "core/quality/share_interval.h"
#include "core/quality/survival.h"

#include <map>
#include <span>
#include <string>
#include <vector>

namespace holdfast {

struct FirstFault {
    LocalDate toldOn{};
    Fault fault = Fault::EdgeLifts;
};

// A garment that was handed over, with the first fault of pressing that was reported, if any. It counts
// once however often it came back.
struct HandedOver {
    LocalDate on{};
    std::optional<FirstFault> fault;
};

enum class FaultsBy { Film, Roll, Press, Style, Washing };
inline constexpr FaultsBy kAllFaultsBy[] = {FaultsBy::Film, FaultsBy::Roll, FaultsBy::Press, FaultsBy::Style,
                                            FaultsBy::Washing};

// Garments with something in common.
struct FaultShare {
    std::string name;
    std::int64_t garments = 0;
    std::int64_t faults = 0;
    ShareInterval interval;
    // The chance of as many among them, or more, if all garments were alike (Fisher's exact test).
    double chance = 1;
    bool isJudged = false; // there are kFewestToJudge garments or more on either side
    // Less than chance would do once in twenty times, over all that are judged in any of the tables (Holm
    // 1979).
    bool isMoreThanChance = false;
};

inline constexpr std::int64_t kFewestToJudge = 20;

FaultShare faultsOfAll(std::span<const HandedOver> garments);
// Each the largest share first; those with nothing of the kind (no press is recorded) are left out. They are
// judged together: where all garments are alike, any of them raises an alarm in no more than one shop in
// twenty.
using FaultTables = std::map<FaultsBy, std::vector<FaultShare>>;

// Counts garments by what they have in common, one after the other: of a garment nothing is kept.
class FaultCounts {
public:
    // The number of a name, by which it is counted: the same for things of the same name.
    std::size_t numberOf(FaultsBy by, const std::string& name);
    // REQUIRES: once for each garment that has anything of this name.
    void count(FaultsBy by, std::size_t number, bool cameBack);

    FaultTables tables(const FaultShare& all) const;

private:
    struct Named {
        std::map<std::string, std::size_t> numbers;
        std::vector<FaultShare> shares;
    };
    std::map<FaultsBy, Named> m_named;
};

// Days from handing over to the first fault; all that had none were watched until today.
std::vector<Days> daysWatched(std::span<const HandedOver> garments, LocalDate today); // the shortest first
Survival daysWithoutFault(std::span<const HandedOver> garments, LocalDate today);

// By the month in which they were handed over, each with any; the last may still change.
struct FaultMonths {
    std::vector<std::chrono::year_month> months;
    std::vector<CountSample> samples;
    ControlChart chart;
};
FaultMonths faultsByMonth(std::span<const HandedOver> garments);

// A promise that was to be kept by now, and when the last garment was pressed; none: it is not yet.
struct PromiseGiven {
    LocalTime promised{};
    std::optional<LocalTime> pressedAt;

    bool isKept() const { return pressedAt && *pressedAt <= promised; }
};

struct PromisesKept {
    std::int64_t given = 0;
    std::int64_t kept = 0;
    std::optional<ShareInterval> interval; // none of no promises
};
PromisesKept promisesKept(std::span<const PromiseGiven> promises);

} // namespace holdfast
