// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
// Weighted tardiness on one machine as OrderSearch sees it.
//
// What is moved shifts others by a time that is the same however far it goes, so that their cost is a running
// sum while the move grows longer. Only what goes past others itself is later by another time at each place;
// its cost is convex in that time, lies nowhere below its tangent, and never falls as the move grows. So most
// moves are left out after a few additions, and many without a look at them.
//
// With set-ups two blocks of neighbouring tasks change places, one of them of up to kLongestWithSetups tasks,
// or two tasks do with others between them. Without set-ups a block of up to kLongestAlone tasks goes
// elsewhere, or two tasks change places: longer blocks hardly ever gained anything there.

#include "core/press/one_machine.h"

#include <cstdint>

namespace holdfast {

class TardinessProblem {
public:
    static constexpr std::size_t kLongestAlone = 3;
    static constexpr std::size_t kLongestWithSetups = 100;

    // The machine must stay alive and unchanged. `shouldStop` may be empty; once it says so, no better move
    // is found any more.
    explicit TardinessProblem(const OneMachine& machine, std::function<bool()> shouldStop = {});

    void settle(std::span<const std::size_t> order);
    double cost() const { return m_costBefore.back(); }
    std::size_t fixedPlaces() const { return 0; }
    std::optional<OrderMove> betterFrom(std::size_t place); // the best of them

    // Moves looked at so far, and places whose cost was added up for them. Whether to stop is asked after at
    // most so many of them: a fraction of a millisecond.
    std::uint64_t looks() const { return m_looks; }
    static constexpr std::uint64_t kLooksBetweenQuestions = 50'000;

private:
    // Set-up of the task at a place right after the first `done` places; none done: on the idle machine.
    double setupAfter(std::size_t done, std::size_t place) const {
        return m_setupsAfter[done][m_order[place]];
    }

    double costOf(std::size_t begin, std::size_t end) const {
        return m_costBefore[end] - m_costBefore[begin];
    }
    double lateWeight(std::size_t begin, std::size_t end) const {
        return m_lateWeightBefore[end] - m_lateWeightBefore[begin];
    }
    double costAt(std::size_t place, double delay) const;
    double plusCostOf(double sum, std::size_t begin, std::size_t end, double delay);
    double leastChange(std::size_t begin, std::size_t end, double delay) const;

    bool mustStop();
    void keep(const OrderMove& move, double cost);
    void betterWithSetups(std::size_t first);
    void lookAtNeighbours(std::size_t first, std::size_t firstEnd);
    void lookAtSwapsWithSetups(std::size_t first);
    void betterWithoutSetups(std::size_t place);
    void lookLater(std::size_t begin, std::size_t end);
    void lookSooner(std::size_t begin, std::size_t end);
    void lookAtSwaps(std::size_t first);

    const OneMachine& m_machine;
    std::size_t m_count;
    std::function<bool()> m_shouldStop;
    std::uint64_t m_looks = 0;
    std::uint64_t m_looksAtQuestion = 0;
    bool m_isStopped = false;

    // The settled order.
    std::vector<std::size_t> m_order;
    std::vector<const double*> m_setupsAfter; // by how many are done: the set-ups of all tasks then
    std::vector<double> m_doneBefore;         // by place: time at which it and all before it are done
    std::vector<double> m_costBefore;         // of the places before
    std::vector<double> m_lateWeightBefore;   // Σ w of those of them that are late
    std::vector<double> m_readyBefore;        // by place: when it is set up
    std::vector<double> m_weight;             // by place
    std::vector<double> m_late;               // by place: C − d, below zero where it is in time

    // What betterFrom has found so far.
    double m_least = 0; // to be bettered
    std::optional<OrderMove> m_move;
    double m_mostDelay = 0; // of the first block: with more it alone costs all there is to gain
};

} // namespace holdfast
