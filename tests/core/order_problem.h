// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
// Any cost of an order as OrderSearch sees it: every move is tried by reckoning the whole order anew. And the
// answer to hold it against, from every order there is.

#include "core/press/order_search.h"

#include <functional>
#include <numeric>
#include <span>
#include <vector>

namespace holdfast::press_days {

using Sequence = std::vector<std::size_t>;
using OrderCost = std::function<double(const Sequence&)>;

class AnyOrderProblem {
public:
    explicit AnyOrderProblem(OrderCost costOf)
        : m_costOf(std::move(costOf)) {}

    void settle(std::span<const std::size_t> order) {
        m_order.assign(order.begin(), order.end());
        m_cost = m_costOf(m_order);
    }
    double cost() const { return m_cost; }
    std::size_t fixedPlaces() const { return 0; }

    std::optional<OrderMove> betterFrom(std::size_t first) const {
        for (std::size_t firstEnd = first + 1; firstEnd < m_order.size(); ++firstEnd) {
            for (std::size_t second = firstEnd; second < m_order.size(); ++second) {
                for (std::size_t last = second + 1; last <= m_order.size(); ++last) {
                    Sequence tried = m_order;
                    carryOut({first, firstEnd, second, last}, tried);
                    if (m_costOf(tried) < m_cost)
                        return OrderMove{first, firstEnd, second, last};
                }
            }
        }
        return std::nullopt;
    }

private:
    OrderCost m_costOf;
    Sequence m_order;
    double m_cost = 0;
};

inline Sequence inNumbers(std::size_t count) {
    Sequence order(count);
    std::iota(order.begin(), order.end(), std::size_t{0});
    return order;
}

inline FoundOrder<double> searchedFor(std::size_t count, const OrderCost& costOf, std::uint64_t rounds = 50) {
    AnyOrderProblem problem{costOf};
    SearchLimits limits;
    limits.rounds = rounds;
    return OrderSearch{problem, limits}.from(inNumbers(count));
}

inline double leastOfAllOrders(std::size_t count, const OrderCost& costOf) {
    Sequence order = inNumbers(count);
    double least = costOf(order);
    while (std::ranges::next_permutation(order).found)
        least = std::min(least, costOf(order));
    return least;
}

} // namespace holdfast::press_days
