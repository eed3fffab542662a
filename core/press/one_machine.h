#pragma once
// Work on one machine, piece after piece, judged by weighted tardiness: Σ w · max(0, C − d), where C is when
// a piece is done and a set-up before it depends on the piece before. The classic problem behind a day at one
// press; its public test instances show how good the search is (tests/bench/schedule_bench.cpp).

#include "core/press/day_plan_rules.h"
#include "core/press/order_search.h"

#include <cstddef>
#include <functional>
#include <optional>
#include <span>
#include <vector>

namespace holdfast {

struct OneMachine {
    std::vector<DispatchTask> tasks;
    std::vector<double> firstSetups; // before each task on the idle machine; empty: no set-ups at all
    std::vector<double> setups;      // before `task` after `before`, at before · tasks + task

    double setup(std::optional<std::size_t> before, std::size_t task) const;
};

// REQUIRES: each number below tasks.size(), none twice.
double weightedTardiness(const OneMachine& machine, std::span<const std::size_t> order);

// The best order by apparent tardiness cost over a grid of scales.
std::vector<std::size_t> dispatchedOrder(const OneMachine& machine);

FoundOrder<double> searchOneMachine(const OneMachine& machine, const SearchLimits& limits);

// The problem as OrderSearch sees it. A move is judged in the time of a few look-ups, whatever its length:
// what a block costs when it is moved by a time Δ is piecewise linear in Δ, and is kept as running sums over
// the places and the slacks d − C (after Ergun and Orlin, "Fast neighborhood search for the single machine
// total weighted tardiness problem", Operations Research Letters 34, 2006). Moves that would make one block
// alone later than what there is to gain are passed over unseen.
class TardinessProblem {
public:
    // `shouldStop` may be empty. Once it says so, no better move is found any more.
    explicit TardinessProblem(const OneMachine& machine, std::function<bool()> shouldStop = {});

    void settle(std::span<const std::size_t> order);
    double cost() const { return m_costBefore.back(); }
    std::size_t fixedPlaces() const { return 0; }
    std::optional<OrderMove> betterFrom(std::size_t first); // the best of them

private:
    struct Best;

    // Set-up between two tasks of the settled order; place 0 stands for the idle machine, so the task at
    // place p is named p + 1. Nothing comes after the last.
    double setupBetween(std::size_t named, std::size_t place) const {
        return m_setupBetween[named * (m_count + 1) + place];
    }
    double setupBefore(std::size_t place) const { return setupBetween(place, place); }

    double lateWeight(std::size_t begin, std::size_t end) const {
        return m_lateWeightBefore[end] - m_lateWeightBefore[begin];
    }
    std::size_t slacksBelow(double delay) const;
    double costOf(std::size_t begin, std::size_t end, double delay) const;
    double delayWithin(std::size_t begin, std::size_t end, double room) const;
    double costAfter(const OrderMove& move, double limit) const;
    void tabulate();
    bool mustStop(std::size_t looks);
    void lookAtNeighbours(Best& best, std::size_t firstEnd, double mostDelay) const;
    void lookAtSwaps(Best& best, double mostDelay) const;

    const OneMachine& m_machine;
    std::size_t m_count;
    std::function<bool()> m_shouldStop;
    std::size_t m_looks = 0; // since it was last asked whether to stop
    std::vector<std::size_t> m_order;
    std::vector<double> m_doneBefore;       // time at which the first so many places are done
    std::vector<double> m_costBefore;       // of the first so many places
    std::vector<double> m_lateWeightBefore; // Σ w of those of them that are late
    std::vector<double> m_slack;            // of the settled order, rising
    std::vector<double>
        m_weightBelow; // by place p and rank r: Σ w over places from p on of the r least slacks
    std::vector<double> m_slackBelow; // the same of w · slack
    std::vector<double> m_setupBetween;
    std::vector<double> m_mostDelayFrom; // of the places from this one on, for the present first place
    std::vector<std::size_t> m_byRank;   // places by rising slack
    std::vector<std::size_t> m_rank;     // of a place
};

} // namespace holdfast
