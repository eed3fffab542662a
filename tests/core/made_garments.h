// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
// Garments that were handed over, with the names of what they are of: a shop's past, written by hand.

#include "core/quality/figures.h"

#include <algorithm>
#include <string>
#include <vector>

namespace holdfast::test {

struct MadeGarment : HandedOver {
    std::string style;
    std::string washing; // "washed", "with softener", "not washed"
    std::vector<std::string> films;
    std::vector<std::string> rolls;
    std::vector<std::string> presses;
};

inline std::vector<HandedOver> asHandedOver(const std::vector<MadeGarment>& garments) {
    return {garments.begin(), garments.end()};
}

inline FaultShare faultsOfAll(const std::vector<MadeGarment>& garments) {
    return holdfast::faultsOfAll(asHandedOver(garments));
}

inline FaultTables faultTables(const std::vector<MadeGarment>& garments) {
    FaultCounts counts;
    for (const MadeGarment& garment : garments) {
        const auto count = [&](FaultsBy by, const std::vector<std::string>& names) {
            for (const std::string& name : names)
                counts.count(by, counts.numberOf(by, name), garment.fault.has_value());
        };
        count(FaultsBy::Film, garment.films);
        count(FaultsBy::Roll, garment.rolls);
        count(FaultsBy::Press, garment.presses);
        count(FaultsBy::Style, {garment.style});
        count(FaultsBy::Washing, {garment.washing});
    }
    return counts.tables(faultsOfAll(garments));
}

inline Survival daysWithoutFault(const std::vector<MadeGarment>& garments, LocalDate today) {
    return holdfast::daysWithoutFault(asHandedOver(garments), today);
}

inline FaultMonths faultsByMonth(const std::vector<MadeGarment>& garments) {
    return holdfast::faultsByMonth(asHandedOver(garments));
}

} // namespace holdfast::test
