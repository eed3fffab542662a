// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/stock/demand.h"

#include "core/trade/assertion.h"
#include "core/trade/unit_normal.h"

#include <algorithm>
#include <cmath>

namespace holdfast {

namespace {

constexpr double kOneSided95 = 1.6448536269514722; // of the unit normal

// Probabilities of 0, 1, 2 … one after the other.
class Counted {
public:
    explicit Counted(const Demand& demand)
        : m_mean(demand.mean)
        , m_more(demand.variance - demand.mean) {
        const double isNone = isPoisson() ? -m_mean : -size() * std::log1p(m_mean / size());
        m_probability = std::exp(isNone);
    }

    double probability() const { return m_probability; }
    void next() {
        ++m_count;
        const auto count = static_cast<double>(m_count);
        m_probability *=
            isPoisson() ? m_mean / count : (size() + count - 1) / count * m_mean / (size() + m_mean);
    }

private:
    bool isPoisson() const { return m_more <= m_mean * 1e-9; }
    double size() const { return m_mean * m_mean / m_more; }

    double m_mean;
    double m_more; // than chance, of the variance
    std::int64_t m_count = 0;
    double m_probability;
};

bool isCounted(const Demand& demand) {
    return demand.mean <= kMostCounted;
}

double spreadOf(const Demand& demand) {
    return std::sqrt(std::max(demand.variance, demand.mean));
}

// Σ over what is above the quantity, as the mean less what is reached of it: no sum to infinity.
double countedShortage(const Demand& demand, std::int64_t quantity) {
    Counted counted{demand};
    double below = 0;
    double shortage = demand.mean;
    for (std::int64_t count = 0; count < quantity; ++count, counted.next()) {
        below += counted.probability();
        shortage -= 1 - below;
    }
    return std::max(0.0, shortage);
}

std::int64_t countedQuantity(const Demand& demand, double ratio) {
    Counted counted{demand};
    double enough = counted.probability();
    std::int64_t quantity = 0;
    while (enough < ratio) {
        counted.next();
        ++quantity;
        enough += counted.probability();
    }
    return quantity;
}

} // namespace

double criticalRatio(double under, double over) {
    HOLDFAST_ASSERT(under >= 0 && over >= 0 && under + over > 0);
    return under / (under + over);
}

double normalQuantity(const Demand& demand, double ratio) {
    return demand.mean + unitNormalQuantile(ratio) * std::sqrt(demand.variance);
}

double normalShortage(const Demand& demand, double quantity) {
    const double spread = std::sqrt(demand.variance);
    return spread * unitNormalLoss((quantity - demand.mean) / spread);
}

std::int64_t quantityEnough(const Demand& demand, double ratio) {
    HOLDFAST_ASSERT(ratio > 0 && ratio < 1);
    if (demand.mean <= 0)
        return 0;
    if (isCounted(demand))
        return countedQuantity(demand, ratio);
    const Demand normal{demand.mean, spreadOf(demand) * spreadOf(demand)};
    return std::max<std::int64_t>(0, std::llround(std::ceil(normalQuantity(normal, ratio))));
}

Brought broughtOf(const Demand& demand, std::int64_t quantity) {
    HOLDFAST_ASSERT(quantity >= 0);
    const Demand normal{demand.mean, spreadOf(demand) * spreadOf(demand)};
    const double shortage = isCounted(demand) ? countedShortage(demand, quantity)
                                              : normalShortage(normal, static_cast<double>(quantity));
    return {quantity, shortage, static_cast<double>(quantity) - demand.mean + shortage};
}

Brought bestQuantity(const Demand& demand, double under, double over) {
    if (under <= 0 || demand.mean <= 0)
        return broughtOf(demand, 0);
    return broughtOf(demand, quantityEnough(demand, std::min(criticalRatio(under, over), kSurest)));
}

double expectedProfit(const Demand& demand, double shortage, double leftover, double under, double over) {
    return under * (demand.mean - shortage) - over * leftover;
}

double chiSquared95(std::int64_t degrees) {
    HOLDFAST_ASSERT(degrees >= 1);
    const double part = 2.0 / (9.0 * static_cast<double>(degrees));
    const double root = 1 - part + kOneSided95 * std::sqrt(part);
    return static_cast<double>(degrees) * root * root * root;
}

bool spreadsMoreThanChance(double mean, double variance, std::int64_t counts) {
    if (counts < 2 || mean <= 0)
        return false;
    return variance * static_cast<double>(counts - 1) / mean > chiSquared95(counts - 1);
}

} // namespace holdfast
