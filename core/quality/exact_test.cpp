// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/quality/exact_test.h"

#include <algorithm>
#include <cmath>

namespace holdfast {

namespace {

double logChoose(std::int64_t from, std::int64_t some) {
    const auto logFactorial = [](std::int64_t number) {
        return std::lgamma(static_cast<double>(number) + 1);
    };
    return logFactorial(from) - logFactorial(some) - logFactorial(from - some);
}

// Adds up the chances of the tables with the same sums, by how many faults the first group has.
class Hypergeometric {
public:
    explicit Hypergeometric(const FaultTable& table)
        : m_group(table.withFault + table.withoutFault)
        , m_other(table.otherWithFault + table.otherWithoutFault)
        , m_faults(table.withFault + table.otherWithFault) {}

    std::int64_t fewest() const { return std::max<std::int64_t>(0, m_faults - m_other); }
    std::int64_t most() const { return std::min(m_group, m_faults); }
    double chanceOf(std::int64_t withFault) const {
        return std::exp(logChoose(m_group, withFault) + logChoose(m_other, m_faults - withFault) -
                        logChoose(m_group + m_other, m_faults));
    }

    double chanceOfAsManyAs(std::int64_t faults) const {
        double chance = 0;
        for (std::int64_t withFault = std::max(faults, fewest()); withFault <= most(); ++withFault)
            chance += chanceOf(withFault);
        return std::min(1.0, chance);
    }

private:
    std::int64_t m_group;
    std::int64_t m_other;
    std::int64_t m_faults;
};

} // namespace

double chanceOfMoreThan(std::int64_t found, std::int64_t of, double share) {
    if (share <= 0 || share >= 1)
        return share >= 1 && found < of ? 1 : 0;
    double chance = 0;
    for (std::int64_t faults = found + 1; faults <= of; ++faults) {
        const auto with = static_cast<double>(faults);
        const auto without = static_cast<double>(of - faults);
        chance += std::exp(logChoose(of, faults) + with * std::log(share) + without * std::log1p(-share));
    }
    return std::min(1.0, chance);
}

double chanceOfAsMany(const FaultTable& table) {
    return Hypergeometric{table}.chanceOfAsManyAs(table.withFault);
}

} // namespace holdfast
