// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/press/tardiness_problem.h"

#include "core/trade/assertion.h"

#include <algorithm>
#include <limits>
#include <utility>

namespace holdfast {

namespace {

constexpr double kAnyDelay = std::numeric_limits<double>::infinity();

// Less than rounding errors is no gain.
constexpr double kLeastGain = 1e-9;

// This many places are added up between two questions whether that is too much already.
constexpr std::size_t kAddedAtOnce = 8;

} // namespace

TardinessProblem::TardinessProblem(const OneMachine& machine, std::function<bool()> shouldStop)
    : m_machine(machine)
    , m_count(machine.tasks.size())
    , m_shouldStop(std::move(shouldStop))
    , m_order(m_count)
    , m_setupsAfter(m_count + 1)
    , m_doneBefore(m_count + 1)
    , m_costBefore(m_count + 1)
    , m_lateWeightBefore(m_count + 1)
    , m_readyBefore(m_count)
    , m_weight(m_count)
    , m_late(m_count) {}

void TardinessProblem::settle(std::span<const std::size_t> order) {
    HOLDFAST_ASSERT(order.size() == m_count);
    m_order.assign(order.begin(), order.end());
    const bool hasSetups = !m_machine.firstSetups.empty();
    if (hasSetups)
        m_setupsAfter[0] = m_machine.firstSetups.data();
    for (std::size_t place = 0; place < m_count; ++place) {
        const DispatchTask& task = m_machine.tasks[m_order[place]];
        const double ready = m_doneBefore[place] + (hasSetups ? setupAfter(place, place) : 0);
        const double done = ready + task.work;
        const double late = done - task.due;
        m_readyBefore[place] = ready;
        m_weight[place] = task.weight;
        m_late[place] = late;
        m_doneBefore[place + 1] = done;
        m_costBefore[place + 1] = m_costBefore[place] + task.weight * std::max(0.0, late);
        m_lateWeightBefore[place + 1] = m_lateWeightBefore[place] + (late > 0 ? task.weight : 0);
        if (hasSetups)
            m_setupsAfter[place + 1] = m_machine.setups.data() + m_order[place] * m_count;
    }
}

// ── what a delay costs ────────────────────────────────────────────────────────────────────────────────

double TardinessProblem::costAt(std::size_t place, double delay) const {
    return m_weight[place] * std::max(0.0, m_late[place] + delay);
}

// The sum and what the places [begin, end) cost when all of them are done later by `delay`, or sooner if it
// is negative; where that is not below m_least, something not below it.
double TardinessProblem::plusCostOf(double sum, std::size_t begin, std::size_t end, double delay) {
    if (delay == 0)
        return sum + costOf(begin, end);
    std::size_t place = begin;
    for (; place + kAddedAtOnce <= end && sum < m_least; place += kAddedAtOnce) {
        double even = 0;
        double odd = 0;
        for (std::size_t next = 0; next < kAddedAtOnce; next += 2) {
            even += costAt(place + next, delay);
            odd += costAt(place + next + 1, delay);
        }
        sum += even + odd;
    }
    for (; place < end && sum < m_least; ++place)
        sum += costAt(place, delay);
    m_looks += place - begin;
    return sum;
}

// The cost of these places changes by no less than this: by its tangent, and it falls to nothing at most.
double TardinessProblem::leastChange(std::size_t begin, std::size_t end, double delay) const {
    return std::max(lateWeight(begin, end) * delay, -costOf(begin, end));
}

// ── moves ─────────────────────────────────────────────────────────────────────────────────────────────

// Asked for each look.
bool TardinessProblem::mustStop() {
    ++m_looks;
    if (m_looks - m_looksAtQuestion < kLooksBetweenQuestions || m_isStopped)
        return m_isStopped;
    m_looksAtQuestion = m_looks;
    m_isStopped = m_shouldStop && m_shouldStop();
    return m_isStopped;
}

void TardinessProblem::keep(const OrderMove& move, double cost) {
    if (!(cost < m_least))
        return;
    m_least = cost;
    m_move = move;
}

std::optional<OrderMove> TardinessProblem::betterFrom(std::size_t place) {
    m_least = cost() - kLeastGain * std::max(1.0, cost());
    m_move.reset();
    if (m_machine.firstSetups.empty())
        betterWithoutSetups(place);
    else
        betterWithSetups(place);
    return m_isStopped ? std::nullopt : m_move;
}

// ── with set-ups ──────────────────────────────────────────────────────────────────────────────────────

void TardinessProblem::betterWithSetups(std::size_t first) {
    m_mostDelay = kAnyDelay;
    for (std::size_t firstEnd = first + 1; firstEnd < m_count; ++firstEnd) {
        if (m_costBefore[first] >= m_least || m_isStopped)
            return;
        lookAtNeighbours(first, firstEnd);
        if (firstEnd == first + 1)
            lookAtSwapsWithSetups(first);
    }
}

// The first block goes after each block that follows it.
void TardinessProblem::lookAtNeighbours(std::size_t first, std::size_t firstEnd) {
    const std::size_t firstTask = m_order[first];
    const double sooner = m_doneBefore[first] + setupAfter(first, firstEnd) - m_readyBefore[firstEnd];
    const double stays = costOf(first, firstEnd);
    double sum = m_costBefore[first]; // and of the second block, as it would be
    double mostDelay = m_mostDelay;   // what the second block costs only rises from here on
    const std::size_t end =
        firstEnd - first <= kLongestWithSetups ? m_count : std::min(m_count, firstEnd + kLongestWithSetups);
    for (std::size_t last = firstEnd + 1; last <= end; ++last) {
        sum += costAt(last - 1, sooner);
        const double withoutSetup = m_doneBefore[last] + sooner - m_readyBefore[first];
        if (sum + (withoutSetup < 0 ? 0 : stays) >= m_least || withoutSetup > mostDelay || mustStop())
            return;
        const double later = withoutSetup + m_setupsAfter[last][firstTask];
        if (later > mostDelay)
            continue;
        double restDelay = 0;
        double leastOfRest = 0;
        if (last < m_count) {
            restDelay = m_doneBefore[firstEnd] + later + setupAfter(firstEnd, last) - m_readyBefore[last];
            leastOfRest = costOf(last, m_count) + leastChange(last, m_count, restDelay);
        }
        if (sum + stays + lateWeight(first, firstEnd) * later + leastOfRest >= m_least)
            continue;
        const double both = plusCostOf(sum, first, firstEnd, later);
        if (both >= m_least) {
            mostDelay = later;
            if (both - sum + m_costBefore[first] >= m_least)
                m_mostDelay = std::min(m_mostDelay, later);
        } else if (both + leastOfRest < m_least) {
            keep({first, firstEnd, firstEnd, last}, plusCostOf(both, last, m_count, restDelay));
        }
    }
}

// The task at the first place and a later one change places, with others between them.
void TardinessProblem::lookAtSwapsWithSetups(std::size_t first) {
    const std::size_t between = first + 1;
    for (std::size_t second = between + 1; second < m_count; ++second) {
        const std::size_t last = second + 1;
        const double secondDelay = m_doneBefore[first] + setupAfter(first, second) - m_readyBefore[second];
        const double betweenDelay =
            m_doneBefore[last] + secondDelay + setupAfter(last, between) - m_readyBefore[between];
        const double withoutSetup = m_doneBefore[second] + betweenDelay - m_readyBefore[first];
        if (withoutSetup > m_mostDelay || mustStop())
            return;
        const double firstDelay = withoutSetup + setupAfter(second, first);
        if (firstDelay > m_mostDelay)
            continue;
        double restDelay = 0;
        if (last < m_count)
            restDelay = m_doneBefore[between] + firstDelay + setupAfter(between, last) - m_readyBefore[last];
        const double least = cost() + leastChange(first, between, firstDelay) +
                             leastChange(between, second, betweenDelay) +
                             leastChange(second, last, secondDelay) + leastChange(last, m_count, restDelay);
        if (least >= m_least)
            continue;
        double sum = plusCostOf(m_costBefore[first], first, between, firstDelay);
        if (sum >= m_least) {
            m_mostDelay = firstDelay;
            continue;
        }
        sum = plusCostOf(sum, second, last, secondDelay);
        sum = plusCostOf(sum, between, second, betweenDelay);
        keep({first, between, second, last}, plusCostOf(sum, last, m_count, restDelay));
    }
}

// ── without set-ups: nothing outside a move comes to another time ─────────────────────────────────────

void TardinessProblem::betterWithoutSetups(std::size_t place) {
    for (std::size_t end = place + 1; end <= std::min(place + kLongestAlone, m_count); ++end) {
        lookLater(place, end);
        lookSooner(place, end);
    }
    lookAtSwaps(place);
}

// The block goes after each task that follows it.
void TardinessProblem::lookLater(std::size_t begin, std::size_t end) {
    const double work = m_doneBefore[end] - m_doneBefore[begin];
    const double withoutIt = cost() - costOf(begin, end);
    const double mostGain = costOf(end, m_count);
    double gain = 0;
    for (std::size_t last = end; last < m_count; ++last) {
        gain += m_weight[last] * std::clamp(m_late[last], 0.0, work);
        const double later = m_doneBefore[last + 1] - m_doneBefore[end];
        double own = 0;
        for (std::size_t place = begin; place < end; ++place)
            own += costAt(place, later);
        if (withoutIt + own - mostGain >= m_least || mustStop())
            return;
        keep({begin, end, end, last + 1}, withoutIt + own - gain);
    }
}

// The block goes before each task that comes before it.
void TardinessProblem::lookSooner(std::size_t begin, std::size_t end) {
    const double work = m_doneBefore[end] - m_doneBefore[begin];
    const double withoutIt = cost() - costOf(begin, end);
    double loss = 0;
    for (std::size_t first = begin; first-- > 0;) {
        loss += m_weight[first] * std::clamp(m_late[first] + work, 0.0, work);
        if (withoutIt + loss >= m_least || mustStop())
            return;
        const double later = m_doneBefore[first] - m_doneBefore[begin];
        double own = 0;
        for (std::size_t place = begin; place < end; ++place)
            own += costAt(place, later);
        keep({first, begin, begin, end}, withoutIt + own + loss);
    }
}

// The task at the first place and a later one change places, with others between them.
void TardinessProblem::lookAtSwaps(std::size_t first) {
    const std::size_t between = first + 1;
    for (std::size_t second = between + 1; second < m_count; ++second) {
        const std::size_t last = second + 1;
        const double firstCost = costAt(first, m_doneBefore[last] - m_doneBefore[between]);
        if (m_costBefore[first] + firstCost >= m_least || mustStop())
            return;
        const double delay =
            m_doneBefore[last] - m_doneBefore[second] - m_doneBefore[between] + m_doneBefore[first];
        const double others = cost() - costOf(first, last) + firstCost +
                              costAt(second, m_doneBefore[first] - m_doneBefore[second]);
        if (others + costOf(between, second) + leastChange(between, second, delay) >= m_least)
            continue;
        keep({first, between, second, last}, plusCostOf(others, between, second, delay));
    }
}

} // namespace holdfast
