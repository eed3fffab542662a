// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/press/day_search.h"

#include "core/press/day_annealing.h"
#include "core/press/day_bound.h"
#include "core/press/every_order.h"

#include <algorithm>
#include <cstdint>
#include <optional>
#include <utility>

namespace holdfast {

namespace {

// The first annealing runs this many orders through; each further one takes twice the work of the one before.
constexpr std::uint64_t kFirstAnnealing = 300;

// One of this many orders is long enough to come as far from another start: the best order may lie elsewhere.
constexpr std::uint64_t kLongAnnealing = 8000;

// One part of this many of the work is spent in outline: half of it where a true trial costs most, on several
// presses. After this many orders' worth of work no more is found there.
constexpr std::uint64_t kPartInOutlineOnOnePress = 7;
constexpr std::uint64_t kPartInOutlineOnMore = 2;
constexpr std::uint64_t kMostInOutline = 300;

// A small day is annealed for so long before all of its orders are looked at.
constexpr std::uint64_t kBeforeEveryOrder = 2000;

// Garments run through between two questions whether to stop: a tenth of a millisecond.
constexpr std::uint64_t kBetweenQuestions = 200;

// Says when enough was searched: what was asked for is spent, or the request wants to stop.
class Spending {
public:
    explicit Spending(const PlanRequest& request)
        : m_request(request) {}

    bool isOver(std::uint64_t spent) {
        if (spent >= m_request.search.work)
            m_isCutShort = true;
        if (spent >= m_nextQuestion) {
            m_nextQuestion = spent + kBetweenQuestions;
            m_wasStopped = m_wasStopped || (m_request.shouldStop && m_request.shouldStop());
            m_isCutShort = m_isCutShort || m_wasStopped;
        }
        return m_isCutShort;
    }
    bool isCutShort() const { return m_isCutShort; }
    bool wasStopped() const { return m_wasStopped; }

private:
    const PlanRequest& m_request;
    std::uint64_t m_nextQuestion = 0;
    bool m_isCutShort = false;
    bool m_wasStopped = false;
};

// Garments of one route change places so that the earlier promise goes first.
std::vector<std::size_t> byPromiseAmongAlike(const TimedDay& day, std::vector<std::size_t> sorted) {
    std::vector<bool> isSorted(sorted.size(), false);
    for (std::size_t first = 0; first < sorted.size(); ++first) {
        if (isSorted[first])
            continue;
        std::vector<std::size_t> places, jobs;
        for (std::size_t place = first; place < sorted.size(); ++place) {
            if (isSorted[place] || !areAlike(day.jobs()[sorted[first]], day.jobs()[sorted[place]]))
                continue;
            isSorted[place] = true;
            places.push_back(place);
            jobs.push_back(sorted[place]);
        }
        std::ranges::sort(jobs, {}, [&](std::size_t job) { return std::pair{day.jobs()[job].due, job}; });
        for (std::size_t next = 0; next < places.size(); ++next)
            sorted[places[next]] = jobs[next];
    }
    return sorted;
}

// The same for the same order of the same garments.
std::uint64_t seedFor(const TimedDay& day, std::span<const std::size_t> order) {
    std::uint64_t seed = day.request().search.seed;
    for (const std::size_t job : order) {
        seed = (seed ^ static_cast<std::uint64_t>(day.jobs()[job].garment.value)) * 0x9e3779b97f4a7c15;
        seed ^= seed >> 32;
    }
    return seed;
}

// Nothing can be gained on it, whatever the order.
bool isBestPossible(const TimedDay& day, std::span<const std::size_t> order, const DayScore& score) {
    DaySimulation simulation{day};
    simulation.begin(order);
    return !(DayBound{day}.least(simulation.state(), order) < score);
}

void annealInTurn(const TimedDay& day, DayAnnealing& annealing, std::size_t garments, std::uint64_t most,
                  Spending& spending) {
    const bool isOnePress = day.request().platens.size() == 1;
    const std::uint64_t part = isOnePress ? kPartInOutlineOnOnePress : kPartInOutlineOnMore;
    annealing.inOutline(std::min(most / part, kMostInOutline * garments));
    for (std::uint64_t work = kFirstAnnealing * garments;
         !spending.isOver(annealing.spent()) && !isBestPossible(day, annealing.best(), annealing.bestScore());
         work *= 2) {
        const std::uint64_t left = most - annealing.spent();
        const bool isLong = work >= kLongAnnealing * garments && left >= 2 * work;
        if (isLong)
            annealing.byTrialsFromElsewhere(work);
        annealing.byTrials(left < 3 * work && !isLong ? left : work); // rather one long than two short
    }
}

} // namespace

const ScoredOrder& bestOf(std::span<const ScoredOrder> orders) {
    return *std::ranges::min_element(orders, {}, &ScoredOrder::score);
}

SearchedOrder searchedOrder(const TimedDay& day, std::span<const ScoredOrder> starts) {
    const auto& [start, startScore] = bestOf(starts);
    const std::uint64_t work = day.request().search.work;
    Spending spending{day.request()};
    const auto movable = std::ranges::count_if(bestOf(starts).order,
                                               [&](std::size_t job) { return !day.jobs()[job].isUnderway; });
    if (start.size() < 2 || work == 0 || isBestPossible(day, start, startScore))
        return {start, false};

    std::vector<std::size_t> best = start;
    if (movable >= 2 && !spending.isOver(0)) {
        DayAnnealing annealing{day, starts, seedFor(day, start),
                               [&](std::uint64_t spent) { return spending.isOver(spent); }};
        if (start.size() <= kEveryOrderOf)
            annealing.byTrials(std::min(work, kBeforeEveryOrder));
        else
            annealInTurn(day, annealing, start.size(), work, spending);
        best = annealing.best();
    }
    if (start.size() <= kEveryOrderOf && !spending.isCutShort()) {
        std::uint64_t spent = kBeforeEveryOrder;
        best = EveryOrder{day, std::move(best)}.best([&] { return spending.isOver(++spent); });
    }
    const DayScore reached = day.score(best);
    // Who wants to stop waits for nothing that a long day takes long for.
    if (spending.wasStopped())
        return {reached < startScore ? best : start, true};
    const bool isCutShort = spending.isCutShort() && !isBestPossible(day, best, reached);
    if (!(reached < startScore))
        return {start, isCutShort};
    std::vector<std::size_t> sorted = byPromiseAmongAlike(day, best);
    const bool isAsGood = sorted == best || !(reached < day.score(sorted));
    return {isAsGood ? std::move(sorted) : std::move(best), isCutShort};
}

} // namespace holdfast
