// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
// Search for the order of least cost in which pieces of work are done, whatever makes one order dearer than
// another. Iterated local search: from a start order down to one that no single move betters; then the order
// is kicked by one or two random moves close together and brought down again, and what is not worse is kept.
// Where that gains nothing for long, the search begins again from the best order after a harder kick, by
// moves all over it: what comes of that replaces the best only where it is better.
//
// A move lets two blocks of neighbouring pieces change places: with nothing between them that is moving one
// piece or block to another place, with pieces between it is a swap. Deterministic for a seed and a number of
// rounds. See docs/decisions/day-plan-search.md for what else was tried.

#include <algorithm>
#include <concepts>
#include <cstddef>
#include <cstdint>
#include <functional>
#include <limits>
#include <optional>
#include <random>
#include <span>
#include <vector>

namespace holdfast {

// The blocks [first, firstEnd) and [second, last) of an order change places; what lies between stays between.
// Nothing outside [first, last) comes to another place.
struct OrderMove {
    std::size_t first = 0;
    std::size_t firstEnd = 0;
    std::size_t second = 0;
    std::size_t last = 0;

    bool isOfNeighbours() const { return firstEnd == second; }
};

// REQUIRES: first < firstEnd <= second < last <= order.size().
void carryOut(const OrderMove& move, std::span<std::size_t> order);

// Numbers drawn alike on every machine.
class OrderRandom {
public:
    explicit OrderRandom(std::uint64_t seed)
        : m_random(seed) {}

    // From 0 to count - 1. REQUIRES: 0 < count < 2^32.
    std::size_t below(std::size_t count) {
        return static_cast<std::size_t>(((m_random() >> 32) * static_cast<std::uint64_t>(count)) >> 32);
    }

    void shuffle(std::span<std::size_t> numbers);

    // Moves a block of one to three to another place at or after `fixed`. REQUIRES: at least two places after
    // it.
    OrderMove move(std::size_t fixed, std::size_t places);

    // Carries out this many of these moves on the order, all within `reach` neighbouring places.
    void kick(std::span<std::size_t> order, std::size_t fixed, std::size_t moves, std::size_t reach);

private:
    std::mt19937_64 m_random;
};

struct SearchLimits {
    std::uint64_t rounds = std::numeric_limits<std::uint64_t>::max(); // kicks
    std::uint64_t seed = 1;
    std::function<bool()> shouldStop; // asked between two calls of betterFrom; may be empty
};

// What is searched. Costs are compared by <: less is better.
template <class Problem>
concept OrderProblem = requires(Problem& problem, std::span<const std::size_t> order, std::size_t place) {
    problem.settle(order); // from here on moves are looked for from this order
    problem.cost();        // of the settled order
    // The first places that stay as they are.
    { problem.fixedPlaces() } -> std::convertible_to<std::size_t>;
    // A move of what is at this place that makes the settled order cheaper; none: none found. With `settle`
    // it takes 10 ms at the most.
    { problem.betterFrom(place) } -> std::same_as<std::optional<OrderMove>>;
};

template <class Cost>
struct FoundOrder {
    std::vector<std::size_t> order;
    Cost cost{};
    std::uint64_t rounds = 0; // made
    bool wasStopped = false;
};

template <OrderProblem Problem>
class OrderSearch {
public:
    using Cost = std::remove_cvref_t<decltype(std::declval<Problem&>().cost())>;

    OrderSearch(Problem& problem, const SearchLimits& limits)
        : m_problem(problem)
        , m_limits(limits)
        , m_random(limits.seed) {}

    // Never worse than the start.
    FoundOrder<Cost> from(std::vector<std::size_t> start) {
        m_order = std::move(start);
        m_problem.settle(m_order);
        m_fixed = m_problem.fixedPlaces();
        m_places.clear();
        for (std::size_t place = m_fixed; place < m_order.size(); ++place)
            m_places.push_back(place);

        descend();
        FoundOrder<Cost> best{m_order, m_problem.cost(), 0, false};
        FoundOrder<Cost> current = best;
        std::uint64_t inVain = 0;
        while (m_places.size() >= 2 && best.rounds < m_limits.rounds && !shouldStop()) {
            ++best.rounds;
            const bool beginsAgain = inVain == kMostInVain;
            m_order = beginsAgain ? best.order : current.order;
            if (beginsAgain)
                m_random.kick(m_order, m_fixed, kMovesToBeginAgain, m_order.size());
            else
                m_random.kick(m_order, m_fixed, 1 + m_random.below(2), kReachOfKick);
            m_problem.settle(m_order);
            descend();
            ++inVain;
            if (beginsAgain || m_problem.cost() < current.cost)
                inVain = 0;
            if (!beginsAgain && current.cost < m_problem.cost())
                continue;
            current.order = m_order;
            current.cost = m_problem.cost();
            if (!(best.cost < current.cost)) {
                best.order = current.order;
                best.cost = current.cost;
            }
        }
        best.wasStopped = m_isStopped;
        return best;
    }

private:
    // Kicks that gain nothing before it begins again; both figures, and the reach, from the benches.
    static constexpr std::uint64_t kMostInVain = 150;
    static constexpr std::size_t kMovesToBeginAgain = 4;
    static constexpr std::size_t kReachOfKick = 12;

    bool shouldStop() {
        m_isStopped = m_isStopped || (m_limits.shouldStop && m_limits.shouldStop());
        return m_isStopped;
    }

    // Down to an order that no move betters, the places asked in a random turn.
    void descend() {
        m_random.shuffle(m_places);
        std::size_t next = 0;
        std::size_t inVain = 0;
        while (inVain < m_places.size() && !shouldStop()) {
            const std::optional<OrderMove> move = m_problem.betterFrom(m_places[next]);
            next = (next + 1) % m_places.size();
            if (!move) {
                ++inVain;
                continue;
            }
            carryOut(*move, m_order);
            m_problem.settle(m_order);
            inVain = 0;
        }
    }

    Problem& m_problem;
    const SearchLimits& m_limits;
    OrderRandom m_random;
    std::size_t m_fixed = 0;
    std::vector<std::size_t> m_order;  // settled
    std::vector<std::size_t> m_places; // that may change
    bool m_isStopped = false;
};

} // namespace holdfast
