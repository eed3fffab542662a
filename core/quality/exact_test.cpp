#include "core/quality/exact_test.h"

#include <algorithm>
#include <cmath>

namespace holdfast {

namespace {

// Tables whose chances differ by less are taken as equally likely.
constexpr double kAlike = 1 + 1e-7;

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

    template <class Accept>
    double sum(Accept accept) const {
        double chance = 0;
        for (std::int64_t withFault = fewest(); withFault <= most(); ++withFault) {
            if (accept(withFault))
                chance += chanceOf(withFault);
        }
        return std::min(1.0, chance);
    }

private:
    std::int64_t m_group;
    std::int64_t m_other;
    std::int64_t m_faults;
};

} // namespace

double chanceOfAsMany(const FaultTable& table) {
    return Hypergeometric{table}.sum([&](std::int64_t withFault) { return withFault >= table.withFault; });
}

double chanceOfAsUnlikely(const FaultTable& table) {
    const Hypergeometric tables{table};
    const double seen = tables.chanceOf(table.withFault) * kAlike;
    return tables.sum([&](std::int64_t withFault) { return tables.chanceOf(withFault) <= seen; });
}

} // namespace holdfast
